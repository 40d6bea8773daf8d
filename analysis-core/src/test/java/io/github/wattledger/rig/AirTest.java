package io.github.wattledger.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Densities themselves are checked in {@link AirDensityTest}. */
class AirTest {
    @Test
    void unknownAirIsThatOfTheStandardAtmosphereHalfSaturated() {
        // 15 degrees, 101,325 Pa: dry 1.2250 (ICAO Doc 7488), half saturated about 0.3 % less.
        assertThat(Air.UNKNOWN.density().value()).isCloseTo(1.225, within(0.005));
    }

    /** Dry air of the standard atmosphere at 9,000 m: 0.46706 kg/m3 (ICAO Doc 7488, from memory); its range is 5 %. */
    @Test
    void isKnownUpToTheHighestAltitude() {
        assertThat(new Air(null, 9000.0, null, null).density().value()).isCloseTo(0.46706, within(0.01));
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
    void ofARideIsItsMeanUnderWay() {
        Ride ride = Ride.builder(Instant.EPOCH, 100)
                .channel(
                        Channel.TEMPERATURE,
                        Series.generate(100, second -> second < 20 ? Double.NaN : second < 60 ? 10 : 20))
                .channel(Channel.ALTITUDE, Series.generate(100, second -> second < 50 ? 400 : 600))
                .state(new Interval(60, 80), SecondState.STOPPED)
                .build();
        // 40 s at 10 degrees and 20 at 20; 50 s at 400 m and 30 at 600.
        Air air = Air.of(ride);
        assertThat(air.temperatureC()).isNotNull();
        assertThat(air.temperatureC()).isCloseTo(800 / 60.0, within(1e-9));
        assertThat(air.altitudeM()).isNotNull();
        assertThat(air.altitudeM()).isCloseTo(475, within(1e-9));
        assertThat(Air.of(Ride.ofWatts(200, 200))).isEqualTo(Air.UNKNOWN);
    }

    @Test
    void anotherTemperatureLeavesThePressure() {
        assertThat(new Air(20.0, null, 98_000.0, null).with(new Air(10.0, null, null, null)))
                .isEqualTo(new Air(10.0, null, 98_000.0, null));
        assertThat(new Air(20.0, null, 98_000.0, null).with(new Air(null, null, 90_000.0, null)))
                .isEqualTo(new Air(20.0, null, 90_000.0, null));
        Air dense = new Air(null, null, null, 1.2);
        assertThat(new Air(20.0, 0.0, null, null).with(dense)).isEqualTo(dense);
        assertThat(dense.with(Air.UNKNOWN)).isEqualTo(dense);
        assertThatThrownBy(() -> dense.with(new Air(20.0, null, null, null))).hasMessageContaining("by its density");
    }

    @Test
    void aDensityIsGivenWhereTemperatureAndHeightAre() {
        assertThat(new Air(20.0, 300.0, null, null).density().origin()).isEqualTo(Measure.Origin.GIVEN);
        assertThat(new Air(20.0, null, 98_000.0, null).density().origin()).isEqualTo(Measure.Origin.GIVEN);
        assertThat(new Air(null, 300.0, null, null).density().origin()).isEqualTo(Measure.Origin.TYPICAL);
        assertThat(new Air(20.0, null, null, null).density().origin()).isEqualTo(Measure.Origin.TYPICAL);
        assertThat(Air.UNKNOWN.density().origin()).isEqualTo(Measure.Origin.TYPICAL);
    }

    @Test
    void theEndsOfTheRangesAreWithinThem() {
        assertThat(new Air(-40.0, -500.0, null, null).density().value())
                .isGreaterThan(new Air(60.0, 9000.0, null, null).density().value());
        assertThatThrownBy(() -> new Air(-40.1, null, null, null)).hasMessageContaining("temperatureC");
        assertThatThrownBy(() -> new Air(60.1, null, null, null)).hasMessageContaining("temperatureC");
    }

    @Test
    void numbersHaveBounds() {
        assertThatThrownBy(() -> new Air(70.0, null, null, null)).hasMessageContaining("temperatureC 70.0");
        assertThatThrownBy(() -> new Air(null, 9500.0, null, null)).hasMessageContaining("altitudeM");
        assertThatThrownBy(() -> new Air(null, null, 1013.0, null)).hasMessageContaining("pressurePa");
        assertThatThrownBy(() -> new Air(null, null, null, 12.0)).hasMessageContaining("airDensityKgPerM3");
    }
}
