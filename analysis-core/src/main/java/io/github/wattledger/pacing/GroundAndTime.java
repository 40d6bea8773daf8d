package io.github.wattledger.pacing;

import io.github.wattledger.ride.Series;
import java.util.Arrays;

/**
 * How hard each part of a race was ridden, with the ground taken out. Riders push more watts uphill than downhill, so the
 * plain power of two parts compares their hills. Here the power of a second is ground times part:
 *
 * <pre>  power of a second = power that its ground asks for × effort of its part</pre>
 *
 * <p>Both are found together by the method of marginal totals: the factors for which the modelled power of each ground, and
 * of each part, adds up to the recorded one (R. A. Bailey 1963, Proceedings of the Casualty Actuarial Society 50:4; J. Jung
 * 1968, ASTIN Bulletin 5:52; both from memory). It is solved by turns, ground from parts and parts from ground.
 */
final class GroundAndTime {
    /** Stands for a second that belongs to no ground or to no part. */
    static final int NONE = -1;

    /** A part says nothing with fewer seconds than this on ground that another part has as well. */
    static final int LEAST_SECONDS = 60;

    /** The alternation gains about a digit every few rounds; race parts share most of their ground. */
    private static final int MOST_ROUNDS = 200;

    private static final double CLOSE_ENOUGH = 1e-9;

    private static final double STEEPEST_DESCENT = -0.04;
    private static final double STEEPEST_CLIMB = 0.09;
    private static final double GRADES_PER_UNIT = 100;

    /** The grounds: bins of one percent of grade between -4 and 9 %, one for all below, and one for all above. */
    static final int GROUNDS = 15;

    private final double[] effort;
    private final int[] seconds;
    private final double[] groundW;

    private GroundAndTime(double[] effort, int[] seconds, double[] groundW) {
        this.effort = effort;
        this.seconds = seconds;
        this.groundW = groundW;
    }

    /** The ground of a grade, rise over run: 0 to {@link #GROUNDS} - 1, or {@link #NONE} for {@code NaN}. */
    static int groundOf(double grade) {
        if (Double.isNaN(grade)) {
            return NONE;
        }
        if (grade < STEEPEST_DESCENT) {
            return 0;
        }
        if (grade >= STEEPEST_CLIMB) {
            return GROUNDS - 1;
        }
        return Math.min(GROUNDS - 2, 1 + (int) Math.floor((grade - STEEPEST_DESCENT) * GRADES_PER_UNIT));
    }

    /** The work and the seconds of each ground in each part, before they are compared. */
    static final class Cells {
        private final Series watts;
        private final int[] ground;
        private final double[][] joules;
        private final int[][] count;

        /**
         * Begins with nothing.
         *
         * @param watts power for each second, watts; a second without power counts nowhere
         * @param ground the ground of each second, or {@link #NONE} to leave the second out
         * @param parts how many parts there are
         */
        Cells(Series watts, int[] ground, int parts) {
            this.watts = watts;
            this.ground = ground;
            this.joules = new double[GROUNDS][parts];
            this.count = new int[GROUNDS][parts];
        }

        /** Counts a second into a part, from 0. */
        void add(int second, int part) {
            if (ground[second] != NONE && watts.isMeasured(second)) {
                joules[ground[second]][part] += watts.get(second);
                count[ground[second]][part]++;
            }
        }

        /** Compares the parts. */
        GroundAndTime compared() {
            return GroundAndTime.of(joules, count, joules[0].length);
        }
    }

    private static GroundAndTime of(double[][] joules, int[][] count, int parts) {
        leaveOutUnshared(joules, count, parts);
        int[] seconds = new int[parts];
        for (int[] ofGround : count) {
            for (int k = 0; k < parts; k++) {
                seconds[k] += ofGround[k];
            }
        }
        double[] effort = efforts(joules, count, seconds);
        double[] groundW = new double[GROUNDS];
        for (int g = 0; g < GROUNDS; g++) {
            groundW[g] = quotient(joules[g], count[g], effort);
        }
        return new GroundAndTime(effort, seconds, groundW);
    }

