package io.github.wattledger;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.course.ClimbReview;
import io.github.wattledger.course.Course;
import io.github.wattledger.course.GearUse;
import io.github.wattledger.energy.FuelReview;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.Circumstances;
import io.github.wattledger.pacing.Company;
import io.github.wattledger.pacing.Occasion;
import io.github.wattledger.pacing.OccasionRules;
import io.github.wattledger.pacing.Opening;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.RaceLength;
import io.github.wattledger.pacing.RacedPart;
import io.github.wattledger.pacing.Thresholds;
import io.github.wattledger.plan.KeptPlan;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.RideAbility;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Gears;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.rig.RigEstimate;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** The front door: a file, its bytes, a stream, a recording or a ride goes in, a review comes out. Stateless and safe for many threads. */
public final class Reviewer {
    private Reviewer() {}

    /**
     * Reviews a recorded file.
     *
     * @throws UnreadableRideException when nothing could be read, or the file holds no cycling, or not the session asked
     *     for; its message is one line for people that begins with the file
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     * @throws CancelledException when the thread was interrupted, or the time limit of the options was reached
     */
    public static RideReview review(Path file, Rider rider, ReviewOptions options) throws UnreadableRideException {
        return review(RideInput.of(file), rider, options);
    }

    /**
     * Reviews a recorded file, its bytes, or a stream of them. All three give the same review.
     *
     * @throws UnreadableRideException when nothing could be read, or it holds no cycling, or not the session asked for; its
     *     message is one line for people that begins with the name of the input
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     * @throws CancelledException when the thread was interrupted, or the time limit of the options was reached
     */
    public static RideReview review(RideInput input, Rider rider, ReviewOptions options)
            throws UnreadableRideException {
        Cancellation cancellation = Cancellation.within(options.timeLimit());
        OpenedRide opened =
                OpenedRide.of(input, options.reading(), options.selection().sessionIndex(), cancellation);
        return review(opened, rider, options, null, cancellation);
    }

    /**
     * Reviews a recording that is already in memory.
     *
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     * @throws CancelledException when the thread was interrupted, or the time limit of the options was reached
     */
    public static RideReview review(Recording recording, Rider rider, ReviewOptions options) {
        Cancellation cancellation = Cancellation.within(options.timeLimit());
        return review(OpenedRide.of(recording), rider, options, null, cancellation);
    }

    /**
     * Reviews a ride that is already clean.
     *
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     * @throws CancelledException when the thread was interrupted, or the time limit of the options was reached
     */
    public static RideReview review(Ride ride, Rider rider, ReviewOptions options) {
        return review(OpenedRide.of(ride, RecordingDevice.UNKNOWN, null), rider, options);
    }

    /**
     * Reviews a ride that was opened before.
     *
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     * @throws CancelledException when the thread was interrupted, or the time limit of the options was reached
     */
    public static RideReview review(OpenedRide opened, Rider rider, ReviewOptions options) {
        return review(opened, rider, options, null);
    }

    /**
     * Reviews a ride that was opened before, with an estimate of its drag area and rolling resistance that was made when
     * the ride still carried more than now, for instance its positions.
     *
     * @param estimate the estimate, made with the mass of rider and bicycle that {@link RiderOnDay#rig} gives on the day of the ride, or
     *     null to estimate from the ride
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     * @throws CancelledException when the thread was interrupted, or the time limit of the options was reached
     */
    public static RideReview review(
            OpenedRide opened, Rider rider, ReviewOptions options, @Nullable Outcome<RigEstimate> estimate) {
        return review(opened, rider, options, estimate, Cancellation.within(options.timeLimit()));
    }

