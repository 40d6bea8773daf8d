package io.github.wattledger.ride;

import java.io.Serializable;
import java.util.List;
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
 * @param sessionIndex the position of this session within its file, from 0
 * @param utcOffsetSeconds the rider's local time minus UTC, or null when the file does not know it
 */
public record Recording(
        Samples samples,
        List<TimerEvent> timerEvents,
        List<Lap> laps,
        @Nullable DeviceTotals totals,
        RecordingDevice device,
        @Nullable String sport,
        int sessionIndex,
        @Nullable Integer utcOffsetSeconds)
        implements Serializable {
    /** Copies the lists. */
    public Recording {
        timerEvents = List.copyOf(timerEvents);
        laps = List.copyOf(laps);
    }

    /** A recording of nothing but samples, for callers that have no more than that. */
    public static Recording of(Samples samples) {
        return new Recording(samples, List.of(), List.of(), null, RecordingDevice.UNKNOWN, null, 0, null);
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
