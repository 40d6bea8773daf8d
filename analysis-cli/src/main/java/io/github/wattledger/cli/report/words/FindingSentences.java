package io.github.wattledger.cli.report.words;

import io.github.wattledger.pacing.AnyFinding;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Remark;
import java.util.HashSet;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The numbers of a finding in sentences, one wording for each kind. Where the evidence lacks a number, its clause is left
 * out; a number that no clause knows is shown with its own name, so that nothing is kept back.
 */
final class FindingSentences {
    private final Evidence evidence;
    private final Units units;

    /** What parts are compared on: without distance nothing is known of the ground. */
    private final String onGround;

    private final StringBuilder text = new StringBuilder();
    private final Set<String> said = new HashSet<>();

    private FindingSentences(Evidence evidence, boolean hasPlace, Units units) {
        this.evidence = evidence;
        this.onGround = hasPlace ? "on like ground " : "";
        this.units = units;
    }

    /**
     * The sentences for a finding; empty when there is no evidence at all. The numbers of a finding that is not the library's
     * are shown with their own names.
     */
    static String of(AnyFinding finding, Units units) {
        FindingSentences sentences = new FindingSentences(finding.evidence(), finding.startM() != null, units);
        if (finding instanceof Finding ours) {
            sentences.clauses(ours.kind()).run();
        }
        sentences.rest();
        return sentences.text.toString();
    }

    /** The sentences for a remark; empty when there is no evidence at all. */
    static String of(Remark remark, Units units) {
        FindingSentences sentences = new FindingSentences(remark.evidence(), remark.startM() != null, units);
        sentences.clauses(remark.kind()).run();
        sentences.rest();
        return sentences.text.toString();
    }

    /** The clauses of a kind. A switch expression, since the compiler lets a switch statement forget a kind. */
    private Runnable clauses(FindingKind kind) {
        return switch (kind) {
            case OVER_HARD_START -> this::overHardStart;
            case THRESHOLD_RIDING_EARLY -> this::thresholdRidingEarly;
            case SURGES -> this::surges;
            case FADE -> this::fade;
            case ENERGY_CRASH -> this::energyCrash;
            case DRIFT -> this::drift;
            case STOPPED_TIME -> this::stoppedTime;
            case UNDER_PACED -> this::underPaced;
            case LATE_RESERVE -> this::lateReserve;
            case SPUN_OUT, OVER_GEARED -> this::gears;
        };
    }

    private void overHardStart() {
        String opening = number("openingSeconds", "the first %", Wording.SPAN);
        begin("openingNormalizedPowerW", "Normalized power was % in ", Wording.WATTS);
        and(opening.isEmpty() ? "the opening" : opening);
        and("restNormalizedPowerW", " and % after it", Wording.WATTS);
        and("plannedCapW", "; the plan allowed % for the opening", Wording.WATTS);
        and("targetW", "; the target for this length is %", Wording.WATTS);
        end();
        if (evidence.get("excessWorkKJ").orElse(0) >= 0) {
            begin("excessWorkKJ", "The work above the target was % kJ", Wording.BRIEF);
        } else {
            begin(
                    "excessWorkKJ",
                    "In sum the work was % kJ against the target: the opening was hard in bursts, not on average",
                    Wording.BRIEF);
        }
        end();
        begin("overMiddlePercent", "On like ground that is % harder than the middle of the race", Wording.PERCENT);
        end();
        begin("minutesAboveThreshold", "Power was above threshold power for %", Wording.MINUTES);
        end();
        begin("openingHeartRateBpm", "Heart rate was %", Wording.BEATS);
        and("thresholdHeartRateFraction", ", % of threshold heart rate", Wording.FRACTION_AS_PERCENT);
        end();
        begin("lowestWPrimeShare", "W' fell to % in it", Wording.FRACTION_AS_PERCENT);
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
        begin("lowestWPrimeShare", "After the worst surge % of W' was left", Wording.FRACTION_AS_PERCENT);
        and("secondsToRecover", ", and nine tenths were back after %", Wording.SPAN);
        end();
        begin("drainedCount", "Surges before the last sixth that left less than a quarter: %", Wording.BRIEF);
        end();
    }

