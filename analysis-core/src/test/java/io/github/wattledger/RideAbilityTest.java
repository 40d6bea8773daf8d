package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.intake.Origin;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.TrialRide;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class RideAbilityTest {
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(270);

    @Test
    void aRideOfTrialsGivesCriticalPowerAndTheGuideForTheRest() {
        RideReview review = review(TrialRide.watts(280, 18_000, 1), RIDER);
        Ability ability = review.ability();
        assertThat(ability.criticalPowerW()).isCloseTo(280, within(0.3));
        assertThat(ability.wPrimeKJ()).isCloseTo(18, within(0.02));
        assertThat(ability.fitErrorW()).isLessThan(1);
        assertThat(ability.source()).isEqualTo(Ability.Source.RIDE_FIT_AND_GUIDE);
        assertThat(ability.sustainablePowerW())
                .as("the bests of the ride under judgement set no target for it")
                .isEqualTo(SustainablePower.guideW(270, ability.forSeconds()));
        AbilityEvidence evidence = Objects.requireNonNull(ability.evidence());
        assertThat(evidence.criticalPower()).isInstanceOf(Outcome.Of.class);
        assertThat(Objects.requireNonNull(evidence.spending()).lowestKJ()).isCloseTo(0, within(2.0));
        assertThat(evidence.thresholdEstimate()).isNull();
    }

    @Test
    void anEvenRideGivesTheGuideAndTheReasonForNoMore() {
        double[] watts = new double[4 * 3600];
        Arrays.setAll(watts, second -> 190 + 3 * Math.sin(second / 300.0));
        Ability ability = review(watts, RIDER).ability();
        assertThat(ability.criticalPowerW()).isNull();
        assertThat(ability.wPrimeKJ()).isNull();
        assertThat(ability.fitErrorW()).isNull();
        assertThat(ability.source()).isEqualTo(Ability.Source.GUIDE);
        AbilityEvidence evidence = Objects.requireNonNull(ability.evidence());
        assertThat(evidence.criticalPower()).isInstanceOf(Outcome.Refused.class);
        assertThat(evidence.spending()).isNull();
        SustainablePower sustainable = Objects.requireNonNull(evidence.sustainable());
        assertThat(sustainable.lowW()).isLessThan(sustainable.watts());
        assertThat(sustainable.highW()).isGreaterThan(sustainable.watts());
    }

    @Test
    void withoutAThresholdItIsEstimatedWithItsRange() {
        // W' 12 kJ and 280 W: critical power lies above 95 % of the best 20 minutes, 0.95 x 290 W.
        RideReview review = review(TrialRide.watts(280, 12_000, 1), Rider.UNKNOWN);
        assertThat(review.rider().thresholdPowerOrigin()).isEqualTo(Origin.ESTIMATED);
        assertThat(review.rider().thresholdPowerW()).isCloseTo(280, within(0.1));
        AbilityEvidence evidence = Objects.requireNonNull(review.ability().evidence());
        assertThat(Objects.requireNonNull(evidence.thresholdEstimate()).lowW()).isLessThan(280);
    }

    @Test
    void aRideWithoutPowerHasNoAbilityButAReason() {
        Ability ability =
                review(new double[] {Double.NaN, Double.NaN}, Rider.UNKNOWN).ability();
        assertThat(ability.source()).isNull();
        assertThat(ability.sustainablePowerW()).isNull();
        assertThat(Objects.requireNonNull(ability.evidence()).criticalPower()).isInstanceOf(Outcome.Refused.class);
    }

    @Test
    void surgesAreWeighedByTheRidersOwnWPrimeWhereItIsKnown() {
        double[] trials = TrialRide.watts(280, 18_000, 1);
        RideReview review = review(trials, RIDER);
        Finding own = surges(review);
        double hours = review.pacing().judged().seconds() / 3600.0;
        double spentKJ = own.evidence().get("wPrimeSpentKJ").orElseThrow();
        assertThat(own.evidence().get("wPrimeKJ").orElseThrow()).isCloseTo(18, within(0.02));
        assertThat(own.evidence().get("wPrimeSharePerHour").orElseThrow())
                .isCloseTo(spentKJ / hours / own.evidence().get("wPrimeKJ").orElseThrow(), within(1e-9));
        assertThat(own.evidence().get("usualWPrimeKJ")).isEmpty();
        // The usual 17 kJ: mean of published groups.
        Finding usual = surges(review(TrialRide.watts(280, 18_000, 1), Rider.UNKNOWN.withThresholdPowerW(300)));
        double usualWorkKJ = usual.evidence().get("workAboveThresholdKJPerHour").orElseThrow();
        assertThat(usual.evidence().get("usualWPrimeKJ").orElseThrow()).isEqualTo(17);
        assertThat(usual.evidence().get("wPrimeSharePerHour").orElseThrow()).isCloseTo(usualWorkKJ / 17, within(1e-9));
    }

    /** Critical power 250 W and W' 20 kJ as given; two hours at 200 W with a minute at 550 W every so often. */
    @Nested
    class SurgesAgainstTheBalance {
        private static final Rider GIVEN =
                Rider.UNKNOWN.withThresholdPowerW(240).withCriticalPower(250, 20);

        private RideReview race(Rider rider, int... surgesAt) {
            double[] watts = new double[7200];
            Arrays.fill(watts, 200);
            for (int from : surgesAt) {
                Arrays.fill(watts, from, from + 60, 550);
            }
            return Reviewer.review(Ride.ofWatts(watts), rider, ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
        }

        /** By hand: 60 s x 300 W = 18 kJ spent, a tenth left; at 200 W nine tenths are back after 400 s x ln 9 = 879 s. */
        @Test
        void tellWhatOneTookAndLeftAndWhenItWasBack() {
            Finding surges = surges(race(GIVEN, 1800));

            assertThat(surges.evidence().get("wPrimeSpentKJ")).hasValue(18);
            assertThat(surges.evidence().get("mostWPrimeSpentKJ")).hasValue(18);
            assertThat(surges.evidence().get("lowestWPrimeShare").orElseThrow()).isCloseTo(0.1, within(1e-9));
            assertThat(surges.evidence().get("secondsToRecover")).hasValue(879);
            assertThat(surges.evidence().get("wPrimeSharePerHour").orElseThrow())
                    .as("18 kJ in two hours of 20 kJ")
                    .isCloseTo(0.45, within(1e-9));
            assertThat(surges.evidence().get("drainedCount")).hasValue(1);
            assertThat(surges.severity()).isEqualTo(Severity.MODERATE);
        }

        @Test
        void threeThatDrainAreAWayOfRiding() {
            RideReview review = race(GIVEN, 2700, 3900, 5400);

            assertThat(surges(review).evidence().get("drainedCount")).hasValue(3);
            assertThat(surges(review).severity()).isEqualTo(Severity.MAJOR);
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.UNEVEN);
        }

        @Test
        void inTheFinaleWPrimeMayBeSpent() {
            assertThat(surges(race(GIVEN, 6900)).evidence().get("drainedCount")).hasValue(0);
        }

        @Test
        void aBalanceBelowEmptyRefutesWhatWasGiven() {
            RideReview review = race(GIVEN.withCriticalPower(250, 10), 1800);

            assertThat(surges(review).evidence().get("usualWPrimeKJ")).hasValue(17);
            assertThat(surges(review).evidence().get("lowestWPrimeShare")).isEmpty();
            assertThat(review.pacing().leftOut()).anyMatch(line -> line.startsWith("W' balance falls far below empty"));
        }
    }

    @Test
    void givenCriticalPowerGoesBeforeTheFit() {
        Ability ability = review(TrialRide.watts(280, 18_000, 1), RIDER.withCriticalPower(290, 15))
                .ability();
        assertThat(ability.criticalPowerW()).isEqualTo(290);
        assertThat(ability.wPrimeKJ()).isEqualTo(15);
        assertThat(ability.fitErrorW()).isNull();
        assertThat(ability.source()).isEqualTo(Ability.Source.GIVEN_AND_GUIDE);
    }

    /** Bests on the line 240 W x hours^-0.1; the ride is of the first of January 1970, four hours long. */
    @Test
    void longBestsOfEarlierDaysTakeThePlaceOfTheGuide() {
        double[] watts = new double[4 * 3600];
        Arrays.fill(watts, 190);
        Rider earlier = RIDER.withLongBests(bests(LocalDate.of(1969, 12, 1)));

        Ability ability = review(watts, earlier).ability();

        assertThat(ability.source()).isEqualTo(Ability.Source.OWN_BESTS);
        assertThat(ability.sustainablePowerW()).isCloseTo(240 * Math.pow(4, -0.1), within(0.01));
        assertThat(review(watts, RIDER.withLongBests(bests(LocalDate.EPOCH)))
                        .ability()
                        .source())
                .as("its own bests are no measure of a ride")
                .isEqualTo(Ability.Source.GUIDE);
    }

    private static List<LongBest> bests(LocalDate day) {
        return DoubleStream.of(1, 2, 5)
                .mapToObj(hours -> new LongBest((int) (3600 * hours), 240 * Math.pow(hours, -0.1), day))
                .toList();
    }

    private static Finding surges(RideReview review) {
        return review.pacing().findings().stream()
                .filter(finding -> finding.kind() == FindingKind.SURGES)
                .findFirst()
                .orElseThrow();
    }

    private static RideReview review(double[] watts, Rider rider) {
        return Reviewer.review(Ride.ofWatts(watts), rider, ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
    }
}
