package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of a ride's load, each declared once: how it is called, what it measures, and where its value stands.
 * Reports, tables and the store of a season iterate over them, in this order.
 */
@SuppressWarnings(
        "ImmutableEnumChecker") // Functions without state and an unmodifiable list, which it does not recognize.
public enum LoadNumber {
    ELAPSED_SECONDS(
            "elapsedSeconds",
            "elapsed time",
            Quantity.TIME,
            load -> (double) load.elapsedSeconds(),
            DeviceTotals::elapsedSeconds),
    TIMER_SECONDS(
            "timerSeconds",
            "timer time",
            Quantity.TIME,
            load -> (double) load.timerSeconds(),
            DeviceTotals::timerSeconds),
    MOVING_SECONDS(
            "movingSeconds",
            "moving time",
            Quantity.TIME,
            load -> (double) load.movingSeconds(),
            DeviceTotals::movingSeconds),
    STOPPED_SECONDS(
            "stoppedSeconds",
            "stopped time",
            Quantity.TIME,
            load -> (double) load.stoppedSeconds(),
            LoadNumber::keptByNoDevice),
    DISTANCE(
            "distanceM", "distance", Quantity.DISTANCE, RideLoad::distanceM, DeviceTotals::distanceM, Channel.DISTANCE),
    ASCENT("ascentM", "ascent", Quantity.HEIGHT, RideLoad::ascentM, DeviceTotals::ascentM, Channel.ALTITUDE),
    WORK("workKJ", "work", Quantity.WORK, RideLoad::workKJ, DeviceTotals::workKJ, Channel.POWER),
    AVERAGE_POWER(
            "averagePowerW",
            "average power",
            Quantity.POWER,
            RideLoad::averagePowerW,
            DeviceTotals::averagePowerW,
            Channel.POWER),
    NORMALIZED_POWER(
            "normalizedPowerW",
            "normalized power",
            Quantity.POWER,
            RideLoad::normalizedPowerW,
            DeviceTotals::normalizedPowerW,
            Channel.POWER),
    INTENSITY_FACTOR(
            "intensityFactor",
            "intensity factor",
            Quantity.RATIO,
            RideLoad::intensityFactor,
            DeviceTotals::intensityFactor,
            Channel.POWER),
    TRAINING_STRESS(
            "trainingStress",
            "training stress",
            Quantity.STRESS,
            RideLoad::trainingStress,
            DeviceTotals::trainingStress,
            Channel.POWER),
    NORMALIZED_OVER_AVERAGE(
            "normalizedOverAverage",
            "normalized over average",
            Quantity.RATIO,
            RideLoad::normalizedOverAverage,
            LoadNumber::keptByNoDevice,
            Channel.POWER),
    AVERAGE_HEART_RATE(
            "averageHeartRateBpm",
            "average heart rate",
            Quantity.HEART_RATE,
            RideLoad::averageHeartRateBpm,
            DeviceTotals::averageHeartRateBpm,
            Channel.HEART_RATE),
    MAXIMUM_HEART_RATE(
            "maximumHeartRateBpm",
            "highest heart rate",
            Quantity.HEART_RATE,
            RideLoad::maximumHeartRateBpm,
            DeviceTotals::maximumHeartRateBpm,
            Channel.HEART_RATE),
    AVERAGE_CADENCE(
            "averageCadenceRpm",
            "average cadence, pedalling",
            Quantity.CADENCE,
            RideLoad::averageCadenceRpm,
            DeviceTotals::averageCadenceRpm,
            Channel.CADENCE),
    AVERAGE_SPEED(
            "averageSpeedMps",
            "average speed, moving",
            Quantity.SPEED,
            RideLoad::averageSpeedMps,
            DeviceTotals::averageSpeedMps,
            Channel.DISTANCE),
    WATTS_PER_BEAT(
            "wattsPerBeat",
            "watts a heartbeat",
            Quantity.WATTS_PER_BEAT,
            RideLoad::wattsPerBeat,
            LoadNumber::keptByNoDevice,
            Channel.HEART_RATE,
            Channel.POWER),
    DECOUPLING(
            "decouplingPercent",
            "decoupling",
            Quantity.PERCENTAGE,
            RideLoad::decouplingPercent,
            LoadNumber::keptByNoDevice,
            Channel.HEART_RATE,
            Channel.POWER);

    /** What a number measures. It decides the unit, and how a report words the number. */
    public enum Quantity {
        TIME("s"),
        DISTANCE("m"),
        HEIGHT("m"),
        SPEED("m/s"),
        WORK("kJ"),
        POWER("W"),
        /** One number divided by another of its kind. */
        RATIO(""),
        /** Training stress: 100 is an hour at threshold. */
        STRESS(""),
        HEART_RATE("bpm"),
        CADENCE("rpm"),
        /** Watts for each beat of the heart in a minute. */
        WATTS_PER_BEAT("W a beat"),
        PERCENTAGE("%");

        private final String unit;

        Quantity(String unit) {
            this.unit = unit;
        }

        /** The unit of the values, for instance {@code m/s}; empty for a number without one. */
        public String unit() {
            return unit;
        }
    }

    private final String id;
    private final String label;
    private final Quantity quantity;
    private final Function<RideLoad, @Nullable Double> ofLoad;
    private final Function<DeviceTotals, @Nullable Double> ofDevice;
    private final List<Channel> needs;

    LoadNumber(
            String id,
            String label,
            Quantity quantity,
            Function<RideLoad, @Nullable Double> ofLoad,
            Function<DeviceTotals, @Nullable Double> ofDevice,
            Channel... needs) {
        this.id = id;
        this.label = label;
        this.quantity = quantity;
        this.ofLoad = ofLoad;
        this.ofDevice = ofDevice;
        this.needs = List.of(needs);
    }

    private static @Nullable Double keptByNoDevice(DeviceTotals totals) {
        return null;
    }

    /** Its name for programs, with the unit at the end: in the JSON reports and as the head of a table's column. */
    public String id() {
        return id;
    }

    /** What people call it, in lower case, without a unit. */
    public String label() {
        return label;
    }

    /** What it measures. */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * The channels that a recording must have for it, the one that matters most first; empty for times. Distance and
     * speed can also come from the channel of speed alone.
     */
    public List<Channel> needs() {
        return needs;
    }

    /** Whether it also needs the rider's threshold power. */
    public boolean needsThresholdPower() {
        return this == INTENSITY_FACTOR || this == TRAINING_STRESS;
    }

    /** Its value in a ride's load, in the unit of its quantity; null where the ride cannot give it. */
    public @Nullable Double of(RideLoad load) {
        return ofLoad.apply(load);
    }

    /** What the recording device stored for it, in the unit of its quantity; null where it stored nothing. */
    public @Nullable Double of(DeviceTotals totals) {
        return ofDevice.apply(totals);
    }
}
