package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.Wording;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Ride;
import org.jspecify.annotations.Nullable;

/** The load in rows, ours beside what the device stored. */
final class LoadTable {
    private static final int LABEL = 28;
    private static final int VALUE = 12;

    private final RideLoad load;
    private final Ride ride;
    private final boolean hasDevice;
    private final DeviceTotals device;
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
        this.hasDevice = device != null;
        this.device = device == null ? DeviceTotals.NONE : device;
        this.thresholdKnown = thresholdKnown;
    }

    void write(Page page) {
        page.heading("LOAD");
        if (hasDevice) {
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
        row(page, "elapsed time", (double) load.elapsedSeconds(), reason, device.elapsedSeconds(), Wording.CLOCK);
        row(page, "timer time", (double) load.timerSeconds(), reason, device.timerSeconds(), Wording.CLOCK);
        row(page, "moving time", (double) load.movingSeconds(), reason, device.movingSeconds(), Wording.CLOCK);
    }

    private void road(Page page) {
        String reason = missing(Channel.DISTANCE);
        row(page, "distance", load.distanceM(), reason, device.distanceM(), Wording.KILOMETRES);
        row(
                page,
                "average speed, moving",
                load.averageSpeedMps(),
                reason,
                device.averageSpeedMps(),
                Wording.KILOMETRES_PER_HOUR);
        row(page, "ascent", load.ascentM(), missing(Channel.ALTITUDE), device.ascentM(), Wording.METRES);
    }

    private void power(Page page) {
        if (!ride.has(Channel.POWER)) {
            page.labelled("power and work", LABEL, missing(Channel.POWER));
            return;
        }
        String reason = "not computed";
        row(page, "work", load.workKJ(), reason, device.workKJ(), Wording.KILOJOULES);
        row(page, "average power", load.averagePowerW(), reason, device.averagePowerW(), Wording.WATTS);
        row(page, "normalized power", load.normalizedPowerW(), reason, device.normalizedPowerW(), Wording.WATTS);
        row(page, "variability index", load.variabilityIndex(), reason, null, Wording.HUNDREDTHS);
        String relative = thresholdKnown ? reason : "threshold power is not known";
        row(page, "intensity factor", load.intensityFactor(), relative, device.intensityFactor(), Wording.HUNDREDTHS);
        row(page, "training stress", load.trainingStress(), relative, device.trainingStress(), Wording.WHOLE);
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
                device.averageHeartRateBpm(),
                Wording.BEATS);
        row(
                page,
                "highest heart rate",
                load.maximumHeartRateBpm(),
                reason,
                device.maximumHeartRateBpm(),
                Wording.BEATS);
        String both = ride.has(Channel.POWER) ? reason : missing(Channel.POWER);
        row(page, "efficiency", load.efficiencyWPerBeat(), both, null, Wording.WATTS_PER_BEAT);
        row(page, "decoupling", load.decouplingPercent(), both, null, Wording.TENTH_OF_PERCENT);
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
                device.averageCadenceRpm(),
                Wording.REVOLUTIONS);
    }

    /** A row in columns; where neither we nor the device have a number, the reason. */
    private static void row(
            Page page, String label, @Nullable Double ours, String reason, @Nullable Double theirs, Wording wording) {
        if (ours == null && theirs == null) {
            page.labelled(label, LABEL, reason);
            return;
        }
        String here = ours == null ? "not computed" : wording.of(ours);
        String beside = theirs == null ? "" : wording.of(theirs);
        page.row("  " + Page.padRight(label, LABEL) + Page.padLeft(here, VALUE) + Page.padLeft(beside, VALUE));
    }

    private String missing(Channel channel) {
        return ride.has(channel) ? "not computed" : "no " + channel.label() + " in this file";
    }
}
