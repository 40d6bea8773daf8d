package io.github.wattledger.course;

import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Series;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The altitudes of a course file over distance, with spikes taken out and noise smoothed. */
final class RouteAltitude {
    /** Of points closer together than this on average a spike of one or two is no hill, metres. */
    private static final double DENSE_M = 50;

    private static final int MEDIAN_REACH = 2;

    private final double[] distanceM;
    private final double[] altitudeM;

    private RouteAltitude(double[] distanceM, double[] altitudeM) {
        this.distanceM = distanceM;
        this.altitudeM = altitudeM;
    }

    /** The altitudes of a line; null where it has none. */
    static @Nullable RouteAltitude of(RouteLine line) {
        int points = line.distanceM().size();
        double[] distance = new double[points];
        double[] altitude = new double[points];
        int known = 0;
        for (int i = 0; i < points; i++) {
            if (line.altitudeM().isMeasured(i)) {
                distance[known] = line.distanceM().get(i);
                altitude[known] = line.altitudeM().get(i);
                known++;
            }
        }
        if (known == 0) {
            return null;
        }
        double[] used = Arrays.copyOf(altitude, known);
        boolean isDense = line.lengthM() / known <= DENSE_M;
        return new RouteAltitude(Arrays.copyOf(distance, known), isDense ? medians(used) : used);
    }

    private static double[] medians(double[] values) {
        double[] medians = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int reach = Math.min(MEDIAN_REACH, Math.min(i, values.length - 1 - i));
            double[] around = Arrays.copyOfRange(values, i - reach, i + reach + 1);
            Arrays.sort(around);
            medians[i] = around[reach];
        }
        return medians;
    }

    /** Altitudes of nodes at equal distances from 0 on: at each the value of a straight line fitted over the reach. */
    Series smoothed(int nodes, double stepM, double reachM) {
        double[] grid = resampled(nodes, stepM);
        int reach = Math.max(1, (int) Math.round(reachM / stepM));
        return Series.generate(nodes, node -> fitted(grid, node, reach));
    }

    private double[] resampled(int nodes, double stepM) {
        double[] grid = new double[nodes];
        int point = 0;
        int last = distanceM.length - 1;
        for (int node = 0; node < nodes; node++) {
            double at = node * stepM;
            while (point < last && distanceM[point + 1] < at) {
                point++;
            }
            if (point == last || at <= distanceM[point]) {
                grid[node] = altitudeM[point];
            } else {
                double share = (at - distanceM[point]) / (distanceM[point + 1] - distanceM[point]);
                grid[node] = altitudeM[point] + share * (altitudeM[point + 1] - altitudeM[point]);
            }
        }
        return grid;
    }

    private static double fitted(double[] grid, int node, int reach) {
        int from = Math.max(0, node - reach);
        int to = Math.min(grid.length - 1, node + reach);
        double middle = (from + to) / 2.0;
        double mean = 0;
        double product = 0;
        double square = 0;
        for (int i = from; i <= to; i++) {
            mean += grid[i];
            product += (i - middle) * grid[i];
            square += (i - middle) * (i - middle);
        }
        mean /= to - from + 1;
        return square > 0 ? mean + (node - middle) * product / square : mean;
    }
}
