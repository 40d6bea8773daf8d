package io.github.wattledger.energy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Burke et al. 2011, J Sports Sci 29 Suppl 1:S17-S27, and Thomas, Erdman and Burke 2016, Med Sci Sports Exerc 48:543-568
 * (rules from memory): 30 to 60 g/h up to two and a half hours, up to 90 g/h beyond; little or none under an hour
 * (Jeukendrup 2014, Sports Med 44 Suppl 1:S25-S33).
 */
class IntakeGuideTest {
    private static final Estimate PLENTY = new Estimate(150, 200, 250);

    @ParameterizedTest
    @CsvSource({"1.0, 30, 60, false", "2.5, 30, 60, false", "2.51, 60, 90, true", "12, 60, 90, true"})
    void followsThePublishedTable(double hours, double low, double high, boolean mixture) {
        IntakeGuide guide = IntakeGuide.of(hours, PLENTY).orElseThrow();
        assertThat(guide.lowGPerHour()).isEqualTo(low);
        assertThat(guide.highGPerHour()).isEqualTo(high);
        assertThat(guide.mixtureOfSugars()).isEqualTo(mixture);
    }

    @Test
    void aShortRideNeedsNone() {
        assertThat(IntakeGuide.of(0.99, PLENTY)).isEmpty();
    }

    /** At the pace of twelve hours 75 to 130 g/h are used: seven tenths of it are 52 to 91 g/h. */
    @Test
    void nobodyIsToldToEatMoreThanIsUsed() {
        IntakeGuide guide = IntakeGuide.of(12, new Estimate(75, 100, 130)).orElseThrow();
        assertThat(guide.lowGPerHour()).isCloseTo(52.5, within(1e-9));
        assertThat(guide.highGPerHour()).isEqualTo(90);
        IntakeGuide easy = IntakeGuide.of(12, new Estimate(20, 40, 60)).orElseThrow();
        assertThat(easy.lowGPerHour()).isCloseTo(14, within(1e-9));
        assertThat(easy.highGPerHour()).isCloseTo(42, within(1e-9));
        assertThat(easy.mixtureOfSugars()).isFalse();
    }

    @Test
    void hoursOutOfRangeAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> IntakeGuide.of(-1, PLENTY))
                .withMessage("hours -1.0, expected 0 or more");
    }
}
