package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimalsTest {
    /** Halves of the number as it is written, away from zero: 1.005 is a little less in binary, and still 1.01. */
    @ParameterizedTest
    @CsvSource({
        "0.5, 0, 1",
        "1.5, 0, 2",
        "2.5, 0, 3",
        "-2.5, 0, -3",
        "-0.3, 0, 0",
        "1.005, 2, 1.01",
        "0.0065, 4, 0.0065",
        "0.00004, 4, 0.0000",
        "249.49999, 0, 249",
        "1234567, 1, 1234567.0",
        "1e10, 0, 10000000000",
    })
    void areRoundedAndWrittenOut(double value, int decimals, String expected) {
        assertThat(Decimals.of(value, decimals)).isEqualTo(expected);
    }

    @Test
    void areOfFiniteNumbersOnly() {
        assertThatThrownBy(() -> Decimals.of(Double.NaN, 0)).isInstanceOf(NumberFormatException.class);
        assertThatThrownBy(() -> Decimals.of(Double.POSITIVE_INFINITY, 0)).isInstanceOf(NumberFormatException.class);
    }
}
