package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected values: the analytic responses of an exponentially weighted average, 100 (1 - e^(-n / tau)) and so on. */
class LoadHistoryTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

    private static LoadHistory constant(double stress, int days) {
        Map<LocalDate, Double> byDay = new HashMap<>();
        for (int i = 0; i < days; i++) {
            byDay.put(FIRST.plusDays(i), stress);
        }
        return LoadHistory.of(FIRST, FIRST.plusDays(days - 1L), byDay);
    }

    @Nested
    class Step {
        /** 100 (1 - e^(-n/42)), computed by hand. */
        @ParameterizedTest
        @CsvSource({"1, 2.35", "7, 15.35", "14, 28.35", "28, 48.66", "42, 63.21", "84, 86.47"})
        void chronicLoadRisesTowardsAConstantLoad(int days, double expected) {
            assertThat(constant(100, days).days().get(days - 1).load42Days()).isCloseTo(expected, within(0.005));
        }

        /** 100 (1 - e^(-n/7)), computed by hand. */
        @ParameterizedTest
        @CsvSource({"7, 63.21", "14, 86.47", "28, 98.17"})
        void acuteLoadRisesFaster(int days, double expected) {
            assertThat(constant(100, days).days().get(days - 1).load7Days()).isCloseTo(expected, within(0.005));
        }

        @Test
        void aConstantLoadEndsAtRatioOneAndBalanceZero() {
            LoadHistory.Day last = Objects.requireNonNull(constant(80, 3000).last());
            assertThat(last.loadRatio()).isCloseTo(1, within(1e-9));
            assertThat(last.loadDifference()).isCloseTo(0, within(1e-9));
            assertThat(last.loadChange()).isCloseTo(0, within(1e-9));
        }
    }

    @Nested
    class Impulse {
        /** One ride of stress 100: (1 - e^(-1/tau)) 100 e^(-n/tau) n days later. */
        @ParameterizedTest
        @CsvSource({"0", "1", "10", "60"})
        void oneRideFadesExponentially(int daysLater) {
            LoadHistory load = LoadHistory.of(FIRST, FIRST.plusDays(daysLater), Map.of(FIRST, 100.0));
            LoadHistory.Day last = load.days().get(daysLater);
            assertThat(last.load42Days())
                    .isCloseTo(100 * (1 - Math.exp(-1 / 42.0)) * Math.exp(-daysLater / 42.0), within(1e-9));
            assertThat(last.load7Days())
                    .isCloseTo(100 * (1 - Math.exp(-1 / 7.0)) * Math.exp(-daysLater / 7.0), within(1e-9));
        }

        /** Half-life tau ln 2: 29.11 and 4.85 days. */
        @Test
        void withoutTrainingLoadsHalveEveryTauLogTwo() {
            LoadHistory load = LoadHistory.of(FIRST, FIRST.plusDays(400), Map.of(), 64, 64);
            double afterMonth = load.days().get(28).load42Days();
            double days = 29 * Math.log(2) / Math.log(64 / afterMonth);
            assertThat(days).isCloseTo(29.112, within(1e-3));
            double afterWeek = load.days().get(6).load7Days();
            assertThat(7 * Math.log(2) / Math.log(64 / afterWeek)).isCloseTo(4.852, within(1e-3));
        }
    }

    @Test
    void balanceIsThatOfTheDayBefore() {
        LoadHistory load = constant(100, 5);
        assertThat(load.days().get(0).loadDifference()).isZero();
        LoadHistory.Day third = load.days().get(2);
        assertThat(load.days().get(3).loadDifference()).isEqualTo(third.load42Days() - third.load7Days());
    }

    @Test
    void rampIsTheGainOfSevenDays() {
        LoadHistory load = constant(100, 10);
        assertThat(load.days().get(5).loadChange()).isNull();
        assertThat(load.days().get(6).loadChange()).isEqualTo(load.days().get(6).load42Days());
        assertThat(load.days().get(9).loadChange())
                .isEqualTo(load.days().get(9).load42Days() - load.days().get(2).load42Days());
    }

    @Test
    void aDayOfSummerTimeIsOneDay() {
        // The clocks of Europe go forward on 29 March 2026: 23 hours, still one day of decay.
        LocalDate saturday = LocalDate.of(2026, 3, 28);
        LoadHistory load = LoadHistory.of(saturday, saturday.plusDays(3), Map.of(saturday, 100.0));
        assertThat(load.days()).hasSize(4);
        double share = load.days().get(1).load7Days() / load.days().get(0).load7Days();
        assertThat(load.days().get(2).load7Days() / load.days().get(1).load7Days())
                .isCloseTo(share, within(1e-12));
    }

    @Test
    void noLoadHasNoRatio() {
        assertThat(LoadHistory.of(FIRST, FIRST, Map.of()).days().get(0).loadRatio())
                .isNull();
    }

    @Test
    void theLastDayMayNotLieBeforeTheFirst() {
        assertThatThrownBy(() -> LoadHistory.of(FIRST, FIRST.minusDays(1), Map.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2026-01-04");
    }
}
