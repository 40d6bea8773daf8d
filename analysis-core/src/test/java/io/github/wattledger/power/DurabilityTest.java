package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class DurabilityTest {
    @Test
    void fiveMinutesAtNineTenthsAfterTwoThousandKilojoulesAreMinusTenPercent() {
        // Spragg et al. 2022 split at 2,000 kJ; 300 W before, 270 W after is -10.0 % by definition.
        double[] watts = new double[5 * 3600];
        Arrays.fill(watts, 200);
        Arrays.fill(watts, 1800, 2100, 300);
        Arrays.fill(watts, 14_000, 14_300, 270);
        List<Durability> found = Durability.of(watts, new int[] {300}, new double[] {2000});
        assertThat(found).singleElement().satisfies(durability -> {
            assertThat(durability.fresherW()).isCloseTo(300, within(1e-9));
            assertThat(durability.tiredW()).isCloseTo(270, within(1e-9));
            assertThat(durability.changePercent()).isCloseTo(-10.0, within(1e-9));
        });
    }

    @Test
    void theSecondThatReachesTheLevelBelongsToOneSideOnly() {
        // 100 W reach 100 kJ in second 999. A ten-second effort ends with it; the next second starts the other side.
        double[] watts = new double[2000];
        Arrays.fill(watts, 100);
        Arrays.fill(watts, 989, 999, 50);
        // Ten seconds at 50 W put the level five seconds off: second 1003 reaches 99.95 kJ, second 1004 reaches 100.
        watts[1004] = 600;
        watts[1005] = 400;
        List<Durability> found = Durability.of(watts, new int[] {1}, new double[] {100});
        assertThat(found).singleElement().satisfies(durability -> {
            assertThat(durability.fresherW()).isEqualTo(600);
            assertThat(durability.tiredW()).isEqualTo(400);
        });
    }

    @Test
    void theSecondThatReachesTheLevelExactlyLiesBeforeIt() {
        // 100 W reach 1 kJ with the end of second 9: second 10 comes after it.
        double[] watts = new double[20];
        Arrays.fill(watts, 100);
        watts[10] = 600;
        assertThat(Durability.of(watts, new int[] {1}, new double[] {1}))
                .singleElement()
                .satisfies(durability -> {
                    assertThat(durability.fresherW()).isEqualTo(100);
                    assertThat(durability.tiredW()).isEqualTo(600);
                });
    }

    @Test
    void threeTimesTheDurationOnEachSideIsJustEnough() {
        // docs/methods.md. 100 W reach 3 kJ after 30 s, 2.9 kJ after 29 s.
        double[] watts = new double[60];
        Arrays.fill(watts, 100);
        assertThat(Durability.of(watts, new int[] {10}, new double[] {3})).hasSize(1);
        assertThat(Durability.of(watts, new int[] {10}, new double[] {2.9})).isEmpty();
        assertThat(Durability.of(watts, new int[] {10}, new double[] {3.1})).isEmpty();
    }

    @Test
    void saysNothingWhereASideIsTooShort() {
        double[] watts = new double[6000];
        Arrays.fill(watts, 200);
        // 1,000 kJ are done after 5,000 s: 1,000 s remain, enough for five minutes, too little for twenty.
        assertThat(Durability.of(Series.of(watts)))
                .extracting(Durability::seconds, Durability::afterKJ)
                .containsExactly(tuple(300, 1000.0));
        assertThat(Durability.of(Series.of(new double[0]))).isEmpty();
    }

    @Test
    void powerRecordedInAPauseIsNoWork() {
        Ride ride = Ride.builder(Instant.EPOCH, 12_000)
                .channel(Channel.POWER, Series.generate(12_000, second -> 200))
                .state(new Interval(0, 3000), SecondState.PAUSED)
                .build();
        // 1,000 kJ at 200 W take 5,000 s from the end of the pause: 4,000 s remain for the 3 x 1,200 s that are asked
        // for.
        assertThat(Durability.of(ride))
                .extracting(Durability::seconds, Durability::afterKJ)
                .containsExactly(tuple(300, 1000.0), tuple(1200, 1000.0));
    }
}
