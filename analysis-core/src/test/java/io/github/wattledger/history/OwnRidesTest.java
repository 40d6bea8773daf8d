package io.github.wattledger.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.power.BestEffort;
import io.github.wattledger.power.HeartLine;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.ThresholdBasis;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rider.Trial;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class OwnRidesTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);
    private static final Rider RIDER = Rider.UNKNOWN.withThresholds(
            new ThresholdHistory(List.of(new ThresholdHistory.Entry(TODAY.minusDays(30), 250.0, null))));

    private static PastRide ride(int daysAgo, double hours, double watts) {
        return PastRide.of(TODAY.minusDays(daysAgo), hours, watts);
    }

    /** RH-3 of the trials on simulated seasons, on four days of the last year. */
    private static List<PastRide> hardRides() {
        return new ArrayList<>(List.of(ride(300, 4, 205), ride(200, 5, 200), ride(100, 6, 190), ride(10, 3, 150)));
    }

    private static SustainablePower fiveHours(List<PastRide> rides, Rider rider) {
        return OwnRides.of(rides, rider)
                .on(TODAY)
                .endurance()
                .found()
                .orElseThrow()
                .over(250, 18_000)
                .orElseThrow();
    }

    @Test
    void longRidesOfAYearAreHeldAgainstTheGuide() {
        assertThat(fiveHours(hardRides(), RIDER).watts()).isCloseTo(200.19, within(0.05));
    }

    @Test
    void theDayItselfAndLaterDaysAreNotLookedAt() {
        RiderHistory before = OwnRides.of(hardRides(), RIDER).on(TODAY);
        List<PastRide> more = hardRides();
        more.add(ride(0, 5, 240).withBests(300.0, 290.0));
        more.add(ride(-1, 5, 240).withBests(300.0, 290.0).showingLimit());
        more.add(ride(366, 5, 240));
        assertThat(OwnRides.of(more, RIDER).on(TODAY)).isEqualTo(before);
        more.add(ride(365, 5, 240));
        assertThat(OwnRides.of(more, RIDER).on(TODAY)).isNotEqualTo(before);
    }

    @Test
    void theOrderOfRidesDoesNotMatter() {
        RiderHistory expected = OwnRides.of(hardRides(), RIDER).on(TODAY);
        List<PastRide> rides = hardRides();
        for (int seed = 0; seed < 20; seed++) {
            Collections.shuffle(rides, new Random(seed));
            assertThat(OwnRides.of(rides, RIDER).on(TODAY)).isEqualTo(expected);
        }
    }

    @Test
    void theThresholdOfARidesDayLiesBetweenDatedOnes() {
        // RH-4: thresholds 240, 245, 250, 250 on the days of the rides, 260 today.
        Rider dated = Rider.UNKNOWN.withThresholds(new ThresholdHistory(List.of(
                new ThresholdHistory.Entry(TODAY.minusDays(300), 240.0, null),
                new ThresholdHistory.Entry(TODAY.minusDays(100), 250.0, null),
                new ThresholdHistory.Entry(TODAY.minusDays(10), 250.0, null),
                new ThresholdHistory.Entry(TODAY.minusDays(1), 260.0, null))));
        OwnEndurance own =
                OwnRides.of(hardRides(), dated).on(TODAY).endurance().found().orElseThrow();
        assertThat(own.over(260, 18_000).orElseThrow().watts()).isCloseTo(211.69, within(0.05));
        assertThat(own.top().stream().mapToDouble(each -> each.thresholdOfDayW()))
                .containsExactlyInAnyOrder(240.0, 245.0, 250.0);
    }

    @Test
    void weakRidesNeedAWitnessOrAName() {
        // RH-5 and RH-5b
        List<PastRide> weak = List.of(ride(40, 5, 178), ride(20, 4, 170));
        assertThat(OwnRides.of(weak, RIDER).on(TODAY).endurance().found()).isEmpty();
        List<PastRide> seen = List.of(ride(40, 5, 178).showingLimit(), ride(20, 4, 170));
        assertThat(fiveHours(seen, RIDER).watts()).isCloseTo(187.58, within(0.05));
        Rider naming = RIDER.withAllOutDays(Set.of(TODAY.minusDays(40)));
        OwnEndurance named =
                OwnRides.of(weak, naming).on(TODAY).endurance().found().orElseThrow();
        assertThat(named.isNamed()).isTrue();
        assertThat(named.top()).hasSize(1);
    }

    @Test
    void aThresholdThatNobodyGaveComesFromEffortsOfNinetyDays() {
        // The greater of the best hour and 0.95 of the best 20 minutes, and 3 % more.
        List<PastRide> rides = hardRides();
        rides.add(ride(5, 4, 100).showingLimit());
        rides.add(ride(91, 1.5, 200).withBests(270.0, 260.0));
        rides.add(ride(90, 1.5, 200).withBests(260.0, 240.0));
        rides.add(ride(30, 1.5, 200).withBests(250.0, null));
        RiderHistory history = OwnRides.of(rides, Rider.UNKNOWN).on(TODAY);
        assertThat(history.thresholdPowerW()).isCloseTo(1.03 * 0.95 * 260, within(1e-9));
        assertThat(history.endurance().found().orElseThrow().basis()).isEqualTo(ThresholdBasis.OWN_EFFORTS);
        // 91 days ago is within 45 days after the ride of 100 days ago, and within 90 days before that of 10 days ago.
        assertThat(history.endurance().found().orElseThrow().top().stream()
                        .filter(each -> each.hours() == 6)
                        .mapToDouble(each -> each.thresholdOfDayW()))
                .containsExactly(1.03 * 260);
    }

    @Test
    void effortsOfTheJudgedDayDoNotDateEarlierRides() {
        List<PastRide> rides = List.of(
                ride(20, 4, 205).withBests(260.0, 240.0), ride(0, 1, 200).withBests(400.0, 380.0));
        OwnEndurance own =
                OwnRides.of(rides, Rider.UNKNOWN).on(TODAY).endurance().found().orElseThrow();
        assertThat(own.top().get(0).thresholdOfDayW()).isCloseTo(1.03 * 0.95 * 260, within(1e-9));
    }

    @Test
    void anOldThresholdIsKnownLessWell() {
        LocalDate since = TODAY.minusDays(30);
        assertThat(OwnRides.basisOnDay(RIDER, since.plusDays(90))).isEqualTo(ThresholdBasis.RECENT);
        assertThat(OwnRides.basisOnDay(RIDER, since.plusDays(91))).isEqualTo(ThresholdBasis.OLD);
        assertThat(OwnRides.basisOnDay(RIDER, since.minusDays(1)))
                .as("before the first entry")
                .isEqualTo(ThresholdBasis.OLD);
        assertThat(OwnRides.basisOnDay(Rider.UNKNOWN, TODAY)).isNull();
        assertThat(OwnRides.basisOnDay(RIDER.withThresholdPowerW(250), since.plusDays(200)))
                .isEqualTo(ThresholdBasis.RECENT);
    }

    @Test
    void namedTrialsGiveCriticalPower() {
        // RH-20 in eight trials; the power of one stands in the ride of its day.
        int[] seconds = {180, 300, 480, 720, 1200, 300, 720, 1200};
        double[] watts = {350, 312, 288, 276, 266, 310, 247, 263};
        List<Trial> trials = new ArrayList<>();
        for (int i = 0; i < seconds.length; i++) {
            trials.add(new Trial(TODAY.minusDays(10L + i), seconds[i], i == 2 ? null : (Double) watts[i]));
        }
        PastRide ridden = new PastRide(
                TODAY.minusDays(12),
                "ride.fit",
                1,
                1,
                200.0,
                null,
                null,
                List.of(new BestEffort(300, 300), new BestEffort(480, 288)),
                false,
                RideTraits.NONE,
                null);
        Rider rider = RIDER.withTrials(trials);
        assertThat(OwnRides.of(List.of(ridden), rider)
                        .on(TODAY)
                        .criticalPower()
                        .found()
                        .orElseThrow()
                        .criticalPowerW())
                .isCloseTo(250.99, within(0.01));
        assertThat(OwnRides.of(List.of(ridden), rider)
                        .on(TODAY.minusDays(13))
                        .criticalPower()
                        .refusal())
                .as("later trials do not count")
                .hasValueSatisfying(reason -> assertThat(reason).startsWith("4 named trials"));
    }

    @Test
    void heartRateComesFromTheLastEightLinesThatReachThePower() {
        List<PastRide> rides = new ArrayList<>();
        for (int i = 1; i <= 12; i++) {
            // The farther back, the higher; one of the last is too short, and one line ends below 200 W.
            double hours = i == 2 ? 0.9 : 2;
            rides.add(ride(i, hours, 180)
                    .withTraits(RideTraits.NONE.withHeartLine(new HeartLine(100 + i, 0.2, 100, i == 3 ? 190 : 250))));
        }
        rides.add(ride(61, 2, 180).withTraits(RideTraits.NONE.withHeartLine(new HeartLine(200, 0.2, 100, 250))));
        RiderTraits history = OwnRides.of(rides, RIDER).traitsOn(TODAY);
        assertThat(history.heartLines()).hasSize(8);
        // Rides 1, 4, 5, 6, 7, 8, 9: the median is that of ride 6.
        assertThat(history.heartRateAt(200).found().orElseThrow().medianBpm()).isCloseTo(106 + 40, within(1e-9));
        assertThat(history.heartRateAt(200).found().orElseThrow().rides()).isEqualTo(7);
        assertThat(history.heartRateAt(90).refusal()).isPresent();
    }

    @Test
    void theLastAgreementOfTheYearBeforeADayIsRecalled() {
        // By its definition: the latest words before the day, neither of the day itself nor older than a year.
        OwnRides own = OwnRides.of(
                List.of(
                        PastRide.of(TODAY, 3, 200).withAgreed("of the day itself"),
                        PastRide.of(TODAY.minusDays(9), 3, 200),
                        PastRide.of(TODAY.minusDays(10), 3, 200).withAgreed("open at 190 W"),
                        PastRide.of(TODAY.minusDays(20), 3, 200).withAgreed("eat more"),
                        PastRide.of(TODAY.minusDays(500), 3, 200).withAgreed("long ago")),
                RIDER);
        assertThat(own.on(TODAY).agreed()).isEqualTo(new Agreement(TODAY.minusDays(10), "open at 190 W"));
        assertThat(own.agreedBefore(TODAY.minusDays(10))).isEqualTo(new Agreement(TODAY.minusDays(20), "eat more"));
        assertThat(own.agreedBefore(TODAY.minusDays(20)))
                .as("none within a year")
                .isNull();
    }

    @Test
    void rigAndStopsComeAsQuartiles() {
        List<PastRide> rides = new ArrayList<>();
        for (int i = 1; i <= 5; i++) {
            rides.add(new PastRide(
                    TODAY.minusDays(i),
                    "ride " + i,
                    4,
                    4 - 0.1 * i,
                    200.0,
                    null,
                    null,
                    List.of(),
                    false,
                    RideTraits.NONE.withRig(0.30 + 0.01 * i, i < 3 ? (Double) 0.006 : null),
                    null));
        }
        RiderTraits history = OwnRides.of(rides, RIDER).traitsOn(TODAY);
        assertThat(history.dragAreaM2().found().orElseThrow().median()).isCloseTo(0.33, within(1e-12));
        assertThat(history.dragAreaM2().found().orElseThrow().high()).isCloseTo(0.34, within(1e-12));
        assertThat(history.rollingResistance().refusal()).isPresent();
        assertThat(history.stoppedShare().found().orElseThrow().median()).isCloseTo(0.075, within(1e-12));
    }
}
