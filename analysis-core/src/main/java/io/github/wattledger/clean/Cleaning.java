package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * From a recording to a ride of uniform seconds. Nothing is repaired silently: every change is a note with its count.
 * Policies and limits are this project's own unless a source is named; {@code docs/methods.md} gives the reasons.
 */
public final class Cleaning {
    private Cleaning() {}

    /**
     * A cleaned ride.
     *
     * @param ride the ride
     * @param quality how good the recording was, and what was changed in it
     */
    public record Cleaned(Ride ride, QualityReport quality) implements Serializable {}

    /**
     * Cleans a recording. One without samples gives a ride of no seconds. One that says what happened in each second is
     * clean already: its values and states become the ride as they are, since a second cleaning could judge otherwise
     * than the first, which saw more.
     *
     * @param recording what the file says; not changed
     */
    public static Cleaned clean(Recording recording) {
        Notes notes = new Notes();
        List<SecondState> states = recording.states();
        if (states != null && !states.isEmpty()) {
            return asItIs(recording, states, notes);
        }
        int[] kept = SampleOrder.believable(recording.samples(), notes);
        if (kept.length == 0) {
            Ride nothing = Ride.builder(Instant.EPOCH, 0).build();
            return new Cleaned(nothing, new QualityReport(0, 0, 0, PowerSource.NONE, notes.all()));
        }
        SecondTable table = OneSecondAxis.lay(recording.samples(), kept, notes);
        AbsentSensors.remove(table, notes);
        boolean counted = MeterWork.replacePower(table, notes);
        Spikes.repair(table, notes);
        DistanceRepair.repair(table, notes);
        ChannelRepair.repair(table, notes);
        AbsentSensors.removeZeros(table, notes);
        Pauses.mark(table, recording.timerEvents(), notes);
        CoastingWithoutPower.fill(table, notes);
        Gaps.fill(table, notes);
        Movement.complete(table, notes);
        StuckSensors.report(table, notes);
        BeyondCycling.report(table, notes);
        DeviceTotals totals = recording.totals();
        DistanceRepair.compare(table, totals == null ? null : totals.distanceM(), notes);

        int missingPower = noteMissingPower(table, notes);
        PowerSource source =
                !table.has(Channel.POWER) ? PowerSource.NONE : counted ? PowerSource.WORK_COUNTER : PowerSource.SAMPLES;
        QualityReport quality =
                new QualityReport(table.recordedCount(), missingPower, notes.repairedSamples(), source, notes.all());
        return new Cleaned(ride(table, recording.laps()), quality);
    }

    private static Cleaned asItIs(Recording recording, List<SecondState> states, Notes notes) {
        Samples samples = recording.samples();
        SecondTable table = new SecondTable(samples.epochSecond(0), samples.size());
        for (Channel channel : samples.channels()) {
            double[] column = table.columnOrNew(channel);
            for (int row = 0; row < column.length; row++) {
                column[row] = samples.get(channel, row);
            }
        }
        int recorded = 0;
        for (int row = 0; row < states.size(); row++) {
            table.setState(row, states.get(row));
            if (states.get(row) == SecondState.RIDING || states.get(row) == SecondState.STOPPED) {
                recorded++;
            }
        }
        notes.found("cleaned-before", "The file is a ride already cleaned: its values and states stand as they are.");
        int missingPower = noteMissingPower(table, notes);
        PowerSource source = table.has(Channel.POWER) ? PowerSource.SAMPLES : PowerSource.NONE;
        QualityReport quality = new QualityReport(recorded, missingPower, 0, source, notes.all());
        return new Cleaned(ride(table, recording.laps()), quality);
    }

    private static int noteMissingPower(SecondTable table, Notes notes) {
        double[] watts = table.column(Channel.POWER);
        if (watts == null) {
            return 0;
        }
        int missing = 0;
        for (int row = 0; row < watts.length; row++) {
            if (Double.isNaN(watts[row]) && !table.isPaused(row)) {
                missing++;
            }
        }
        if (missing > 0) {
            notes.found(
                    "missing-power",
                    missing,
                    Notes.count(missing, "second") + " without power while the timer ran: left out.");
        }
        return missing;
    }

    private static Ride ride(SecondTable table, List<Lap> laps) {
        Ride.Builder ride = Ride.builder(Instant.ofEpochSecond(table.firstEpochSecond()), table.seconds());
        for (Channel channel : table.channels()) {
            double[] column = table.column(channel);
            if (column != null) {
                ride.channel(channel, Series.of(column));
            }
        }
        for (int row = 0; row < table.seconds(); row++) {
            if (table.state(row) != SecondState.RIDING) {
                ride.state(row, table.state(row));
            }
        }
        List<Interval> stretches = new ArrayList<>();
        for (Lap lap : laps) {
            // A lap outside the samples stays as an empty stretch, so that laps keep their numbers.
            int from = rowWithin(table, lap.startEpochSecond());
            stretches.add(new Interval(from, Math.max(from, rowWithin(table, lap.endEpochSecond()))));
        }
        return ride.laps(stretches).build();
    }

    private static int rowWithin(SecondTable table, long epochSecond) {
        return (int) Math.max(0, Math.min(table.seconds(), table.rowOf(epochSecond)));
    }
}
