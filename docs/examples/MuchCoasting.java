package examples;

import io.github.wattledger.pacing.Advice;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.FindingDetector;
import io.github.wattledger.pacing.JudgedPart;
import io.github.wattledger.pacing.OwnFinding;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.List;

// region detector
/** Reports when more than a share of the time under way was ridden without power on the pedals. */
public record MuchCoasting(double fromShare) implements FindingDetector {
    @Override
    public List<OwnFinding> detect(JudgedPart part) {
        Ride ride = part.ride();
        Series watts = ride.series(Channel.POWER);
        int measured = 0;
        int coasting = 0;
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) == SecondState.RIDING && watts.isMeasured(second)) {
                measured++;
                coasting += watts.get(second) == 0 ? 1 : 0;
            }
        }
        if (coasting <= fromShare * measured) {
            return List.of(); // without power, too: 0 of 0
        }
        Evidence evidence =
                Evidence.none().with("coastingSeconds", coasting).with("sharePercent", 100.0 * coasting / measured);
        Advice advice = new Advice("Pedal lightly where it rolls, and press less where it climbs.", null, null);
        Interval whole = new Interval(0, ride.seconds());
        return List.of(part.finding("much-coasting", Severity.MINOR, whole, evidence, advice));
    }
}
// endregion