    private void fade() {
        begin("latePowerW", PlainText.capital(onGround + "power was % late"), Wording.WATTS);
        and("earlyPowerW", " against % early", Wording.WATTS);
        and("lossPercent", ", a loss of %", Wording.PERCENT);
        end();
        begin("slopePercentPerHour", "The trend was % an hour", Wording.PERCENT);
        and("comparedBlocks", ", over % blocks of ten minutes", Wording.BRIEF);
        end();
        temperature();
    }

    private void temperature() {
        begin("temperatureC", "The recorder showed % on average in this stretch", Wording.TEMPERATURE);
        and("temperatureBeforeC", ", % before it", Wording.TEMPERATURE);
        and("; its sensor reads too high in the sun");
        end();
    }

    private void energyCrash() {
        begin("lossPercent", "Power " + onGround + "was % lower than before", Wording.PERCENT);
        and("earlyPowerW", " (% on average until half-way)", Wording.WATTS);
        end();
        begin("actualHeartRateBpm", "Heart rate was % in this stretch", Wording.BEATS);
        and("predictedHeartRateBpm", ", where the same power gave % before", Wording.BEATS);
        and("heartRateOverPredictedPercent", ", a difference of %", Wording.PERCENT);
        end();
        begin("hoursBefore", "It began after % h", Wording.BRIEF);
        and("workBeforeKJ", " and % kJ of work", Wording.BRIEF);
        end();
        temperature();
    }

    private void drift() {
        begin("actualHeartRateBpm", "Heart rate was % late in the ride", Wording.BEATS);
        and("predictedHeartRateBpm", ", where the same power gave % before", Wording.BEATS);
        and("heartRateOverPredictedPercent", ", a difference of %", Wording.PERCENT);
        end();
        begin("bpmPer100W", "Before, it rose by % for each 100 W", Wording.BEATS);
        end();
        begin("decouplingPercent", "Decoupling was %", Wording.PERCENT);
        if (evidence.get("decouplingPercent").orElse(0) < 0) {
            and(": it points the other way, since it compares the halves of all riding, easy and hard, and drift"
                    + " compares heart rate at equal power");
        }
        end();
        temperature();
    }

    private void stoppedTime() {
        begin("stopCount", "Stops: %", Wording.BRIEF);
        and("longerThanSeconds", " of more than % s", Wording.WHOLE);
        and("totalMinutes", ", % in all", Wording.MINUTES);
        and("longestMinutes", ", the longest %", Wording.MINUTES);
        end();
    }

    private void underPaced() {
        begin("normalizedPowerW", "Normalized power was % for the whole", Wording.WATTS);
        and("targetW", "; the target for this length is %", Wording.WATTS);
        and("shareOfTargetPercent", ", so it was % of the target", Wording.PERCENT);
        end();
    }

    private void lateReserve() {
        begin("lastSixthNormalizedPowerW", "Normalized power was % in the last sixth", Wording.WATTS);
        and("restNormalizedPowerW", " and % before it", Wording.WATTS);
        and("gainPercent", "; " + onGround + "that is % harder", Wording.PERCENT);
        end();
    }

    private void gears() {
        begin("totalSeconds", "The time was % in all", Wording.SPAN);
        and("chainringTeeth", ", in the gear %", Wording.BRIEF);
        and("cogTeeth", " x %", Wording.BRIEF);
        end();
        begin("secondsWithOtherChainring", "At the same speeds it would have been %", Wording.SPAN);
        and("otherChainringTeeth", " with a chainring of %", Wording.BRIEF);
        end();
    }

    /** The numbers that no clause has used, each with its own name. */
    private void rest() {
        for (Evidence.Entry entry : evidence.entries()) {
            if (said.add(entry.name())) {
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

    /** Continues a sentence. Where the sentence was not begun, the number is left to {@link #rest()}. */
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
        said.add(name);
        int at = clause.indexOf('%');
        return clause.substring(0, at) + wording.of(value.getAsDouble(), units) + clause.substring(at + 1);
    }
}
