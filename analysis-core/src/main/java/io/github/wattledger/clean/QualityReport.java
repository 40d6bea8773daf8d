package io.github.wattledger.clean;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * How good a recording was, and everything that was changed in it.
 *
 * @param recordedSeconds seconds with at least one sample
 * @param missingPowerSeconds seconds with the timer running and no power, in a recording that has power at all
 * @param repairedSamples samples whose value was replaced or set missing
 * @param powerSource where the watts come from
 * @param notes one for each kind of oddity, in the order in which they were found
 */
public record QualityReport(
        int recordedSeconds,
        int missingPowerSeconds,
        int repairedSamples,
        PowerSource powerSource,
        List<QualityNote> notes)
        implements Serializable {
    /** Copies the notes. */
    public QualityReport {
        notes = List.copyOf(notes);
    }

    /** This report with more notes after its own. */
    public QualityReport withNotes(List<QualityNote> more) {
        return withAll(notes, more);
    }

    /** This report with more notes before its own. */
    public QualityReport withNotesBefore(List<QualityNote> more) {
        return withAll(more, notes);
    }

    private QualityReport withAll(List<QualityNote> first, List<QualityNote> second) {
        List<QualityNote> all = new ArrayList<>(first);
        all.addAll(second);
        return new QualityReport(recordedSeconds, missingPowerSeconds, repairedSamples, powerSource, all);
    }
}
