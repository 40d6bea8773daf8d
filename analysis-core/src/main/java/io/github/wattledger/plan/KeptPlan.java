package io.github.wattledger.plan;

import io.github.wattledger.pacing.Opening;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What is kept of a plan to hold a ride against it.
 *
 * @param courseName what the course is called, or null
 * @param lengthM length, metres
 * @param stoppedSeconds planned time standing, seconds
 * @param openingSeconds how long the opening is, seconds under way
 * @param openingCapW its cap, watts
 * @param capsW cap of each kind of ground that the course has, watts
 * @param sections from point to point, in the order of the course, at least one
 */
public record KeptPlan(
        @Nullable String courseName,
        double lengthM,
        double stoppedSeconds,
        double openingSeconds,
        double openingCapW,
        Map<Ground, Double> capsW,
        List<Part> sections)
        implements Serializable {
    /**
     * A section of the plan.
     *
     * @param name where it ends
     * @param fromM where it begins, metres from the start
     * @param toM where it ends, metres from the start
     * @param movingSeconds planned time under way, seconds
     */
    public record Part(String name, double fromM, double toM, double movingSeconds) implements Serializable {}

    /** @throws IllegalArgumentException when there is no section, or a number is out of order */
    public KeptPlan {
        if (sections.isEmpty() || !(lengthM > 0) || !(stoppedSeconds >= 0)) {
            throw new IllegalArgumentException(sections.size() + " sections over " + lengthM + " m with "
                    + stoppedSeconds + " s of stops, expected one or more over a length above 0");
        }
        if (!(openingSeconds > 0 && openingCapW > 0)) {
            throw new IllegalArgumentException(
                    "an opening of " + openingSeconds + " s under " + openingCapW + " W, expected more than 0 of both");
        }
        double before = 0;
        for (Part each : sections) {
            if (!(each.fromM() >= before - 1 && each.toM() > each.fromM() && each.movingSeconds() > 0)) {
                throw new IllegalArgumentException("section \"" + each.name() + "\" is out of order");
            }
            before = each.toM();
        }
        capsW = Map.copyOf(capsW);
        sections = List.copyOf(sections);
    }

    /** What is kept of a plan. */
    public static KeptPlan of(RacePlan plan) {
        Map<Ground, Double> caps = new EnumMap<>(Ground.class);
        plan.caps().forEach(cap -> caps.put(cap.ground(), cap.capW()));
        List<Part> parts = new ArrayList<>();
        plan.sections()
                .forEach(each -> parts.add(new Part(each.name(), each.fromM(), each.toM(), each.movingSeconds())));
        return new KeptPlan(
                plan.courseName(),
                plan.lengthM(),
                plan.stoppedSeconds(),
                plan.opening().seconds(),
                plan.opening().capW(),
                caps,
                parts);
    }

    /** The opening that was planned. */
    public Opening opening() {
        return new Opening((int) openingSeconds, openingCapW);
    }

    /** Planned time under way, seconds. */
    public double movingSeconds() {
        return sections.stream().mapToDouble(Part::movingSeconds).sum();
    }
}
