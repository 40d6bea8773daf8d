package io.github.wattledger.cli.report.text;

import io.github.wattledger.pacing.FindingKind;

/** How the numbers of each kind of finding are got from the seconds of a ride; the limits stand in docs/methods.md. */
final class FindingRules {
    private static final String CAP =
            " The heart rate beside a cap is what this rider's own line of heart rate on power gives for it, never above"
                    + " threshold heart rate.";

    private FindingRules() {}

    /** A few sentences that name the numbers of the evidence. */
    static String of(FindingKind kind) {
        return switch (kind) {
            case OVER_HARD_START ->
                "The opening is the first sixth of the judged moving time, at least 20 and at most 90 min."
                        + " openingNormalizedPowerW is its normalized power, restNormalizedPowerW that of all after it;"
                        + " excessWorkKJ is power less targetW, summed over its seconds; minutesAboveThreshold counts its"
                        + " seconds above threshold power; openingHeartRateBpm is the mean under way, over threshold"
                        + " heart rate it is thresholdHeartRateFraction. Where W' is known, lowestWPrimeShare is what the"
                        + " opening left of it at its lowest. The cap is 1.05 times the target." + CAP;
            case THRESHOLD_RIDING_EARLY ->
                "In the first third of moving time, the stretches covered by windows of 8 min (or the profile's) with a"
                        + " mean near threshold or above: stretchCount of them, totalSeconds in all; longestSeconds and"
                        + " meanPowerW are of the longest, thresholdFraction is its mean over threshold power. The cap is"
                        + " 0.90 times threshold." + CAP;
            case SURGES ->
                "A surge is a stretch above 1.2 times threshold (or the profile's share) of 8 s or more, lapses of 2 s"
                        + " allowed. workAboveThresholdKJ is power less threshold power, summed where it is above; over"
                        + " the moving hours it is workAboveThresholdKJPerHour. wPrimeSharePerHour is the work above"
                        + " critical power an hour over W', or, where these are not known, that above threshold over"
                        + " usualWPrimeKJ. From the balance of W': wPrimeSpentKJ in all surges, mostWPrimeSpentKJ in one,"
                        + " lowestWPrimeShare what was left after the worst, secondsToRecover until nine tenths were"
                        + " back, drainedCount how many left less than a quarter, those of the last sixth apart."
                        + " highestMeanW is the mean of the hardest, longestSeconds the length of the longest surge. The"
                        + " cap is the power from which an effort is a surge." + CAP;
            case FADE ->
                "earlyPowerW and latePowerW are means of the second and the last sixth of moving time over the grades"
                        + " that both have, each grade band weighted by the seconds that both have of it; lossPercent is"
                        + " the difference over the first. slopePercentPerHour is the median slope of all pairs of"
                        + " comparedBlocks ten-minute blocks. It begins with the first block from which on the median"
                        + " has lost half of the loss. The cap is the target." + CAP;
            case ENERGY_CRASH ->
                "lossPercent is the power of the stretch against that from minute 20 to half of the ride, grade band by"
                        + " grade band; predictedHeartRateBpm is the last third by the line of heart rate on lagged"
                        + " power of the first half, actualHeartRateBpm what it was, heartRateOverPredictedPercent the"
                        + " difference. hoursBefore, workBeforeKJ and temperatureC are what preceded it.";
            case DRIFT ->
                "A line of heart rate on power, lagged by 60 s, is fitted from minute 20 to half of the ride"
                        + " (bpmPer100W is its slope). predictedHeartRateBpm is its mean over the seconds of the last"
                        + " third above 0.4 times threshold, actualHeartRateBpm the mean that was recorded,"
                        + " heartRateOverPredictedPercent the difference over the prediction.";
            case STOPPED_TIME ->
                "A stop is a stretch between two moving seconds in which nothing moved for more than longerThanSeconds;"
                        + " totalMinutes is their sum.";
            case UNDER_PACED ->
                "normalizedPowerW of all that was judged, over targetW, is shareOfTargetPercent. The cap is the target."
                        + CAP;
            case LATE_RESERVE ->
                "lastSixthNormalizedPowerW is of the last sixth of moving time, restNormalizedPowerW of all before it,"
                        + " gainPercent the difference over the latter.";
            case SPUN_OUT ->
                "totalSeconds in the top gear at over 100 rpm; secondsWithOtherChainring is the same count with"
                        + " otherChainringTeeth instead.";
            case OVER_GEARED ->
                "totalSeconds in the lowest gear at under 60 rpm on a climb; secondsWithOtherChainring is the same count"
                        + " with otherChainringTeeth instead.";
        };
    }
}