    private static RideReview review(
            OpenedRide opened,
            Rider rider,
            ReviewOptions asked,
            @Nullable Outcome<RigEstimate> estimate,
            Cancellation cancellation) {
        cancellation.check();
        requireSession(asked.selection().sessionIndex(), opened.source().sessionIndex());
        Ride whole = opened.ride();
        ReviewOptions options = asked.withNotes(asked.notes().within(whole.seconds()));
        requireWithin(whole, options.company());
        Interval selected = options.selection().secondsOf(whole);
        Ride ride = whole.part(selected);
        Course course = Course.of(ride).orElse(null);
        MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
        cancellation.check();
        RiderOnDay ofRides = opened.riderOnDay(rider, options.zone(), options.ownRides());
        boolean choosesPart = options.selection().choosesPart();
        RiderOnDay known = ThresholdTrust.withoutRefutedOwnRides(
                ofRides, opened.device(), ride, part(ride, choosesPart, ofRides), curve);
        RideAbility rideAbility = RideAbility.of(ride, curve, known.power());
        cancellation.check();
        RiderOnDay onDay = known.withEstimatedThresholdPowerW(rideAbility.estimatedThresholdPowerW());
        RideLoad load = RideLoad.of(
                ride,
                onDay.thresholdPowerW(),
                onDay.thresholdHeartRateBpm(),
                onDay.powerZones(),
                onDay.heartRateZones());
        RacedPart part = part(ride, choosesPart, onDay);
        Thresholds thresholds = ThresholdTrust.of(onDay, opened.device(), ride, part, curve);
        RaceLength length =
                choosesPart ? RaceLength.ofPart(whole, ride, onDay.thresholdPowerW()) : RaceLength.of(ride, part);
        Ability ability = rideAbility.over(length.movingSeconds(), thresholds.knownPowerW());
        Occasion occasion = OccasionRules.decide(
                new Circumstances(
                        ride,
                        part.interval(),
                        opened.setting().isIndoorSport(),
                        opened.setting().hasPositions(),
                        opened.setting().sports(),
                        thresholds.knownPowerW() != null,
                        ability.sustainablePowerW(),
                        options.effort(),
                        onDay.isRaceDay()),
                options.limits());
        PacingReview pacing = PacingReview.of(
                ride,
                course,
                part,
                selected.fromSecond(),
                thresholds,
                ability,
                opening(length, options.plan()),
                occasion,
                options.limits(),
                rig(onDay, ride, course, estimate),
                rigOfOtherRides(onDay, ride, options.ownRides()),
                options.notes(),
                options.companyOrNoted(),
                options.detectors(),
                cancellation);
        return new RideReview(
                opened.source(),
                onDay,
                opened.quality()
                        .withNotes(ReviewNotes.of(selected, whole.seconds(), part, onDay, thresholds.power(), pacing)),
                load,
                opened.measuredTotals(),
                curve,
                ability,
                pacing,
                whole,
                selected,
                ClimbReview.of(ride, course, selected.fromSecond(), onDay.massKg()),
                gearUse(ride, course, rider.gears()),
                onDay.mayBeUnder18()
                        ? null
                        : FuelReview.of(whole, selected, pacing, thresholds.knownPowerW(), options.intakeOrNoted())
                                .orElse(null),
                options.notes());
    }

    /** A ride that was planned is taken to begin where its course does. */
    private static Opening opening(RaceLength length, @Nullable KeptPlan plan) {
        return plan == null ? length.opening() : plan.opening();
    }

    private static void requireWithin(Ride ride, Company company) {
        for (Interval bunch : company.bunches()) {
            if (bunch.toSecond() > ride.seconds()) {
                throw new IllegalArgumentException("the bunch " + bunch + " ends after the recording, which lasts "
                        + Interval.clock(ride.seconds()) + "; give a time within it");
            }
        }
    }

    private static void requireSession(@Nullable Integer asked, int opened) {
        if (asked != null && asked != opened) {
            throw new IllegalArgumentException("session " + (asked + 1) + " was asked for, but session " + (opened + 1)
                    + " is open; choose the session when the file is read");
        }
    }

    private static RacedPart part(Ride ride, boolean choosesPart, RiderOnDay onDay) {
        return choosesPart ? RacedPart.whole(ride) : RacedPart.find(ride, onDay.thresholdPowerW());
    }

    private static RigChoice rig(
            RiderOnDay onDay, Ride ride, @Nullable Course course, @Nullable Outcome<RigEstimate> estimate) {
        RigChoice rig = onDay.rig(Position.HOODS);
        return estimate == null ? rig.estimatedFrom(ride, course) : rig.estimatedBy(estimate);
    }

    /** What was given, otherwise what the rider's other rides show; asked only where a bunch can be looked for. */
    private static RigChoice rigOfOtherRides(RiderOnDay onDay, Ride ride, @Nullable OwnRides ownRides) {
        RigChoice given = onDay.rig(Position.HOODS);
        return ownRides == null || !ride.has(Channel.LATITUDE)
                ? given
                : ownRides.traitsOn(onDay.day()).fill(given);
    }

    private static @Nullable GearUse gearUse(Ride ride, @Nullable Course course, @Nullable Gears gears) {
        return gears == null ? null : GearUse.of(ride, course, gears).orElse(null);
    }
}
