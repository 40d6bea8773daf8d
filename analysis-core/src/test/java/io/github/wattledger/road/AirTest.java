package io.github.wattledger.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Densities themselves are checked in {@link AirDensityTest}. */
class AirTest {
    @Test
    void unknownAirIsThatOfTheStandardAtmosphereHalfSaturated() {
        // 15 degrees, 101,325 Pa: dry 1.2250 (ICAO Doc 7488), half saturated about 0.3 % less.
        assertThat(Air.UNKNOWN.density().value()).isCloseTo(1.225, within(0.005));
    }

    @Test
    void whatIsUnknownWidensTheRange() {
        Measure unknown = Air.UNKNOWN.density();
        Measure known = new Air(20.0, 300.0, null, null).density();
        Measure pressure = new Air(20.0, null, 98_000.0, null).density();
        // 5 %, 5 % and 2 % as squares; the weather's 2 %; nothing.
        assertThat(unknown.high() / unknown.value() - 1).isCloseTo(Math.sqrt(0.0054), within(1e-9));
        assertThat(known.high() / known.value() - 1).isCloseTo(0.02, within(1e-9));
        assertThat(pressure.hasRange()).isFalse();
        assertThat(new Air(null, null, null, 1.1).density()).isEqualTo(Measure.exactly(1.1, Measure.Origin.GIVEN));
    }

    @Test
    void anotherAltitudeIsAnotherPressureInTheSameWarmth() {
        Air changed = new Air(20.0, null, 101_325.0, null).with(new Air(null, 2000.0, null, null));
        assertThat(changed).isEqualTo(new Air(20.0, 2000.0, null, null));
        // Standard pressure at 2,000 m 79,495 Pa (ICAO Doc 7488), over that at sea level.
        double ratio = changed.density().value()
                / new Air(20.0, 0.0, null, null).density().value();
        assertThat(ratio).isCloseTo(79_495 / 101_325.0, within(0.002));
    }

    @Test
    void numbersHaveBounds() {
        assertThatThrownBy(() -> new Air(70.0, null, null, null)).hasMessageContaining("temperatureC 70.0");
        assertThatThrownBy(() -> new Air(null, 9500.0, null, null)).hasMessageContaining("altitudeM");
        assertThatThrownBy(() -> new Air(null, null, 1013.0, null)).hasMessageContaining("pressurePa");
        assertThatThrownBy(() -> new Air(null, null, null, 12.0)).hasMessageContaining("airDensityKgPerM3");
    }
}
