package io.github.wattledger.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds when one ride passed the points of another's course. A passage is the nearest approach to a point, up to 60 m
 * away, in about the same direction. A course that crosses itself, or a lap ridden several times, passes a point more
 * than once. Of all chains of passages in rising time the one is taken that leaves out the fewest points and whose
 * distances agree best with those of the course.
 */
final class CourseMatch {
    /** A passage is at most this far away, metres: two receivers and the width of a road. Own choice. */
    private static final double REACH_M = 60;

    /** Headings agree when they differ by about 70 degrees at most: corners are cut differently. Own choice. */
    private static final double LEAST_COSINE = 0.35;

    /** The road between two recorded points is known when they are no further apart than this, metres. */
    private static final double LONGEST_PIECE_M = 300;

    private static final double LONGEST_PIECE_SECONDS = 60;
    private static final double STANDSTILL_M = 30;

    /** What leaving out a point costs; the other costs are measured by it. */
    private static final double SKIP_COST = 1;

    /** The cost of each piece of the course by which the distances differ from one passage to the next. */
    private static final double DETOUR_COST = 0.5;

    /** The cost of a passage at the end of the reach. */
    private static final double OFFSET_COST = 0.2;

    /** This cost decides between two equal chains: the one that begins nearer to the distance of the course is taken. */
    private static final double LATE_START_COST = 1e-4;

    private static final int MOST_CHAINS = 64;

    /** Points of a course with the direction in which they are passed; {@code NaN} where they are not known. */
    static final class Nodes {
        private final double stepM;
        private final double startM;
        private final double[] x;
        private final double[] y;
        private final double[] headingX;
        private final double[] headingY;

        private Nodes(double stepM, double startM, double[] x, double[] y, double[] headingX, double[] headingY) {
            this.stepM = stepM;
            this.startM = startM;
            this.x = x;
            this.y = y;
            this.headingX = headingX;
            this.headingY = headingY;
        }

        int count() {
            return x.length;
        }

        double distanceM(int node) {
            return startM + node * stepM;
        }

        /** Points along a track, at equal distances. */
        static Nodes along(Track track, double startM, double stepM, int count) {
            double[] x = new double[count];
            double[] y = new double[count];
            double[] headingX = new double[count];
            double[] headingY = new double[count];
            for (int node = 0; node < count; node++) {
                double at = startM + node * stepM;
                int before = Math.min(track.lastAtOrBefore(at), track.count - 2);
                boolean known = before >= 0
                        && track.isJoined(before, LONGEST_PIECE_M, LONGEST_PIECE_SECONDS, STANDSTILL_M)
                        && at - track.odometerM[before + 1] <= STANDSTILL_M;
                if (!known) {
                    x[node] = Double.NaN;
                    y[node] = Double.NaN;
                    continue;
                }
                double length = track.odometerM[before + 1] - track.odometerM[before];
                double share = length > 0 ? Math.min(1, (at - track.odometerM[before]) / length) : 0;
                x[node] = between(track.x, before, share);
                y[node] = between(track.y, before, share);
                headingX[node] = between(track.headingX, before, share);
                headingY[node] = between(track.headingY, before, share);
            }
            return new Nodes(stepM, startM, x, y, headingX, headingY);
        }

        /** These points passed in the opposite direction. */
        Nodes reversed() {
            double[] backX = Arrays.stream(headingX).map(each -> -each).toArray();
            double[] backY = Arrays.stream(headingY).map(each -> -each).toArray();
            return new Nodes(stepM, startM, x, y, backX, backY);
        }
    }

    private record Passage(double second, double odometerM, double offsetM) {}

    /** A chain of passages by its last one. */
    private record Chain(
            int node,
            Passage passage,
            double cost,
            @Nullable Chain before) {}

    private final Nodes nodes;
    private final Track track;

    private CourseMatch(Nodes nodes, Track track) {
        this.nodes = nodes;
        this.track = track;
    }

    /** The second at which a ride passes each point, rising; {@code NaN} where it does not. */
    static double[] seconds(Nodes nodes, Track track) {
        double[] seconds = new double[nodes.count()];
        Arrays.fill(seconds, Double.NaN);
        Chain link = new CourseMatch(nodes, track).best();
        while (link != null) {
            seconds[link.node] = link.passage.second;
            link = link.before;
        }
        return seconds;
    }

