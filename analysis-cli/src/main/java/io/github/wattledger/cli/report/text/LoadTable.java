package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.LoadWords;
import io.github.wattledger.cli.report.words.TemperatureWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Ride;
import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The load in rows, ours beside what the device stored. */
final class LoadTable {
    private static final int LABEL = 28;
    private static final int VALUE = 12;

    private LoadTable() {}

    /**
     * Writes the table under its heading. All numbers of a channel that the file lacks share one row.
     *
     * @param load our numbers
     * @param part the part of the recording that they are of
     * @param ride the whole recording
     * @param device what the device stored for it
     * @param isThresholdKnown whether there is a threshold power
     * @param units in which it is shown
     */
    static void write(
            Page page,
            RideLoad load,
            Ride part,
            Ride ride,
            @Nullable DeviceTotals device,
            boolean isThresholdKnown,
            Units units) {
        page.heading("LOAD");
        if (device != null) {
            boolean isWhole = load.elapsedSeconds() == ride.seconds();
            page.row("  " + Page.padRight("", LABEL) + Page.padLeft("here", VALUE) + Page.padLeft("device", VALUE)
                    + (isWhole ? "" : "  (device: the whole session)"));
        }
        Set<Channel> said = EnumSet.noneOf(Channel.class);
        for (LoadWords words : LoadWords.of(load, ride, device, isThresholdKnown)) {
            Channel missing = words.missing();
            if (missing == null || words.device() != null) {
                row(page, words, units);
            } else if (said.add(missing)) {
                page.labelled(missing.label(), LABEL, words.otherwise());
            }
        }
        for (TemperatureWords words : TemperatureWords.of(part, units)) {
            page.row("  " + Page.padRight(words.label(), LABEL) + Page.padLeft(words.value(), VALUE));
        }
    }

    /** A row in columns; where neither we nor the device have a number, the reason. */
    private static void row(Page page, LoadWords words, Units units) {
        Double ours = words.here();
        Double theirs = words.device();
        String label = words.label();
        if (ours == null && theirs == null) {
            page.labelled(label, LABEL, words.otherwise());
            return;
        }
        String here = ours == null ? "not computed" : words.inUnits(ours, units);
        String beside = theirs == null ? "" : words.inUnits(theirs, units);
        page.row("  " + Page.padRight(label, LABEL) + Page.padLeft(here, VALUE) + Page.padLeft(beside, VALUE));
    }
}
