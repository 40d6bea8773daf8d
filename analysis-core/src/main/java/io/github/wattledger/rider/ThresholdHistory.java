package io.github.wattledger.rider;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Thresholds with the day from which each holds, so that an old ride is judged by what its rider could do then. Power
 * and heart rate are looked up apart: an entry that names only one of them leaves the other as it was.
 *
 * @param entries the entries, the oldest first; empty when nothing is known
 */
public record ThresholdHistory(List<Entry> entries) implements Serializable {
    /** Nothing known. */
    public static final ThresholdHistory NONE = new ThresholdHistory(List.of());

    /**
     * What held from a day on.
     *
     * @param from the first day, on the rider's own calendar
     * @param powerW threshold power, watts, within {@link Bounds#THRESHOLD_POWER_W}, or null when it did not change
     * @param heartRateBpm threshold heart rate, beats per minute, within {@link Bounds#THRESHOLD_HEART_RATE_BPM}, or null
     *     when it did not change
     */
    public record Entry(
            LocalDate from,
            @Nullable Double powerW,
            @Nullable Double heartRateBpm) implements Serializable {
        /** @throws IllegalArgumentException when a number lies outside its range, or there is none */
        public Entry {
            if (powerW == null && heartRateBpm == null) {
                throw new IllegalArgumentException("the entry of " + from + " has neither power nor heart rate");
            }
            Bounds.THRESHOLD_POWER_W.require("powerW", powerW);
            Bounds.THRESHOLD_HEART_RATE_BPM.require("heartRateBpm", heartRateBpm);
        }
    }

    /** @throws IllegalArgumentException when the days do not rise */
    public ThresholdHistory {
        entries = List.copyOf(entries);
        for (int i = 1; i < entries.size(); i++) {
            if (!entries.get(i).from().isAfter(entries.get(i - 1).from())) {
                throw new IllegalArgumentException(
                        "the days must rise, found " + entries.get(i - 1).from() + " before "
                                + entries.get(i).from());
            }
        }
    }

    /** Threshold power in force on a day, watts; before the first known one that first one, null when none is known. */
    public @Nullable Double powerW(LocalDate day) {
        return inForce(day, Entry::powerW);
    }

    /**
     * Threshold heart rate in force on a day, beats per minute; before the first known one that first one, null when none
     * is known.
     */
    public @Nullable Double heartRateBpm(LocalDate day) {
        return inForce(day, Entry::heartRateBpm);
    }

    /**
     * Threshold power on a day as a straight line between the entries that name it, watts; before the first and after the
     * last one that value itself; null when none is known. For comparing rides of different days, not for judging one: that
     * takes {@link #powerW}.
     */
    public @Nullable Double interpolatedPowerW(LocalDate day) {
        Entry before = null;
        for (Entry entry : entries) {
            Double powerW = entry.powerW();
            if (powerW == null) {
                continue;
            }
            if (!entry.from().isBefore(day)) {
                return before == null ? powerW : between(before, entry, day);
            }
            before = entry;
        }
        return before == null ? null : before.powerW();
    }

    private static double between(Entry before, Entry after, LocalDate day) {
        double share = (double) ChronoUnit.DAYS.between(before.from(), day)
                / ChronoUnit.DAYS.between(before.from(), after.from());
        double fromW = Objects.requireNonNull(before.powerW());
        return fromW + share * (Objects.requireNonNull(after.powerW()) - fromW);
    }

    /** The day from which the threshold power in force on a day holds; null when none is in force by then. */
    public @Nullable LocalDate powerSince(LocalDate day) {
        LocalDate since = null;
        for (Entry entry : entries) {
            if (entry.powerW() != null && !entry.from().isAfter(day)) {
                since = entry.from();
            }
        }
        return since;
    }

    /** Whether a day lies before the first one from which a threshold power is known. */
    public boolean isBeforeFirstPower(LocalDate day) {
        for (Entry entry : entries) {
            if (entry.powerW() != null) {
                return day.isBefore(entry.from());
            }
        }
        return false;
    }

    private @Nullable Double inForce(LocalDate day, Function<Entry, @Nullable Double> number) {
        Double inForce = null;
        for (Entry entry : entries) {
            Double each = number.apply(entry);
            if (each != null && (inForce == null || !entry.from().isAfter(day))) {
                inForce = each;
            }
        }
        return inForce;
    }
}
