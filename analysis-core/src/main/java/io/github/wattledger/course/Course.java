package io.github.wattledger.course;

import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serial;
import java.io.Serializable;
import java.util.Optional;

/**
 * The ground of a ride: altitude and grade on a grid of equal distances. A node's altitude and grade come from a local
 * straight-line fit over the samples within 50 m before and after it, or within more where the recording is coarse, so
 * that the noise of a barometer does not become hills.
 *
 * <p>Every grade of this library is rise over run and one of these two:
 *
 * <ul>
 *   <li>the grade <em>at a place</em>, {@link #grade} and {@link #gradeAtM}: the slope of the line fitted there. Gears,
 *       charts and the comparison of parts of a race use it.
 *   <li>the mean grade <em>between two places</em>, {@link #meanGrade} and {@link #meanGradeBetweenM}: the difference of
 *       their fitted altitudes over the distance between them. Climbs, replays and compared stretches use it.
 * </ul>
 */
public final class Course implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    /** Distance between two nodes of a recorded course, metres. */
    static final double RECORDED_STEP_M = 25;

    /** An ordinary hill of a road. Own choice. */
    private static final double USUAL_HILL_GRADE = 0.04;

    private final double startM;
    private final double stepM;
    private final Series altitudeM;
    private final Series grade;

    private Course(double startM, double stepM, Series altitudeM, Series grade) {
        this.startM = startM;
        this.stepM = stepM;
        this.altitudeM = altitudeM;
        this.grade = grade;
    }

    /**
     * A course from its altitudes.
     *
     * @param stepM distance between two nodes, metres, above 0
     * @param altitudeM altitude of each node, metres; {@code NaN} is not known; at least two nodes
     * @throws IllegalArgumentException when there are fewer than two nodes or the step is not above 0
     */
    public static Course of(double stepM, Series altitudeM) {
        if (!(stepM > 0) || altitudeM.size() < 2) {
            throw new IllegalArgumentException(
                    "stepM " + stepM + " with " + altitudeM.size() + " nodes, expected above 0 with 2 or more");
        }
        int last = altitudeM.size() - 1;
        Series grade = Series.generate(altitudeM.size(), node -> {
            int from = Math.max(0, node - 1);
            int to = Math.min(last, node + 1);
            return meanGrade(altitudeM, stepM, from, to);
        });
        return new Course(0, stepM, altitudeM, grade);
    }

    /**
     * A road of one grade.
     *
     * @param lengthM length, metres, above 0
     * @param grade rise over run
     */
    public static Course ofGrade(double lengthM, double grade) {
        int pieces = Math.max(1, (int) Math.ceil(lengthM / 200));
        double step = lengthM / pieces;
        return of(step, Series.generate(pieces + 1, node -> node * step * grade));
    }

    /**
     * A road with a given ascent: hills of about 4 %, or as steep as the ascent asks for, up as much as down, and level
     * road for the rest. For times at a steady power the order of the pieces makes no difference, so
     * it is one hill.
     *
     * @param lengthM length, metres, above 0
     * @param ascentM ascent, metres, 0 to a tenth of the length
     * @throws IllegalArgumentException when a number lies outside its range
     */
    public static Course ofHills(double lengthM, double ascentM) {
        if (!(lengthM > 0) || !(ascentM >= 0 && ascentM <= lengthM / 10)) {
            throw new IllegalArgumentException(
                    "ascentM " + ascentM + " over " + lengthM + " m, expected 0 to a tenth of a length above 0");
        }
        int pieces = 2 * Math.max(1, (int) Math.ceil(lengthM / 400));
        double step = lengthM / pieces;
        int rising = (int) Math.min(pieces / 2, Math.max(1, Math.round(ascentM / USUAL_HILL_GRADE / step)));
        return of(
                step,
                Series.generate(
                        pieces + 1, node -> ascentM * Math.max(0, 1 - Math.abs(node - rising) / (double) rising)));
    }

    /**
     * The course of a ride, from altitude over distance in the seconds under way.
     *
     * @return empty without altitude or distance, or when the ride goes nowhere
     */
    public static Optional<Course> of(Ride ride) {
        AltitudeFit samples = AltitudeFit.of(ride);
        if (!samples.isEnough()) {
            return Optional.empty();
        }
        double start = samples.firstM();
        int nodes = (int) Math.floor((samples.lastM() - start) / RECORDED_STEP_M) + 1;
        if (nodes < 2) {
            return Optional.empty();
        }
        double[] altitude = new double[nodes];
        double[] grade = new double[nodes];
        for (int node = 0; node < nodes; node++) {
            samples.fit(start + node * RECORDED_STEP_M);
            altitude[node] = samples.altitudeM();
            grade[node] = samples.grade();
        }
        return Optional.of(new Course(start, RECORDED_STEP_M, Series.of(altitude), Series.of(grade)));
    }

    /** Distance of the first node, metres from the start of the recording. */
    double startM() {
        return startM;
    }

    /** Distance between two nodes, metres. */
    public double stepM() {
        return stepM;
    }

    /** From the first node to the last, metres. */
    public double lengthM() {
        return pieces() * stepM;
    }

    /** The number of nodes. */
    public int nodes() {
        return altitudeM.size();
    }

    /** The number of pieces between nodes. */
    public int pieces() {
        return nodes() - 1;
    }

    /** Distance of a node, metres from the start of the recording. */
    public double distanceM(int node) {
        return startM + node * stepM;
    }

    /** Altitude of a node, metres; {@code NaN} where it is not known. */
    public double altitudeM(int node) {
        return altitudeM.get(node);
    }

    /** Grade at a node, rise over run; {@code NaN} where it is not known. */
    public double grade(int node) {
        return grade.get(node);
    }

    /**
     * Mean grade between two nodes, rise over run; {@code NaN} where one of their altitudes is not known.
     *
     * @param from a node
     * @param to a later node
     */
    public double meanGrade(int from, int to) {
        return meanGrade(altitudeM, stepM, from, to);
    }

    private static double meanGrade(Series altitudeM, double stepM, int from, int to) {
        return (altitudeM.get(to) - altitudeM.get(from)) / ((to - from) * stepM);
    }

    /**
     * Mean grade between two places, rise over run; {@code NaN} beyond the ends of the course, or where one of the
     * altitudes is not known.
     *
     * @param fromM distance of the first place, metres from the start of the recording
     * @param toM distance of the second place, beyond {@code fromM}
     */
    public double meanGradeBetweenM(double fromM, double toM) {
        return (altitudeAtM(toM) - altitudeAtM(fromM)) / (toM - fromM);
    }

    /** Altitude at a distance from the start of the recording; {@code NaN} beyond the ends or where it is not known. */
    public double altitudeAtM(double distanceM) {
        return between(altitudeM, distanceM);
    }

    /** Grade at a distance from the start of the recording; {@code NaN} beyond the ends or where it is not known. */
    public double gradeAtM(double distanceM) {
        return between(grade, distanceM);
    }

    private double between(Series values, double atM) {
        double place = (atM - startM) / stepM;
        // The last node lies up to one step before the last sample.
        if (!(place >= 0 && place <= values.size())) {
            return Double.NaN;
        }
        int node = Math.min(values.size() - 2, (int) place);
        double share = Math.min(1, place - node);
        return values.get(node) + (values.get(node + 1) - values.get(node)) * share;
    }
}
