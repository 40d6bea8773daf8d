package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.RiderContext.ThresholdSource;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.CriticalPowerFit;
import io.github.wattledger.power.CriticalPowerRefusal;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Rider;
import io.github.wattledger.testing.TrialRide;
import java.util.Arrays;
import java.util.Objects;
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
        assertThat(evidence.criticalPower()).isInstanceOf(CriticalPowerFit.class);
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
        assertThat(evidence.criticalPower()).isInstanceOf(CriticalPowerRefusal.class);
        assertThat(evidence.spending()).isNull();
        SustainablePower sustainable = Objects.requireNonNull(evidence.sustainable());
        assertThat(sustainable.lowW()).isLessThan(sustainable.watts());
        assertThat(sustainable.highW()).isGreaterThan(sustainable.watts());
    }

    @Test
    void withoutAThresholdItIsEstimatedWithItsRange() {
        // W' 12 kJ and 280 W: critical power lies above 95 % of the best 20 minutes, 0.95 x 290 W.
        RideReview review = review(TrialRide.watts(280, 12_000, 1), Rider.UNKNOWN);
        assertThat(review.rider().thresholdPowerSource()).isEqualTo(ThresholdSource.ESTIMATED);
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
        assertThat(Objects.requireNonNull(ability.evidence()).criticalPower()).isInstanceOf(CriticalPowerRefusal.class);
    }

    @Test
    void surgesAreWeighedByTheRidersOwnWPrimeWhereItIsKnown() {
        double[] trials = TrialRide.watts(280, 18_000, 1);
        Finding own = surges(review(trials, RIDER));
        double workKJ = own.evidence().get("workAboveThresholdKJPerHour").orElseThrow();
        assertThat(own.evidence().get("wPrimeKJ").orElseThrow()).isCloseTo(18, within(0.02));
        assertThat(own.evidence().get("wPrimeSharePerHour").orElseThrow()).isCloseTo(workKJ / 18, within(0.001));
        assertThat(own.evidence().get("usualWPrimeKJ")).isEmpty();
        // The usual 17 kJ: mean of published groups.
        Finding usual = surges(review(TrialRide.watts(280, 18_000, 1), Rider.UNKNOWN.withThresholdPowerW(300)));
        double usualWorkKJ = usual.evidence().get("workAboveThresholdKJPerHour").orElseThrow();
        assertThat(usual.evidence().get("usualWPrimeKJ").orElseThrow()).isEqualTo(17);
        assertThat(usual.evidence().get("wPrimeSharePerHour").orElseThrow()).isCloseTo(usualWorkKJ / 17, within(1e-9));
    }

    private static Finding surges(RideReview review) {
        return review.pacing().findings().stream()
                .filter(finding -> finding.kind() == FindingKind.SURGES)
                .findFirst()
                .orElseThrow();
    }

    private static RideReview review(double[] watts, Rider rider) {
        return Reviewer.review(Ride.ofWatts(watts), rider, ReviewOptions.WHOLE_RIDE);
    }
}
