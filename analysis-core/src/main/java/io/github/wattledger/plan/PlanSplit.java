package io.github.wattledger.plan;

import io.github.wattledger.course.Course;
import io.github.wattledger.load.RollingMean;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;

/** Splits the difference between a plan and a ride: each second of the ride belongs to one section and is counted once. */
final class PlanSplit {
    private static final int MEAN_SECONDS = 30;
    private static final double EXPONENT = PowerPlanner.USUAL_EXPONENT;

    /** Distances of a recording and of a course file differ by less; what differs more was another way. Own choice. */
    private static final double SAME_LENGTH_FRACTION = 0.03;

    private final KeptPlan plan;
    private final Replay replay;
    private final Replay.Result planned;
    private final Series distanceM;
    private final Series grade;
    private final Series meanW;
    private final int seconds;
    private final double startM;
    private final double lengthM;
    private final double scale;

    PlanSplit(KeptPlan plan, Ride ride, Course course, Replay replay) {
        this.plan = plan;
        this.replay = replay;
        this.seconds = ride.seconds();
        this.distanceM = ride.series(Channel.DISTANCE);
        this.grade = Series.generate(seconds, second -> course.gradeAtM(distanceM.get(second)));
        this.meanW = RollingMean.trailing(ride.series(Channel.POWER), MEAN_SECONDS);
        double first = Double.NaN;
        double last = Double.NaN;
        for (int second = 0; second < seconds; second++) {
            if (distanceM.isMeasured(second)) {
                first = Double.isNaN(first) ? distanceM.get(second) : first;
                last = distanceM.get(second);
            }
        }
        this.startM = first;
        this.lengthM = last - first;
        this.scale = isSameLength() ? lengthM / plan.lengthM() : 1;
        // Where the ground is not known the ride stays as it was.
        this.planned = replay.withPower(Series.generate(seconds, this::plannedW));
    }

    private boolean isSameLength() {
        return Math.abs(lengthM / plan.lengthM() - 1) <= SAME_LENGTH_FRACTION;
    }

    boolean isCutShort() {
        return !isSameLength() && lengthM < plan.lengthM();
    }

    private double plannedW(int second) {
        double here = grade.get(second);
        return Double.isNaN(here) ? Double.NaN : plan.capsW().getOrDefault(Ground.of(here), Double.NaN);
    }

    List<SectionReview> sections() {
        List<SectionReview> sections = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < plan.sections().size() && from < seconds; i++) {
            KeptPlan.Part part = plan.sections().get(i);
            boolean isLast = i + 1 == plan.sections().size();
            int to = isLast ? seconds : secondAt(startM + scale * part.toM(), from);
            sections.add(section(part, from, to));
            from = to;
        }
        return sections;
    }

    private SectionReview section(KeptPlan.Part part, int from, int to) {
        int moving = 0;
        double withPlannedPower = 0;
        for (int second = from; second < to; second++) {
            if (replay.binOf(second) >= 0) {
                moving++;
                withPlannedPower += planned.secondsFor(second);
            }
        }
        double plannedSeconds = riddenShare(part) * part.movingSeconds();
        double plannedStops = plan.stoppedSeconds() * plannedSeconds / plan.movingSeconds();
        return new SectionReview(
                part.name(),
                part.toM(),
                plannedSeconds,
                moving,
                moving - withPlannedPower,
                withPlannedPower - plannedSeconds,
                to - from - moving - plannedStops);
    }

    /** How much of a section was ridden: less than all of it only in the one in which a ride ends early. */
    private double riddenShare(KeptPlan.Part part) {
        if (!isCutShort()) {
            return 1;
        }
        return Math.max(0, Math.min(1, (lengthM - part.fromM()) / (part.toM() - part.fromM())));
    }

    /** The first second at or beyond a distance; the end where the ride does not come so far. */
    private int secondAt(double atM, int from) {
        for (int second = from; second < seconds; second++) {
            if (distanceM.get(second) >= atM) {
                return second;
            }
        }
        return seconds;
    }

    /** The caps; on descents a cap only says how little is enough, so those are left out. */
    List<CapReview> caps() {
        List<CapReview> reviews = new ArrayList<>();
        for (Ground ground : Ground.values()) {
            Double capW = plan.capsW().get(ground);
            if (capW != null && capW > 0 && ground.toGrade() > 0) {
                CapReview review = cap(ground, capW);
                if (review.seconds() > 0) {
                    reviews.add(review);
                }
            }
        }
        return reviews;
    }

    private CapReview cap(Ground ground, double capW) {
        int ridden = 0;
        int above = 0;
        double sum = 0;
        for (int second = 0; second < seconds; second++) {
            double here = grade.get(second);
            if (isRidden(second) && !Double.isNaN(here) && Ground.of(here) == ground) {
                ridden++;
                above += meanW.get(second) > CapReview.ROOM * capW ? 1 : 0;
                sum += Math.pow(meanW.get(second), EXPONENT);
            }
        }
        double riddenW = ridden == 0 ? 0 : Math.pow(sum / ridden, 1 / EXPONENT);
        return new CapReview(ground, capW, riddenW, ridden, above);
    }

    private boolean isRidden(int second) {
        return replay.binOf(second) >= 0 && meanW.isMeasured(second);
    }
}
