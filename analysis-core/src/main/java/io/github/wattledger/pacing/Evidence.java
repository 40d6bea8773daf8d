package io.github.wattledger.pacing;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The numbers a finding rests on, in the order in which they are best read.
 *
 * @param entries the numbers with their names
 */
public record Evidence(List<Entry> entries) implements Serializable {
    /**
     * One number.
     *
     * @param name its name in camel case with the unit at its end, as in the JSON report
     * @param value the number, finite
     */
    public record Entry(String name, double value) implements Serializable {}

    /** Copies the entries. */
    public Evidence {
        entries = List.copyOf(entries);
    }

    /** No numbers yet. */
    public static Evidence none() {
        return new Evidence(List.of());
    }

    /** This evidence and one number more; a value that is not finite is left out. */
    public Evidence with(String name, double value) {
        if (!Double.isFinite(value)) {
            return this;
        }
        List<Entry> more = new ArrayList<>(entries);
        more.add(new Entry(name, value));
        return new Evidence(more);
    }

    /** The number of this name, or empty when the evidence lacks it. */
    public OptionalDouble get(String name) {
        for (Entry entry : entries) {
            if (entry.name().equals(name)) {
                return OptionalDouble.of(entry.value());
            }
        }
        return OptionalDouble.empty();
    }
}
