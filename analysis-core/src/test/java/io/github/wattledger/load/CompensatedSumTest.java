package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Compensated summation: W. Kahan, Further remarks on reducing truncation errors, Comm. ACM 8 (1965) 40. */
class CompensatedSumTest {
    /** Doubles near 1e17 lie 16 apart: a plain sum takes in none of the small numbers, nor any 64 of them at once. */
    @Test
    void keepsWhatALargeSumWouldSwallow() {
        CompensatedSum sum = new CompensatedSum();
        sum.add(1e17);
        for (int i = 0; i < 640_000; i++) {
            sum.add(0.1);
        }
        assertThat(sum.value()).isCloseTo(1e17 + 64_000, within(32.0));
    }
}
