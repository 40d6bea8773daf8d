package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Ride;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The load in rows, ours beside what the device stored. */
final class LoadTable {
    private static final int LABEL = 28;
    private static final int VALUE = 12;

    private final RideLoad load;
    private final Ride ride;
    private final @Nullable DeviceTotals device;
    private final boolean thresholdKnown;

    /**
     * A table.
     *
     * @param load our numbers
     * @param ride the whole recording
     * @param device what the device stored for it
     * @param thresholdKnown whether there is a threshold power
     */
    LoadTable(RideLoad load, Ride ride, @Nullable DeviceTotals device, boolean thresholdKnown) {
        this.load = load;
        this.ride = ride;
        this.device = device;
        this.thresholdKnown = thresholdKnown;
    }

    void write(Page page) {
        page.heading("LOAD");
        if (device != null) {
            boolean whole = load.elapsedSeconds() == ride.seconds();
            page.row("  " + Page.padRight("", LABEL) + Page.padLeft("here", VALUE)
                    + Page.padLeft("device", VALUE)
                    + (whole ? "" : "  (device: the whole session)"));
        }
        time(page);
        road(page);
        power(page);
        heartRate(page);
        cadence(page);
    }

    private void time(Page page) {
        String reason = "not computed";
        row(page, "elapsed time", (double) load.elapsedSeconds(), reason, DeviceTotals::elapsedSeconds, Figures::clock);
        row(page, "timer time", (double) load.timerSeconds(), reason, DeviceTotals::timerSeconds, Figures::clock);
        row(page, "moving time", (double) load.movingSeconds(), reason, DeviceTotals::movingSeconds, Figures::clock);
    }

    private void road(Page page) {
        String reason = missing(Channel.DISTANCE);
        row(page, "distance", load.distanceM(), reason, DeviceTotals::distanceM, m -> Figures.kilometres(m) + " km");
        row(
                page,
                "average speed, moving",
                load.averageSpeedMps(),
                reason,
                DeviceTotals::averageSpeedMps,
                mps -> Figures.decimal(mps * 3.6, 1) + " km/h");
        row(
                page,
                "ascent",
                load.ascentM(),
                missing(Channel.ALTITUDE),
                DeviceTotals::ascentM,
                m -> Figures.decimal(m, 0) + " m");
    }

    private void power(Page page) {
        if (!ride.has(Channel.POWER)) {
            page.labelled("power and work", LABEL, missing(Channel.POWER));
            return;
        }
        String reason = "not computed";
        row(page, "work", load.workKJ(), reason, DeviceTotals::workKJ, kj -> Figures.decimal(kj, 0) + " kJ");
        row(page, "average power", load.averagePowerW(), reason, DeviceTotals::averagePowerW, Figures::watts);
        row(page, "normalized power", load.normalizedPowerW(), reason, DeviceTotals::normalizedPowerW, Figures::watts);
        row(page, "variability index", load.variabilityIndex(), reason, totals -> null, LoadTable::hundredths);
        String relative = thresholdKnown ? reason : "threshold power is not known";
        row(
                page,
                "intensity factor",
                load.intensityFactor(),
                relative,
                DeviceTotals::intensityFactor,
                LoadTable::hundredths);
        row(
                page,
                "training stress",
                load.trainingStress(),
                relative,
                DeviceTotals::trainingStress,
                stress -> Figures.decimal(stress, 0));
    }

    private void heartRate(Page page) {
        if (!ride.has(Channel.HEART_RATE)) {
            page.labelled("heart rate", LABEL, missing(Channel.HEART_RATE));
            return;
        }
        String reason = "not computed";
        row(
                page,
                "average heart rate",
                load.averageHeartRateBpm(),
                reason,
                DeviceTotals::averageHeartRateBpm,
                Figures::beats);
        row(
                page,
                "highest heart rate",
                load.maximumHeartRateBpm(),
                reason,
                DeviceTotals::maximumHeartRateBpm,
                Figures::beats);
        String both = ride.has(Channel.POWER) ? reason : missing(Channel.POWER);
        row(page, "efficiency", load.efficiencyWPerBeat(), both, totals -> null, w -> Figures.decimal(w, 2) + " W/bpm");
        row(page, "decoupling", load.decouplingPercent(), both, totals -> null, p -> Figures.decimal(p, 1) + " %");
    }

    private void cadence(Page page) {
        if (!ride.has(Channel.CADENCE)) {
            page.labelled("cadence", LABEL, missing(Channel.CADENCE));
            return;
        }
        row(
                page,
                "average cadence, pedalling",
                load.averageCadenceRpm(),
                "not computed",
                DeviceTotals::averageCadenceRpm,
                rpm -> Figures.decimal(rpm, 0) + " rpm");
    }

    /** A row in columns; where neither we nor the device have a number, the reason. */
    private void row(
            Page page,
            String label,
            @Nullable Double ours,
            String reason,
            Function<DeviceTotals, @Nullable Double> stored,
            DoubleFunction<String> words) {
        Double theirs = device == null ? null : stored.apply(device);
        if (ours == null && theirs == null) {
            page.labelled(label, LABEL, reason);
            return;
        }
        String here = ours == null ? "not computed" : words.apply(ours);
        String beside = theirs == null ? "" : words.apply(theirs);
        page.row("  " + Page.padRight(label, LABEL) + Page.padLeft(here, VALUE) + Page.padLeft(beside, VALUE));
    }

    private String missing(Channel channel) {
        return ride.has(channel) ? "not computed" : "no " + channel.label() + " in this file";
    }

    private static String hundredths(double value) {
        return Figures.decimal(value, 2);
    }
}
