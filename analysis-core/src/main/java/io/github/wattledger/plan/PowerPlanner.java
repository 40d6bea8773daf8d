package io.github.wattledger.plan;

import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.RoadLoad;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Which power to ride where, so that a course takes the least time for a given effort. The effort is the mean over time of
 * power to an exponent; with 4 it is the normalized power of steady pieces.
 *
 * <p>For each piece the best power P has the same price c = P^n (n - e) / e, where e is how much speed answers to power,
 * in percent for percent: nearly 1 on a steep climb, a third against air alone. So one number, the price, decides the whole
 * course, and bisection finds the one that gives the effort asked for. Derived from the condition of the optimum; compared
 * with Atkinson, Peacock and Passfield 2007, J Sports Sci 25:1001-1009.
 *
 * <p>Immutable and safe for many threads.
 */
public final class PowerPlanner {
    /** The exponent of normalized power. */
    public static final double USUAL_EXPONENT = 4;

    private static final int MOST_STEPS = 200;
    private static final int HALVINGS = 5;
    private static final int MOST_CHORDS = 60;
    private static final double TOLERANCE = 1e-13;

    private final List<PiecePower> pieces;
    private final double exponent;

    /**
     * A planner for a course.
     *
     * @param pieces the course, one piece or more
     * @param load the rider and the bicycle in the air of the day
     * @param limits between which powers and up to which speed it is ridden
     * @param exponent the exponent of the effort, 1 or more
     * @throws IllegalArgumentException when there is no piece or the exponent is below 1
     */
    public PowerPlanner(List<RoadPiece> pieces, RoadLoad load, PowerLimits limits, double exponent) {
        this(pieces, Collections.nCopies(pieces.size(), load), limits, exponent);
    }

    /**
     * A planner for a course whose surface changes.
     *
     * @param loads the rider and the bicycle on each piece, as many as pieces
     * @throws IllegalArgumentException when there is no piece, their numbers differ or the exponent is below 1
     */
    PowerPlanner(List<RoadPiece> pieces, List<RoadLoad> loads, PowerLimits limits, double exponent) {
        if (pieces.isEmpty() || loads.size() != pieces.size() || !(exponent >= 1)) {
            throw new IllegalArgumentException(
                    pieces.size() + " pieces with exponent " + exponent + ", expected one or more with 1 or more");
        }
        List<PiecePower> powers = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            powers.add(new PiecePower(loads.get(i), pieces.get(i), limits));
        }
        this.pieces = List.copyOf(powers);
        this.exponent = exponent;
    }

    /**
     * The powers that take the least time at an effort. Where the limits do not allow so much or so little effort, they
     * give the nearest that they allow: compare {@link PowerByPiece#effortW()}.
     *
     * @param effortW the effort, watts, above 0
     * @throws IllegalArgumentException when the effort is not above 0
     */
    public PowerByPiece best(double effortW) {
        requireAboveZero(effortW);
        double low = Math.log(1e-6);
        double high = Math.log(1e6);
        double atLow = offBy(low, effortW);
        double atHigh = offBy(high, effortW);
        if (atLow >= 0 || atHigh <= 0) {
            return atPrice(Math.exp(atLow >= 0 ? low : high), effortW);
        }
        /*
         * Effort rises with the price. Where the limits hold it is level, so halving comes first; then the chord of the
         * logarithms, with the standing end's value halved (the Illinois rule), finds the root in a few steps.
         */
        int side = 0;
        for (int step = 0; step < MOST_STEPS && high - low > TOLERANCE; step++) {
            boolean halving = step < HALVINGS || step > MOST_CHORDS;
            double next = halving ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
            double atNext = offBy(next, effortW);
            if (Math.abs(atNext) < TOLERANCE) {
                return atPrice(Math.exp(next), effortW);
            }
            if (atNext < 0) {
                low = next;
                atLow = atNext;
                atHigh *= side < 0 && !halving ? 0.5 : 1;
                side = -1;
            } else {
                high = next;
                atHigh = atNext;
                atLow *= side > 0 && !halving ? 0.5 : 1;
                side = 1;
            }
        }
        return atPrice(Math.exp((low + high) / 2), effortW);
    }

    private double offBy(double logPrice, double effortW) {
        return Math.log(atPrice(Math.exp(logPrice), effortW).effortW() / effortW);
    }

    /**
     * The course at one power throughout, within the limits, so that the effort comes out.
     *
     * @param effortW the effort, watts, above 0
     * @throws IllegalArgumentException when the effort is not above 0
     */
    public PowerByPiece constant(double effortW) {
        requireAboveZero(effortW);
        double low = 0;
        double high = 4 * effortW;
        for (int step = 0; step < MOST_STEPS && high - low > TOLERANCE * effortW; step++) {
            double middle = (low + high) / 2;
            if (atPower(middle).effortW() < effortW) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return atPower((low + high) / 2);
    }

    /**
     * The course at given powers, each held within the limits.
     *
     * @param watts a power for each piece, watts, 0 or more
     * @throws IllegalArgumentException when there are not as many powers as pieces, or one is below 0
     */
    public PowerByPiece ridden(Series watts) {
        if (watts.size() != pieces.size()) {
            throw new IllegalArgumentException(watts.size() + " powers for " + pieces.size() + " pieces");
        }
        double[] speeds = new double[pieces.size()];
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = pieces.get(i).speedMps(watts.get(i));
        }
        return summed(speeds);
    }

    private PowerByPiece atPrice(double price, double scaleW) {
        double[] speeds = new double[pieces.size()];
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = pieces.get(i).bestSpeedMps(price, exponent, scaleW);
        }
        return summed(speeds);
    }

    private PowerByPiece atPower(double powerW) {
        return ridden(Series.generate(pieces.size(), piece -> powerW));
    }

    private PowerByPiece summed(double[] speeds) {
        double[] watts = new double[speeds.length];
        double seconds = 0;
        double workJ = 0;
        double highestW = 0;
        for (int i = 0; i < speeds.length; i++) {
            watts[i] = pieces.get(i).powerW(speeds[i]);
            double pieceSeconds = pieces.get(i).lengthM() / speeds[i];
            seconds += pieceSeconds;
            workJ += pieceSeconds * watts[i];
            highestW = Math.max(highestW, watts[i]);
        }
        double sum = 0;
        for (int i = 0; i < speeds.length && highestW > 0; i++) {
            sum += pieces.get(i).lengthM() / speeds[i] * Math.pow(watts[i] / highestW, exponent);
        }
        double effortW = highestW * Math.pow(sum / seconds, 1 / exponent);
        return new PowerByPiece(Series.of(watts), Series.of(speeds), seconds, effortW, workJ / seconds);
    }

    private static void requireAboveZero(double effortW) {
        if (!(effortW > 0) || Double.isInfinite(effortW)) {
            throw new IllegalArgumentException("effortW " + effortW + ", expected above 0");
        }
    }
}
