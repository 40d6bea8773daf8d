package io.github.wattledger.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class RigChoiceTest {
    @Test
    void wordsNameTheTrueSourceOfEachNumber() {
        RigChoice choice = RigChoice.ofNoRide(71.6, null, 0.31, null, Position.DROPS);
        assertThat(choice.words())
                .isEqualTo("The prices rest on rider 72 kg, drag area 0.31 m2 (as given); bicycle 11 kg, rolling"
                        + " resistance 0.0060 (typical values).");
        assertThat(choice.withRiderFrom(Measure.Origin.DEVICE).words())
                .isEqualTo("The prices rest on drag area 0.31 m2 (as given); rider 72 kg (as set on the device);"
                        + " bicycle 11 kg, rolling resistance 0.0060 (typical values).");
    }

    @Test
    void typicalDragIsThatOfThePosition() {
        assertThat(RigChoice.ofNoRide(null, null, null, null, Position.DROPS).rig())
                .isEqualTo(Rig.of(86, 0.307, 0.006));
    }

    @Test
    void numbersHaveBounds() {
        assertThatThrownBy(() -> RigChoice.ofNoRide(null, null, 3.0, null, Position.HOODS))
                .hasMessageContaining("dragAreaM2 3.0, expected 0.1 to 1");
        assertThatThrownBy(() -> RigChoice.ofNoRide(null, null, null, 0.5, Position.HOODS))
                .hasMessageContaining("rollingResistance 0.5");
    }
}
