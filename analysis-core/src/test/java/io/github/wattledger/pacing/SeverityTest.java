package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.TARGET_W;
import static io.github.wattledger.pacing.RaceByHand.ability;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.Price;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** How much a finding weighs: by the minutes it cost at most. */
class SeverityTest {
    /** An hour: 18 s are half a percent, 72 s two percent. Under 3 s the replay says nothing. */
    @ParameterizedTest
    @CsvSource({
        "0, OBSERVATION",
        "2.9, OBSERVATION",
        "3, MINOR",
        "17.9, MINOR",
        "18, MODERATE",
        "71.9, MODERATE",
        "72, MAJOR",
        "1800, MAJOR",
    })
    void followsTheShareOfTheMovingTimeLost(double lostSeconds, Severity severity) {
        assertThat(Severity.of(lostSeconds, HOUR)).isEqualTo(severity);
    }

    @Test
    void isAnObservationWhereNothingIsKnown() {
        assertThat(Severity.of(Double.NaN, HOUR)).isEqualTo(Severity.OBSERVATION);
        assertThat(Severity.of(10, 0)).isEqualTo(Severity.MAJOR);
        assertThat(Severity.of(0, 0)).isEqualTo(Severity.OBSERVATION);
    }

    private static Detection detection(FindingKind kind, Severity strength, PricePlan price) {
        return new Detection(
                kind, new Found(strength, new Interval(0, 60), Evidence.none(), new Advice("none", null, null), price));
    }

    private static PricePlan costing(double lowMinutes, double highMinutes) {
        return new PricePlan.Known(
                new Price(new Cost.Priced(lowMinutes, highMinutes, "as it is"), new PriceSteps.Stops(List.of())));
    }

    /** Power alone cannot be replayed, since it says nothing of the road. */
    private static PricedFindings priced(Detection... detections) {
        RigChoice rig = RigChoice.ofNoRide(null, null, null, null, Position.HOODS);
        return PricedFindings.of(
                race(steady(HOUR, 200)),
                null,
                List.of(detections),
                rig,
                ability(TARGET_W),
                Company.NOT_SAID,
                null,
                Cancellation.NEVER);
    }

    private static Severity severity(Detection detection) {
        return priced(detection).findings().get(0).severity();
    }

    /** The upper end counts: 0.1 to 1.2 minutes of an hour are 2 %. How strong it was does not. */
    @Test
    void goesByTheUpperEndOfThePrice() {
        assertThat(severity(detection(FindingKind.STOPPED_TIME, Severity.MINOR, costing(0.1, 1.2))))
                .isEqualTo(Severity.MAJOR);
        assertThat(severity(detection(FindingKind.STOPPED_TIME, Severity.MAJOR, costing(0.1, 0.29))))
                .isEqualTo(Severity.MINOR);
        assertThat(severity(detection(FindingKind.STOPPED_TIME, Severity.MAJOR, costing(0, 0))))
                .isEqualTo(Severity.OBSERVATION);
    }

    @Test
    void isAnObservationWhereItCostsNoTimeByItself() {
        assertThat(severity(detection(FindingKind.DRIFT, Severity.MAJOR, new PricePlan.None("costs no time"))))
                .isEqualTo(Severity.OBSERVATION);
    }

    /** Where the race cannot be ridden again, how strong it was is all there is. */
    @Test
    void isHowStrongItWasWhereThereIsNoPrice() {
        Repair repair = new Repair(
                Repair.Turn.FACTORS,
                List.of(new Repair.Stretch(new Interval(0, 60), StretchChange.TO_MIDDLE_POWER, 220, 200)),
                0);
        PricedFindings findings = priced(detection(FindingKind.OVER_HARD_START, Severity.MODERATE, repair));
        assertThat(findings.findings().get(0).severity()).isEqualTo(Severity.MODERATE);
        assertThat(findings.findings().get(0).cost()).isEqualTo(new Cost.NotPriced("no distance in this file"));
        assertThat(findings.entries()).isEmpty();
    }

    @Test
    void ofACrashIsMajorWhateverItCost() {
        assertThat(severity(detection(FindingKind.ENERGY_CRASH, Severity.MINOR, costing(0, 0.1))))
                .isEqualTo(Severity.MAJOR);
        assertThat(severity(detection(FindingKind.ENERGY_CRASH, Severity.MINOR, new PricePlan.None("none"))))
                .isEqualTo(Severity.MAJOR);
    }

    @ParameterizedTest
    @EnumSource
    void ofNothingElseHasALeast(FindingKind kind) {
        assertThat(kind.detector().leastSeverity())
                .isEqualTo(kind == FindingKind.ENERGY_CRASH ? Severity.MAJOR : Severity.OBSERVATION);
    }

    @Test
    void aFindingTakesTheNearestDistanceWithinIt() {
        Ride ride = Ride.builder(Instant.EPOCH, 100)
                .channel(
                        Channel.DISTANCE,
                        Series.generate(100, second -> second == 20 || second == 59 ? Double.NaN : 10.0 * second))
                .build();
        Found found = new Found(
                Severity.MINOR,
                new Interval(20, 60),
                Evidence.none(),
                new Advice("none", null, null),
                new PricePlan.None("not asked"));
        RigChoice rig = RigChoice.ofNoRide(null, null, null, null, Position.HOODS);
        Finding finding = PricedFindings.of(
                        race(ride),
                        null,
                        List.of(new Detection(FindingKind.FADE, found)),
                        rig,
                        ability(TARGET_W),
                        Company.NOT_SAID,
                        null,
                        Cancellation.NEVER)
                .findings()
                .get(0);
        assertThat(finding.startM()).isEqualTo(210.0);
        assertThat(finding.endM()).isEqualTo(580.0);
        Remark remark = Remark.of(race(ride), new Detection(FindingKind.FADE, found));
        assertThat(remark.startM()).isEqualTo(210.0);
        assertThat(remark.endM()).isEqualTo(580.0);
        assertThat(remark.when()).isEqualTo(new Interval(20, 60));
    }
}
