package examples;

import io.github.wattledger.load.RollingMean;
import io.github.wattledger.pacing.Advice;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.FindingDetector;
import io.github.wattledger.pacing.JudgedPart;
import io.github.wattledger.pacing.OwnFinding;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;

// region detector
/** Finds every stretch that was pedalled slowly and hard: cadence below, 30-second power at or above. */
public record SlowAndHard(int leastSeconds, double belowRpm, double fromShareOfThreshold) implements FindingDetector {
    @Override
    public List<OwnFinding> detect(JudgedPart part) {
        Double thresholdW = part.thresholds().knownPowerW();
        if (thresholdW == null) {
            return List.of(); // nothing to measure against
        }
        // A channel that was not recorded is NaN throughout, and NaN is neither below nor above anything.
        Series rpm = part.ride().series(Channel.CADENCE);
        Series watts = RollingMean.trailing(part.ride().series(Channel.POWER), 30);
        List<OwnFinding> found = new ArrayList<>();
        int from = -1;
        for (int second = 0; second <= part.ride().seconds(); second++) {
            boolean slowAndHard = second < part.ride().seconds()
                    && rpm.get(second) < belowRpm
                    && watts.get(second) >= fromShareOfThreshold * thresholdW;
            if (slowAndHard && from < 0) {
                from = second;
            } else if (!slowAndHard && from >= 0) {
                if (second - from >= leastSeconds) {
                    found.add(finding(part, new Interval(from, second)));
                }
                from = -1;
            }
        }
        return found;
    }

    private OwnFinding finding(JudgedPart part, Interval when) {
        Evidence evidence = Evidence.none().with("seconds", when.seconds()).with("belowRpm", belowRpm);
        Advice advice =
                new Advice("Shift down before the cadence drops, and carry lower gears if there are none.", null, null);
        return part.finding("slow-and-hard", Severity.MODERATE, when, evidence, advice);
    }
}
// endregion
