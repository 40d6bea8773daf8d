package io.github.wattledger.ride;

import java.io.Serializable;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a file says about one session, unchanged: a file can hold several.
 *
 * @param samples the samples in the file's order
 * @param timerEvents starts and stops of the timer in the file's order; empty when the file has none
 * @param laps the laps the recorder marked, in time order
 * @param totals what the device computed itself, or null when the file lacks it
 * @param device the recording device and what it knew about the rider
 * @param sport the sport in lower case words of the FIT profile, for instance {@code cycling}, or null when unknown
 * @param sessionIndex the position of this session among those of its file that have samples, from 0
 * @param utcOffsetSeconds the rider's local time minus UTC, or null when the file does not know it
 * @param states for a file that is a ride already cleaned, what happened in each sample, whose times are then consecutive
 *     seconds; otherwise null
 * @param subSport the sub-sport in lower case words of the FIT profile, for instance {@code road}, or null when unknown
 */
public record Recording(
        Samples samples,
        List<TimerEvent> timerEvents,
        List<Lap> laps,
        @Nullable DeviceTotals totals,
        RecordingDevice device,
        @Nullable String sport,
        int sessionIndex,
        @Nullable Integer utcOffsetSeconds,
        @Nullable List<SecondState> states,
        @Nullable String subSport)
        implements Serializable {
    /** A day of March 1973. */
    private static final long FIRST_DATED_SECOND = 100_000_000L;

    /** Sub-sports of the FIT profile that go nowhere; a virtual ride has positions, but not of the earth. */
    private static final Set<String> INDOOR_SUB_SPORTS = Set.of("indoor_cycling", "spin", "virtual_activity");

    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException when there are states, but not one for each of consecutive seconds
     */
    public Recording {
        timerEvents = List.copyOf(timerEvents);
        laps = List.copyOf(laps);
        if (states != null) {
            states = List.copyOf(states);
            requireConsecutiveSeconds(samples, states.size());
        }
    }

    /** A recording as a device makes it, which has not been cleaned yet. */
    public Recording(
            Samples samples,
            List<TimerEvent> timerEvents,
            List<Lap> laps,
            @Nullable DeviceTotals totals,
            RecordingDevice device,
            @Nullable String sport,
            int sessionIndex,
            @Nullable Integer utcOffsetSeconds) {
        this(samples, timerEvents, laps, totals, device, sport, sessionIndex, utcOffsetSeconds, null, null);
    }

    private static void requireConsecutiveSeconds(Samples samples, int stateCount) {
        if (samples.size() != stateCount) {
            throw new IllegalArgumentException(stateCount + " states for " + samples.size() + " samples");
        }
        for (int i = 1; i < stateCount; i++) {
            if (samples.epochSecond(i) != samples.epochSecond(i - 1) + 1) {
                throw new IllegalArgumentException("sample " + i + " is not a second after the one before");
            }
        }
    }

    /** A recording of nothing but samples, for callers that have no more than that. */
    public static Recording of(Samples samples) {
        return new Recording(samples, List.of(), List.of(), null, RecordingDevice.UNKNOWN, null, 0, null);
    }

    /** The same recording with the sub-sport that its file names, or null. */
    public Recording withSubSport(@Nullable String other) {
        return new Recording(
                samples, timerEvents, laps, totals, device, sport, sessionIndex, utcOffsetSeconds, states, other);
    }

    /** Whether the file names a kind of cycling that is ridden indoors. */
    public boolean isIndoorSport() {
        return subSport != null && INDOOR_SUB_SPORTS.contains(subSport);
    }

    /** The same recording at another position. */
    public Recording withSessionIndex(int index) {
        return new Recording(
                samples, timerEvents, laps, totals, device, sport, index, utcOffsetSeconds, states, subSport);
    }

    /**
     * Whether the times are points in time. Otherwise they count from a start that nobody knows, as in a table without
     * dates: the first sample then seems to be of the first years after 1970, before any bicycle computer.
     */
    public boolean isDated() {
        return samples.size() > 0 && isDated(samples.epochSecond(0));
    }

    /**
     * Whether a time is a point in time, as {@link #isDated()} says of a recording that begins with it.
     *
     * @param epochSecond the time, seconds since 1970
     */
    public static boolean isDated(long epochSecond) {
        return epochSecond >= FIRST_DATED_SECOND;
    }

    /** Whether the file says that this is cycling, with or without a motor. */
    public boolean isCycling() {
        return "cycling".equals(sport) || "e_biking".equals(sport);
    }

    /** Whether the file names no sport in particular. */
    public boolean isOfUnnamedSport() {
        return sport == null || sport.equals("generic");
    }
}
