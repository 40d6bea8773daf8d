package io.github.wattledger.simulation;

/**
 * The roads of the sample rides. The Ebbwood 165 is an invented race: from a harbour on a west coast inland over forest
 * roads and back in one loop of 165 km and about 2,000 m of climbing. No such event exists; the coordinates only place
 * it beside a sea.
 */
final class EbbwoodCourse {
    /** Where the first feed stop stands, metres from the start line. */
    static final double FIRST_FEED_M = 63_700;
    /** Where the second feed stop stands, metres from the start line. */
    static final double SECOND_FEED_M = 120_000;

    private static final double LATITUDE_DEGREES = 43.36;
    private static final double LONGITUDE_DEGREES = -124.21;
    private static final double HARBOUR_ALTITUDE_M = 8;
    private static final double ASPHALT = 0.0055;
    private static final double PACKED = 0.0090;
    private static final double GRAVEL = 0.0120;

    private EbbwoodCourse() {}

    /** The race, with 3 km from the car park to the start line. */
    static Course race() {
        Course.Builder road = Course.builder()
                .startLine(LATITUDE_DEGREES, LONGITUDE_DEGREES, HARBOUR_ALTITUDE_M)
                .leadIn(3050, ASPHALT)
                .heading(distanceM -> loopHeadingDegrees(distanceM / 165_000))
                .rollers(8, 1500);
        intoTheHills(road);
        ridges(road);
        backToTheSea(road);
        return road.build();
    }

    /** A shorter loop from the same harbour for an ordinary day. */
    static Course trainingLoop() {
        return Course.builder()
                .startLine(LATITUDE_DEGREES, LONGITUDE_DEGREES, HARBOUR_ALTITUDE_M)
                .heading(distanceM -> loopHeadingDegrees(distanceM / 72_000))
                .rollers(6, 1500)
                .stretch(9000, 0.4, ASPHALT)
                .stretch(13_000, 0.6, PACKED)
                .stretch(4000, 4.0, GRAVEL)
                .stretch(6000, 0.0, GRAVEL)
                .stretch(5000, -3.0, PACKED)
                .stretch(12_000, -0.4, PACKED)
                .stretch(2500, 4.0, GRAVEL)
                .stretch(4000, -2.5, GRAVEL)
                .stretch(16_500, -0.2, ASPHALT)
                .build();
    }

    /** A short loop from the harbour, nearly flat, for after work. */
    static Course eveningLoop() {
        return flatLoop(23_000);
    }

    /** A shorter one, for 20 minutes at the limit and the way home. */
    static Course testLoop() {
        return flatLoop(16_000);
    }

    private static Course flatLoop(int lengthM) {
        return Course.builder()
                .startLine(LATITUDE_DEGREES, LONGITUDE_DEGREES, HARBOUR_ALTITUDE_M)
                .heading(distanceM -> loopHeadingDegrees(distanceM / lengthM))
                .rollers(3, 1500)
                .stretch(lengthM / 2.0, 0.3, ASPHALT)
                .stretch(lengthM / 2.0, -0.3, ASPHALT)
                .build();
    }

    private static void intoTheHills(Course.Builder road) {
        road.stretch(6000, 0.3, ASPHALT)
                .stretch(9000, 0.6, PACKED)
                .stretch(4200, 4.2, GRAVEL)
                .stretch(5000, 0.0, GRAVEL)
                .stretch(4500, -3.6, GRAVEL)
                .stretch(8000, 0.4, PACKED)
                .stretch(3000, 5.0, GRAVEL)
                .stretch(3500, -3.0, GRAVEL)
                .stretch(9000, 0.2, PACKED)
                .stretch(5500, 3.8, GRAVEL);
    }

    private static void ridges(Course.Builder road) {
        road.stretch(6000, 0.3, GRAVEL)
                .stretch(6500, -3.4, GRAVEL)
                .stretch(10_000, -0.5, PACKED)
                .stretch(2500, 6.0, GRAVEL)
                .stretch(3800, -4.0, GRAVEL)
                .stretch(9500, 0.3, PACKED)
                .stretch(4800, 4.0, GRAVEL)
                .stretch(4000, 0.0, GRAVEL)
                .stretch(5200, -3.5, GRAVEL)
                .stretch(10_000, -0.2, PACKED);
    }

    private static void backToTheSea(Course.Builder road) {
        road.stretch(3200, 4.6, GRAVEL)
                .stretch(4400, -3.5, GRAVEL)
                .stretch(11_000, 0.1, PACKED)
                .stretch(2600, 4.5, GRAVEL)
                .stretch(6000, -2.0, PACKED)
                .stretch(7000, -0.6, PACKED)
                .stretch(2800, 4.0, GRAVEL)
                .stretch(4000, -4.0, PACKED)
                .stretch(4000, -1.6275, ASPHALT);
    }

    /*
     * One clockwise turn with bends of 2, 6 and 24 waves a loop. Such a road closes exactly: the mean of
     * exp(i (t + sum of a_k sin(k t))) over a turn is a sum of Bessel terms whose frequencies 1 + 2 a + 6 b + 24 c are
     * odd and hence never zero. It starts at the loop's western edge, so that all of it lies inland of the start.
     */
    private static double loopHeadingDegrees(double loopFraction) {
        double turn = 2 * StrictMath.PI * loopFraction;
        return 360 * loopFraction
                + 25 * StrictMath.sin(2 * turn)
                + 40 * StrictMath.sin(6 * turn)
                + 35 * StrictMath.sin(24 * turn);
    }
}
