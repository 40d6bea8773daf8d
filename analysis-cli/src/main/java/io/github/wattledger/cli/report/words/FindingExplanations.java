package io.github.wattledger.cli.report.words;

import io.github.wattledger.course.GearUse;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.JudgementLimit;
import io.github.wattledger.pacing.JudgementLimits;
import java.math.BigDecimal;

/**
 * How the numbers of each kind of finding follow from the seconds of a ride. A limit that a rider profile can move is
 * named with the value in force; docs/methods.md gives the reasons for all limits.
 */
public final class FindingExplanations {
    private static final String CAP =
            " The heart rate beside a cap is what this rider's own line of heart rate on power gives for that power, but"
                    + " never more than threshold heart rate or the highest heart rate of the ride.";

    private FindingExplanations() {}

    /**
     * A few sentences that name the numbers of the evidence.
     *
     * @param limits the limits by which the ride was judged
     */
    public static String of(FindingKind kind, JudgementLimits limits) {
        return switch (kind) {
            case OVER_HARD_START ->
                "The opening is the first sixth of the judged moving time, at least 20 and at most 90 min."
                        + " openingNormalizedPowerW is its normalized power, restNormalizedPowerW is that of everything"
                        + " after it. overMiddlePercent compares the opening with the middle of the race, up to two thirds"
                        + " of the moving time, on like ground: power is ground times part, and the ground is taken"
                        + " out. excessWorkKJ is power less targetW, summed over the seconds of the opening."
                        + " minutesAboveThreshold counts its seconds above threshold power. openingHeartRateBpm is the"
                        + " mean heart rate under way; thresholdHeartRateFraction is that divided by threshold heart"
                        + " rate. Where W' is known, lowestWPrimeShare is the smallest share of it that was left during"
                        + " the opening. The cap is 1.05 times the target. Where a plan is given, the opening is as long"
                        + " as in it, plannedCapW is its cap, which an over-hard start exceeds by more than 5 %, and that"
                        + " is the cap for next time, too." + CAP;
            case THRESHOLD_RIDING_EARLY ->
                "The stretches lie in the first third of moving time. Each is covered by windows of "
                        + Figures.span(limits.get(JudgementLimit.NEAR_THRESHOLD_SECONDS))
                        + " whose mean power is at least " + exact(limits.get(JudgementLimit.NEAR_THRESHOLD_FRACTION))
                        + " times threshold power. stretchCount is their number, totalSeconds their length in all."
                        + " longestSeconds and meanPowerW belong to the longest one; thresholdFraction is its mean power"
                        + " divided by threshold power. The cap is 0.90 times threshold power." + CAP;
            case SURGES ->
                "A surge is a stretch of " + exact(limits.get(JudgementLimit.SURGE_SECONDS)) + " s or more above "
                        + exact(limits.get(JudgementLimit.SURGE_FRACTION))
                        + " times threshold power; lapses of 2 s are allowed. It is a jump: its mean is at least 1.5 times"
                        + " that of the calmer seconds in the minute before and after it. workAboveThresholdKJ is power less threshold power, summed where power is"
                        + " above; workAboveThresholdKJPerHour is that divided by the moving hours. wPrimeSharePerHour"
                        + " is the work above critical power in an hour divided by W'; where these are not known, it is"
                        + " the work above threshold power divided by usualWPrimeKJ. The balance of W' gives the rest:"
                        + " wPrimeSpentKJ is what all surges spent, mostWPrimeSpentKJ what one alone spent,"
                        + " lowestWPrimeShare what was left after the worst, secondsToRecover the time until nine tenths"
                        + " were back. drainedCount is the number of surges before the last sixth that left less than a"
                        + " quarter. highestMeanW is the mean of the hardest surge, longestSeconds the length of the"
                        + " longest. The cap is the power from which an effort counts as a surge." + CAP;
            case FADE ->
                "The moving time is cut into twelfths. Power is ground times part: the power that each grade asks for"
                        + " and the effort of each twelfth are found together. lossPercent compares the effort of the"
                        + " last two twelfths with the first three after the opening; surges and threshold riding"
                        + " early are left out. earlyPowerW is the mean power of those three, latePowerW the same"
                        + " ground at the later effort. The fade begins at the knee of a line through comparedBlocks"
                        + " blocks of ten minutes, level before it and straight after it; slopePercentPerHour is its"
                        + " slope. The cap is the target." + CAP;
            case ENERGY_CRASH ->
                "lossPercent compares the effort of the stretch with that from minute 20 to half of the ride, on like"
                        + " ground. predictedHeartRateBpm is the heart rate of the stretch that follows from the line of"
                        + " heart rate on lagged power of the first half, fitted up to threshold power;"
                        + " actualHeartRateBpm is what it was, heartRateOverPredictedPercent the difference. hoursBefore,"
                        + " workBeforeKJ and temperatureC describe what preceded the stretch.";
            case DRIFT ->
                "A line of heart rate on power, lagged by 60 s, is fitted from minute 20 to half of the ride;"
                        + " bpmPer100W is its slope. predictedHeartRateBpm is the mean of that line over the seconds of"
                        + " the last third above 0.4 times threshold power whose power was ridden in the first half as well,"
                        + " actualHeartRateBpm the mean that was"
                        + " recorded, heartRateOverPredictedPercent their difference divided by the prediction.";
            case STOPPED_TIME ->
                "A stop is a stretch between two moving seconds in which nothing moved for more than longerThanSeconds;"
                        + " stopCount is the number of stops, totalMinutes the sum of their lengths,"
                        + " longestMinutes the longest of them.";
            case UNDER_PACED ->
                "shareOfTargetPercent is normalizedPowerW of everything that was judged divided by targetW. The cap is"
                        + " the target." + CAP;
            case LATE_RESERVE ->
                "lastSixthNormalizedPowerW belongs to the last sixth of moving time, restNormalizedPowerW to everything"
                        + " before it. gainPercent compares the effort of both on like ground.";
            case SPUN_OUT ->
                "totalSeconds is the time in the top gear at over " + exact(GearUse.SPINNING_RPM)
                        + " rpm. secondsWithOtherChainring is what it would have been with otherChainringTeeth.";
            case OVER_GEARED ->
                "totalSeconds is the time in the lowest gear at under " + exact(GearUse.GRINDING_RPM)
                        + " rpm on a climb. secondsWithOtherChainring is what it would have been with otherChainringTeeth.";
        };
    }

    /** A limit as it was set, without rounding. */
    private static String exact(double limit) {
        return BigDecimal.valueOf(limit).stripTrailingZeros().toPlainString();
    }
}
