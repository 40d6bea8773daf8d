package io.github.wattledger.plan;

/**
 * Rider, bicycle and air of one calculation; a range changes one of them at a time.
 *
 * @param massKg rider and bicycle together, kg
 * @param dragAreaM2 drag area, m2
 * @param rollingResistance coefficient of rolling resistance where no stretch has its own
 * @param rollingFactor what every coefficient is multiplied by
 * @param densityKgPerM3 density of the air, kg/m3
 * @param windMps wind at the height of the rider, m/s
 * @param windFromRadians where it comes from, clockwise from north
 * @param gradeFactor what every grade is multiplied by
 */
record Conditions(
        double massKg,
        double dragAreaM2,
        double rollingResistance,
        double rollingFactor,
        double densityKgPerM3,
        double windMps,
        double windFromRadians,
        double gradeFactor) {
    Conditions withMassKg(double other) {
        return new Conditions(
                other,
                dragAreaM2,
                rollingResistance,
                rollingFactor,
                densityKgPerM3,
                windMps,
                windFromRadians,
                gradeFactor);
    }

    Conditions withDragAreaM2(double other) {
        return new Conditions(
                massKg, other, rollingResistance, rollingFactor, densityKgPerM3, windMps, windFromRadians, gradeFactor);
    }

    Conditions withRollingFactor(double other) {
        return new Conditions(
                massKg, dragAreaM2, rollingResistance, other, densityKgPerM3, windMps, windFromRadians, gradeFactor);
    }

    Conditions withDensity(double other) {
        return new Conditions(
                massKg, dragAreaM2, rollingResistance, rollingFactor, other, windMps, windFromRadians, gradeFactor);
    }

    Conditions withWind(double mps, double fromRadians) {
        return new Conditions(
                massKg, dragAreaM2, rollingResistance, rollingFactor, densityKgPerM3, mps, fromRadians, gradeFactor);
    }

    Conditions withGradeFactor(double other) {
        return new Conditions(
                massKg, dragAreaM2, rollingResistance, rollingFactor, densityKgPerM3, windMps, windFromRadians, other);
    }
}