    /** How many points a ride passes at all, in whatever order. */
    static int passed(Nodes nodes, Track track) {
        CourseMatch match = new CourseMatch(nodes, track);
        int passed = 0;
        for (int node = 0; node < nodes.count(); node++) {
            passed += match.passages(node).isEmpty() ? 0 : 1;
        }
        return passed;
    }

    private @Nullable Chain best() {
        List<Chain> chains = new ArrayList<>();
        for (int node = 0; node < nodes.count(); node++) {
            List<Chain> next = new ArrayList<>();
            for (Passage passage : passages(node)) {
                next.add(cheapest(node, passage, chains));
            }
            for (Chain chain : chains) {
                next.add(new Chain(chain.node, chain.passage, chain.cost + SKIP_COST, chain.before));
            }
            next.sort(Comparator.comparingDouble(Chain::cost));
            chains = next.size() > MOST_CHAINS ? new ArrayList<>(next.subList(0, MOST_CHAINS)) : next;
        }
        return chains.isEmpty() ? null : chains.get(0);
    }

    private Chain cheapest(int node, Passage passage, List<Chain> chains) {
        double own = OFFSET_COST * passage.offsetM / REACH_M;
        double late = Math.abs(passage.odometerM - nodes.distanceM(node)) / nodes.stepM * LATE_START_COST;
        Chain best = new Chain(node, passage, node * SKIP_COST + late + own, null);
        for (Chain chain : chains) {
            if (chain.passage.second < passage.second) {
                double ridden = passage.odometerM - chain.passage.odometerM;
                double course = (node - chain.node) * nodes.stepM;
                double cost = chain.cost + own + DETOUR_COST * Math.abs(ridden - course) / nodes.stepM;
                best = cost < best.cost ? new Chain(node, passage, cost, chain) : best;
            }
        }
        return best;
    }

    private List<Passage> passages(int node) {
        List<Passage> passages = new ArrayList<>();
        double nodeX = nodes.x[node];
        double nodeY = nodes.y[node];
        if (Double.isNaN(nodeX)) {
            return passages;
        }
        Passage nearest = null;
        int k = 0;
        while (k < track.count - 1) {
            double away = Math.hypot(track.x[k] - nodeX, track.y[k] - nodeY);
            double spare = away - REACH_M;
            if (spare > 0 && track.pathM[k] + spare > track.pathM[k + 1]) {
                // No point can be within reach before the track is as long as the way to it.
                if (nearest != null) {
                    passages.add(nearest);
                    nearest = null;
                }
                k = firstBeyond(k + 1, track.pathM[k] + spare) - 1;
                continue;
            }
            Passage passage = passage(node, k);
            if (passage == null) {
                if (nearest != null) {
                    passages.add(nearest);
                    nearest = null;
                }
            } else if (nearest == null || passage.offsetM < nearest.offsetM) {
                nearest = passage;
            }
            k++;
        }
        if (nearest != null) {
            passages.add(nearest);
        }
        return passages;
    }

    /** The first point, not before {@code from}, up to which the track is at least so long; the last one at most. */
    private int firstBeyond(int from, double lengthM) {
        int found = Arrays.binarySearch(track.pathM, from, track.count, lengthM);
        int first = found >= 0 ? found : -found - 1;
        return Math.max(from + 1, first);
    }

    /** The nearest approach within one piece of the track, or null when it is not a passage. */
    private @Nullable Passage passage(int node, int k) {
        double cosine = (track.headingX[k] * nodes.headingX[node] + track.headingY[k] * nodes.headingY[node])
                / (Math.hypot(track.headingX[k], track.headingY[k])
                        * Math.hypot(nodes.headingX[node], nodes.headingY[node]));
        if (!(cosine >= LEAST_COSINE) || !track.isJoined(k, LONGEST_PIECE_M, LONGEST_PIECE_SECONDS, STANDSTILL_M)) {
            return null;
        }
        double dx = track.x[k + 1] - track.x[k];
        double dy = track.y[k + 1] - track.y[k];
        double square = dx * dx + dy * dy;
        double along = (nodes.x[node] - track.x[k]) * dx + (nodes.y[node] - track.y[k]) * dy;
        double share = square > 0 ? Math.min(1, Math.max(0, along / square)) : 0;
        double offset = Math.hypot(track.x[k] + share * dx - nodes.x[node], track.y[k] + share * dy - nodes.y[node]);
        return offset > REACH_M
                ? null
                : new Passage(between(track.second, k, share), between(track.odometerM, k, share), offset);
    }

    private static double between(double[] values, int k, double share) {
        return values[k] + (values[k + 1] - values[k]) * share;
    }
}
