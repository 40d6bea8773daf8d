package io.github.wattledger.cli.report;

import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.OwnFinding;
import java.util.HashSet;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The numbers of a finding in sentences, one wording a kind. A number that the evidence lacks takes its clause with it; a
 * number that no clause knows is shown with its own name, so that nothing is kept back.
 */
public final class EvidenceSentences {
    private final Evidence evidence;
    private final StringBuilder text = new StringBuilder();
    private final Set<String> told = new HashSet<>();

    private EvidenceSentences(Evidence evidence) {
        this.evidence = evidence;
    }

    /** The sentences for a finding; empty when there is no evidence at all. */
    public static String of(Finding finding) {
        EvidenceSentences sentences = new EvidenceSentences(finding.evidence());
        switch (finding.kind()) {
            case OVER_HARD_START -> sentences.overHardStart();
            case THRESHOLD_RIDING_EARLY -> sentences.thresholdRidingEarly();
            case SURGES -> sentences.surges();
            case FADE -> sentences.fade();
            case ENERGY_CRASH -> sentences.energyCrash();
            case DRIFT -> sentences.drift();
            case STOPPED_TIME -> sentences.stoppedTime();
            case UNDER_PACED -> sentences.underPaced();
            case LATE_RESERVE -> sentences.lateReserve();
            case SPUN_OUT, OVER_GEARED -> sentences.gears();
        }
        sentences.rest();
        return sentences.text.toString();
    }

    /** The numbers of a finding that is not the library's, each with its own name. */
    public static String of(OwnFinding finding) {
        EvidenceSentences sentences = new EvidenceSentences(finding.evidence());
        sentences.rest();
        return sentences.text.toString();
    }

    /** The same of a kind that is not the library's. */
    public static String title(OwnFinding finding) {
        return inWords(finding.kind());
    }

    /** A kind's name in words, with a capital. */
    public static String title(FindingKind kind) {
        return switch (kind) {
            case OVER_HARD_START -> "Over-hard start";
            case UNDER_PACED -> "Under-paced";
            case OVER_GEARED -> "Over-geared";
            case THRESHOLD_RIDING_EARLY -> "Threshold riding early";
            case SURGES, FADE, ENERGY_CRASH, DRIFT, STOPPED_TIME, LATE_RESERVE, SPUN_OUT -> inWords(kind.id());
        };
    }

