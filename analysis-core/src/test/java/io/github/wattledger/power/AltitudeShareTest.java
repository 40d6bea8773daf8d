package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AltitudeShareTest {
    /**
     * Bassett et al. 1999, Med Sci Sports Exerc 31:1665-1676, worked out by hand: the formula of acclimatised riders as
     * quoted elsewhere, the other one from memory.
     */
    @ParameterizedTest
    @CsvSource({
        "1000, 96.88, 94.678",
        "1500, 94.53, 91.278",
        "2000, 91.62, 87.564",
        "2300, 89.605, 85.240",
        "3000, 84.12, 79.726"
    })
    void followsThePublishedFormulas(double heightM, double acclimatised, double unacclimatised) {
        assertThat(100 * AltitudeShare.acclimatised(heightM)).isCloseTo(acclimatised, within(0.005));
        assertThat(100 * AltitudeShare.unacclimatised(heightM)).isCloseTo(unacclimatised, within(0.005));
    }

    /** A trial at 1,800 m without acclimatisation took 7.6 % of the power: Roberts et al. 1998, as quoted elsewhere. */
    @Test
    void aTrialLiesBetweenTheTwo() {
        assertThat(1 - 0.076).isBetween(AltitudeShare.unacclimatised(1800), AltitudeShare.acclimatised(1800));
    }

    @Test
    void aHeightOutsideTheFormulasIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AltitudeShare.acclimatised(5001))
                .withMessage("heightM 5001.0, expected 0 to 5000");
        assertThatIllegalArgumentException().isThrownBy(() -> AltitudeShare.unacclimatised(Double.NaN));
    }
}
