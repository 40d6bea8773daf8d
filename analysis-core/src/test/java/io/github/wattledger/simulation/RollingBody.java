package io.github.wattledger.simulation;

/**
 * Rider and bicycle as a mass on the road: place and speed, moved on by pedal power.
 *
 * <p>The kinetic energy is integrated (Heun's method, steps of {@value #STEP_SECONDS} s), not the speed: power over
 * speed has no value at a standstill, power does.
 */
final class RollingBody {
    private static final double STEP_SECONDS = 0.25;
    private static final int STEPS = 4;
    private static final double BRAKING_MPS2 = 1.2;

    private final Course course;
    private final Weather weather;
    private final double massKg;
    private final double inertKg;
    private final double dragAreaM2;
    private final double[] headwinds;
    private final Shelter shelter;
    private final Gusts gusts;

    private int seconds;
    private double distanceM;
    private double speedMps;
    private double pedalJ;
    private double airJ;
    private double rollingJ;
    private double bearingsJ;
    private double gravityJ;
    private double brakesJ;

    RollingBody(Scenario scenario) {
        course = scenario.course();
        weather = scenario.weather();
        massKg = scenario.rider().totalMassKg();
        inertKg = MartinModel.inertKg(massKg);
        dragAreaM2 = scenario.rider().dragAreaM2();
        headwinds = course.headwindsMps(weather);
        shelter = scenario.surroundings().shelter();
        gusts = scenario.surroundings().gusts();
        distanceM = scenario.leadIn().equals(Scenario.LeadIn.NONE) ? 0 : -course.leadInM();
    }

    /** Metres from the start line. */
    double distanceM() {
        return distanceM;
    }

    /** Metres per second. */
    double speedMps() {
        return speedMps;
    }

    /** Where the brakes must be pulled to come to rest at a distance. */
    boolean mustBrakeFor(double atDistanceM) {
        return atDistanceM - distanceM <= speedMps * speedMps / (2 * BRAKING_MPS2) + speedMps / 2;
    }

    /** Moves on by a second. */
    void rideSecond(double pedalW) {
        for (int i = 0; i < STEPS; i++) {
            double headwindMps = headwindMps();
            double wheelW = pedalW * MartinModel.DRIVE_EFFICIENCY;
            double before = speedMps;
            double firstW = wheelW - resistanceW(before, headwindMps);
            double guess = speedAfter(before, firstW);
            double meanW = (firstW + wheelW - resistanceW(guess, headwindMps)) / 2;
            speedMps = speedAfter(before, meanW);
            pedalJ += pedalW * STEP_SECONDS;
            account(before, guess, headwindMps);
            distanceM += (before + speedMps) / 2 * STEP_SECONDS;
        }
        seconds++;
    }

    /** Moves on by a second with the brakes pulled and the pedals at rest. */
    void brakeSecond() {
        for (int i = 0; i < STEPS; i++) {
            double headwindMps = headwindMps();
            double before = speedMps;
            speedMps = StrictMath.max(0, before - BRAKING_MPS2 * STEP_SECONDS);
            double resistedJ =
                    (resistanceW(before, headwindMps) + resistanceW(speedMps, headwindMps)) / 2 * STEP_SECONDS;
            brakesJ += inertKg / 2 * (before * before - speedMps * speedMps) - resistedJ;
            account(before, speedMps, headwindMps);
            distanceM += (before + speedMps) / 2 * STEP_SECONDS;
        }
        seconds++;
    }

    private double headwindMps() {
        return gusts.headwindMps(headwinds[course.cellAt(distanceM)], distanceM, seconds, speedMps);
    }

    /** Where all energy went so far. */
    EnergyAudit audit() {
        return new EnergyAudit(
                pedalJ,
                pedalJ * (1 - MartinModel.DRIVE_EFFICIENCY),
                airJ,
                rollingJ,
                bearingsJ,
                gravityJ,
                brakesJ,
                inertKg / 2 * speedMps * speedMps);
    }

    private double speedAfter(double beforeMps, double netW) {
        return StrictMath.sqrt(StrictMath.max(0, beforeMps * beforeMps + 2 * STEP_SECONDS * netW / inertKg));
    }

    private double resistanceW(double speed, double headwindMps) {
        return MartinModel.airW(speed, headwindMps, effectiveDragAreaM2(), weather.airDensityKgPerM3())
                + rollingW(speed)
                + MartinModel.bearingsW(speed)
                + MartinModel.gravityW(speed, massKg, course.sineAt(distanceM));
    }

    private double effectiveDragAreaM2() {
        return dragAreaM2 * shelter.dragShareAt(distanceM);
    }

    private double rollingW(double speed) {
        return MartinModel.rollingW(speed, course.rollingResistanceAt(distanceM), massKg, course.cosineAt(distanceM));
    }

    private void account(double firstMps, double secondMps, double headwindMps) {
        double half = STEP_SECONDS / 2;
        double density = weather.airDensityKgPerM3();
        double dragM2 = effectiveDragAreaM2();
        airJ += half * MartinModel.airW(firstMps, headwindMps, dragM2, density);
        airJ += half * MartinModel.airW(secondMps, headwindMps, dragM2, density);
        rollingJ += half * (rollingW(firstMps) + rollingW(secondMps));
        bearingsJ += half * (MartinModel.bearingsW(firstMps) + MartinModel.bearingsW(secondMps));
        gravityJ += half * MartinModel.gravityW(firstMps + secondMps, massKg, course.sineAt(distanceM));
    }
}
