package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.power.Ability;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.RideNotes;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Races made by hand for the detectors: threshold 250 W and 165 beats, target 200 W. */
final class RaceByHand {
    static final double THRESHOLD_W = 250;
    static final double TARGET_W = 200;
    static final double CP_W = 260;
    static final int HOUR = 3600;
    static final double SPEED_MPS = 5;
    static final Thresholds THRESHOLDS = new Thresholds(known(THRESHOLD_W), 165.0, null);

    private RaceByHand() {}

    static KnownThreshold known(double watts) {
        return new KnownThreshold(watts, null, Evidence.none());
    }

    static KnownThreshold estimated(double watts) {
        return new KnownThreshold(watts, KnownThreshold.Doubt.ESTIMATED_FROM_RIDE, Evidence.none());
    }

    static Ability ability(@Nullable Double targetW) {
        return new Ability(null, null, Ability.Source.GUIDE, null, targetW, 4 * HOUR, null);
    }

    /** Critical power 260 W and W' 20 kJ, as given. */
    static Ability spending() {
        return new Ability(CP_W, 20.0, Ability.Source.GIVEN_AND_GUIDE, null, TARGET_W, 4 * HOUR, null);
    }

    static Race race(Ride ride, Thresholds thresholds, Ability ability, JudgementLimits limits) {
        return race(ride, 0, thresholds, ability, limits, RideNotes.NONE);
    }

    /** With notes, and as a part of a recording that begins so many seconds earlier. */
    static Race race(Ride ride, int offsetSeconds, RideNotes notes) {
        return race(ride, offsetSeconds, THRESHOLDS, ability(TARGET_W), JudgementLimits.USUAL, notes);
    }

    /** With a plan that allows so many watts for the opening. */
    static Race planned(double[] watts, double capW, Thresholds thresholds, @Nullable Double targetW) {
        Opening opening = new Opening((int) Opening.secondsOf(watts.length), capW);
        return race(
                Ride.ofWatts(watts), 0, thresholds, ability(targetW), JudgementLimits.USUAL, RideNotes.NONE, opening);
    }

    private static Race race(
            Ride ride,
            int offsetSeconds,
            Thresholds thresholds,
            Ability ability,
            JudgementLimits limits,
            RideNotes notes) {
        Opening opening = Opening.unplanned((int) Opening.secondsOf(ride.countSeconds(SecondState.RIDING)));
        return race(ride, offsetSeconds, thresholds, ability, limits, notes, opening);
    }

    private static Race race(
            Ride ride,
            int offsetSeconds,
            Thresholds thresholds,
            Ability ability,
            JudgementLimits limits,
            RideNotes notes,
            Opening opening) {
        return new Race(
                ride,
                offsetSeconds,
                thresholds,
                ability,
                limits,
                null,
                Course.of(ride).orElse(null),
                opening,
                notes);
    }

    static Race race(Ride ride, Thresholds thresholds) {
        return race(ride, thresholds, ability(TARGET_W), JudgementLimits.USUAL);
    }

    static Race race(Ride ride, Ability ability) {
        return race(ride, THRESHOLDS, ability, JudgementLimits.USUAL);
    }

    static Race race(Ride ride) {
        return race(ride, ability(TARGET_W));
    }

    static Race race(double[] watts) {
        return race(Ride.ofWatts(watts));
    }

    static double[] steady(int seconds, double watts) {
        double[] all = new double[seconds];
        Arrays.fill(all, watts);
        return all;
    }

    static Ride.Builder ride(int seconds, IntToDoubleFunction watts, IntToDoubleFunction bpm) {
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.POWER, Series.generate(seconds, watts))
                .channel(Channel.HEART_RATE, Series.generate(seconds, bpm));
    }

    /** A ride at 5 m/s over a road whose grade, rise over run, is known for each second. */
    static Ride onRoad(int seconds, IntToDoubleFunction watts, IntToDoubleFunction grade) {
        double[] altitude = new double[seconds];
        for (int second = 1; second < seconds; second++) {
            altitude[second] = altitude[second - 1] + SPEED_MPS * grade.applyAsDouble(second);
        }
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.POWER, Series.generate(seconds, watts))
                .channel(Channel.SPEED, Series.generate(seconds, second -> SPEED_MPS))
                .channel(Channel.DISTANCE, Series.generate(seconds, second -> SPEED_MPS * second))
                .channel(Channel.ALTITUDE, Series.of(altitude))
                .build();
    }

    static Found found(Detector detector, Race race) {
        return detector.detect(race).orElseThrow();
    }

    /** The stretches that the repair of a finding changes. */
    static List<Repair.Stretch> changes(Found found) {
        return ((Repair) found.price()).stretches();
    }

    static List<Interval> repaired(Found found) {
        return changes(found).stream().map(Repair.Stretch::when).toList();
    }

    static double evidence(Found finding, String name) {
        return finding.evidence().get(name).orElseThrow();
    }
}
