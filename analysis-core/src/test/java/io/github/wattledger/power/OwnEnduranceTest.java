package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Outcome;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Expected numbers: the table RH-1 to RH-8 of the project's trials on 2,000 simulated seasons, which a reference in another
 * language computed from the formula.
 */
class OwnEnduranceTest {
    private static final LocalDate DAY = LocalDate.of(2026, 5, 12);
    private static final double TABLE = 0.05;

    private static LongRide ride(double hours, double watts, double thresholdW) {
        return new LongRide(DAY, hours, watts, thresholdW);
    }

    private static List<LongRide> threeHardRides() {
        return List.of(ride(4, 205, 250), ride(5, 200, 250), ride(6, 190, 250), ride(3, 150, 250));
    }

    private static OwnEndurance found(List<LongRide> rides, boolean hasWitness) {
        return OwnEndurance.ofFound(rides, ThresholdBasis.RECENT, hasWitness)
                .found()
                .orElseThrow();
    }

    private static void expect(
            OwnEndurance own, double thresholdW, double hours, double watts, double low, double high) {
        SustainablePower power = own.over(thresholdW, 3600 * hours).orElseThrow();
        assertThat(power.watts()).as("%s h", hours).isCloseTo(watts, within(TABLE));
        assertThat(power.lowW()).as("%s h low", hours).isCloseTo(low, within(TABLE));
        assertThat(power.highW()).as("%s h high", hours).isCloseTo(high, within(TABLE));
        assertThat(power.source()).isEqualTo(SustainablePower.Source.OWN_RIDES);
    }

    @Test
    void oneHardRideDrawsTheGuideTowardsIt() {
        // RH-2
        OwnEndurance own = found(List.of(ride(5, 210, 250)), false);
        expect(own, 250, 2, 231.50, 220.28, 243.30);
        expect(own, 250, 5, 207.16, 192.57, 222.85);
        expect(own, 250, 10, 190.46, 172.06, 210.83);
    }

    @Test
    void threeHardRidesDrawItFurther() {
        // RH-3, with its steps
        OwnEndurance own = found(threeHardRides(), false);
        assertThat(own.top()).hasSize(3);
        assertThat(own.top().get(0).logOverGuide()).isCloseTo(0.03437, within(5e-6));
        assertThat(own.top().get(1).logOverGuide()).isCloseTo(0.02336, within(5e-6));
        assertThat(own.top().get(2).logOverGuide()).isCloseTo(0.01224, within(5e-6));
        assertThat(ride(3, 150, 250).logOverGuide()).isCloseTo(-0.335, within(5e-4));
        assertThat(own.logOverGuide()).isCloseTo(0.04332, within(5e-6));
        assertThat(own.meanLogHours()).isCloseTo(1.59583, within(5e-6));
        expect(own, 250, 2, 227.66, 217.73, 238.04);
        expect(own, 250, 5, 200.19, 188.87, 212.20);
        expect(own, 250, 10, 181.64, 167.45, 197.03);
    }

    @Test
    void eachRideIsHeldAgainstTheThresholdOfItsOwnDay() {
        // RH-4
        OwnEndurance own =
                found(List.of(ride(4, 205, 240), ride(5, 200, 245), ride(6, 190, 250), ride(3, 150, 250)), false);
        expect(own, 260, 2, 238.70, 228.29, 249.59);
        expect(own, 260, 5, 211.69, 199.71, 224.38);
        expect(own, 260, 10, 193.30, 178.20, 209.68);
    }

    @Test
    void aWeakerRiderNeedsAWitness() {
        // RH-5 and RH-5b
        List<LongRide> weak = List.of(ride(5, 178, 250), ride(4, 170, 250));
        OwnEndurance own = found(weak, true);
        expect(own, 250, 2, 220.52, 208.50, 233.23);
        expect(own, 250, 5, 187.58, 171.40, 205.28);
        expect(own, 250, 10, 165.96, 146.42, 188.13);
        assertThat(OwnEndurance.ofFound(weak, ThresholdBasis.RECENT, false).refusal())
                .hasValueSatisfying(reason -> assertThat(reason).contains("below the general guide"));
    }

    @Test
    void easyRidesTeachNothing() {
        // RH-6
        List<LongRide> easy = List.of(ride(3, 150, 250), ride(4, 140, 250), ride(5, 150, 250));
        assertThat(OwnEndurance.ofFound(easy, ThresholdBasis.RECENT, true).refusal())
                .hasValueSatisfying(reason -> assertThat(reason).contains("no hard ride"));
        assertThat(OwnEndurance.ofFound(List.of(), ThresholdBasis.RECENT, true).refusal())
                .hasValueSatisfying(reason -> assertThat(reason).contains("no ride of two hours"));
    }

    @Test
    void fiveHardRides() {
        // RH-7
        OwnEndurance own = found(
                List.of(
                        ride(3, 268, 300),
                        ride(4, 262, 300),
                        ride(5, 255, 300),
                        ride(6, 250, 300),
                        ride(5, 252, 300),
                        ride(4, 170, 300)),
                false);
        assertThat(own.top()).hasSize(5);
        expect(own, 300, 2, 282.08, 270.92, 293.70);
        expect(own, 300, 5, 256.28, 244.14, 269.02);
        expect(own, 300, 10, 238.34, 222.37, 255.45);
    }

