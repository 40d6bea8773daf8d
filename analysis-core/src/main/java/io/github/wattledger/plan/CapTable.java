package io.github.wattledger.plan;

import io.github.wattledger.ride.Series;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/** One power for each kind of ground: what a rider can remember, and nearly as fast as a power for every piece. */
final class CapTable {
    private static final double STEP_W = 5;

    /** How far the scale is searched so that rounded caps give the target again. */
    private static final double MOST_SCALE = 0.06;

    private static final double SCALE_STEP = 0.005;

    private static final double SHOWN = 1000;

    private final Map<Ground, Double> watts;

    private CapTable(Map<Ground, Double> watts) {
        this.watts = watts;
    }

    /**
     * The table whose effort comes nearest to a target.
     *
     * @param grades grade of each piece, rise over run
     * @param best the best power of each piece
     * @param planner over the same pieces
     * @param targetW the target, watts
     */
    static CapTable of(Series grades, PowerByPiece best, PowerPlanner planner, double targetW) {
        Map<Ground, Double> means = means(grades, best);
        CapTable nearest = rounded(means, 1);
        double nearestOff = Double.POSITIVE_INFINITY;
        Map<Ground, Double> before = Map.of();
        for (double scale = 1 - MOST_SCALE; scale <= 1 + MOST_SCALE; scale += SCALE_STEP) {
            CapTable table = rounded(means, scale);
            if (table.watts.equals(before)) {
                continue;
            }
            before = table.watts;
            double off = Math.abs(planner.ridden(table.ofPieces(grades)).effortW() - targetW);
            if (off < nearestOff) {
                nearest = table;
                nearestOff = off;
            }
        }
        return nearest;
    }

    private static Map<Ground, Double> means(Series grades, PowerByPiece best) {
        Map<Ground, Double> work = new EnumMap<>(Ground.class);
        Map<Ground, Double> time = new EnumMap<>(Ground.class);
        for (int i = 0; i < grades.size(); i++) {
            Ground ground = Ground.of(grades.get(i));
            double seconds = 1 / best.speedMps().get(i);
            work.merge(ground, seconds * best.watts().get(i), Double::sum);
            time.merge(ground, seconds, Double::sum);
        }
        Map<Ground, Double> means = new EnumMap<>(Ground.class);
        time.forEach((ground, seconds) -> means.put(ground, work.getOrDefault(ground, 0.0) / seconds));
        return means;
    }

    private static CapTable rounded(Map<Ground, Double> means, double scale) {
        Map<Ground, Double> rounded = new EnumMap<>(Ground.class);
        means.forEach((ground, mean) -> rounded.put(ground, roundedW(scale * mean)));
        return new CapTable(rounded);
    }

    /** To 5 W, which is what a rider can hold and a meter can tell. */
    static double roundedW(double powerW) {
        return STEP_W * Math.round(powerW / STEP_W);
    }

    Set<Ground> grounds() {
        return watts.keySet();
    }

    double capW(Ground ground) {
        return watts.getOrDefault(ground, 0.0);
    }

    /**
     * The cap of a climb: that of the ground of its mean grade, so that a rider has one number for one slope. The grade is
     * taken as it is shown, in tenths of a percent. Where the course has no such ground, the next easier one counts.
     */
    double capOfClimbW(double meanGrade) {
        Ground ground = Ground.of(Math.round(SHOWN * meanGrade) / SHOWN);
        double capW = 0;
        for (Ground each : Ground.values()) {
            capW = watts.getOrDefault(each, capW);
            if (each == ground) {
                break;
            }
        }
        return capW;
    }

    Series ofPieces(Series grades) {
        return Series.generate(grades.size(), piece -> capW(Ground.of(grades.get(piece))));
    }
}
