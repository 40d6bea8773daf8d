package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/** The load of a ride, number by number, ours beside what the device stored. */
public final class Facts {
    /**
     * A number.
     *
     * @param label what it is
     * @param here ours
     * @param device the device's, or null where it stored none
     */
    public record Fact(String label, Num here, @Nullable Num device) {}

    private final RideReview review;
    private final List<Fact> facts = new ArrayList<>();

    private Facts(RideReview review) {
        this.review = review;
    }

    static List<Fact> of(RideReview review) {
        Facts facts = new Facts(review);
        facts.collect();
        return facts.facts;
    }

    private void collect() {
        RideLoad load = review.load();
        DeviceTotals device = review.deviceTotals();
        DeviceTotals totals = device == null ? DeviceTotals.NONE : device;
        String noDistance = missing(Channel.DISTANCE);
        String noPower = missing(Channel.POWER);
        String noHeart = missing(Channel.HEART_RATE);
        String noThreshold = review.rider().thresholdPowerW() == null ? "threshold power is not known" : "not computed";
        String relative = review.ride().has(Channel.POWER) ? noThreshold : noPower;
        DoubleFunction<String> kilometres = metres -> Figures.kilometres(metres) + " km";
        DoubleFunction<String> speed = mps -> Figures.decimal(mps * 3.6, 1) + " km/h";
        DoubleFunction<String> hundredths = value -> Figures.decimal(value, 2);
        add("Distance", "distanceM", load.distanceM(), totals.distanceM(), kilometres, noDistance);
        add("Ascent", "ascentM", load.ascentM(), totals.ascentM(), unit(0, " m"), missing(Channel.ALTITUDE));
        add(
                "Elapsed time",
                "elapsedSeconds",
                (double) load.elapsedSeconds(),
                totals.elapsedSeconds(),
                Figures::clock,
                "");
        add("Timer time", "timerSeconds", (double) load.timerSeconds(), totals.timerSeconds(), Figures::clock, "");
        add("Moving time", "movingSeconds", (double) load.movingSeconds(), totals.movingSeconds(), Figures::clock, "");
        add(
                "Average speed, moving",
                "averageSpeedMps",
                load.averageSpeedMps(),
                totals.averageSpeedMps(),
                speed,
                noDistance);
        add("Work", "workKJ", load.workKJ(), totals.workKJ(), unit(0, " kJ"), noPower);
        add("Average power", "averagePowerW", load.averagePowerW(), totals.averagePowerW(), Figures::watts, noPower);
        add(
                "Normalized power",
                "normalizedPowerW",
                load.normalizedPowerW(),
                totals.normalizedPowerW(),
                Figures::watts,
                noPower);
        add("Variability index", "variabilityIndex", load.variabilityIndex(), null, hundredths, noPower);
        add(
                "Intensity factor",
                "intensityFactor",
                load.intensityFactor(),
                totals.intensityFactor(),
                hundredths,
                relative);
        add("Training stress", "trainingStress", load.trainingStress(), totals.trainingStress(), unit(0, ""), relative);
        add(
                "Average heart rate",
                "averageHeartRateBpm",
                load.averageHeartRateBpm(),
                totals.averageHeartRateBpm(),
                Figures::beats,
                noHeart);
        add(
                "Highest heart rate",
                "maximumHeartRateBpm",
                load.maximumHeartRateBpm(),
                totals.maximumHeartRateBpm(),
                Figures::beats,
                noHeart);
        add(
                "Efficiency",
                "efficiencyWPerBeat",
                load.efficiencyWPerBeat(),
                null,
                unit(2, " W a beat"),
                "it needs power and heart rate");
        add(
                "Decoupling",
                "decouplingPercent",
                load.decouplingPercent(),
                null,
                unit(1, " %"),
                "it needs power and heart rate for longer");
        add(
                "Cadence, pedalling",
                "averageCadenceRpm",
                load.averageCadenceRpm(),
                totals.averageCadenceRpm(),
                unit(0, " rpm"),
                missing(Channel.CADENCE));
    }

    private static DoubleFunction<String> unit(int decimals, String unit) {
        return value -> Figures.decimal(value, decimals) + unit;
    }

    private void add(
            String label,
            String name,
            @Nullable Double here,
            @Nullable Double device,
            DoubleFunction<String> words,
            String otherwise) {
        facts.add(new Fact(
                label,
                Num.of("load." + name, here, words, otherwise),
                device == null ? null : Num.of("deviceTotals." + name, device, words)));
    }

    private String missing(Channel channel) {
        return review.ride().has(channel) ? "not computed" : "no " + channel.label() + " in this file";
    }
}