    @Test
    void aThresholdFromOwnEffortsWidensTheRange() {
        // RH-8 keeps the shortfall of a recent threshold, for the arithmetic.
        OwnEndurance own = OwnEndurance.ofFound(threeHardRides(), ThresholdBasis.OWN_EFFORTS, 0.02, false)
                .found()
                .orElseThrow();
        expect(own, 250, 2, 228.87, 211.90, 247.19);
        expect(own, 250, 5, 200.52, 185.36, 216.92);
        expect(own, 250, 10, 181.43, 164.71, 199.85);
        // The rule itself: own efforts take 0.01, an older threshold nothing.
        assertThat(OwnEndurance.ofFound(threeHardRides(), ThresholdBasis.OWN_EFFORTS, false)
                        .found()
                        .orElseThrow()
                        .logOverGuide())
                .isCloseTo(0.03332, within(5e-6));
        assertThat(OwnEndurance.ofFound(threeHardRides(), ThresholdBasis.OLD, false)
                        .found()
                        .orElseThrow()
                        .logOverGuide())
                .isCloseTo(0.02332, within(5e-6));
    }

    @Test
    void theOrderOfRidesDoesNotMatter() {
        List<LongRide> shuffled = new ArrayList<>(threeHardRides());
        Collections.shuffle(shuffled, new Random(1));
        assertThat(found(shuffled, false)).isEqualTo(found(threeHardRides(), false));
    }

    @Test
    void aStrongerRiderOfTheSameEnduranceHoldsMoreInProportion() {
        List<LongRide> stronger = threeHardRides().stream()
                .map(each -> ride(each.hours(), 1.1 * each.watts(), 1.1 * each.thresholdOfDayW()))
                .toList();
        SustainablePower one = found(threeHardRides(), false).over(250, 18_000).orElseThrow();
        SustainablePower other = found(stronger, false).over(275, 18_000).orElseThrow();
        assertThat(other.watts()).isCloseTo(1.1 * one.watts(), within(1e-9));
        assertThat(other.lowW()).isCloseTo(1.1 * one.lowW(), within(1e-9));
        assertThat(other.highW()).isCloseTo(1.1 * one.highW(), within(1e-9));
    }

    @Test
    void anEasierOrShorterRideChangesNothing() {
        OwnEndurance before = found(threeHardRides(), false);
        Random random = new Random(2);
        for (int i = 0; i < 200; i++) {
            double hours = 2 + 5 * random.nextDouble();
            double limit = before.top().get(0).logOverGuide() - 0.08 - 1e-9;
            double watts = 250 * Math.exp(limit - 0.16 * Math.log(hours) - random.nextDouble());
            List<LongRide> more = new ArrayList<>(threeHardRides());
            more.add(ride(hours, watts, 250));
            more.add(ride(1.99, 400, 250));
            assertThat(found(more, false)).isEqualTo(before);
        }
    }

    @Test
    void namedRidesNeedNoWitness() {
        // By the rule: limit 0.40, tolerance 0.12, shortfall 0.03, errors 0.055, 0.045 ..., never widened.
        Outcome<OwnEndurance> named = OwnEndurance.ofNamed(
                List.of(ride(5, 178, 250), ride(4, 170, 250), ride(6, 120, 250)), ThresholdBasis.RECENT);
        OwnEndurance own = named.found().orElseThrow();
        double first = Math.log(178 / 250.0) + 0.16 * Math.log(5);
        double second = Math.log(170 / 250.0) + 0.16 * Math.log(4);
        assertThat(first - second).isLessThan(0.12).isGreaterThan(0.08);
        assertThat(own.top()).hasSize(2);
        assertThat(own.isNamed()).isTrue();
        assertThat(own.logOverGuide()).isCloseTo((first + second) / 2 + 0.03, within(1e-12));
        assertThat(own.logError()).isEqualTo(0.045);
        assertThat(OwnEndurance.ofNamed(List.of(ride(5, 125, 250)), ThresholdBasis.RECENT)
                        .found())
                .as("an exponent of %s", Math.log(2) / Math.log(5))
                .isEmpty();
    }

    @Test
    void farBeyondTheLongestRideNothingIsSaid() {
        OwnEndurance own = found(List.of(ride(3, 215, 250)), false);
        assertThat(own.isExtrapolated(6 * 3600)).isFalse();
        assertThat(own.isExtrapolated(6 * 3600 + 1)).isTrue();
        assertThat(own.over(250, 12 * 3600)).isPresent();
        assertThat(own.over(250, 12 * 3600 + 1)).isEmpty();
    }

    @Test
    void shortOfAnHourOnlyTheThresholdIsLearnt() {
        OwnEndurance own = found(threeHardRides(), false);
        double atAnHour = own.over(250, 3600).orElseThrow().watts();
        double atTwentyMinutes = own.over(250, 1200).orElseThrow().watts();
        assertThat(atTwentyMinutes * 0.95).isCloseTo(atAnHour, within(1e-9));
        double justAbove = own.over(250, 3601).orElseThrow().watts();
        assertThat(justAbove).isCloseTo(atAnHour, within(0.05)).isLessThan(atAnHour);
    }
}
