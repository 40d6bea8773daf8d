package io.github.wattledger.read.gpx;

import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The points of a document in its order. All its tracks and segments are one recording; between two segments the
 * recorder's timer stood. Distance and speed are measured from the positions where the file has none.
 */
final class GpxTrack {
    private final int maximumSamples;
    private final Samples.Builder samples = Samples.builder();
    private final List<Integer> segmentStarts = new ArrayList<>();
    private final List<TimerEvent> timerEvents = new ArrayList<>();
    private long lastEpochSecond;
    private boolean segmentBegins = true;
    private boolean anyDistance;
    private boolean anySpeed;
    private boolean anyPosition;
    private int withoutZone;
    private int pointsWithoutTime;
    private int badValues;

    GpxTrack(int maximumSamples) {
        this.maximumSamples = maximumSamples;
    }

    void beginSegment() {
        segmentBegins = true;
    }

    void add(GpxPoint point) throws UnreadableRideException {
        badValues += point.badValues();
        if (point.epochSecond().isEmpty()) {
            pointsWithoutTime++;
            return;
        }
        if (samples.size() >= maximumSamples) {
            throw new UnreadableRideException(String.format(
                    Locale.ROOT, "holds more than %,d samples, the most that is read; split it first", maximumSamples));
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

    int sampleCount() {
        return samples.size();
    }

    int pointsWithoutTime() {
        return pointsWithoutTime;
    }

    List<TimerEvent> timerEvents() {
        return timerEvents;
    }

    /** The samples, complete as far as the positions allow. */
    Samples samples(List<ReadNote> notes) {
        Samples read = samples.build();
        if (pointsWithoutTime > 0) {
            notes.add(new ReadNote(
                    "points-without-time",
                    String.format(Locale.ROOT, "%,d track points without a time were left out.", pointsWithoutTime)));
        }
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