    private static String inWords(String id) {
        String words = id.replace('-', ' ');
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private void overHardStart() {
        String opening = number("openingSeconds", "the first %", Figures::span);
        begin("openingNormalizedPowerW", "Normalized power % in ", Figures::watts);
        and(opening.isEmpty() ? "the opening" : opening);
        and("restNormalizedPowerW", ", % after it", Figures::watts);
        and("targetW", "; the target for this length is %", Figures::watts);
        end();
        if (evidence.get("excessWorkKJ").orElse(0) >= 0) {
            begin("excessWorkKJ", "Work above the target: % kJ", Figures::brief);
        } else {
            begin(
                    "excessWorkKJ",
                    "In sum % kJ against the target: it was hard in bursts, not on average",
                    Figures::brief);
        }
        end();
        begin("minutesAboveThreshold", "Above threshold power for %", Figures::minutes);
        end();
        begin("openingHeartRateBpm", "Heart rate %", Figures::beats);
        and("thresholdHeartRateFraction", ", % of threshold heart rate", Figures::fractionAsPercent);
        end();
        begin("lowestWPrimeShare", "W' was down to % in it", Figures::fractionAsPercent);
        end();
    }

    private void thresholdRidingEarly() {
        begin("longestSeconds", "The longest stretch near threshold power took %", Figures::span);
        and("meanPowerW", " at %", Figures::watts);
        and("thresholdFraction", ", % of threshold power", Figures::fractionAsPercent);
        end();
        begin("stretchCount", "Stretches of this kind: %", Figures::brief);
        and("totalSeconds", ", % in all", Figures::span);
        end();
    }

    private void surges() {
        begin("count", "Surges far above threshold power: %", Figures::brief);
        and("totalSeconds", ", % in all", Figures::span);
        and("longestSeconds", ", the longest %", Figures::span);
        and("highestMeanW", ", the hardest at % on average", Figures::watts);
        end();
        begin("workAboveThresholdKJ", "Work above threshold power: % kJ", Figures::brief);
        and("workAboveThresholdKJPerHour", ", % kJ an hour", Figures::brief);
        and("wPrimeSharePerHour", ", that is % of W' an hour", Figures::fractionAsPercent);
        and("wPrimeKJ", " (W' % kJ)", Figures::brief);
        and("usualWPrimeKJ", " (a usual W' of % kJ; yours is not known or does not fit)", Figures::brief);
        end();
        begin("wPrimeSpentKJ", "W' spent in them: % kJ", Figures::brief);
        and("mostWPrimeSpentKJ", ", % kJ in one alone", Figures::brief);
        end();
        begin("lowestWPrimeShare", "The one that left least left % of it", Figures::fractionAsPercent);
        and("secondsToRecover", ", and nine tenths were back after %", Figures::span);
        end();
        begin("drainedCount", "Surges before the last sixth that left less than a quarter: %", Figures::brief);
        end();
    }

    private void fade() {
        begin("latePowerW", "On comparable ground % late", Figures::watts);
        and("earlyPowerW", " against % early", Figures::watts);
        and("lossPercent", ", a loss of %", Figures::percent);
        end();
        begin("slopePercentPerHour", "Trend % an hour", Figures::percent);
        and("comparedBlocks", ", from % blocks compared", Figures::brief);
        end();
    }

    private void energyCrash() {
        begin("lossPercent", "Power on comparable ground % lower than before", Figures::percent);
        and("earlyPowerW", " (% on average until half-way)", Figures::watts);
        end();
        begin("actualHeartRateBpm", "Heart rate % in the last third", Figures::beats);
        and("predictedHeartRateBpm", " where the same power gave % before", Figures::beats);
        and("heartRateOverPredictedPercent", ", a difference of %", Figures::percent);
        end();
        begin("hoursBefore", "It began after % h", Figures::brief);
        and("workBeforeKJ", " and % kJ of work", Figures::brief);
        and("temperatureC", ", at % degrees Celsius", Figures::brief);
        end();
    }

    private void drift() {
        begin("actualHeartRateBpm", "Heart rate % late in the ride", Figures::beats);
        and("predictedHeartRateBpm", " where the same power gave % before", Figures::beats);
        and("heartRateOverPredictedPercent", ", a difference of %", Figures::percent);
        end();
        begin("bpmPer100W", "Before, it rose by % for each 100 W", Figures::beats);
        end();
        begin("decouplingPercent", "Decoupling %", Figures::percent);
        end();
    }

    private void stoppedTime() {
        begin("stopCount", "Stops of more than a minute: %", Figures::brief);
        and("totalMinutes", ", % in all", Figures::minutes);
        and("longestMinutes", ", the longest %", Figures::minutes);
        end();
    }

    private void underPaced() {
        begin("normalizedPowerW", "Normalized power % for the whole", Figures::watts);
        and("targetW", "; the target for this length is %", Figures::watts);
        and("shareOfTargetPercent", ", so % of it", Figures::percent);
        end();
    }

    private void lateReserve() {
        begin("lastSixthNormalizedPowerW", "Normalized power % in the last sixth", Figures::watts);
        and("restNormalizedPowerW", ", % before it", Figures::watts);
        and("gainPercent", ", a gain of %", Figures::percent);
        end();
    }

    private void gears() {
        begin("totalSeconds", "% in all", Figures::span);
        and("chainringTeeth", " in the gear %", Figures::brief);
        and("cogTeeth", " x %", Figures::brief);
        end();
        begin("secondsWithOtherChainring", "At the same speeds it would have been %", Figures::span);
        and("otherChainringTeeth", " with a chainring of %", Figures::brief);
        end();
    }

    /** What no clause has told. */
    private void rest() {
        for (Evidence.Entry entry : evidence.entries()) {
            if (told.add(entry.name())) {
                open();
                text.append(PlainText.of(entry.name())).append(' ').append(Figures.brief(entry.value()));
                end();
            }
        }
    }

    private boolean openSentence;

    private void begin(String name, String wording, Words words) {
        String clause = number(name, wording, words);
        if (!clause.isEmpty()) {
            open();
            text.append(clause);
        }
    }

    /** Goes on with the sentence; without its beginning the number is left to {@link #rest()}. */
    private void and(String name, String wording, Words words) {
        if (openSentence) {
            text.append(number(name, wording, words));
        }
    }

    private void and(String clause) {
        if (openSentence) {
            text.append(clause);
        }
    }

    private void open() {
        text.append(text.length() == 0 ? "" : " ");
        openSentence = true;
    }

    private void end() {
        text.append(openSentence ? "." : "");
        openSentence = false;
    }

    private String number(String name, String wording, Words words) {
        OptionalDouble value = evidence.get(name);
        if (value.isEmpty()) {
            return "";
        }
        told.add(name);
        int at = wording.indexOf('%');
        return wording.substring(0, at) + words.of(value.getAsDouble()) + wording.substring(at + 1);
    }

    /** How a number is worded with its unit. */
    @FunctionalInterface
    private interface Words {
        String of(double value);
    }
}
