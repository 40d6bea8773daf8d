package io.github.wattledger.bunch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.bunch.BunchProposal.Stretch;
import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is proposed of rides whose forces are known, and each reason why nothing can be. */
class BunchSearchTest {
    private static final double SPEED_MPS = 9;
    private static final RigChoice KNOWN = RigChoice.ofNoRide(73.0, 11.0, 0.3156, BalancedRide.ROLLING, Position.HOODS);

    /** Some unrest, so that the pieces scatter as those of a day do. */
    private static IntToDoubleFunction wind(double deviationMps) {
        double[] byKilometre = new Random(3)
                .doubles(200, -1.7 * deviationMps, 1.7 * deviationMps)
                .toArray();
        return kilometre -> byKilometre[kilometre];
    }

    private static BalancedRide calm() {
        return new BalancedRide(100, SPEED_MPS).windMps(wind(0.2));
    }

    private static BunchProposal proposal(BalancedRide balanced, RigChoice rig) {
        Ride ride = balanced.ride();
        return BunchSearch.of(ride, Course.of(ride).orElse(null), rig);
    }

    /** 27 km at 9 m/s are 50 min. Air of the standard atmosphere is 1.5 % thinner at 300 m than the 1.2 of the ride. */
    @Test
    void aBunchWithinARideIsProposedWithItsEndsAndARangeOfItsSaving() {
        BunchProposal proposal =
                proposal(calm().dragShare(kilometre -> kilometre >= 20 && kilometre < 47 ? 0.65 : 1), KNOWN);
        assertThat(proposal.whyNoStretches()).isNull();
        assertThat(proposal.isFound()).isTrue();
        assertThat(proposal.stretches()).hasSize(1);
        Stretch stretch = proposal.stretches().get(0);
        assertThat((double) stretch.when().fromSecond()).isCloseTo(20_000 / SPEED_MPS, within(150.0));
        assertThat((double) stretch.when().toSecond()).isCloseTo(47_000 / SPEED_MPS, within(150.0));
        assertThat(stretch.saving()).isCloseTo(0.35, within(0.05));
        assertThat(stretch.savingLow()).isBetween(0.15, 0.35);
        assertThat(stretch.savingHigh()).isBetween(0.35, 0.55);
    }

    @Test
    void twoBunchesAreProposedInOrder() {
        BunchProposal proposal = proposal(
                calm().dragShare(kilometre -> kilometre < 20 || (kilometre >= 70 && kilometre < 88) ? 0.55 : 1), KNOWN);
        assertThat(proposal.stretches()).hasSize(2);
        assertThat(proposal.stretches().get(0).when().fromSecond()).isLessThan(300);
        assertThat((double) proposal.stretches().get(1).when().fromSecond())
                .isCloseTo(70_000 / SPEED_MPS, within(150.0));
    }

    /** Close groups save 25 to 50 % by published measurements; 16 % over an hour is more often wind or road. */
    @Test
    void whatSavesLessThanABunchDoesIsNotProposed() {
        BunchProposal proposal =
                proposal(calm().dragShare(kilometre -> kilometre >= 20 && kilometre < 53 ? 0.84 : 1), KNOWN);
        assertThat(proposal.stretches()).isEmpty();
    }

    /** A bunch makes the balance restless, but so does a gusty hour: without less air in the mean it says nothing. */
    @Test
    void aRestlessStretchWithAsMuchAirAsElsewhereIsNoBunch() {
        IntToDoubleFunction quiet = wind(0.2);
        IntToDoubleFunction restless = wind(1);
        BunchProposal proposal = proposal(
                new BalancedRide(100, SPEED_MPS)
                        .windMps(kilometre -> kilometre >= 20 && kilometre < 50
                                ? restless.applyAsDouble(kilometre)
                                : quiet.applyAsDouble(kilometre)),
                KNOWN);
        assertThat(proposal.stretches()).isEmpty();
    }

    /** "No sign" is worth something only beside what would have shown. */
    @Test
    void alonePropositionsAreNoneAndWhatWouldHaveShownIsSaid() {
        BunchProposal proposal = proposal(calm(), KNOWN);
        assertThat(proposal.stretches()).isEmpty();
        assertThat(proposal.isFound()).isFalse();
        assertThat(proposal.whyNoStretches()).isNull();
        assertThat(proposal.wouldHaveShown())
                .isNotEmpty()
                .allMatch(each -> each.saving() > 0.05 && each.saving() <= 0.5);
        BunchProposal.Showing longest = proposal.wouldHaveShown().get(0);
        double share = 1 - longest.saving();
        BunchProposal withIt = proposal(
                calm().dragShare(kilometre -> kilometre * 1000 / SPEED_MPS < 60 * longest.minutes() ? share : 1),
                KNOWN);
        assertThat(withIt.stretches()).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource({
        "POWER, there is no power in this file",
        "ALTITUDE, there is no altitude in this file",
        "DISTANCE, there is no distance in this file",
        "SPEED, there is no speed in this file",
        "LATITUDE, 'there are no positions in this file, so that wind and bunch look alike'"
    })
    void withoutAChannelNothingCanBeTold(Channel channel, String reason) {
        BunchProposal proposal = proposal(calm().without(channel), KNOWN);
        assertThat(proposal.whyNoStretches()).isEqualTo(reason);
        assertThat(proposal.stretches()).isEmpty();
        assertThat(proposal.mostOfRide()).isNull();
    }

    @Test
    void aShortRideSaysTooLittle() {
        assertThat(proposal(new BalancedRide(38, SPEED_MPS), KNOWN).whyNoStretches())
                .isEqualTo("too little of the ride was pedalled steadily over ground that is not steep");
    }

    @Test
    void aRideThatWasMostlyCoastedSaysTooLittle() {
        BunchProposal proposal = proposal(calm().powerShare(kilometre -> kilometre < 45 ? 1 : 0), KNOWN);
        assertThat(proposal.whyNoStretches()).isEqualTo("over half of the ride was coasted, braked or steep");
    }

    @Test
    void restlessAirSaysTooLittle() {
        BunchProposal proposal = proposal(new BalancedRide(100, 11).windMps(wind(3)), KNOWN);
        assertThat(proposal.whyNoStretches())
                .isEqualTo("power and speed scatter too much, through restless air or a bunch that came and went");
    }

    @Test
    void aWholeRideWithTooLittleAirIsNoChange() {
        BunchProposal proposal = proposal(calm().dragShare(kilometre -> 0.5), KNOWN);
        assertThat(proposal.stretches()).isEmpty();
        assertThat(proposal.whyNoStretches())
                .isEqualTo("nearly all of the ride met less air than the drag area asks for, and a wrong"
                        + " drag area, mass or power would look the same");
        assertThat(proposal.isFound()).isTrue();
    }

    /** A rider's own numbers count; what this very ride was estimated to have does not, since a bunch is in it. */
    @Test
    void theRoadIsOfOneKindOnlyWhereThatWasSaid() {
        assertThat(proposal(calm(), KNOWN).oneKindOfRoad()).isTrue();
        RigChoice nothing = RigChoice.ofNoRide(73.0, 11.0, null, null, Position.HOODS);
        assertThat(proposal(calm(), nothing).oneKindOfRoad()).isFalse();
        RigChoice gravel = RigChoice.ofNoRide(73.0, 11.0, null, 0.010, Position.HOODS);
        assertThat(proposal(calm(), gravel).oneKindOfRoad()).isFalse();
    }
}
