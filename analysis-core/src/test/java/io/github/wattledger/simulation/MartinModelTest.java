package io.github.wattledger.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MartinModelTest {
    private static final double MASS_KG = 80;
    private static final double DRAG_AREA_M2 = 0.300;
    private static final double AIR_DENSITY = 1.225;
    private static final double ROLLING_RESISTANCE = 0.005;

    /**
     * Expected watts: the equation of Martin et al. (1998) worked out outside this project in double precision, 80 kg,
     * drag area 0.300 m2 and 0.0044 m2 of spokes, 1.225 kg/m3, rolling resistance 0.005, drive efficiency 0.976.
     */
    @ParameterizedTest
    @CsvSource({
        "10,  0,    0, 186.4450, 39.2266, 1.7800,    0,      233.0447",
        "10,  0,    3, 315.0921, 39.2266, 1.7800,    0,      364.8552",
        "10,  0,   -3,  91.3581, 39.2266, 1.7800,    0,      135.6195",
        " 5,  0.06, 0,  23.3056, 19.5781, 0.6725,  234.9371, 285.3415",
        "15, -0.04, 0, 629.2519, 58.7929, 3.3225, -470.3431, 226.4592",
        " 4,  0.10, 0,  11.9325, 15.6128, 0.5032,  312.2554, 348.6720"
    })
    void givesTheForwardValuesOfThePaper(
            double speed,
            double grade,
            double headwind,
            double airW,
            double rollingW,
            double bearingsW,
            double gravityW,
            double pedalW) {
        double angle = StrictMath.atan(grade);
        double air = MartinModel.airW(speed, headwind, DRAG_AREA_M2, AIR_DENSITY);
        double rolling = MartinModel.rollingW(speed, ROLLING_RESISTANCE, MASS_KG, StrictMath.cos(angle));
        double bearings = MartinModel.bearingsW(speed);
        double gravity = MartinModel.gravityW(speed, MASS_KG, StrictMath.sin(angle));

        assertThat(air).isCloseTo(airW, within(1e-3));
        assertThat(rolling).isCloseTo(rollingW, within(1e-3));
        assertThat(bearings).isCloseTo(bearingsW, within(1e-3));
        assertThat(gravity).isCloseTo(gravityW, within(1e-3));
        assertThat((air + rolling + bearings + gravity) / MartinModel.DRIVE_EFFICIENCY)
                .isCloseTo(pedalW, within(1e-3));
    }

    /** Same source: from rest to 10 m/s in 20 s with 80 kg and wheels of 0.14 kg m2 and 0.311 m takes 203.619 W. */
    @Test
    void speedingUpTurnsTheWheelsToo() {
        assertThat(MartinModel.inertKg(MASS_KG) / 2 * 100 / 20).isCloseTo(203.619, within(1e-3));
    }
}
