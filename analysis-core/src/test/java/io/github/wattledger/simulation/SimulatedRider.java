package io.github.wattledger.simulation;

/**
 * A rider with bicycle.
 *
 * @param massKg mass of the rider with clothes
 * @param bikeMassKg mass of the bicycle with bottles and bags
 * @param dragAreaM2 drag area
 * @param thresholdPowerW threshold power
 * @param thresholdHeartRateBpm threshold heart rate
 * @param heart how the heart answers
 * @param fatigue how hard efforts are paid for
 */
public record SimulatedRider(
        double massKg,
        double bikeMassKg,
        double dragAreaM2,
        double thresholdPowerW,
        double thresholdHeartRateBpm,
        HeartResponse heart,
        Fatigue fatigue) {
    /** The rider of the sample rides without fatigue or drift: 74 kg, threshold 250 W and 165 beats, maximum 184. */
    public static SimulatedRider tireless() {
        return new SimulatedRider(74, 11, 0.36, 250, 165, HeartResponse.steady(165, 250, 184), Fatigue.NONE);
    }

    /** The rider of the sample rides, who tires, drifts a little, and more so after a start that was too hard. */
    public static SimulatedRider ordinary() {
        SimulatedRider fresh = tireless();
        return fresh.withHeart(fresh.heart.withDrift(0.0015, 0.000055, 0.0008)).withFatigue(new Fatigue(205, 0.00019));
    }

    /** The same rider with another heart. */
    public SimulatedRider withHeart(HeartResponse other) {
        return new SimulatedRider(
                massKg, bikeMassKg, dragAreaM2, thresholdPowerW, thresholdHeartRateBpm, other, fatigue);
    }

    /** The same rider with another way to tire. */
    public SimulatedRider withFatigue(Fatigue other) {
        return new SimulatedRider(massKg, bikeMassKg, dragAreaM2, thresholdPowerW, thresholdHeartRateBpm, heart, other);
    }

    /** The same rider with other masses and drag area. */
    public SimulatedRider withBody(double riderKg, double bikeKg, double otherDragAreaM2) {
        return new SimulatedRider(
                riderKg, bikeKg, otherDragAreaM2, thresholdPowerW, thresholdHeartRateBpm, heart, fatigue);
    }

    /** Rider and bicycle together, kg. */
    public double totalMassKg() {
        return massKg + bikeMassKg;
    }
}
