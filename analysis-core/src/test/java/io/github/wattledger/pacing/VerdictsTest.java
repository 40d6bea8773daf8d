package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.onRoad;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The verdict: the first that applies. */
class VerdictsTest {
    private Verdict verdict(double firstW, double secondW, Finding... findings) {
        double[] watts = steady(2 * HOUR, firstW);
        Arrays.fill(watts, HOUR, 2 * HOUR, secondW);
        return Verdicts.of(Verdicts.secondHalfOverFirst(race(watts)), List.of(findings))
                .verdict();
    }

    private Finding finding(FindingKind kind, Severity severity) {
        return new Finding(
                kind,
                severity,
                new Interval(0, 60),
                null,
                null,
                Evidence.none(),
                new Cost.NotPriced("not asked"),
                new Advice("none", null, null),
                null);
    }

    @Test
    void compareTheHalves() {
        assertThat(verdict(200, 212)).isEqualTo(Verdict.NEGATIVE_SPLIT);
        assertThat(verdict(200, 208)).isEqualTo(Verdict.EVEN);
        assertThat(verdict(200, 192)).isEqualTo(Verdict.EVEN);
        assertThat(verdict(200, 188)).isEqualTo(Verdict.UNEVEN);
    }

    @Test
    void areUnevenByMajorSurgesOnly() {
        assertThat(verdict(200, 200, finding(FindingKind.SURGES, Severity.MAJOR)))
                .isEqualTo(Verdict.UNEVEN);
        assertThat(verdict(200, 200, finding(FindingKind.SURGES, Severity.MODERATE)))
                .isEqualTo(Verdict.EVEN);
    }

    /** In the order of the definition: each before the next. */
    @Test
    void areTheFirstThatApplies() {
        List<FindingKind> order = List.of(
                FindingKind.OVER_HARD_START,
                FindingKind.FADE,
                FindingKind.UNDER_PACED,
                FindingKind.THRESHOLD_RIDING_EARLY,
                FindingKind.LATE_RESERVE);
        List<Verdict> verdicts = List.of(
                Verdict.OVER_HARD_START, Verdict.FADED, Verdict.UNDER_PACED, Verdict.UNEVEN, Verdict.NEGATIVE_SPLIT);
        List<Finding> findings = new ArrayList<>();
        for (int i = order.size() - 1; i >= 0; i--) {
            findings.add(finding(order.get(i), Severity.MINOR));
            assertThat(verdict(200, 200, findings.toArray(Finding[]::new))).isEqualTo(verdicts.get(i));
        }
    }

    @Test
    void haveWordsAsTheMethodsWriteThem() {
        assertThat(Arrays.stream(Verdict.values()).map(Verdict::words))
                .containsExactlyInAnyOrder(
                        "over-hard start", "faded", "under-paced", "uneven", "negative split", "even", "not judged");
        assertThat(Severity.MODERATE.id()).isEqualTo("moderate");
    }

    /** Both halves as hard on like ground; the first climbs for 40 minutes of its hour, the second for 10. */
    @Test
    void compareTheHalvesOnLikeGround() {
        Ride ride = onRoad(2 * HOUR, second -> isClimb(second) ? 250 : 190, second -> isClimb(second) ? 0.055 : 0);
        assertThat(Verdicts.secondHalfOverFirst(race(ride))).isCloseTo(1, within(0.005));
    }

    private static boolean isClimb(int second) {
        return second < 2400 || (second >= 5000 && second < 5600);
    }

    /** What cost nothing decides no headline, but for riding too easily, which costs nothing by itself. */
    @Test
    void doNotRestOnObservations() {
        for (FindingKind kind : FindingKind.values()) {
            assertThat(verdict(200, 200, finding(kind, Severity.OBSERVATION)))
                    .as("%s", kind)
                    .isEqualTo(kind == FindingKind.UNDER_PACED ? Verdict.UNDER_PACED : Verdict.EVEN);
        }
    }
}
