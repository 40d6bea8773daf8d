package io.github.wattledger.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.ride.Outcome;
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
    void aRefusedEstimateLeavesTypicalNumbersAndSaysSo() {
        RigChoice choice = RigChoice.ofNoRide(72.0, 9.0, null, null, Position.HOODS)
                .estimatedBy(
                        Outcome.refused("it comes out at a drag area of 0.20 m2 with a rolling resistance of 0.0178,"
                                + " which is not plausible"));
        assertThat(choice.rig()).isEqualTo(Rig.of(81, 0.358, 0.006));
        assertThat(choice.words())
                .isEqualTo(
                        "The prices rest on rider 72 kg, bicycle 9 kg (as given); drag area 0.36 m2, rolling resistance"
                                + " 0.0060 (typical values). Drag area and rolling resistance could not be estimated from the ride:"
                                + " it comes out at a drag area of 0.20 m2 with a rolling resistance of 0.0178, which is not"
                                + " plausible.");
    }

    /** A number that was given is off by itself: only what the ride gave moves with the mass and with each other. */
    @Test
    void onlyWhatTheRideGaveIsOffTogether() {
        OffTogether pair = new OffTogether(-0.01, 0.0008, -0.05, 0.3);
        Outcome<RigEstimate> estimate = Outcome.of(new RigEstimate(0.33, 0.01, 0.005, 0.0005, 80, pair));
        assertThat(RigChoice.ofNoRide(72.0, null, null, null, Position.HOODS)
                        .estimatedBy(estimate)
                        .offTogether())
                .isEqualTo(pair);
        assertThat(RigChoice.ofNoRide(72.0, null, 0.30, null, Position.HOODS)
                        .estimatedBy(estimate)
                        .offTogether())
                .isEqualTo(new OffTogether(0, 0.0008, 0, 1));
        assertThat(RigChoice.ofNoRide(72.0, null, 0.30, 0.005, Position.HOODS)
                        .estimatedBy(estimate)
                        .offTogether())
                .isEqualTo(OffTogether.NOTHING);
    }

    @Test
    void numbersHaveBounds() {
        assertThatThrownBy(() -> RigChoice.ofNoRide(null, null, 3.0, null, Position.HOODS))
                .hasMessageContaining("dragAreaM2 3.0, expected 0.1 to 1");
        assertThatThrownBy(() -> RigChoice.ofNoRide(null, null, null, 0.5, Position.HOODS))
                .hasMessageContaining("rollingResistance 0.5");
    }
}
