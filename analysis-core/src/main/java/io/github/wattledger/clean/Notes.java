package io.github.wattledger.clean;

import java.util.ArrayList;
import java.util.List;

/** Collects what the steps of the cleaning found and changed. */
final class Notes {
    private final List<QualityNote> notes = new ArrayList<>();
    private int repairedSamples;

    /** Notes something that was found and left as it is. */
    void found(String code, int count, String text) {
        notes.add(new QualityNote(code, count, text));
    }

    /** Notes something that concerns the whole recording. */
    void found(String code, String text) {
        notes.add(new QualityNote(code, null, text));
    }

    /** Notes values that were replaced or set missing. */
    void repaired(String code, int count, String text) {
        found(code, count, text);
        repairedSamples += count;
    }

    /** A number and its noun, which takes an s unless there is one of it. */
    static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** How often something happened: once, or the number of times. */
    static String times(int number) {
        return number == 1 ? "once" : number + " times";
    }

    List<QualityNote> all() {
        return notes;
    }

    int repairedSamples() {
        return repairedSamples;
    }
}
