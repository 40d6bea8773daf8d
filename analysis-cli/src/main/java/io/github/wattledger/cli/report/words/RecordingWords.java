package io.github.wattledger.cli.report.words;

import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import java.util.ArrayList;
import java.util.List;

/** How good a recording is, in sentences. */
public final class RecordingWords {
    private RecordingWords() {}

    /** How many seconds there are, how many lack power, and where power was taken from. */
    public static List<String> summary(QualityReport quality) {
        List<String> lines = new ArrayList<>();
        lines.add("Recorded seconds: " + quality.recordedSeconds() + "; seconds without power: "
                + (quality.powerSource() == PowerSource.NONE
                        ? "all, for there is no power in this file"
                        : Integer.toString(quality.missingPowerSeconds()))
                + "; samples repaired: " + quality.repairedSamples() + ".");
        switch (quality.powerSource()) {
            case WORK_COUNTER -> lines.add("Power is taken from the work counter of the power meter.");
            case SAMPLES -> lines.add("Power is taken from the one-second samples.");
            case NONE -> {
                // Said in the line above.
            }
        }
        return lines;
    }

    /** Each note as a sentence. */
    public static List<String> notes(List<QualityNote> notes, Units units) {
        return notes.stream()
                .map(note -> PlainText.sentence(LibraryWords.of(note.text(), units)))
                .toList();
    }
}
