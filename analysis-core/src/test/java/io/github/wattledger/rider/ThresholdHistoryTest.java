package io.github.wattledger.rider;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.rider.ThresholdHistory.Entry;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected values follow from the definition: the newest number that is not of a later day, else the first one. */
class ThresholdHistoryTest {
    private static final ThresholdHistory HISTORY = new ThresholdHistory(List.of(
            new Entry(LocalDate.of(2025, 11, 1), 235.0, 163.0),
            new Entry(LocalDate.of(2026, 3, 1), 250.0, null),
            new Entry(LocalDate.of(2026, 7, 15), null, 165.0)));

    @ParameterizedTest
    @CsvSource({
        "2020-01-01, 235, 163",
        "2025-11-01, 235, 163",
        "2026-02-28, 235, 163",
        "2026-03-01, 250, 163",
        "2026-07-14, 250, 163",
        "2026-07-15, 250, 165",
        "2030-01-01, 250, 165"
    })
    void theNewestOfTheDayOrEarlierIsInForce(LocalDate day, double watts, double bpm) {
        assertThat(HISTORY.powerW(day)).isEqualTo(watts);
        assertThat(HISTORY.heartRateBpm(day)).isEqualTo(bpm);
    }

    @Test
    void beforeTheFirstKnownNumberThatNumberIsTaken() {
        ThresholdHistory late = new ThresholdHistory(List.of(
                new Entry(LocalDate.of(2025, 1, 1), null, 160.0), new Entry(LocalDate.of(2026, 1, 1), 240.0, null)));
        assertThat(late.powerW(LocalDate.of(2025, 6, 1))).isEqualTo(240);
        assertThat(late.isBeforeFirstPower(LocalDate.of(2025, 12, 31))).isTrue();
        assertThat(late.isBeforeFirstPower(LocalDate.of(2026, 1, 1))).isFalse();
    }

    @Test
    void withoutEntriesNothingIsKnown() {
        assertThat(ThresholdHistory.NONE.powerW(LocalDate.of(2026, 1, 1))).isNull();
        assertThat(ThresholdHistory.NONE.heartRateBpm(LocalDate.of(2026, 1, 1))).isNull();
        assertThat(ThresholdHistory.NONE.isBeforeFirstPower(LocalDate.of(2026, 1, 1)))
                .isFalse();
    }

    @Test
    void whatCanNeverBeTrueIsRefused() {
        Entry march = new Entry(LocalDate.of(2026, 3, 1), 250.0, null);
        assertThatThrownBy(() -> new ThresholdHistory(List.of(march, march)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2026-03-01");
        assertThatThrownBy(() -> new Entry(LocalDate.of(2026, 3, 1), null, null))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Entry(LocalDate.of(2026, 3, 1), 20.0, null))
                .hasMessage("powerW 20.0, expected 30 to 700");
    }
}
