package io.github.wattledger.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Route;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.history.PastRide;
import io.github.wattledger.history.RideTraits;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.power.HeartLine;
import io.github.wattledger.power.RideAbility;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.ThresholdBasis;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.rig.RoadLoad;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class RacePlanTest {
    private static final LocalDate DAY = LocalDate.of(2026, 8, 30);

    private final RacePlan hilly = RacePlan.of(PlanCourses.hilly(), PlanCourses.RIDER, PlanOptions.DEFAULT);

    /** The definition of the guide, threshold x hours^-0.16, at the time that the plan itself takes. */
    @Test
    void theTargetIsWhatCanBeHeldForTheTimeThatResults() {
        double hours = hilly.moving().seconds() / 3600;
        assertThat(hilly.target().watts()).isCloseTo(250 * Math.pow(hours, -0.16), within(1.0));
        assertThat(hilly.target().standing()).isEqualTo(PlanTarget.Standing.WITHIN);
    }

    @Test
    void capsAreMultiplesOfFiveAndRiseWithTheGround() {
        assertThat(hilly.caps()).hasSizeGreaterThanOrEqualTo(4);
        double before = -1;
        for (GroundCap cap : hilly.caps()) {
            assertThat(cap.capW() % 5).isZero();
            assertThat(cap.capW()).isGreaterThanOrEqualTo(before).isLessThanOrEqualTo(0.95 * 250 + 2.5);
            before = cap.capW();
        }
        assertThat(hilly.caps().stream().mapToDouble(GroundCap::lengthM).sum()).isCloseTo(160_000, within(1.0));
    }

    /** Gains at equal mean of P^4 over long courses: flat nothing, hilly 1.9 % and at most 2.9 % (this project's methods). */
    @Test
    void aPlanGainsOnHillsAndNothingOnTheFlat() {
        double share = hilly.gainMinutes() * 60 / hilly.moving().seconds();
        assertThat(share).isBetween(0.005, 0.03);
        assertThat(hilly.lowGainMinutes()).isLessThan(hilly.gainMinutes());
        assertThat(hilly.highGainMinutes()).isGreaterThan(hilly.gainMinutes());
        RacePlan flat = RacePlan.of(PlanCourses.flat(), PlanCourses.RIDER, PlanOptions.DEFAULT);
        assertThat(flat.caps())
                .singleElement()
                .satisfies(cap -> assertThat(cap.ground()).isEqualTo(Ground.LEVEL));
        assertThat(flat.gainMinutes()).isCloseTo(0, within(0.01));
    }

    /**
     * An opening sixth at 1.1, 1.2 and 1.3 of the plan costs 0.8, 3.2 and 7.9 min on a hilly course of 160 km at the same
     * normalized power (this project's methods, another course): within half and twice of it, and rising faster than the
     * excess.
     */
    @Test
    void anOverHardOpeningCostsMoreThanInProportion() {
        List<PricedMistake> openings = hilly.mistakes().stream()
                .filter(each -> each.kind() == PricedMistake.Kind.OVER_HARD_OPENING)
                .toList();
        assertThat(openings).extracting(PricedMistake::amount).containsExactly(1.1, 1.2, 1.3);
        assertThat(openings.get(0).minutes()).isBetween(0.4, 1.6);
        assertThat(openings.get(1).minutes()).isBetween(1.6, 6.4);
        assertThat(openings.get(2).minutes()).isBetween(4.0, 15.8);
        assertThat(openings.get(2).minutes())
                .isGreaterThan(3 * Objects.requireNonNull(openings.get(0).minutes()));
        openings.forEach(each -> assertThat(Objects.requireNonNull(each.lowMinutes()))
                .isLessThanOrEqualTo(Objects.requireNonNull(each.highMinutes())));
    }

    @Test
    void tenMinutesOfStopsCostTenMinutes() {
        assertThat(hilly.mistakes())
                .filteredOn(each -> each.kind() == PricedMistake.Kind.LONGER_STOPS)
                .singleElement()
                .satisfies(each -> assertThat(each.minutes()).isEqualTo(10));
    }

    /** From the definition of the price: what leaves under six tenths of the plan's power for the rest has none. */
    @Test
    void climbsAtThresholdCostTimeOrMoreThanTheRestCanMakeUpFor() {
        assertThat(hilly.mistakes())
                .filteredOn(each -> each.kind() == PricedMistake.Kind.CLIMBS_AT_THRESHOLD)
                .isNotEmpty()
                .allSatisfy(each -> {
                    assertThat(each.lowMinutes() == null || each.lowMinutes() > 0)
                            .isTrue();
                    assertThat(each.highMinutes() == null
                                    || each.highMinutes() < hilly.moving().seconds() / 60 / 4)
                            .as("an hour and a half lost in six hours is no price")
                            .isTrue();
                });
    }

    /** A goal holds stops too; the power that it asks for is compared with what the rider can hold. */
    @Test
    void aGoalTimeAsksForItsPower() {
        int goal = (int) Math.round(0.9 * hilly.moving().seconds()) + 600;
        RacePlan plan = RacePlan.of(
                PlanCourses.hilly(),
                PlanCourses.RIDER,
                PlanOptions.DEFAULT.withGoalSeconds(goal).withStoppedSeconds(600));
        assertThat(plan.total().seconds()).isCloseTo(goal, within(0.005 * goal));
        assertThat(plan.target().watts()).isGreaterThan(hilly.target().watts());
        assertThat(plan.target().standing()).isEqualTo(PlanTarget.Standing.ABOVE);
    }

    @Test
    void aTargetBeyondEveryCapIsLimitedAndSaysSo() {
        RacePlan plan = RacePlan.of(PlanCourses.flat(), PlanCourses.RIDER, PlanOptions.DEFAULT.withTargetW(300.0));
        assertThat(plan.target().isLimited()).isTrue();
        assertThat(plan.target().watts()).isLessThanOrEqualTo(0.95 * 250 + 0.1);
    }

    /** Wind on a loop only ever costs. */
    @Test
    void anUnknownWindWidensTheRangeUpwardsOnALoop() {
        PlanInfluence wind = influence(hilly, PlanInfluence.Input.WIND);
        assertThat(wind.fasterSeconds()).isZero();
        assertThat(wind.slowerSeconds() / hilly.moving().seconds()).isBetween(0.01, 0.06);
    }

    @Test
    void theRangeIsTheRootOfTheSquares() {
        double squares = 0;
        for (PlanInfluence each : hilly.influences()) {
            squares += each.slowerSeconds() * each.slowerSeconds();
        }
        assertThat(hilly.moving().highSeconds() - hilly.moving().seconds()).isCloseTo(Math.sqrt(squares), within(1e-6));
        assertThat(hilly.moving().lowSeconds()).isLessThan(hilly.moving().seconds());
    }

    @Test
    void heatWidensTheRangeDownwardsAndChangesNoCap() {
        RacePlan cool = RacePlan.of(PlanCourses.hilly(), PlanCourses.RIDER, PlanOptions.DEFAULT.withTemperatureC(20.0));
        RacePlan hot = RacePlan.of(PlanCourses.hilly(), PlanCourses.RIDER, PlanOptions.DEFAULT.withTemperatureC(32.0));
        PlanInfluence inCool = influence(cool, PlanInfluence.Input.SUSTAINABLE_POWER);
        PlanInfluence inHeat = influence(hot, PlanInfluence.Input.SUSTAINABLE_POWER);
        assertThat(inHeat.slowerSeconds()).isGreaterThan(1.5 * inCool.slowerSeconds());
        assertThat(inCool.low()).isEqualTo(cool.target().sustainable().lowW());
        assertThat(inHeat.low()).isCloseTo(0.85 * hot.target().sustainable().lowW(), within(1e-9));
        assertThat(inHeat.high()).isEqualTo(hot.target().sustainable().highW());
    }

    @Test
    void anAscentThatIsFarOffWidensTheRange() {
        RacePlan near = RacePlan.of(
                PlanCourses.hilly(),
                PlanCourses.RIDER,
                PlanOptions.DEFAULT.withOrganiserAscentM(1.1 * hilly.ascentM()));
        RacePlan far = RacePlan.of(
                PlanCourses.hilly(),
                PlanCourses.RIDER,
                PlanOptions.DEFAULT.withOrganiserAscentM(1.3 * hilly.ascentM()));
        assertThat(near.influences()).noneMatch(each -> each.input() == PlanInfluence.Input.ASCENT);
        assertThat(influence(far, PlanInfluence.Input.ASCENT).slowerSeconds()).isPositive();
    }

    @Test
    void sectionsAddUpToTheRide() {
        assertThat(hilly.sections().stream().mapToDouble(Section::movingSeconds).sum())
                .isCloseTo(hilly.moving().seconds(), within(1e-6));
        Section last = hilly.sections().get(hilly.sections().size() - 1);
        assertThat(last.name()).isEqualTo("finish");
        assertThat(last.arrival().highSeconds()).isCloseTo(hilly.total().highSeconds(), within(1e-6));
    }

    /**
     * Five rides with one line: the upper end of the range by the closed formula of the heart rate's history, spread from day
     * to day 4.6 beats, weight 4; and never above threshold heart rate. A power beyond the line gets none.
     */
    @Test
    void aHeartRateIsTheUpperEndOfOwnRidesAndNeverAboveThreshold() {
        List<PastRide> rides = new ArrayList<>();
        for (int i = 1; i <= 5; i++) {
            rides.add(PastRide.of(DAY.minusDays(i), 2, 150)
                    .withTraits(RideTraits.NONE.withHeartLine(new HeartLine(80, 0.4, 140, 215))));
        }
        PlanRider rider =
                PlanCourses.RIDER.withThresholdHeartRateBpm(163.0).withOwnRides(OwnRides.of(rides, Rider.UNKNOWN), DAY);
        RacePlan plan = RacePlan.of(PlanCourses.hilly(), rider, PlanOptions.DEFAULT);
        double half = 1.2816 * Math.sqrt(4 * 4.6 * 4.6 / 9) * Math.sqrt(1 + 1.57 / 5);
        int withHeartRate = 0;
        int atThreshold = 0;
        for (GroundCap cap : plan.caps()) {
            if (cap.capW() < 140 || cap.capW() > 215) {
                assertThat(cap.capBpm()).isNull();
            } else {
                double free = 80 + 0.4 * cap.capW() + half;
                assertThat(cap.capBpm()).isEqualTo((double) Math.round(Math.min(163, free)));
                withHeartRate++;
                atThreshold += free > 163 ? 1 : 0;
            }
        }
        assertThat(withHeartRate).isGreaterThan(atThreshold);
        assertThat(atThreshold).isPositive();
        assertThat(hilly.opening().capBpm()).isNull();
    }

    /** Openings at 1.2 and 1.4: in the middle 1.3. One ninth of the riding time is a tenth of the whole. */
    @Test
    void theHabitsOfTheLastRacesStandBesideThePlan() {
        PlanRider rider = PlanCourses.RIDER.withOwnRides(
                OwnRides.of(List.of(race(1, 1.2, 4.5), race(2, 1.4, 4.5)), Rider.UNKNOWN), DAY);
        RacePlan plan = RacePlan.of(PlanCourses.hilly(), rider, PlanOptions.DEFAULT);
        assertThat(plan.opening().pastRatio()).isCloseTo(1.3, within(1e-9));
        assertThat(plan.opening().capW())
                .isEqualTo((double) Math.round(1.05 * plan.target().watts()));
        assertThat(plan.stoppedSeconds()).isCloseTo(plan.moving().seconds() / 9, within(1e-6));
        RacePlan given = RacePlan.of(PlanCourses.hilly(), rider, PlanOptions.DEFAULT.withStoppedSeconds(60));
        assertThat(given.stoppedSeconds()).isEqualTo(60);
        int goal = 23_000;
        RacePlan inTime = RacePlan.of(PlanCourses.hilly(), rider, PlanOptions.DEFAULT.withGoalSeconds(goal));
        assertThat(inTime.total().seconds()).isCloseTo(goal, within(0.005 * goal));
    }

    @Test
    void oneRaceIsNoHabitAndARideThatIsNoRaceIsNone() {
        PastRide outing = PastRide.of(DAY.minusDays(9), 4, 150);
        PlanRider rider = PlanCourses.RIDER.withOwnRides(
                OwnRides.of(List.of(race(1, 1.3, 4.5), outing, race(400, 1.3, 4.5)), Rider.UNKNOWN), DAY);
        RacePlan plan = RacePlan.of(PlanCourses.hilly(), rider, PlanOptions.DEFAULT);
        assertThat(plan.opening().pastRatio()).isNull();
        assertThat(plan.stoppedSeconds()).isZero();
    }

    /** RH-3 of the rider's history: rides of 3 to 6 h give 200.19 W for 5 h, and the plan meets it at its own time. */
    @Test
    void ownLongRidesTakeThePlaceOfTheGuide() {
        Rider known = Rider.UNKNOWN.withThresholdPowerW(250.0);
        OwnRides own = OwnRides.of(
                List.of(
                        PastRide.of(DAY.minusDays(10), 4, 205),
                        PastRide.of(DAY.minusDays(20), 5, 200),
                        PastRide.of(DAY.minusDays(30), 6, 190),
                        PastRide.of(DAY.minusDays(40), 3, 150)),
                known);
        RiderOnDay onDay = RiderOnDay.of(known, RecordingDevice.UNKNOWN, DAY, own);
        PlanRider rider = PlanRider.of(PlanCourses.RIDER.rig(), onDay).withOwnRides(own, DAY);
        assertThat(rider.sustainable(5 * 3600).watts()).isCloseTo(200.19, within(0.05));
        RacePlan plan = RacePlan.of(PlanCourses.hilly(), rider, PlanOptions.DEFAULT);
        assertThat(plan.target().sustainable().source()).isEqualTo(SustainablePower.Source.OWN_RIDES);
        assertThat(plan.target().watts())
                .isCloseTo(rider.sustainable(plan.moving().seconds()).watts(), within(1.0));
    }

    /** Riding alone the drag is that of the upper quartile; what the rider gives counts more. */
    @Test
    void theRigIsThatOfOwnRidesWhereNoneIsGiven() {
        List<PastRide> rides = new ArrayList<>();
        for (int i = 1; i <= 5; i++) {
            rides.add(
                    PastRide.of(DAY.minusDays(i), 1, 150).withTraits(RideTraits.NONE.withRig(0.30 + 0.01 * i, 0.005)));
        }
        OwnRides own = OwnRides.of(rides, Rider.UNKNOWN);
        RigChoice open = RigChoice.ofNoRide(75.0, 9.0, null, null, Position.HOODS);
        RigChoice rig = PlanRider.of(open, 250).withOwnRides(own, DAY).rig();
        assertThat(rig.dragAreaM2().value()).isCloseTo(0.34, within(1e-9));
        assertThat(rig.rollingResistance().value()).isCloseTo(0.005, within(1e-9));
        assertThat(rig.numbers()).contains("from your own rides");
        assertThat(PlanCourses.RIDER.withOwnRides(own, DAY).rig()).isEqualTo(PlanCourses.RIDER.rig());
    }

    /**
     * The price of PL-15 by an independent route: the steady time of each piece from the road load alone, the opening
     * scaled and the rest lowered until the mean of P^4 over time is as before.
     */
    @Test
    void theOpeningIsPricedAsAnIndependentSumSays() {
        RoadLoad load = RoadLoad.of(Rig.of(84, 0.36, 0.007), 1.2);
        double[] planned = new double[800];
        double[] grades = new double[800];
        Route route = PlanCourses.hilly();
        for (int i = 0; i < 800; i++) {
            grades[i] = route.gradeBetweenM(200 * i, 200 * i + 200);
            planned[i] = capOn(grades[i]);
        }
        double opening = hilly.opening().seconds();
        for (double factor : new double[] {1.1, 1.2, 1.3}) {
            double low = 0.5;
            double high = 1.1;
            for (int step = 0; step < 50; step++) {
                double rest = (low + high) / 2;
                boolean isLess = sums(load, grades, planned, opening, factor, rest)[1]
                        < sums(load, grades, planned, opening, 1, 1)[1];
                low = isLess ? rest : low;
                high = isLess ? high : rest;
            }
            double costMinutes = (sums(load, grades, planned, opening, factor, low)[0]
                            - sums(load, grades, planned, opening, 1, 1)[0])
                    / 60;
            PricedMistake priced = hilly.mistakes().stream()
                    .filter(each -> each.kind() == PricedMistake.Kind.OVER_HARD_OPENING && each.amount() == factor)
                    .findFirst()
                    .orElseThrow();
            assertThat(priced.minutes()).isCloseTo(costMinutes, within(0.3 + 0.1 * costMinutes));
        }
    }

    /** What the caps come to in the opening: the fourth-power mean over its time, by the independent sum of the pieces. */
    @Test
    void theOpeningSaysWhatItsOwnCapsComeTo() {
        RoadLoad load = RoadLoad.of(Rig.of(84, 0.36, 0.007), 1.2);
        Route route = PlanCourses.hilly();
        double seconds = 0;
        double fourth = 0;
        for (int i = 0; seconds < hilly.opening().seconds(); i++) {
            double grade = route.gradeBetweenM(200 * i, 200 * i + 200);
            double watts = capOn(grade);
            double time = Math.min(hilly.opening().seconds() - seconds, 200 / speed(load, grade, watts));
            seconds += time;
            fourth += time * Math.pow(watts, 4);
        }
        assertThat(hilly.opening().byCapsW()).isCloseTo(Math.pow(fourth / seconds, 0.25), within(1.0));
        assertThat(hilly.opening().byCapsW()).isLessThan(hilly.opening().capW());
    }

    /** One slope, one number: a climb has the cap of the ground of its mean grade, as shown in tenths of a percent. */
    @Test
    void aClimbHasTheCapOfItsGround() {
        RacePlan plan = RacePlan.of(
                PlanCourses.loop(60_000, at -> 300 + Math.max(0, Math.min(at, 10_000) - 5000) * 0.05),
                PlanCourses.RIDER,
                PlanOptions.DEFAULT);
        assertThat(plan.climbs()).isNotEmpty();
        for (RacePlan each : List.of(plan, hilly)) {
            for (ClimbCap climb : each.climbs()) {
                Ground ground = Ground.of(Math.round(1000 * climb.climb().meanGrade()) / 1000.0);
                assertThat(climb.capW())
                        .isEqualTo(each.caps().stream()
                                .filter(cap -> cap.ground() == ground)
                                .findFirst()
                                .orElseThrow()
                                .capW());
            }
        }
    }

    /** A course with one cap is ridden at it from start to end. */
    @Test
    void theOpeningOfALevelCourseComesToItsOnlyCap() {
        RacePlan flat = RacePlan.of(PlanCourses.flat(), PlanCourses.RIDER, PlanOptions.DEFAULT);
        assertThat(flat.opening().byCapsW()).isCloseTo(flat.caps().get(0).capW(), within(1e-6));
    }

    private double capOn(double grade) {
        return hilly.caps().stream()
                .filter(cap -> cap.ground() == Ground.of(grade))
                .mapToDouble(GroundCap::capW)
                .findFirst()
                .orElseThrow();
    }

    /** Seconds, and the mean of P^4 over them, of pieces of 200 m: speed by bisection of the road load, 15 m/s at most. */
    private static double[] sums(
            RoadLoad load, double[] grades, double[] planned, double opening, double factor, double rest) {
        double seconds = 0;
        double plannedSeconds = 0;
        double fourth = 0;
        for (int i = 0; i < grades.length; i++) {
            double watts = planned[i] * (plannedSeconds < opening ? factor : rest);
            plannedSeconds += 200 / speed(load, grades[i], planned[i]);
            double time = 200 / speed(load, grades[i], watts);
            seconds += time;
            fourth += time * Math.pow(watts, 4);
        }
        return new double[] {seconds, fourth / seconds};
    }

    private static double speed(RoadLoad load, double grade, double watts) {
        double low = 0.1;
        double high = 15;
        for (int step = 0; step < 50; step++) {
            double middle = (low + high) / 2;
            boolean isTooFast = load.resistanceN(middle, grade, 0) * middle > watts * load.driveEfficiency();
            low = isTooFast ? low : middle;
            high = isTooFast ? middle : high;
        }
        return low;
    }

    /** The balance of W' cannot fall where nothing is planned above critical power. */
    @Test
    void noCapLiesAboveAKnownCriticalPower() {
        PlanRider plain = PlanCourses.RIDER;
        PlanRider known = new PlanRider(
                plain.rig(),
                250,
                null,
                null,
                new RideAbility.Elsewhere(250.0, 205.0, 20.0, List.of(), ThresholdBasis.RECENT, null),
                false,
                null,
                List.of());
        assertThat(hilly.caps()).anyMatch(cap -> cap.capW() > 205);
        assertThat(RacePlan.of(PlanCourses.hilly(), known, PlanOptions.DEFAULT).caps())
                .allMatch(cap -> cap.capW() <= 205);
    }

    /**
     * HT-6 and HT-7: at 2,000 m 91.62 % are left to an acclimatised rider and 87.564 % to one from the sea; the plan's
     * target stays, the low end of the power falls, and nothing is said below 1,000 m.
     */
    @Test
    void aHighCourseWidensTheRangeDownwards() {
        RacePlan low = RacePlan.of(level(900), PlanCourses.RIDER, PlanOptions.DEFAULT);
        RacePlan high = RacePlan.of(level(2000), PlanCourses.RIDER, PlanOptions.DEFAULT);
        assertThat(low.altitude()).isNull();
        PlanAltitude altitude = Objects.requireNonNull(high.altitude());
        assertThat(altitude.meanM()).isCloseTo(2000, within(1e-6));
        assertThat(altitude.highShare()).isCloseTo(0.9162, within(5e-5));
        assertThat(altitude.lowShare()).isCloseTo(0.87564, within(5e-5));
        PlanInfluence power = influence(high, PlanInfluence.Input.SUSTAINABLE_POWER);
        assertThat(power.low()).isCloseTo(0.87564 * high.target().sustainable().lowW(), within(0.01));
        assertThat(high.target().watts()).isCloseTo(high.target().sustainable().watts(), within(1.0));
    }

    private static Route level(double heightM) {
        Series none = Series.missing(2);
        return Route.of(
                new RouteLine(null, none, none, Series.of(heightM, heightM), Series.of(0, 120_000), List.of(), false));
    }

    /**
     * FU-7: at 0.8 of threshold 250 W 110 to 171 g an hour; caps are multiples of 5 W, so 200 W stays what it is. The
     * published 60 to 90 g beyond 2.5 h, each end held to seven tenths of the use. Nothing of it for a minor.
     */
    @Test
    void carbohydrateStandsBesideThePlanAsARangeAndNotForMinors() {
        RacePlan plan = RacePlan.of(level(100), PlanCourses.RIDER, PlanOptions.DEFAULT.withTargetW(200.0));
        PlanFuel fuel = Objects.requireNonNull(plan.fuel());
        assertThat(fuel.carbohydrateGPerHour().low()).isCloseTo(110, within(1.0));
        assertThat(fuel.carbohydrateGPerHour().high()).isCloseTo(171, within(1.0));
        assertThat(Objects.requireNonNull(fuel.guide()).lowGPerHour()).isCloseTo(60, within(1e-9));
        assertThat(fuel.guide().highGPerHour()).isCloseTo(90, within(1e-9));
        Rider young = Rider.UNKNOWN.withThresholdPowerW(250.0).withBirthYear(2010);
        PlanRider minor = PlanRider.of(PlanCourses.RIDER.rig(), RiderOnDay.of(young, RecordingDevice.UNKNOWN, DAY));
        assertThat(RacePlan.of(level(100), minor, PlanOptions.DEFAULT).fuel()).isNull();
    }

    private static PastRide race(int daysBefore, double opening, double ridingHours) {
        return new PastRide(
                DAY.minusDays(daysBefore),
                "race",
                5,
                ridingHours,
                null,
                null,
                null,
                List.of(),
                false,
                new RideTraits(null, null, null, opening, null, null, null),
                null);
    }

    @Test
    void looseGroundIsSlower() {
        RacePlan loose = RacePlan.of(
                PlanCourses.hilly(),
                PlanCourses.RIDER,
                PlanOptions.DEFAULT.withSurfaces(List.of(new SurfaceStretch(0, 80_000, 0.012))));
        assertThat(loose.moving().seconds()).isGreaterThan(1.02 * hilly.moving().seconds());
    }

    @Test
    void twoPointsWithoutAltitudeAreEnough() {
        Series none = Series.missing(2);
        Route route = Route.of(new RouteLine(null, none, none, none, Series.of(0, 40_000), List.of(), false));
        RacePlan plan = RacePlan.of(route, PlanCourses.RIDER, PlanOptions.DEFAULT);
        assertThat(plan.hasAltitude()).isFalse();
        assertThat(plan.caps()).hasSize(1);
        assertThat(plan.climbs()).isEmpty();
    }

    @Test
    void aTargetAndAGoalTogetherAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PlanOptions.DEFAULT.withTargetW(200.0).withGoalSeconds(20_000))
                .withMessage("a target and a goal time are given; a plan keeps one of them");
    }

    private static PlanInfluence influence(RacePlan plan, PlanInfluence.Input input) {
        return plan.influences().stream()
                .filter(each -> each.input() == input)
                .findFirst()
                .orElseThrow();
    }
}
