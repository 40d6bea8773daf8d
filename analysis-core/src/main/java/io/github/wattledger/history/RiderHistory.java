package io.github.wattledger.history;

import io.github.wattledger.power.HeartLine;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.TrialCriticalPower;
import io.github.wattledger.ride.Outcome;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What a rider's own rides before a day say on that day. Nothing of the day itself and of later days is in it.
 *
 * @param day the day
 * @param rides how many rides of the year before the day it rests on
 * @param threshold threshold power by efforts of the last 90 days, or null when no ride has 20 minutes of riding
 * @param endurance what the long rides of the last year say about power for hours, or why they say nothing
 * @param criticalPower critical power and W′ by named trials, or why there is none
 * @param criticalPowerAtLeastW what critical power is at least by the efforts of the last 90 days, watts, within about 5 %; or
 *     null
 * @param heartLines heart rate on power of the last eight rides of an hour and more within 60 days, the latest first
 * @param dragAreaM2 drag area as the rides show it, square metres, or why they do not. Drag in a bunch is lower: for riding
 *     alone the upper quartile is nearer
 * @param rollingResistance coefficient of rolling resistance as the rides show it, or why they do not
 * @param stoppedShare share of the elapsed time in which the rider stood, in rides of two hours and more, or why it is not said
 */
public record RiderHistory(
        LocalDate day,
        int rides,
        @Nullable OwnThreshold threshold,
        Outcome<OwnEndurance> endurance,
        Outcome<TrialCriticalPower> criticalPower,
        @Nullable Double criticalPowerAtLeastW,
        List<HeartLine> heartLines,
        Outcome<Spread> dragAreaM2,
        Outcome<Spread> rollingResistance,
        Outcome<Spread> stoppedShare)
        implements Serializable {
    /** Copies the list. */
    public RiderHistory {
        heartLines = List.copyOf(heartLines);
    }

    /** Threshold power by own efforts, watts, or null. */
    public @Nullable Double thresholdPowerW() {
        return threshold == null ? null : (Double) threshold.watts();
    }

    /**
     * The heart rate that goes with a power.
     *
     * @param watts the power
     * @return refused when fewer than three of the last rides have this power within those on which their line was fitted
     */
    public Outcome<HeartRateOnPower> heartRateAt(double watts) {
        return HeartRateOnPower.of(
                watts,
                heartLines.stream()
                        .map(line -> line.bpmAt(watts))
                        .filter(OptionalDouble::isPresent)
                        .mapToDouble(OptionalDouble::getAsDouble)
                        .toArray());
    }
}
