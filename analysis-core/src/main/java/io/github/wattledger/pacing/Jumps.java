package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;

/** Short efforts above a power that stand out from the calmer seconds around them. */
final class Jumps {
    /** A lapse as short as this does not end a jump: pedalling is not that smooth. */
    private static final int LAPSE_SECONDS = 2;

    /** The mean of a jump is at least this many times that of the calmer seconds around it. */
    private static final double JUMP_FRACTION = 1.5;

    private static final int AROUND_SECONDS = 60;

    private Jumps() {}

    /**
     * The jumps, by rising time.
     *
     * @param watts power for each second, watts
     * @param aboveW power above which a jump lies, watts; {@code NaN} gives none
     * @param leastSeconds how long a jump lasts at least
     */
    static List<Interval> of(Series watts, double aboveW, int leastSeconds) {
        List<Interval> jumps = new ArrayList<>();
        int from = -1;
        int lastAbove = -1;
        for (int second = 0; second <= watts.size(); second++) {
            boolean above = second < watts.size() && watts.get(second) > aboveW;
            if (above) {
                from = from < 0 ? second : from;
                lastAbove = second;
            } else if (from >= 0 && (second - lastAbove > LAPSE_SECONDS || second == watts.size())) {
                Interval stretch = new Interval(from, lastAbove + 1);
                if (stretch.seconds() >= leastSeconds && isJump(watts, stretch, aboveW)) {
                    jumps.add(stretch);
                }
                from = -1;
            }
        }
        return jumps;
    }

    /**
     * Whether a stretch stands out from the calmer seconds of the minute before and after it. A climb ridden at one hard power
     * does not: the meter's jitter and small changes of grade cut it into stretches that look like surges.
     */
    private static boolean isJump(Series watts, Interval stretch, double aboveW) {
        double calmW = 0;
        int calm = 0;
        int to = Math.min(watts.size(), stretch.toSecond() + AROUND_SECONDS);
        for (int second = Math.max(0, stretch.fromSecond() - AROUND_SECONDS); second < to; second++) {
            if (!stretch.contains(second) && watts.get(second) <= aboveW) {
                calmW += watts.get(second);
                calm++;
            }
        }
        return calm > 0 && meanW(watts, stretch) >= JUMP_FRACTION * calmW / calm;
    }

    /** Mean power of a stretch, watts; a second without power counts as 0 W. */
    static double meanW(Series watts, Interval stretch) {
        double sum = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            sum += watts.isMeasured(second) ? watts.get(second) : 0;
        }
        return sum / stretch.seconds();
    }
}
