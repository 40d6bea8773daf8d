package io.github.wattledger.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * A road to ride: grade, surface, height and position by distance. Distances are metres along the road from the start
 * line; the way to the line has negative ones. The road is made of cells of {@value #CELL_M} m with one grade each, so
 * that height and gravity's work agree exactly.
 */
public final class Course {
    /** Length of a cell, metres. */
    public static final int CELL_M = 10;

    /** Length of a degree of latitude on a sphere with the mean radius of the earth, 6,371 km. */
    private static final double METRES_PER_DEGREE = 6_371_000 * StrictMath.PI / 180;

    private final double lengthM;
    private final double leadInM;
    private final double[] grades;
    private final double[] sines;
    private final double[] cosines;
    private final double[] rollingResistances;
    private final double[] headingsDegrees;
    private final double[] altitudesM;
    private final double[] latitudesDegrees;
    private final double[] longitudesDegrees;

    private Course(Builder builder) {
        leadInM = builder.leadInM;
        lengthM = builder.stretches.stream().mapToDouble(Stretch::lengthM).sum();
        int cells = cellCount(leadInM + lengthM);
        grades = builder.grades(cells);
        rollingResistances = builder.rollingResistances(cells);
        headingsDegrees = new double[cells];
        sines = new double[cells];
        cosines = new double[cells];
        altitudesM = new double[cells + 1];
        latitudesDegrees = new double[cells + 1];
        longitudesDegrees = new double[cells + 1];
        for (int cell = 0; cell < cells; cell++) {
            double angle = StrictMath.atan(grades[cell]);
            sines[cell] = StrictMath.sin(angle);
            cosines[cell] = StrictMath.cos(angle);
            headingsDegrees[cell] =
                    builder.headingDegrees.applyAsDouble(StrictMath.max(0, (cell + 0.5) * CELL_M - leadInM));
        }
        layOut(builder);
    }

    /** A stretch of road with one grade and one surface. */
    private record Stretch(double lengthM, double grade, double rollingResistance) {}

    /** A builder of a course that starts at 45 degrees north, 0 degrees east, and height 0, heading north. */
    public static Builder builder() {
        return new Builder();
    }

    /** A level, straight road to the north. */
    public static Course flat(double lengthM, double rollingResistance) {
        return builder().stretch(lengthM, 0, rollingResistance).build();
    }

    /**
     * A straight road to the north of even waves.
     *
     * @param heightM from the foot to the top of a wave
     * @param wavelengthM from foot to foot
     */
    public static Course rolling(double lengthM, double heightM, double wavelengthM, double rollingResistance) {
        return builder()
                .stretch(lengthM, 0, rollingResistance)
                .rollers(heightM, wavelengthM)
                .build();
    }

    /** From the start line to the finish, metres. */
    public double lengthM() {
        return lengthM;
    }

    /** How far before the start line the road begins, metres. */
    public double leadInM() {
        return leadInM;
    }

    /** Rise over run at a distance. */
    public double gradeAt(double distanceM) {
        return grades[cellAt(distanceM)];
    }

    /** Sine of the road's angle at a distance. */
    double sineAt(double distanceM) {
        return sines[cellAt(distanceM)];
    }

    /** Cosine of the road's angle at a distance. */
    double cosineAt(double distanceM) {
        return cosines[cellAt(distanceM)];
    }

    /** Coefficient of rolling resistance at a distance. */
    public double rollingResistanceAt(double distanceM) {
        return rollingResistances[cellAt(distanceM)];
    }

    /** Direction of the road, degrees clockwise from north. */
    public double headingDegreesAt(double distanceM) {
        return headingsDegrees[cellAt(distanceM)];
    }

    /** Height above the sea, metres. */
    public double altitudeAt(double distanceM) {
        return between(altitudesM, distanceM);
    }

    /** Latitude, degrees. */
    public double latitudeAt(double distanceM) {
        return between(latitudesDegrees, distanceM);
    }

    /** Longitude, degrees. */
    public double longitudeAt(double distanceM) {
        return between(longitudesDegrees, distanceM);
    }

    /** The wind against a rider in each cell, m/s. */
    double[] headwindsMps(Weather weather) {
        return Arrays.stream(headingsDegrees).map(weather::headwindMps).toArray();
    }

    private static int cellCount(double metres) {
        return (int) StrictMath.round(metres / CELL_M);
    }

    /** The cell at a distance; those beyond an end count as the last. */
    int cellAt(double distanceM) {
        int cell = (int) StrictMath.floor((distanceM + leadInM) / CELL_M);
        return StrictMath.max(0, StrictMath.min(grades.length - 1, cell));
    }

    private double between(double[] nodes, double distanceM) {
        int cell = cellAt(distanceM);
        double share = (distanceM + leadInM) / CELL_M - cell;
        return nodes[cell] + (nodes[cell + 1] - nodes[cell]) * share;
    }

    private void layOut(Builder builder) {
        double eastDegree = METRES_PER_DEGREE * StrictMath.cos(StrictMath.toRadians(builder.latitudeDegrees));
        for (int cell = 0; cell < grades.length; cell++) {
            double heading = StrictMath.toRadians(headingsDegrees[cell]);
            double flatM = CELL_M * cosines[cell];
            altitudesM[cell + 1] = altitudesM[cell] + CELL_M * sines[cell];
            latitudesDegrees[cell + 1] = latitudesDegrees[cell] + flatM * StrictMath.cos(heading) / METRES_PER_DEGREE;
            longitudesDegrees[cell + 1] = longitudesDegrees[cell] + flatM * StrictMath.sin(heading) / eastDegree;
        }
        int line = cellCount(leadInM);
        shiftTo(altitudesM, line, builder.altitudeM);
        shiftTo(latitudesDegrees, line, builder.latitudeDegrees);
        shiftTo(longitudesDegrees, line, builder.longitudeDegrees);
    }

    private static void shiftTo(double[] nodes, int node, double value) {
        double shift = value - nodes[node];
        for (int i = 0; i < nodes.length; i++) {
            nodes[i] += shift;
        }
    }

    /** Collects the stretches of a course. */
    public static final class Builder {
        /** Half the width over which a change of grade is rounded off: nobody builds a road with a kink. */
        private static final int ROUNDING_CELLS = 10;

        private final List<Stretch> stretches = new ArrayList<>();
        private double leadInM;
        private double leadInRollingResistance;
        private double latitudeDegrees = 45;
        private double longitudeDegrees;
        private double altitudeM;
        private double rollerHeightM;
        private double rollerLengthM = 1;
        private DoubleUnaryOperator headingDegrees = distanceM -> 0;

        private Builder() {}

        /** Where the start line lies. */
        public Builder startLine(double latitude, double longitude, double altitude) {
            latitudeDegrees = latitude;
            longitudeDegrees = longitude;
            altitudeM = altitude;
            return this;
        }

        /** A level way to the start line, its length a multiple of {@value Course#CELL_M} m. */
        public Builder leadIn(double lengthM, double rollingResistance) {
            leadInM = lengthM;
            leadInRollingResistance = rollingResistance;
            return this;
        }

        /** Appends a stretch, its length a multiple of {@value Course#CELL_M} m. */
        public Builder stretch(double lengthM, double gradePercent, double rollingResistance) {
            stretches.add(new Stretch(lengthM, gradePercent / 100, rollingResistance));
            return this;
        }

        /** Lays waves of a height and length over the whole course; a height of 0 is none. */
        public Builder rollers(double heightM, double wavelengthM) {
            rollerHeightM = heightM;
            rollerLengthM = wavelengthM;
            return this;
        }

        /** The road's direction by distance from the line, degrees clockwise from north. */
        public Builder heading(DoubleUnaryOperator degreesByDistance) {
            headingDegrees = degreesByDistance;
            return this;
        }

        /**
         * The course.
         *
         * @throws IllegalStateException when there is no stretch
         */
        public Course build() {
            if (stretches.isEmpty()) {
                throw new IllegalStateException("a course needs at least one stretch");
            }
            return new Course(this);
        }

        private double[] grades(int cells) {
            double[] drawn = fill(cells, Stretch::grade, 0);
            double[] rounded = new double[cells];
            int line = cellCount(leadInM);
            for (int cell = line; cell < cells; cell++) {
                int reach = StrictMath.min(ROUNDING_CELLS, StrictMath.min(cell - line, cells - 1 - cell));
                double sum = 0;
                for (int near = cell - reach; near <= cell + reach; near++) {
                    sum += drawn[near];
                }
                rounded[cell] = sum / (2 * reach + 1) + rollerGrade((cell - line + 0.5) * CELL_M);
            }
            return rounded;
        }

        private double rollerGrade(double distanceM) {
            double turn = 2 * StrictMath.PI / rollerLengthM;
            return rollerHeightM / 2 * turn * StrictMath.sin(turn * distanceM);
        }

        private double[] rollingResistances(int cells) {
            return fill(cells, Stretch::rollingResistance, leadInRollingResistance);
        }

        private double[] fill(int cells, ToDoubleFunction<Stretch> property, double beforeTheLine) {
            double[] values = new double[cells];
            int from = cellCount(leadInM);
            Arrays.fill(values, 0, from, beforeTheLine);
            double endM = leadInM;
            for (Stretch stretch : stretches) {
                endM += stretch.lengthM();
                int to = StrictMath.min(cells, cellCount(endM));
                Arrays.fill(values, from, to, property.applyAsDouble(stretch));
                from = to;
            }
            return values;
        }
    }
}
