package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.bunch.BunchProposal;
import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.ProposedBunch;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.util.ArrayList;
import java.util.List;

/** The stretches of a ride that a drawing marks. */
final class Stretches {
    private Stretches() {}

    /** Where a finding is marked: each stop where it was, everything else from its start to its end. */
    static List<Interval> of(Finding finding) {
        return finding.priceSteps() instanceof PriceSteps.Stops stops ? stops.stops() : List.of(finding.when());
    }

    /** Where the rider says that there was a bunch; none where the ride was not judged. */
    static List<Interval> inBunch(RideReview review) {
        BunchReview bunch = review.pacing().bunch();
        return bunch == null ? List.of() : bunch.told().bunches();
    }

    /** Where the ride itself proposes a bunch. */
    static List<Interval> proposedBunch(RideReview review) {
        ProposedBunch proposed = review.pacing().proposedBunch();
        return proposed == null
                ? List.of()
                : proposed.proposal().stretches().stream()
                        .map(BunchProposal.Stretch::when)
                        .toList();
    }

    /** The stretches that were in one state. */
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
