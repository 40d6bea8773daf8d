package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class SeriesTest {
    private static final Series SERIES = Series.of(1, Double.NaN, 3, Double.NaN, 5);

    @Test
    void measuredValuesOfAPartAreCounted() {
        assertThat(SERIES.measuredCount()).isEqualTo(3);
        assertThat(SERIES.measuredCount(0, 5)).isEqualTo(3);
        assertThat(SERIES.measuredCount(1, 3)).isEqualTo(1);
        assertThat(SERIES.measuredCount(1, 2)).isZero();
        assertThat(SERIES.measuredCount(5, 5)).isZero();
    }

    @Test
    void theMeanIsThatOfTheMeasuredValues() {
        assertThat(SERIES.mean(0, 5)).hasValue(3);
        assertThat(SERIES.mean(0, 3)).hasValue(2);
        assertThat(SERIES.mean(1, 2)).isEmpty();
        assertThat(SERIES.mean(2, 2)).isEmpty();
    }

    @Test
    void theMaximumIsThatOfTheMeasuredValues() {
        assertThat(SERIES.maximum()).hasValue(5);
        assertThat(Series.of(Double.NaN, -3, -7, Double.NaN).maximum()).hasValue(-3);
        assertThat(Series.missing(3).maximum()).isEmpty();
        assertThat(Series.of().maximum()).isEmpty();
    }

    @Test
    void aPartBeyondTheSeriesIsRefused() {
        assertThatThrownBy(() -> SERIES.mean(3, 6)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> SERIES.measuredCount(3, 6)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> SERIES.measuredCount(-1, 2)).isInstanceOf(IndexOutOfBoundsException.class);
    }
}
