package io.github.wattledger.read.gpx;

import io.github.wattledger.read.ReadNote;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The points of one track in the document's order. All its segments are one recording; between two segments the
 * recorder's timer stood. Distance and speed are measured from the positions where the file has none.
 */
final class GpxTrack {
    private final int number;
    private final Samples.Builder samples = Samples.builder();
    private final List<Integer> segmentStarts = new ArrayList<>();
    private final List<TimerEvent> timerEvents = new ArrayList<>();
    private final Set<String> sports = new LinkedHashSet<>();
    private long lastEpochSecond;
    private boolean segmentBegins = true;
    private boolean anyDistance;
    private boolean anySpeed;
    private boolean anyPosition;
    private int withoutZone;
    private int badValues;

    /**
     * A track without a point yet.
     *
     * @param number its position among the tracks of the document, from 1
     */
    GpxTrack(int number) {
        this.number = number;
    }

    int number() {
        return number;
    }

    /** Adds the sports that the document names for this track. */
    void addSport(String type) {
        String sport = GpxSport.of(type);
        if (sport != null) {
            sports.add(sport);
        }
    }

    /** The sport, or null when none is named that is known, or several are. */
    @Nullable String sport() {
        return sports.size() == 1 ? sports.iterator().next() : null;
    }

    void beginSegment() {
        segmentBegins = true;
    }

    void add(GpxPoint point) {
        badValues += point.badValues();
        if (point.epochSecond().isEmpty()) {
            return;
        }
        long time = point.epochSecond().getAsLong();
        if (segmentBegins) {
            segmentStarts.add(samples.size());
            // The timer stopped after the last sample: a stop in the second of the sample would take it away.
            if (samples.size() > 0 && time > lastEpochSecond + 1) {
                timerEvents.add(new TimerEvent(lastEpochSecond + 1, TimerEvent.Kind.STOP));
                timerEvents.add(new TimerEvent(time, TimerEvent.Kind.START));
            }
            segmentBegins = false;
        }
        lastEpochSecond = time;
        samples.at(time);
        point.copyInto(samples);
        withoutZone += point.hasZone() ? 0 : 1;
        anyDistance |= !Double.isNaN(point.get(Channel.DISTANCE));
        anySpeed |= !Double.isNaN(point.get(Channel.SPEED));
        anyPosition |= !Double.isNaN(point.get(Channel.LATITUDE));
    }

    /** Whether the times were made up by a route planner, see {@link PlannedTimes}. */
    boolean isPlanned() {
        return PlannedTimes.areIn(samples.build());
    }

    int sampleCount() {
        return samples.size();
    }

    List<TimerEvent> timerEvents() {
        return timerEvents;
    }

    /** The samples, complete as far as the positions allow. */
    Samples samples(List<ReadNote> notes) {
        Samples read = samples.build();
        if (badValues > 0) {
            notes.add(new ReadNote(
                    "bad-values",
                    String.format(
                            Locale.ROOT, "%,d values are no numbers, or no positions; they are missing.", badValues)));
        }
        if (withoutZone > 0) {
            notes.add(new ReadNote("time-without-zone", "The times say no zone; they were taken as UTC."));
        }
        if (!anyPosition || (anyDistance && anySpeed)) {
            return read;
        }
        String what = anyDistance ? "speed" : anySpeed ? "distance" : "distance and no speed";
        notes.add(new ReadNote(
                "from-positions",
                "The file has no " + what + "; measured from one position to the next on the WGS-84 ellipsoid."));
        return PositionMeasure.complete(read, segmentStarts, !anyDistance, !anySpeed);
    }
}
