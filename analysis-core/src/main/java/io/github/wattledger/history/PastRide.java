package io.github.wattledger.history;

import io.github.wattledger.power.BestEffort;
import io.github.wattledger.power.ThresholdEstimate;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one earlier ride contributes to the history of its rider.
 *
 * @param day the day of the ride on the rider's own calendar
 * @param name what to call it, for instance its file
 * @param elapsedHours time from its first second to its last, hours
 * @param ridingHours riding time, hours
 * @param normalizedPowerW normalized power of the riding time, watts, or null without power
 * @param bestTwentyMinutesW best mean power over 20 minutes of riding with little standing, watts, or null
 * @param bestHourW best mean power over an hour of riding with little standing, watts, or null
 * @param bests best mean power over some durations, watts, possibly none
 * @param showsLimit whether it was a race in which the rider faded, ran out of energy or drifted
 * @param traits what it shows beside power
 * @param agreed what the rider wrote down after it for the next ride, or null
 */
public record PastRide(
        LocalDate day,
        String name,
        double elapsedHours,
        double ridingHours,
        @Nullable Double normalizedPowerW,
        @Nullable Double bestTwentyMinutesW,
        @Nullable Double bestHourW,
        List<BestEffort> bests,
        boolean showsLimit,
        RideTraits traits,
        @Nullable String agreed)
        implements Serializable {
    /** Copies the list. */
    public PastRide {
        bests = List.copyOf(bests);
    }

    /**
     * A ride of which only length and power are known.
     *
     * @param hours riding time, hours
     * @param watts normalized power, watts
     */
    public static PastRide of(LocalDate day, double hours, double watts) {
        return new PastRide(
                day, day.toString(), hours, hours, watts, null, null, List.of(), false, RideTraits.NONE, null);
    }

    /** The same ride with best efforts over 20 minutes and an hour of riding, watts, each null where there is none. */
    public PastRide withBests(@Nullable Double twentyMinutesW, @Nullable Double hourW) {
        return with(twentyMinutesW, hourW, showsLimit, traits, agreed);
    }

    /** The same ride as a race in which the rider showed to have no more to give. */
    public PastRide showingLimit() {
        return with(bestTwentyMinutesW, bestHourW, true, traits, agreed);
    }

    /** The same ride with other traits. */
    public PastRide withTraits(RideTraits newTraits) {
        return with(bestTwentyMinutesW, bestHourW, showsLimit, newTraits, agreed);
    }

    /** The same ride, after which this was agreed for the next one. */
    public PastRide withAgreed(@Nullable String words) {
        return with(bestTwentyMinutesW, bestHourW, showsLimit, traits, words);
    }

    private PastRide with(
            @Nullable Double twentyMinutesW,
            @Nullable Double hourW,
            boolean newShowsLimit,
            RideTraits newTraits,
            @Nullable String words) {
        return new PastRide(
                day,
                name,
                elapsedHours,
                ridingHours,
                normalizedPowerW,
                twentyMinutesW,
                hourW,
                bests,
                newShowsLimit,
                newTraits,
                words);
    }

    /**
     * The threshold power that the ride implies, watts: the greater of the best hour and 95 % of the best 20 minutes; null
     * without either.
     */
    public @Nullable Double impliedThresholdW() {
        Double ofTwenty = bestTwentyMinutesW == null
                ? null
                : (Double) (ThresholdEstimate.SHARE_OF_TWENTY_MINUTES * bestTwentyMinutesW);
        if (ofTwenty == null || bestHourW == null) {
            return ofTwenty == null ? bestHourW : ofTwenty;
        }
        return (Double) Math.max(ofTwenty, bestHourW);
    }

    /** Share of the elapsed time in which the rider stood, 0 to 1. */
    public double stoppedShare() {
        return elapsedHours > 0 ? 1 - ridingHours / elapsedHours : 0;
    }
}
