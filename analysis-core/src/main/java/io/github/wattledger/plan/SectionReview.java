package io.github.wattledger.plan;

import java.io.Serializable;

/**
 * A section of a plan and how it was ridden. The difference is split without a rest: what power did, what the day did, and
 * stops.
 *
 * @param name where it ends
 * @param toM where it ends, metres from the start by the plan
 * @param plannedSeconds planned time under way, seconds
 * @param riddenSeconds ridden time under way, seconds
 * @param powerSeconds ridden time less that with the planned power in the same wind, group and surface, seconds
 * @param daySeconds that time less the planned one, seconds: wind, ground, group, rig
 * @param stopSeconds time standing beyond the plan's share, seconds
 */
public record SectionReview(
        String name,
        double toM,
        double plannedSeconds,
        int riddenSeconds,
        double powerSeconds,
        double daySeconds,
        double stopSeconds)
        implements Serializable {
    /** How much longer the section took than planned, stops included, seconds; below 0 when it was shorter. */
    public double differenceSeconds() {
        return powerSeconds + daySeconds + stopSeconds;
    }
}