    /**
     * Ground that a single part has says nothing about the others. Parts with too little shared ground go as well, which
     * can leave further ground with a single part.
     */
    private static void leaveOutUnshared(double[][] joules, int[][] count, int parts) {
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int g = 0; g < GROUNDS; g++) {
                if (sharers(count[g]) == 1) {
                    clear(joules[g], count[g]);
                    changed = true;
                }
            }
            for (int k = 0; k < parts; k++) {
                int shared = 0;
                for (int[] ofGround : count) {
                    shared += ofGround[k];
                }
                if (shared > 0 && shared < LEAST_SECONDS) {
                    for (int g = 0; g < GROUNDS; g++) {
                        joules[g][k] = 0;
                        count[g][k] = 0;
                    }
                    changed = true;
                }
            }
        }
    }

    private static int sharers(int[] count) {
        int sharers = 0;
        for (int seconds : count) {
            sharers += seconds > 0 ? 1 : 0;
        }
        return sharers;
    }

    private static void clear(double[] joules, int[] count) {
        Arrays.fill(joules, 0);
        Arrays.fill(count, 0);
    }

    private static double[] efforts(double[][] joules, int[][] count, int[] seconds) {
        double[] effort = new double[seconds.length];
        Arrays.fill(effort, 1);
        double[] groundW = new double[GROUNDS];
        double change = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS && change > CLOSE_ENOUGH; round++) {
            for (int g = 0; g < GROUNDS; g++) {
                groundW[g] = quotient(joules[g], count[g], effort);
            }
            change = 0;
            for (int k = 0; k < effort.length; k++) {
                double before = effort[k];
                effort[k] = effortOf(joules, count, groundW, k);
                change = Math.max(change, Math.abs(effort[k] - before));
            }
        }
        return scaledToMeanOne(effort, seconds);
    }

    /** Power that a ground asks for at an effort of 1, watts. */
    private static double quotient(double[] joules, int[] count, double[] effort) {
        double sum = 0;
        double weight = 0;
        for (int k = 0; k < effort.length; k++) {
            sum += joules[k];
            weight += count[k] == 0 ? 0 : count[k] * effort[k];
        }
        return sum / weight;
    }

    private static double effortOf(double[][] joules, int[][] count, double[] groundW, int part) {
        double sum = 0;
        double weight = 0;
        for (int g = 0; g < GROUNDS; g++) {
            sum += joules[g][part];
            weight += count[g][part] == 0 ? 0 : count[g][part] * groundW[g];
        }
        return sum / weight;
    }

    private static double[] scaledToMeanOne(double[] effort, int[] seconds) {
        double sum = 0;
        double weight = 0;
        for (int k = 0; k < effort.length; k++) {
            if (seconds[k] > 0) {
                sum += seconds[k] * effort[k];
                weight += seconds[k];
            }
        }
        double mean = sum / weight;
        double[] scaled = new double[effort.length];
        for (int k = 0; k < effort.length; k++) {
            scaled[k] = seconds[k] > 0 ? effort[k] / mean : Double.NaN;
        }
        return scaled;
    }

    /**
     * The effort of a part relative to the whole, 1 on average over the compared seconds; {@code NaN} where the part has
     * less than a minute on ground that another part has as well.
     */
    double effort(int part) {
        return effort[part];
    }

    /** The effort of one part over that of another; {@code NaN} where one of them is not known. */
    double ratio(int part, int over) {
        return effort[part] / effort[over];
    }

    /** Power that a ground asks for at an effort of 1, watts; {@code NaN} for ground that only one part has. */
    double groundW(int ground) {
        return groundW[ground];
    }

    /** How many seconds of a part lie on ground that another part has as well. */
    int seconds(int part) {
        return seconds[part];
    }
}
