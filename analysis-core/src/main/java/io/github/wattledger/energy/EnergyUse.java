package io.github.wattledger.energy;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The energy and the carbohydrate that a ride used, from its power and the rider's threshold.
 *
 * <p>Energy is mechanical work over gross efficiency. Carbohydrate is what of that energy was not fat, and fat depends on
 * how near to threshold the rider was, hour by hour. The rule comes from trained riders who had not eaten; a rider who
 * runs low shifts to fat, which no recording of power shows. {@code docs/methods.md} names the sources.
 *
 * @param workKJ mechanical work of the ridden seconds, kJ
 * @param energyKJ energy used for it, kJ
 * @param carbohydrateG carbohydrate used, grams
 * @param ridingSeconds the seconds that were ridden
 * @param hours hour by hour of the clock, from the first second on
 */
public record EnergyUse(
        double workKJ, Estimate energyKJ, Estimate carbohydrateG, int ridingSeconds, List<EnergyHour> hours)
        implements Serializable {
    private static final int SECONDS_PER_HOUR = 3600;
    private static final double SECONDS_PER_MINUTE = 60;

    /** The share of the ridden seconds of an hour that must carry power: the others are taken to be like them. */
    private static final double LEAST_MEASURED_SHARE = 0.9;

    /** @throws IllegalArgumentException when the work is below 0 or the seconds are not above 0 */
    public EnergyUse {
        if (!(workKJ >= 0) || ridingSeconds <= 0) {
            throw new IllegalArgumentException(
                    "workKJ " + workKJ + ", ridingSeconds " + ridingSeconds + ", expected 0 or more, and above 0");
        }
        hours = List.copyOf(hours);
    }

    /**
     * Energy used in one-second power, every second of it ridden.
     *
     * @param watts one-second power, watts, 0 or more; {@code NaN} is "not measured"
     * @param thresholdPowerW threshold power, watts, above 0
     * @return empty when an hour carries power in fewer than nine in ten of its seconds, or there are none
     * @throws IllegalArgumentException when a reading is below 0 or infinite, or the threshold is not above 0
     */
    public static Optional<EnergyUse> of(double[] watts, double thresholdPowerW) {
        return of(Series.of(watts), thresholdPowerW);
    }

    /** {@link #of(double[], double)} for a series. */
    public static Optional<EnergyUse> of(Series watts, double thresholdPowerW) {
        return of(Ride.ofWatts(watts.requireReadings("watts")), thresholdPowerW);
    }

    /**
     * Energy used in the ridden seconds of a ride; energy used at rest is not counted.
     *
     * @param thresholdPowerW threshold power, watts, above 0
     * @return empty when a ridden hour carries power in fewer than nine in ten of its ridden seconds, or nothing was ridden
     * @throws IllegalArgumentException when the threshold is not above 0
     */
    public static Optional<EnergyUse> of(Ride ride, double thresholdPowerW) {
        if (!(thresholdPowerW > 0)) {
            throw new IllegalArgumentException("thresholdPowerW " + thresholdPowerW + ", expected above 0");
        }
        List<EnergyHour> hours = hours(ride, thresholdPowerW);
        List<EnergyHour> ridden =
                hours.stream().filter(hour -> hour.ridingSeconds() > 0).toList();
        if (ridden.isEmpty() || ridden.stream().anyMatch(hour -> hour.meanPowerW() == null)) {
            return Optional.empty();
        }
        double workKJ = 0;
        int ridingSeconds = 0;
        for (EnergyHour hour : ridden) {
            workKJ += meanPowerW(hour) * hour.ridingSeconds() / 1000;
            ridingSeconds += hour.ridingSeconds();
        }
        // One body rides all the hours, so the ends of an assumption hold in all of them at once.
        Estimate carbohydrateG = FuelModel.estimate(model -> ridden.stream()
                .mapToDouble(hour -> carbohydrateG(model, meanPowerW(hour), hour.ridingSeconds(), thresholdPowerW))
                .sum());
        return Optional.of(new EnergyUse(workKJ, FuelModel.energyKJ(workKJ), carbohydrateG, ridingSeconds, hours));
    }

    /** Carbohydrate used, grams an hour of riding, as a mean over the ride. */
    public Estimate carbohydrateGPerHour() {
        return carbohydrateG.times((double) SECONDS_PER_HOUR / ridingSeconds);
    }

    /**
     * Carbohydrate used at a steady power, grams an hour.
     *
     * @param powerW mean power, watts, 0 or more
     * @param thresholdPowerW threshold power, watts, above 0
     * @throws IllegalArgumentException when an argument is out of range
     */
    public static Estimate carbohydrateGPerHour(double powerW, double thresholdPowerW) {
        if (!(powerW >= 0) || Double.isInfinite(powerW)) {
            throw new IllegalArgumentException("powerW " + powerW + ", expected 0 or more");
        }
        if (!(thresholdPowerW > 0)) {
            throw new IllegalArgumentException("thresholdPowerW " + thresholdPowerW + ", expected above 0");
        }
        return FuelModel.estimate(model -> carbohydrateG(model, powerW, SECONDS_PER_HOUR, thresholdPowerW));
    }

    /** The same use, its hours counted from a second that lies so many seconds before the first one. */
    EnergyUse later(int seconds) {
        List<EnergyHour> moved = hours.stream()
                .map(hour -> new EnergyHour(
                        new Interval(
                                hour.stretch().fromSecond() + seconds,
                                hour.stretch().toSecond() + seconds),
                        hour.ridingSeconds(),
                        hour.meanPowerW(),
                        hour.carbohydrateG()))
                .toList();
        return new EnergyUse(workKJ, energyKJ, carbohydrateG, ridingSeconds, moved);
    }

    private static List<EnergyHour> hours(Ride ride, double thresholdPowerW) {
        List<EnergyHour> hours = new ArrayList<>();
        for (int from = 0; from < ride.seconds(); from += SECONDS_PER_HOUR) {
            hours.add(
                    hour(ride, new Interval(from, Math.min(from + SECONDS_PER_HOUR, ride.seconds())), thresholdPowerW));
        }
        return hours;
    }

    private static EnergyHour hour(Ride ride, Interval stretch, double thresholdPowerW) {
        int ridingSeconds = ride.countSeconds(SecondState.RIDING, stretch);
        OptionalDouble mean = ride.meanWhileRiding(Channel.POWER, stretch);
        if (mean.isEmpty() || measuredSeconds(ride, stretch) < LEAST_MEASURED_SHARE * ridingSeconds) {
            return new EnergyHour(stretch, ridingSeconds, null, null);
        }
        double meanPowerW = mean.getAsDouble();
        return new EnergyHour(
                stretch,
                ridingSeconds,
                meanPowerW,
                FuelModel.estimate(model -> carbohydrateG(model, meanPowerW, ridingSeconds, thresholdPowerW)));
    }

    private static int measuredSeconds(Ride ride, Interval stretch) {
        Series watts = ride.series(Channel.POWER);
        int count = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            if (ride.state(second) == SecondState.RIDING && watts.isMeasured(second)) {
                count++;
            }
        }
        return count;
    }

    private static double carbohydrateG(FuelModel model, double meanPowerW, int ridingSeconds, double thresholdPowerW) {
        return model.carbohydrateGPerMinute(meanPowerW, thresholdPowerW) * ridingSeconds / SECONDS_PER_MINUTE;
    }

    private static double meanPowerW(EnergyHour hour) {
        Double mean = hour.meanPowerW();
        return mean == null ? Double.NaN : mean;
    }
}
