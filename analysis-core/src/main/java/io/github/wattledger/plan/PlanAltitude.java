package io.github.wattledger.plan;

import io.github.wattledger.course.Route;
import io.github.wattledger.power.AltitudeShare;
import java.io.Serializable;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * What the height of a course leaves of the power of a rider who lives and trains near the sea: a range, since riders differ
 * widely. It changes no cap: it widens the range of the time, and stands beside the target.
 *
 * @param meanM mean height of the course, metres above the sea
 * @param lowShare what is left to a rider who has just come from the sea, 0 to 1
 * @param highShare what is left to one who has lived at the height for some weeks, 0 to 1
 */
public record PlanAltitude(double meanM, double lowShare, double highShare) implements Serializable {
    /** Below this mean height a plan does not speak of it, metres. */
    static final double SAID_FROM_M = 1000;

    /** So far above home nothing is lost yet, metres. Own choice. */
    private static final double NOTHING_LOST_M = 700;

    /** The height of a course; null where it is not high, or the file has no altitude. */
    static @Nullable PlanAltitude of(Route route) {
        if (!route.hasAltitude() || route.meanAltitudeM() < SAID_FROM_M) {
            return null;
        }
        return new PlanAltitude(
                route.meanAltitudeM(),
                mean(route, AltitudeShare::unacclimatised),
                mean(route, AltitudeShare::acclimatised));
    }

    private static double mean(Route route, DoubleUnaryOperator shareAtM) {
        int nodes = route.course().nodes();
        double sum = 0;
        for (int node = 0; node < nodes; node++) {
            double heightM = Math.min(AltitudeShare.HIGHEST_M, route.course().altitudeM(node));
            sum += heightM < NOTHING_LOST_M ? 1 : shareAtM.applyAsDouble(heightM);
        }
        return sum / nodes;
    }
}
