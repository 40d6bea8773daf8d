package io.github.wattledger.course;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Median;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Gears;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Which gears a ride was ridden in, and where they did not reach. A second's gear is the recorded one, where the bicycle
 * records its teeth, otherwise the pair of chainring and cog nearest to speed over cadence and wheel (medians of five seconds),
 * within 6 %. Only pedalled seconds count. "Spun out" is the top gear above 100 rpm, "over-geared" the lowest gear under
 * 60 rpm on a grade of 3 % or more (common practice, no source).
 *
 * @param gears each gear that was used, the highest ratio first
 * @param pedalledSeconds seconds pedalled with speed and cadence known
 * @param unmatchedSeconds of these the seconds that fit no gear: a shift, a slipping wheel, a bend
 * @param spunOutSeconds seconds in the top gear above 100 rpm
 * @param overGearedSeconds seconds in the lowest gear under 60 rpm on a climb
 * @param top the highest gear there is
 * @param lowest the lowest gear there is
 * @param firstSpunOutSecond the first second spun out, or null without one
 * @param firstOverGearedSecond the first second over-geared, or null without one
 */
public record GearUse(
        List<InGear> gears,
        int pedalledSeconds,
        int unmatchedSeconds,
        int spunOutSeconds,
        int overGearedSeconds,
        Gear top,
        Gear lowest,
        @Nullable Integer firstSpunOutSecond,
        @Nullable Integer firstOverGearedSecond)
        implements Serializable {
    /** Cadence above which a rider spins out, rpm. */
    public static final double SPINNING_RPM = 100;

    /** Cadence below which a rider is over-geared on a climb, rpm. */
    public static final double GRINDING_RPM = 60;

    private static final double CLIMBING_GRADE = 0.03;
    private static final double LEAST_CADENCE_RPM = 20;
    private static final double MATCH_FRACTION = 0.06;
    private static final int MEDIAN_REACH = 2;
    private static final double SECONDS_PER_MINUTE = 60;

    /** Copies the list. */
    public GearUse {
        gears = List.copyOf(gears);
    }

    /**
     * A gear.
     *
     * @param chainringTeeth teeth of the chainring
     * @param cogTeeth teeth of the cog
     */
    public record Gear(int chainringTeeth, int cogTeeth) implements Serializable {
        /** Turns of the wheel per turn of the crank. */
        public double ratio() {
            return (double) chainringTeeth / cogTeeth;
        }
    }

    /**
     * What was ridden in a gear.
     *
     * @param gear the gear
     * @param seconds pedalled seconds
     * @param distanceM metres pedalled
     */
    public record InGear(Gear gear, int seconds, double distanceM) implements Serializable {}

    /**
     * The use of gears in a ride.
     *
     * @param course the course of this ride, or null where it leads nowhere: then no second counts as over-geared
     * @param gears the bicycle's gears
     * @return empty without speed or cadence
     */
    public static Optional<GearUse> of(Ride ride, @Nullable Course course, Gears gears) {
        if (!ride.has(Channel.SPEED) || !ride.has(Channel.CADENCE)) {
            return Optional.empty();
        }
        Count count = new Count(all(gears));
        Series cadence = ride.series(Channel.CADENCE);
        Grades grades = new Grades(ride, course);
        for (int second = 0; second < ride.seconds(); second++) {
            if (isPedalled(ride, second)) {
                int gear = gearIndex(ride, second, count.all, gears.wheelCircumferenceM());
                double speedMps = ride.series(Channel.SPEED).get(second);
                count.add(second, gear, speedMps, cadence.get(second), grades.isClimb(second));
            }
        }
        return Optional.of(count.result());
    }

    /** What has been counted of a ride so far. */
    private static final class Count {
        private final List<Gear> all;
        private final int[] seconds;
        private final double[] metres;
        private int pedalled;
        private int unmatched;
        private int spunOut;
        private int overGeared;
        private @Nullable Integer firstSpunOut;
        private @Nullable Integer firstOverGeared;

        Count(List<Gear> all) {
            this.all = all;
            seconds = new int[all.size()];
            metres = new double[all.size()];
        }

        /** @param gear which of all gears, or below 0 for none of them */
        void add(int second, int gear, double speedMps, double rpm, boolean isClimb) {
            pedalled++;
            if (gear < 0) {
                unmatched++;
                return;
            }
            seconds[gear]++;
            metres[gear] += speedMps;
            if (gear == 0 && rpm > SPINNING_RPM) {
                spunOut++;
                firstSpunOut = firstSpunOut == null ? Integer.valueOf(second) : firstSpunOut;
            }
            if (gear == all.size() - 1 && rpm < GRINDING_RPM && isClimb) {
                overGeared++;
                firstOverGeared = firstOverGeared == null ? Integer.valueOf(second) : firstOverGeared;
            }
        }

        GearUse result() {
            List<InGear> used = new ArrayList<>();
            for (int gear = 0; gear < all.size(); gear++) {
                if (seconds[gear] > 0) {
                    used.add(new InGear(all.get(gear), seconds[gear], metres[gear]));
                }
            }
            return new GearUse(
                    used,
                    pedalled,
                    unmatched,
                    spunOut,
                    overGeared,
                    all.get(0),
                    all.get(all.size() - 1),
                    firstSpunOut,
                    firstOverGeared);
        }
    }

    /**
     * How long a bicycle with other gears would have been too short or too tall for the same pedalled speeds.
     *
     * @param spunOutSeconds pedalled seconds for which its top gear would have asked for more than 100 rpm
     * @param overGearedSeconds pedalled seconds on climbs for which its lowest gear would have left less than 60 rpm
     */
    public record Served(int spunOutSeconds, int overGearedSeconds) implements Serializable {}

    /**
     * How other gears would have served on this ride, at the speeds that were ridden.
     *
     * @param course the course of this ride, or null where it leads nowhere: then no second counts as over-geared
     * @param other the other gears
     * @return empty without speed or cadence
     */
    public static Optional<Served> served(Ride ride, @Nullable Course course, Gears other) {
        if (!ride.has(Channel.SPEED) || !ride.has(Channel.CADENCE)) {
            return Optional.empty();
        }
        List<Gear> all = all(other);
        Grades grades = new Grades(ride, course);
        int spunOut = 0;
        int overGeared = 0;
        for (int second = 0; second < ride.seconds(); second++) {
            if (!isPedalled(ride, second)) {
                continue;
            }
            double wheelRpm = ride.series(Channel.SPEED).get(second) / other.wheelCircumferenceM() * SECONDS_PER_MINUTE;
            if (wheelRpm / all.get(0).ratio() > SPINNING_RPM) {
                spunOut++;
            }
            if (wheelRpm / all.get(all.size() - 1).ratio() < GRINDING_RPM && grades.isClimb(second)) {
                overGeared++;
            }
        }
        return Optional.of(new Served(spunOut, overGeared));
    }

    /** All pairs, the highest ratio first. */
    private static List<Gear> all(Gears gears) {
        List<Gear> all = new ArrayList<>();
        for (int chainring : gears.chainrings()) {
            for (int cog : gears.cogs()) {
                all.add(new Gear(chainring, cog));
            }
        }
        all.sort(Comparator.comparingDouble(Gear::ratio).reversed());
        return all;
    }

    private static boolean isPedalled(Ride ride, int second) {
        Series watts = ride.series(Channel.POWER);
        return ride.state(second) == SecondState.RIDING
                && ride.series(Channel.SPEED).get(second) > 0
                && ride.series(Channel.CADENCE).get(second) >= LEAST_CADENCE_RPM
                && !(watts.get(second) < Ride.PEDALLING_W);
    }

    private static int gearIndex(Ride ride, int second, List<Gear> all, double circumferenceM) {
        double front = ride.series(Channel.FRONT_TEETH).get(second);
        double rear = ride.series(Channel.REAR_TEETH).get(second);
        if (front > 0 && rear > 0) {
            return all.indexOf(new Gear((int) Math.round(front), (int) Math.round(rear)));
        }
        double ratio = medianRatio(ride, second, circumferenceM);
        int nearest = -1;
        double least = MATCH_FRACTION;
        for (int gear = 0; gear < all.size(); gear++) {
            double off = Math.abs(ratio / all.get(gear).ratio() - 1);
            if (off < least) {
                least = off;
                nearest = gear;
            }
        }
        return nearest;
    }

    private static double medianRatio(Ride ride, int second, double circumferenceM) {
        double[] ratios = new double[2 * MEDIAN_REACH + 1];
        int count = 0;
        int from = Math.max(0, second - MEDIAN_REACH);
        int to = Math.min(ride.seconds() - 1, second + MEDIAN_REACH);
        for (int near = from; near <= to; near++) {
            if (isPedalled(ride, near)) {
                double wheelRpm = ride.series(Channel.SPEED).get(near) / circumferenceM * SECONDS_PER_MINUTE;
                ratios[count++] = wheelRpm / ride.series(Channel.CADENCE).get(near);
            }
        }
        return Median.of(Arrays.copyOf(ratios, count));
    }

    /** Whether a second lies on a climb. */
    private static final class Grades {
        private final @Nullable Course course;
        private final Series distance;

        Grades(Ride ride, @Nullable Course course) {
            this.course = course;
            distance = ride.series(Channel.DISTANCE);
        }

        boolean isClimb(int second) {
            return course != null && course.gradeAtM(distance.get(second)) >= CLIMBING_GRADE;
        }
    }
}
