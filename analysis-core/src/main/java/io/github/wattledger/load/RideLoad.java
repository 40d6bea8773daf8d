package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.ZoneScheme;
import java.io.Serializable;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The load of one ride. A number that the ride's channels cannot give is null, never 0.
 *
 * @param elapsedSeconds seconds from the first second to the last, pauses included
 * @param timerSeconds seconds in which the timer ran
 * @param movingSeconds recorded seconds under way
 * @param stoppedSeconds recorded seconds standing still with the timer running
 * @param distanceM distance covered, metres
 * @param ascentM sum of the ascents, metres ({@link Ascent})
 * @param workKJ work done, kilojoules ({@link Work})
 * @param averagePowerW mean power over the seconds that have power, coasting included, watts
 * @param normalizedPowerW normalized power, watts ({@link NormalizedPower})
 * @param intensityFactor normalized power over threshold power
 * @param trainingStress training stress ({@link TrainingStress}); an hour at threshold is 100
 * @param normalizedOverAverage normalized power over average power
 * @param averageHeartRateBpm mean heart rate over the timer seconds that have it, beats per minute
 * @param maximumHeartRateBpm highest heart rate, beats per minute
 * @param averageCadenceRpm mean cadence while pedalling (cadence above 0), revolutions per minute
 * @param averageSpeedMps distance over moving time, metres per second
 * @param wattsPerBeat normalized power over mean heart rate, watts per beat per minute ({@link WattsPerBeat})
 * @param decouplingPercent aerobic decoupling, percent ({@link Decoupling})
 * @param powerZones time by power zone, empty without power or threshold
 * @param heartRateZones time by heart-rate zone, empty without heart rate or threshold
 */
public record RideLoad(
        int elapsedSeconds,
        int timerSeconds,
        int movingSeconds,
        int stoppedSeconds,
        @Nullable Double distanceM,
        @Nullable Double ascentM,
        @Nullable Double workKJ,
        @Nullable Double averagePowerW,
        @Nullable Double normalizedPowerW,
        @Nullable Double intensityFactor,
        @Nullable Double trainingStress,
        @Nullable Double normalizedOverAverage,
        @Nullable Double averageHeartRateBpm,
        @Nullable Double maximumHeartRateBpm,
        @Nullable Double averageCadenceRpm,
        @Nullable Double averageSpeedMps,
        @Nullable Double wattsPerBeat,
        @Nullable Double decouplingPercent,
        List<ZoneTime> powerZones,
        List<ZoneTime> heartRateZones)
        implements Serializable {
    /** Copies the lists. */
    public RideLoad {
        powerZones = List.copyOf(powerZones);
        heartRateZones = List.copyOf(heartRateZones);
    }

    /**
     * The load of a ride. What was recorded while the timer stood (paused seconds) counts in no number but the elapsed
     * time; a missing second counts in timer time alone.
     *
     * <p>Distance is the last measured reading less the first; without any, speed summed over the timer seconds. A
     * distance counter that ends below its start gives none.
     *
     * @param thresholdPowerW threshold power, watts, above 0, or null when it is not known
     * @param thresholdHeartRateBpm threshold heart rate, beats per minute, above 0, or null when it is not known
     * @param powerZones how power is divided
     * @param heartRateZones how heart rate is divided
     * @throws IllegalArgumentException when a threshold is out of range
     */
    public static RideLoad of(
            Ride ride,
            @Nullable Double thresholdPowerW,
            @Nullable Double thresholdHeartRateBpm,
            ZoneScheme powerZones,
            ZoneScheme heartRateZones) {
        requireAboveZero("thresholdPowerW", thresholdPowerW);
        requireAboveZero("thresholdHeartRateBpm", thresholdHeartRateBpm);
        Series power = ride.timerSeries(Channel.POWER);
        Series heartRate = ride.timerSeries(Channel.HEART_RATE);

        int movingSeconds = ride.countSeconds(SecondState.RIDING);
        @Nullable Double distanceM = distanceM(ride);
        int poweredSeconds = power.measuredCount();
        double joules = CompensatedSum.ofMeasured(power);
        @Nullable Double workKJ = poweredSeconds == 0 ? null : joules / Work.JOULES_PER_KILOJOULE;
        @Nullable Double averagePowerW = poweredSeconds == 0 ? null : joules / poweredSeconds;
        @Nullable Double normalizedPowerW = boxed(NormalizedPower.of(power));
        @Nullable Double averageHeartRateBpm = boxed(CompensatedSum.meanOfMeasured(heartRate));
        @Nullable Double intensityFactor = null;
        @Nullable Double trainingStress = null;
        if (normalizedPowerW != null && thresholdPowerW != null) {
            intensityFactor = TrainingStress.intensityFactor(normalizedPowerW, thresholdPowerW);
            trainingStress = TrainingStress.of(poweredSeconds, normalizedPowerW, thresholdPowerW);
        }
        return new RideLoad(
                ride.seconds(),
                TimerSeconds.count(ride),
                movingSeconds,
                ride.countSeconds(SecondState.STOPPED),
                distanceM,
                boxed(Ascent.metres(ride.timerSeries(Channel.ALTITUDE))),
                workKJ,
                averagePowerW,
                normalizedPowerW,
                intensityFactor,
                trainingStress,
                ratio(normalizedPowerW, averagePowerW),
                averageHeartRateBpm,
                boxed(heartRate.maximum()),
                boxed(meanAboveZero(ride.timerSeries(Channel.CADENCE))),
                ratio(distanceM, (double) movingSeconds),
                ratio(normalizedPowerW, averageHeartRateBpm),
                boxed(Decoupling.of(ride, power, heartRate)),
                zones(power, thresholdPowerW, powerZones),
                zones(heartRate, thresholdHeartRateBpm, heartRateZones));
    }

    private static @Nullable Double distanceM(Ride ride) {
        Series distance = ride.series(Channel.DISTANCE);
        if (distance.hasAny()) {
            int first = 0;
            while (!distance.isMeasured(first)) {
                first++;
            }
            int last = distance.size() - 1;
            while (!distance.isMeasured(last)) {
                last--;
            }
            double covered = distance.get(last) - distance.get(first);
            return last > first && covered >= 0 ? covered : null;
        }
        Series speed = ride.timerSeries(Channel.SPEED);
        return speed.hasAny() ? CompensatedSum.ofMeasured(speed) : null;
    }

    private static OptionalDouble meanAboveZero(Series series) {
        CompensatedSum sum = new CompensatedSum();
        int count = 0;
        for (int second = 0; second < series.size(); second++) {
            double value = series.get(second);
            if (value > 0) {
                sum.add(value);
                count++;
            }
        }
        return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum.value() / count);
    }

    private static List<ZoneTime> zones(Series readings, @Nullable Double threshold, ZoneScheme scheme) {
        return threshold == null || !readings.hasAny() ? List.of() : TimeInZones.of(readings, threshold, scheme);
    }

    private static @Nullable Double ratio(@Nullable Double dividend, @Nullable Double divisor) {
        return dividend == null || divisor == null || divisor == 0 ? null : dividend / divisor;
    }

    private static @Nullable Double boxed(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    private static void requireAboveZero(String name, @Nullable Double value) {
        if (value != null) {
            Bounds.requireAboveZero(name, value);
        }
    }
}
