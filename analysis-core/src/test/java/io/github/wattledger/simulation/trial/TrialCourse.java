package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.Shelter;
import io.github.wattledger.simulation.SpeedLimits;
import io.github.wattledger.simulation.Surroundings;
import io.github.wattledger.simulation.Weather;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * A drawn course with its bends, its air and the unevenness of the power that it asks for.
 *
 * @param surroundings bends, junctions and the shelter of a bunch
 * @param unevenness by what each place multiplies the power of a sensible rider
 */
record TrialCourse(
        CourseFamily family, Course course, Surroundings surroundings, Weather weather, Unevenness unevenness) {
    private static final double BENDS_BELOW_GRADE = -0.03;
    private static final double SLOW_MEMORY_CELLS = 100;
    private static final double SLOWEST_MEMORY_CELLS = 1000;

    /** Draws a course of about the given length. */
    static TrialCourse draw(Draw draw, CourseFamily family, double lengthM) {
        Terrain terrain = new Terrain(draw, family, lengthM);
        Course course = terrain.course(headingDegrees(family, lengthM, draw.between(0, 360)));
        int cells = (int) Math.ceil(course.lengthM() / Course.CELL_M) + 1;
        Weather weather = weather(draw, family, course);
        double[] relative = unevenness(draw, cells, family);
        intoTheWind(draw.between(0, 0.004), relative, course, weather);
        double[] dragShares = new double[cells];
        Arrays.fill(dragShares, 1);
        if (family == CourseFamily.GROUP) {
            new Bunch(draw).ride(relative, dragShares);
        }
        rests(draw, relative, family == CourseFamily.OFF_ROAD ? 1000 : 4000);
        Shelter shelter =
                distanceM -> dragShares[Math.max(0, Math.min(cells - 1, (int) Math.floor(distanceM / Course.CELL_M)))];
        SpeedLimits limits = SpeedLimits.of(limits(draw, course, cells));
        return new TrialCourse(
                family,
                course,
                new Surroundings(limits, shelter),
                weather(draw, family, course),
                new Unevenness(relative));
    }

    private static DoubleUnaryOperator headingDegrees(CourseFamily family, double lengthM, double firstDegrees) {
        if (family == CourseFamily.HEAD_WIND_HOME || family == CourseFamily.TAIL_WIND_HOME) {
            return distanceM -> distanceM < lengthM / 2 ? 0 : 180;
        }
        return distanceM -> (firstDegrees + 360 * distanceM / lengthM) % 360;
    }

    private static Weather weather(Draw draw, CourseFamily family, Course course) {
        double temperatureC = draw.between(8, 28);
        double density =
                1.225 * Math.exp(-course.altitudeAt(course.lengthM() / 2) / 8400) * 288.15 / (273.15 + temperatureC);
        double fromDegrees = switch (family) {
            case HEAD_WIND_HOME -> 180;
            case TAIL_WIND_HOME -> 0;
            default -> draw.between(0, 360);
        };
        boolean windy = family == CourseFamily.HEAD_WIND_HOME || family == CourseFamily.TAIL_WIND_HOME;
        double windMps = windy ? draw.between(2.5, 4.5) : draw.between(0, 2);
        return new Weather(density, windMps, fromDegrees, temperatureC, temperatureC);
    }

    /** Nobody holds a power exactly: quick unevenness by the road, slow unevenness by attention. */
    private static double[] unevenness(Draw draw, int cells, CourseFamily family) {
        double quick = family == CourseFamily.OFF_ROAD ? draw.between(0.10, 0.15) : draw.between(0.03, 0.08);
        double slow = draw.between(0.01, 0.03);
        double slowest = draw.between(0, 0.015);
        double memory = Math.exp(-1 / SLOW_MEMORY_CELLS);
        double longMemory = Math.exp(-1 / SLOWEST_MEMORY_CELLS);
        double[] relative = new double[cells];
        double fast = 0;
        double wander = 0;
        double mood = 0;
        for (int cell = 0; cell < cells; cell++) {
            fast = 0.6 * fast + 0.8 * quick * draw.gaussian();
            wander = memory * wander + slow * Math.sqrt(1 - memory * memory) * draw.gaussian();
            mood = longMemory * mood + slowest * Math.sqrt(1 - longMemory * longMemory) * draw.gaussian();
            relative[cell] = Math.max(0.7, Math.min(1.3, 1 + fast + wander + mood));
        }
        return relative;
    }

    /** Who rides sensibly pushes a little more against the wind and a little less before it. */
    private static void intoTheWind(double gainPerMps, double[] relative, Course course, Weather weather) {
        for (int cell = 0; cell < relative.length; cell++) {
            double angle = weather.windFromDegrees() - course.headingDegreesAt((cell + 0.5) * Course.CELL_M);
            relative[cell] *= 1 + gainPerMps * weather.windMps() * Math.cos(Math.toRadians(angle));
        }
    }

    /** A bend, a bottle, a look around: some cells without pedalling. */
    private static void rests(Draw draw, double[] relative, double everyM) {
        double atM = draw.between(500, everyM);
        while (atM < (relative.length - 10) * Course.CELL_M) {
            int from = (int) (atM / Course.CELL_M);
            Arrays.fill(relative, from, from + (int) draw.between(2, 6), 0);
            atM += draw.between(0.4 * everyM, 1.6 * everyM);
        }
    }

    private static double[] limits(Draw draw, Course course, int cells) {
        double[] mps = new double[cells];
        Arrays.fill(mps, Double.POSITIVE_INFINITY);
        double junctionM = draw.between(2000, 8000);
        double bendM = draw.between(200, 700);
        double boldestMps = draw.between(16, 25);
        double bendEveryM = draw.betweenByRatio(500, 5000);
        for (int cell = 0; cell < cells; cell++) {
            double distanceM = cell * Course.CELL_M;
            if (course.gradeAt(distanceM) < BENDS_BELOW_GRADE) {
                mps[cell] = boldestMps;
                if (distanceM > bendM) {
                    mps[cell] = draw.between(8, 14);
                    bendM = distanceM + draw.between(0.5, 1.5) * bendEveryM;
                }
            }
            if (distanceM > junctionM) {
                mps[cell] = Math.min(mps[cell], draw.between(3, 7));
                junctionM += draw.between(3000, 11_000);
            }
        }
        return mps;
    }

    /** A bunch in which a rider now and then takes a turn at the front. */
    private static final class Bunch {
        private final Draw draw;

        Bunch(Draw draw) {
            this.draw = draw;
        }

        void ride(double[] relative, double[] dragShares) {
            int cell = 0;
            boolean front = true;
            while (cell < relative.length) {
                int to =
                        Math.min(relative.length, cell + (int) (front ? draw.between(15, 120) : draw.between(40, 350)));
                double power = front ? draw.between(1.10, 1.25) : draw.between(0.78, 0.95);
                double drag = front ? 0.97 : draw.between(0.62, 0.75);
                for (; cell < to; cell++) {
                    relative[cell] *= power;
                    dragShares[cell] = drag;
                }
                front = !front;
            }
        }
    }
}
