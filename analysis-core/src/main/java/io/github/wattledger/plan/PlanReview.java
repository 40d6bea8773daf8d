package io.github.wattledger.plan;

import io.github.wattledger.course.Course;
import io.github.wattledger.pacing.Opening;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.util.List;

/**
 * A ride held against the plan for it.
 *
 * @param sections section by section; of a ride that ended early those that were begun
 * @param caps each cap that was ridden against, in the order of the ground
 * @param openingW normalized power of the opening, watts; {@code NaN} without power
 * @param openingCapW the cap of the opening, watts
 * @param isCutShort whether the ride ends before the course does
 */
public record PlanReview(
        List<SectionReview> sections, List<CapReview> caps, double openingW, double openingCapW, boolean isCutShort)
        implements Serializable {
    /** Copies the lists. */
    public PlanReview {
        sections = List.copyOf(sections);
        caps = List.copyOf(caps);
    }

    /**
     * Holds a ride against a plan. Refused is a ride that cannot be ridden again, for instance for want of power.
     *
     * @param plan the plan
     * @param ride the raced part of a ride, which begins at the start of the course
     * @param rig rider and bicycle, estimated from the ride where they are not known
     */
    public static Outcome<PlanReview> of(KeptPlan plan, Ride ride, RigChoice rig) {
        Course course = Course.of(ride).orElse(null);
        if (course == null) {
            return Outcome.refused("the ride leads nowhere: an indoor ride, or no distance while moving");
        }
        Outcome<Replay> replay =
                Replay.of(ride, course, rig.estimatedFrom(ride, course).rig());
        if (replay.refusal().isPresent()) {
            return Outcome.refused(replay.refusal().get());
        }
        PlanSplit split = new PlanSplit(plan, ride, course, replay.found().orElseThrow());
        return Outcome.of(new PlanReview(
                split.sections(),
                split.caps(),
                plan.opening().normalizedPowerW(ride),
                plan.openingCapW(),
                split.isCutShort()));
    }

    /** How much longer the ride took than planned, stops included, seconds: the sum of the sections. */
    public double differenceSeconds() {
        return sections.stream().mapToDouble(SectionReview::differenceSeconds).sum();
    }

    /** Whether the opening was ridden more than 5 % above its cap. */
    public boolean isOpeningAboveCap() {
        return Opening.isAboveCap(openingW, openingCapW);
    }
}
