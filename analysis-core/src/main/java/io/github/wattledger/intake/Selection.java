package io.github.wattledger.intake;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which session of a file is looked at, and which part of it.
 *
 * @param sessionIndex the session, counted from 0 as in {@link io.github.wattledger.ride.Recording#sessionIndex()},
 *     whatever its sport; null for the first cycling session
 * @param fromSecond first elapsed second of the part, or null for the start
 * @param toSecond elapsed second at which the part ends (not included), or null for the end
 * @param firstLap first lap of the part, counted from 1, or null; not together with seconds
 * @param lastLap last lap of the part, included, or null for {@code firstLap}
 */
public record Selection(
        @Nullable Integer sessionIndex,
        @Nullable Integer fromSecond,
        @Nullable Integer toSecond,
        @Nullable Integer firstLap,
        @Nullable Integer lastLap)
        implements Serializable {
    /** The whole of the first cycling session. */
    public static final Selection WHOLE_RIDE = new Selection(null, null, null, null, null);

    /** @throws IllegalArgumentException when seconds and laps are both given, or bounds are out of order */
    public Selection {
        boolean bySeconds = fromSecond != null || toSecond != null;
        if (bySeconds && firstLap != null) {
            throw new IllegalArgumentException("a part is given either in seconds or in laps, not both");
        }
        if (firstLap == null && lastLap != null) {
            throw new IllegalArgumentException("lastLap without firstLap");
        }
        if (firstLap != null && (firstLap < 1 || (lastLap != null && lastLap < firstLap))) {
            throw new IllegalArgumentException("laps " + firstLap + " to " + lastLap + ", expected 1 <= first <= last");
        }
        if (fromSecond != null && fromSecond < 0) {
            throw new IllegalArgumentException("fromSecond " + fromSecond + ", expected 0 or more");
        }
        if (toSecond != null && toSecond <= (fromSecond == null ? 0 : fromSecond)) {
            throw new IllegalArgumentException("the part ends at or before its start");
        }
        if (sessionIndex != null && sessionIndex < 0) {
            throw new IllegalArgumentException("sessionIndex " + sessionIndex + ", expected 0 or more");
        }
    }

    /**
     * Another part of the same session, by elapsed time, in place of any before.
     *
     * @param from its first second, or null for the start
     * @param to the second at which it ends (not included), or null for the end
     * @throws IllegalArgumentException when the two are out of order
     */
    public Selection withSeconds(@Nullable Integer from, @Nullable Integer to) {
        return new Selection(sessionIndex, from, to, null, null);
    }

    /**
     * Laps of the same session, in place of any part before.
     *
     * @param first the first lap, counted from 1, or null for the whole session
     * @param last the last lap, included, or null for {@code first}
     * @throws IllegalArgumentException when the two are out of order
     */
    public Selection withLaps(@Nullable Integer first, @Nullable Integer last) {
        return new Selection(sessionIndex, null, null, first, last);
    }

    /** The same part of another session, counted from 0; null for the first cycling session. */
    public Selection withSessionIndex(@Nullable Integer index) {
        return new Selection(index, fromSecond, toSecond, firstLap, lastLap);
    }

    /** Whether the caller chose a part. A chosen part may be the whole ride. */
    public boolean choosesPart() {
        return fromSecond != null || toSecond != null || firstLap != null;
    }

    /**
     * The selected seconds of a ride.
     *
     * @param ride the selected session, cleaned
     * @throws IllegalArgumentException when the ride has no such part, with one line for people
     */
    public Interval secondsOf(Ride ride) {
        if (firstLap != null) {
            return secondsOfLaps(ride.laps(), firstLap, lastLap == null ? firstLap : lastLap);
        }
        int from = fromSecond == null ? 0 : fromSecond;
        int to = toSecond == null ? ride.seconds() : Math.min(toSecond, ride.seconds());
        if (from >= ride.seconds() && from > 0) {
            throw new IllegalArgumentException("the part begins at " + Interval.clock(from) + ", but the ride ends at "
                    + Interval.clock(ride.seconds()) + "; choose an earlier start");
        }
        return new Interval(from, to);
    }

    private static Interval secondsOfLaps(List<Interval> laps, int first, int last) {
        if (last > laps.size()) {
            throw new IllegalArgumentException(
                    laps.isEmpty()
                            ? "the ride has no laps; give the part in elapsed time instead"
                            : "the ride has laps 1 to " + laps.size() + ", not " + last);
        }
        int from = laps.get(first - 1).fromSecond();
        int to = laps.get(last - 1).toSecond();
        if (from >= to) {
            throw new IllegalArgumentException(
                    "laps " + first + " to " + last + " hold no recorded second; choose others");
        }
        return new Interval(from, to);
    }
}
