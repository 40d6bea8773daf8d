package io.github.wattledger.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.power.HeartLine;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ThresholdMovesTest {
    private static final LocalDate START = LocalDate.of(2025, 1, 1);

    private static PastRide implying(int day, double watts) {
        return PastRide.of(START.plusDays(day), 1.5, 180).withBests(null, watts);
    }

    private static List<ThresholdMove> moves(double thresholdW, List<PastRide> rides, NamedDays named) {
        return ThresholdMoves.of(thresholdW, rides, named).found().orElseThrow();
    }

    @Test
    void theSecondHigherEffortWithinSixWeeksRaisesIt() {
        // RH-50
        List<PastRide> rides = List.of(implying(1, 246), implying(20, 256), implying(40, 258));
        List<ThresholdMove> moves = moves(250, rides, NamedDays.NONE);
        assertThat(moves).singleElement().satisfies(move -> {
            assertThat(move.day()).isEqualTo(START.plusDays(40));
            assertThat(move.fromW()).isEqualTo(250);
            assertThat(move.toW()).isCloseTo(257.0, within(0.05));
            assertThat(move.reason()).isEqualTo(ThresholdMove.Reason.TWO_EFFORTS);
        });
    }

    @Test
    void oneHigherEffortNeedsALowerHeartRateBesideIt() {
        // RH-50: "on day 20 only with heart rate 2 beats lower". Twelve rides after 24 others, at 0.70 of 250 W.
        assertThat(moves(250, withHeartRates(-1.9), NamedDays.NONE)).isEmpty();
        assertThat(moves(250, withHeartRates(-2.1), NamedDays.NONE))
                .singleElement()
                .satisfies(move -> {
                    assertThat(move.reason()).isEqualTo(ThresholdMove.Reason.EFFORT_AND_HEART_RATE);
                    assertThat(move.toW()).isCloseTo(250 * 1.024 * Math.exp(-0.01), within(1e-6));
                });
    }

    private static List<PastRide> withHeartRates(double shiftBpm) {
        List<PastRide> rides = new ArrayList<>();
        for (int i = 0; i < 36; i++) {
            double bpm = i < 24 ? 140 : 140 + shiftBpm;
            PastRide ride = i == 35 ? implying(35, 256) : implying(i, 200);
            rides.add(ride.withTraits(RideTraits.NONE.withHeartLine(new HeartLine(bpm - 0.3 * 175, 0.3, 100, 240))));
        }
        return rides;
    }

    @Test
    void aLoneFarEffortRaisesItByLessAndOneSevenWeeksLaterDoesNot() {
        // RH-51
        List<ThresholdMove> moves = moves(250, List.of(implying(0, 266), implying(50, 267)), NamedDays.NONE);
        assertThat(moves).singleElement().satisfies(move -> {
            assertThat(move.toW()).isCloseTo(258.1, within(0.05));
            assertThat(move.reason()).isEqualTo(ThresholdMove.Reason.ONE_FAR_EFFORT);
        });
    }

    @Test
    void easyRidesMoveNothing() {
        // RH-52: three rides a week at 0.60 to 0.95 of a constant threshold, 300 years of 300; form 2 %.
        for (int year = 0; year < 300; year++) {
            Random random = new Random(52_000 + year);
            List<PastRide> rides = new ArrayList<>();
            for (int day : days(random)) {
                double share = 0.60 + 0.35 * random.nextDouble();
                rides.add(implying(day, 250 * share * Math.exp(0.02 * random.nextGaussian())));
            }
            assertThat(moves(250, rides, NamedDays.NONE)).as("year %s", year).isEmpty();
        }
    }

    /** 156 days of 365. */
    static List<Integer> days(Random random) {
        List<Integer> days = new ArrayList<>();
        for (int day = 0; day < 365; day++) {
            days.add(day);
        }
        Collections.shuffle(days, random);
        return days.subList(0, 156).stream().sorted().toList();
    }

    @Test
    void aFallIsProposedFromHardEffortsAndNotPutInForce() {
        LocalDate first = START.plusDays(10);
        LocalDate second = START.plusDays(40);
        NamedDays hard = new NamedDays(Set.of(), Set.of(first, second));
        List<PastRide> rides = List.of(implying(10, 230), implying(40, 235), implying(41, 256), implying(42, 256));
        List<ThresholdMove> moves = moves(250, rides, hard);
        assertThat(moves).hasSize(2);
        assertThat(moves.get(0).isRise()).isFalse();
        // The higher of the two and half a percent: 235 * exp(0.005).
        assertThat(moves.get(0).toW()).isCloseTo(235 * Math.exp(0.005), within(1e-9));
        assertThat(moves.get(1).fromW()).as("the fall was only proposed").isEqualTo(250);
        assertThat(moves(250, rides.subList(0, 2), NamedDays.NONE))
                .as("nobody named them as hard")
                .isEmpty();
    }

    @Test
    void theOrderOfRidesDoesNotMatter() {
        List<PastRide> rides = new ArrayList<>(List.of(implying(1, 246), implying(20, 256), implying(40, 258)));
        List<ThresholdMove> expected = moves(250, rides, NamedDays.NONE);
        Collections.reverse(rides);
        assertThat(moves(250, rides, NamedDays.NONE)).isEqualTo(expected);
    }
}
