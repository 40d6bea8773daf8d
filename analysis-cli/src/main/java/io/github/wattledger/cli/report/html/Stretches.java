package io.github.wattledger.cli.report.html;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.util.ArrayList;
import java.util.List;

/** The stretches of a ride that were in one state. */
final class Stretches {
    private Stretches() {}

    static List<Interval> in(Ride ride, SecondState state) {
        List<Interval> stretches = new ArrayList<>();
        int from = -1;
        for (int second = 0; second <= ride.seconds(); second++) {
            boolean inState = second < ride.seconds() && ride.state(second) == state;
            if (inState && from < 0) {
                from = second;
            } else if (!inState && from >= 0) {
                stretches.add(new Interval(from, second));
                from = -1;
            }
        }
        return stretches;
    }
}
