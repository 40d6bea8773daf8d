package io.github.wattledger.cli.report;

import io.github.wattledger.pacing.AnyFinding;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
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

    /**
     * The sentences for a finding; empty when there is no evidence at all. The numbers of a finding that is not the
     * library's are shown with their own names.
     */
    public static String of(AnyFinding finding) {
        EvidenceSentences sentences = new EvidenceSentences(finding.evidence());
        if (finding instanceof Finding ours) {
            sentences.clauses(ours.kind());
        }
        sentences.rest();
        return sentences.text.toString();
    }

    private void clauses(FindingKind kind) {
        switch (kind) {
            case OVER_HARD_START -> overHardStart();
            case THRESHOLD_RIDING_EARLY -> thresholdRidingEarly();
            case SURGES -> surges();
            case FADE -> fade();
            case ENERGY_CRASH -> energyCrash();
            case DRIFT -> drift();
            case STOPPED_TIME -> stoppedTime();
            case UNDER_PACED -> underPaced();
            case LATE_RESERVE -> lateReserve();
            case SPUN_OUT, OVER_GEARED -> gears();
        }
    }

    /** The name of a finding's kind in words, with a capital. */
    public static String title(AnyFinding finding) {
        return finding instanceof Finding ours ? title(ours.kind()) : inWords(finding.kindId());
    }

    /** A kind's name in words, with a capital. */
    public static String title(FindingKind kind) {
        return switch (kind) {
            case OVER_HARD_START -> "Over-hard start";
            case UNDER_PACED -> "Under-paced";
            case OVER_GEARED -> "Over-geared";
            case THRESHOLD_RIDING_EARLY -> "Threshold riding early";
            default -> inWords(kind.id());
        };
    }

    private static String inWords(String id) {
        String words = id.replace('-', ' ');
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private void overHardStart() {
        String opening = number("openingSeconds", "the first %", Wording.SPAN);
        begin("openingNormalizedPowerW", "Normalized power % in ", Wording.WATTS);
        and(opening.isEmpty() ? "the opening" : opening);
        and("restNormalizedPowerW", ", % after it", Wording.WATTS);
        and("targetW", "; the target for this length is %", Wording.WATTS);
        end();
        if (evidence.get("excessWorkKJ").orElse(0) >= 0) {
            begin("excessWorkKJ", "Work above the target: % kJ", Wording.BRIEF);
        } else {
            begin(
                    "excessWorkKJ",
                    "In sum % kJ against the target: it was hard in bursts, not on average",
                    Wording.BRIEF);
        }
        end();
        begin("minutesAboveThreshold", "Above threshold power for %", Wording.MINUTES);
        end();
        begin("openingHeartRateBpm", "Heart rate %", Wording.BEATS);
        and("thresholdHeartRateFraction", ", % of threshold heart rate", Wording.FRACTION_AS_PERCENT);
        end();
        begin("lowestWPrimeShare", "W' was down to % in it", Wording.FRACTION_AS_PERCENT);
        end();
    }

    private void thresholdRidingEarly() {
        begin("longestSeconds", "The longest stretch near threshold power took %", Wording.SPAN);
        and("meanPowerW", " at %", Wording.WATTS);
        and("thresholdFraction", ", % of threshold power", Wording.FRACTION_AS_PERCENT);
        end();
        begin("stretchCount", "Stretches of this kind: %", Wording.BRIEF);
        and("totalSeconds", ", % in all", Wording.SPAN);
        end();
    }

    private void surges() {
        begin("count", "Surges far above threshold power: %", Wording.BRIEF);
        and("totalSeconds", ", % in all", Wording.SPAN);
        and("longestSeconds", ", the longest %", Wording.SPAN);
        and("highestMeanW", ", the hardest at % on average", Wording.WATTS);
        end();
        begin("workAboveThresholdKJ", "Work above threshold power: % kJ", Wording.BRIEF);
        and("workAboveThresholdKJPerHour", ", % kJ an hour", Wording.BRIEF);
        and("wPrimeSharePerHour", ", that is % of W' an hour", Wording.FRACTION_AS_PERCENT);
        and("wPrimeKJ", " (W' % kJ)", Wording.BRIEF);
        and("usualWPrimeKJ", " (a usual W' of % kJ; yours is not known or does not fit)", Wording.BRIEF);
        end();
        begin("wPrimeSpentKJ", "W' spent in them: % kJ", Wording.BRIEF);
        and("mostWPrimeSpentKJ", ", % kJ in one alone", Wording.BRIEF);
        end();
        begin("lowestWPrimeShare", "The one that left least left % of it", Wording.FRACTION_AS_PERCENT);
        and("secondsToRecover", ", and nine tenths were back after %", Wording.SPAN);
        end();
        begin("drainedCount", "Surges before the last sixth that left less than a quarter: %", Wording.BRIEF);
        end();
    }

    private void fade() {
        begin("latePowerW", "On comparable ground % late", Wording.WATTS);
        and("earlyPowerW", " against % early", Wording.WATTS);
        and("lossPercent", ", a loss of %", Wording.PERCENT);
        end();
        begin("slopePercentPerHour", "Trend % an hour", Wording.PERCENT);
        and("comparedBlocks", ", from % blocks compared", Wording.BRIEF);
        end();
    }

    private void energyCrash() {
        begin("lossPercent", "Power on comparable ground % lower than before", Wording.PERCENT);
        and("earlyPowerW", " (% on average until half-way)", Wording.WATTS);
        end();
        begin("actualHeartRateBpm", "Heart rate % in the last third", Wording.BEATS);
        and("predictedHeartRateBpm", " where the same power gave % before", Wording.BEATS);
        and("heartRateOverPredictedPercent", ", a difference of %", Wording.PERCENT);
        end();
        begin("hoursBefore", "It began after % h", Wording.BRIEF);
        and("workBeforeKJ", " and % kJ of work", Wording.BRIEF);
        and("temperatureC", ", at % degrees Celsius", Wording.BRIEF);
        end();
    }

    private void drift() {
        begin("actualHeartRateBpm", "Heart rate % late in the ride", Wording.BEATS);
        and("predictedHeartRateBpm", " where the same power gave % before", Wording.BEATS);
        and("heartRateOverPredictedPercent", ", a difference of %", Wording.PERCENT);
        end();
        begin("bpmPer100W", "Before, it rose by % for each 100 W", Wording.BEATS);
        end();
        begin("decouplingPercent", "Decoupling %", Wording.PERCENT);
        end();
    }

    private void stoppedTime() {
        begin("stopCount", "Stops: %", Wording.BRIEF);
        and("longerThanSeconds", " of more than % s", Wording.WHOLE);
        and("totalMinutes", ", % in all", Wording.MINUTES);
        and("longestMinutes", ", the longest %", Wording.MINUTES);
        end();
    }

    private void underPaced() {
        begin("normalizedPowerW", "Normalized power % for the whole", Wording.WATTS);
        and("targetW", "; the target for this length is %", Wording.WATTS);
        and("shareOfTargetPercent", ", so % of it", Wording.PERCENT);
        end();
    }

    private void lateReserve() {
        begin("lastSixthNormalizedPowerW", "Normalized power % in the last sixth", Wording.WATTS);
        and("restNormalizedPowerW", ", % before it", Wording.WATTS);
        and("gainPercent", ", a gain of %", Wording.PERCENT);
        end();
    }

    private void gears() {
        begin("totalSeconds", "% in all", Wording.SPAN);
        and("chainringTeeth", " in the gear %", Wording.BRIEF);
        and("cogTeeth", " x %", Wording.BRIEF);
        end();
        begin("secondsWithOtherChainring", "At the same speeds it would have been %", Wording.SPAN);
        and("otherChainringTeeth", " with a chainring of %", Wording.BRIEF);
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

    private void begin(String name, String clause, Wording wording) {
        String said = number(name, clause, wording);
        if (!said.isEmpty()) {
            open();
            text.append(said);
        }
    }

    /** Goes on with the sentence; without its beginning the number is left to {@link #rest()}. */
    private void and(String name, String clause, Wording wording) {
        if (openSentence) {
            text.append(number(name, clause, wording));
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

    private String number(String name, String clause, Wording wording) {
        OptionalDouble value = evidence.get(name);
        if (value.isEmpty()) {
            return "";
        }
        told.add(name);
        int at = clause.indexOf('%');
        return clause.substring(0, at) + wording.of(value.getAsDouble()) + clause.substring(at + 1);
    }
}
