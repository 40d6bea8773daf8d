package io.github.wattledger.plan;

import java.util.Locale;

/** The six kinds of ground that a rider is given a cap for, by grade. The edges are those of the pacing review. */
public enum Ground {
    /** Falls by 4 % or more. */
    STEEP_DESCENT(Double.NEGATIVE_INFINITY, -0.04),
    /** Falls by 1.5 to 4 %. */
    DESCENT(-0.04, -0.015),
    /** Within 1.5 % of level. */
    LEVEL(-0.015, 0.015),
    /** Rises by 1.5 to 4 %. */
    RISE(0.015, 0.04),
    /** Rises by 4 to 7 %. */
    CLIMB(0.04, 0.07),
    /** Rises by 7 % or more. */
    STEEP_CLIMB(0.07, Double.POSITIVE_INFINITY);

    private final double fromGrade;
    private final double toGrade;

    Ground(double fromGrade, double toGrade) {
        this.fromGrade = fromGrade;
        this.toGrade = toGrade;
    }

    /** The least grade of it, rise over run; minus infinity for the steepest descents. */
    public double fromGrade() {
        return fromGrade;
    }

    /** Where the next kind of ground begins, rise over run; infinity for the steepest climbs. */
    public double toGrade() {
        return toGrade;
    }

    /** Its fixed word, lower case with hyphens. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The kind of ground of a grade, rise over run. */
    public static Ground of(double grade) {
        for (Ground each : values()) {
            if (grade < each.toGrade) {
                return each;
            }
        }
        return STEEP_CLIMB;
    }
}
