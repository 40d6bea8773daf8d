package io.github.wattledger.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.replay.Influence;
import io.github.wattledger.ride.Ride;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigTest {
    private static Rig rig(String name, double value) {
        return new Rig(
                name.equals("massKg") ? value : 85,
                name.equals("dragAreaM2") ? value : 0.36,
                name.equals("rollingResistance") ? value : 0.006,
                name.equals("wheelRadiusM") ? value : 0.311,
                name.equals("wheelInertiaKgM2") ? value : 0.14,
                name.equals("driveEfficiency") ? value : 0.976,
                name.equals("spokeDragAreaM2") ? value : 0.0044);
    }

    /** The ranges of the documentation, both ends within. */
    @ParameterizedTest
    @CsvSource({
        "massKg, 29, 330",
        "dragAreaM2, 0.1, 1.0",
        "rollingResistance, 0.001, 0.05",
        "wheelRadiusM, 0.15, 0.5",
        "wheelInertiaKgM2, 0, 1",
        "driveEfficiency, 0.8, 1",
        "spokeDragAreaM2, 0, 0.05"
    })
    void numbersHaveBounds(String name, double low, double high) {
        assertThat(rig(name, low)).isNotEqualTo(rig(name, high));
        for (double outside : new double[] {low - 1e-6, high + 1e-6, Double.NaN}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> rig(name, outside))
                    .withMessageStartingWith(name + " ");
        }
    }

    @Test
    void aTypicalOneIsTheRiderWithElevenKilogramsOnTheHoods() {
        // docs/methods.md: hoods 0.358 m2; bicycle 11 kg and rolling resistance 0.006 by common practice.
        assertThat(RigChoice.ofNoRide(74.0, null, null, null, Position.HOODS).rig())
                .isEqualTo(Rig.of(85, 0.358, 0.006));
    }

    @Test
    void turningWheelsResistBesideTheirMass() {
        // Martin et al. 1998: 0.14 kg m2 at 0.311 m are 1.4475 kg.
        assertThat(Rig.of(80, 0.3, 0.005).inertKg()).isCloseTo(81.4475, within(1e-4));
    }

    @Test
    void positionsHaveTheirWords() {
        assertThat(Position.AERO_BARS.words()).isEqualTo("aero bars");
        assertThat(Position.AERO_BARS.id()).isEqualTo("aero-bars");
        assertThat(Influence.Input.RIDER_MASS.id()).isEqualTo("rider-mass");
    }

    @Test
    void whatIsGivenIsNotEstimated() {
        RigChoice given = RigChoice.ofNoRide(74.0, 11.0, 0.30, 0.005, Position.HOODS);
        assertThat(given.estimatedFrom(Ride.ofWatts(200, 200), null)).isEqualTo(given);
    }
}
