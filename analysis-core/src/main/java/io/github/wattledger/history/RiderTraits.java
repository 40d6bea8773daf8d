package io.github.wattledger.history;

import io.github.wattledger.power.HeartLine;
import io.github.wattledger.ride.Outcome;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What a rider's own rides before a day tell beside what the rider can do: heart rate on power, the rig, habits. No judgement
 * rests on it.
 *
 * @param day the day
 * @param criticalPowerAtLeastW what critical power is at least by the efforts of the last 90 days, watts, within about 5 %; or
 *     null
 * @param heartLines heart rate on power of the last eight rides of an hour and more within 60 days, the latest first
 * @param dragAreaM2 drag area as the rides of a year show it, square metres, or why they do not. Drag in a bunch is lower:
 *     for riding alone the upper quartile is nearer
 * @param rollingResistance coefficient of rolling resistance as the rides of a year show it, or why they do not
 * @param stoppedShare share of the elapsed time in which the rider stood, in rides of two hours and more, or why it is not
 *     said
 * @param openingOverTarget normalized power of the opening over the target, in races, or why it is not said
 * @param fadePercent effort lost from early to late on like ground, in races, percent; below 0 where it rose
 * @param descentSpeedMps the speed that the rider seldom exceeded on descents, metres a second, or why it is not said
 */
public record RiderTraits(
        LocalDate day,
        @Nullable Double criticalPowerAtLeastW,
        List<HeartLine> heartLines,
        Outcome<Spread> dragAreaM2,
        Outcome<Spread> rollingResistance,
        Outcome<Spread> stoppedShare,
        Outcome<Spread> openingOverTarget,
        Outcome<Spread> fadePercent,
        Outcome<Spread> descentSpeedMps)
        implements Serializable {
    /** Copies the list. */
    public RiderTraits {
        heartLines = List.copyOf(heartLines);
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
