package io.github.wattledger.cli.report.html;

import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** In which line above a timeline each mark finds room, so that none covers another. */
final class Lanes {
    /** A mark takes at least this share of the timeline: its number must be legible. */
    private static final double LEAST_SHARE = 0.04;

    private Lanes() {}

    /** For each stretch its lane, counted from 0. */
    static List<Integer> of(List<Interval> stretches, int totalSeconds) {
        List<Integer> ends = new ArrayList<>();
        List<Integer> lanes = new ArrayList<>(Collections.nCopies(stretches.size(), 0));
        int least = (int) Math.ceil(totalSeconds * LEAST_SHARE);
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            order.add(i);
        }
        order.sort((a, b) ->
                Integer.compare(stretches.get(a).fromSecond(), stretches.get(b).fromSecond()));
        for (int each : order) {
            Interval stretch = stretches.get(each);
            int lane = 0;
            while (lane < ends.size() && ends.get(lane) > stretch.fromSecond()) {
                lane++;
            }
            int end = Math.max(stretch.toSecond(), stretch.fromSecond() + least);
            if (lane == ends.size()) {
                ends.add(end);
            } else {
                ends.set(lane, end);
            }
            lanes.set(each, lane);
        }
        return lanes;
    }
}
