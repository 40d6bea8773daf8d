package io.github.wattledger.rider;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class RiderTest {
    private static final ThresholdHistory HISTORY =
            new ThresholdHistory(List.of(new ThresholdHistory.Entry(LocalDate.of(2026, 3, 1), 250.0, 165.0)));
    private static final Gears GEARS = new Gears(List.of(46), List.of(11, 36), 2.19);
    private static final ZoneScheme TWO =
            new ZoneScheme(List.of(new ZoneScheme.Zone("easy", 0), new ZoneScheme.Zone("hard", 0.9)));
    private static final List<LongBest> BESTS = List.of(new LongBest(9000, 214, LocalDate.of(2026, 5, 2)));
    private static final Set<LocalDate> RACE_DAYS = Set.of(LocalDate.of(2026, 6, 14));
    private static final Set<LocalDate> ALL_OUT_DAYS = Set.of(LocalDate.of(2026, 7, 4));
    private static final List<Trial> TRIALS = List.of(new Trial(LocalDate.of(2026, 4, 5), 720, 281.0));
    private static final ZoneScheme ONE = new ZoneScheme(List.of(new ZoneScheme.Zone("all", 0)));

    @Test
    void eachChangeChangesItsOwnNumberAlone() {
        Rider all = Rider.UNKNOWN
                .withMassKg(74)
                .withBikeMassKg(9.5)
                .withThresholdPowerW(240)
                .withThresholdHeartRateBpm(166)
                .withMaximumHeartRateBpm(184)
                .withThresholds(HISTORY)
                .withPowerZones(TWO)
                .withHeartRateZones(ONE)
                .withGears(GEARS)
                .withDragAreaM2(0.36)
                .withRollingResistance(0.007)
                .withCriticalPower(246, 17.5)
                .withLongBests(BESTS)
                .withRaceDays(RACE_DAYS)
                .withAllOutDays(ALL_OUT_DAYS)
                .withTrials(TRIALS)
                .withBirthYear(1990);
        assertThat(all)
                .isEqualTo(new Rider(
                        74.0,
                        9.5,
                        240.0,
                        166.0,
                        184.0,
                        HISTORY,
                        TWO,
                        ONE,
                        GEARS,
                        0.36,
                        0.007,
                        246.0,
                        17.5,
                        BESTS,
                        RACE_DAYS,
                        ALL_OUT_DAYS,
                        TRIALS,
                        1990));
    }

    @Test
    void criticalPowerAndWPrimeBelongTogether() {
        assertThatThrownBy(() -> new Rider(
                        null, null, null, null, null, HISTORY, TWO, ONE, null, null, null, 246.0, null, List.of(),
                        Set.of(), Set.of(), List.of(), null))
                .hasMessage("critical power and W' belong together; only one of them is given");
    }

    @Test
    void aBestCountsForRidesOfLaterDaysOnly() {
        LongBest best = BESTS.get(0);
        assertThat(best.isBefore(LocalDate.of(2026, 5, 3))).isTrue();
        assertThat(best.isBefore(LocalDate.of(2026, 5, 2))).isFalse();
        assertThat(new LongBest(3600, 240, null).isBefore(LocalDate.of(2020, 1, 1)))
                .isTrue();
        assertThatThrownBy(() -> new LongBest(600, 300, null)).hasMessage("seconds 600.0, expected 1200 to 172800");
    }

    @Test
    void aTrialLastsTwoToThirtyMinutes() {
        LocalDate day = LocalDate.of(2026, 4, 5);
        assertThat(new Trial(day, 120, null).watts()).isNull();
        assertThatThrownBy(() -> new Trial(day, 119, null)).hasMessage("seconds 119.0, expected 120 to 1800");
        assertThatThrownBy(() -> new Trial(day, 300, 1001.0)).hasMessage("watts 1001.0, expected 30 to 1000");
    }

    @Test
    void whatCanNeverBeTrueIsRefusedWithItsRange() {
        assertThatThrownBy(() -> Rider.UNKNOWN.withMassKg(7.4)).hasMessage("massKg 7.4, expected 25 to 250");
        assertThatThrownBy(() -> Rider.UNKNOWN.withMassKg(7.4))
                .isInstanceOfSatisfying(Bounds.OutOfBoundsException.class, refused -> {
                    assertThat(refused.name()).isEqualTo("massKg");
                    assertThat(refused.value()).isEqualTo(7.4);
                    assertThat(refused.bounds()).isEqualTo(Bounds.RIDER_MASS_KG);
                });
        assertThatThrownBy(() -> Rider.UNKNOWN.withDragAreaM2(Double.NaN))
                .hasMessage("dragAreaM2 NaN, expected 0.1 to 1");
        assertThatThrownBy(() -> Rider.UNKNOWN.withRollingResistance(0.7))
                .hasMessage("rollingResistance 0.7, expected 0.001 to 0.05");
    }
}
