package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.Course;
import java.util.function.DoubleUnaryOperator;

/** Draws the ups and downs of a course. */
final class Terrain {
    private static final double START_ALTITUDE_M = 400;

    private final Draw draw;
    private final CourseFamily family;
    private final double wantedM;
    private final double smoothest;
    private final Course.Builder road;
    private double lengthM;
    private double heightM;

    Terrain(Draw draw, CourseFamily family, double wantedM) {
        this.draw = draw;
        this.family = family;
        this.wantedM = wantedM;
        smoothest = draw.between(0.0035, 0.0065);
        road = Course.builder();
    }

    Course course(DoubleUnaryOperator headingDegrees) {
        road.startLine(46, 7, START_ALTITUDE_M).heading(headingDegrees);
        switch (family) {
            case FLAT, GROUP -> {
                road.rollers(draw.between(1, 3), 1500);
                fillLevel(wantedM, 0.5);
            }
            case HEAD_WIND_HOME, TAIL_WIND_HOME, ROLLING -> {
                road.rollers(draw.between(6, 20), draw.between(1500, 3000));
                fillLevel(wantedM, 1.0);
            }
            case HILLY -> hills(wantedM, 1000, 4000, 4, 8);
            case MOUNTAIN -> hills(wantedM, 5000, 13_000, 5, 8);
            case OFF_ROAD -> hills(wantedM, 400, 2000, 4, 11);
            case CLIMB_FIRST -> climbFirst();
            case CLIMB_LAST -> climbLast();
        }
        return road.build();
    }

    private void stretch(double metres, double gradePercent) {
        double rounded = Math.max(Course.CELL_M, Math.round(metres / Course.CELL_M) * Course.CELL_M);
        double rolling =
                family == CourseFamily.OFF_ROAD ? draw.between(0.007, 0.020) : smoothest * draw.between(0.9, 1.2);
        road.stretch(rounded, gradePercent, rolling);
        lengthM += rounded;
        heightM += rounded * gradePercent / 100;
    }

    /** Nearly level road up to a distance, that goes back to the height of the start by and by. */
    private void fillLevel(double toM, double steepestPercent) {
        while (lengthM < toM) {
            double metres = Math.min(draw.between(1500, 6000), toM - lengthM);
            double home = Math.max(-1, Math.min(1, -heightM / 60));
            stretch(metres, steepestPercent * (0.5 * home + draw.between(-0.5, 0.5)));
        }
    }

    /** A slope in pieces of different grade. */
    private void slope(double metres, double meanPercent) {
        double toM = lengthM + metres;
        while (lengthM < toM) {
            double piece = Math.min(draw.between(300, 1200), toM - lengthM);
            stretch(piece, meanPercent * draw.between(0.7, 1.3));
        }
    }

    private void hills(double toM, double shortestM, double longestM, double flattest, double steepest) {
        while (lengthM < toM) {
            double leftM = toM - lengthM;
            double climbM = Math.min(draw.between(shortestM, longestM), leftM / 2.5);
            double percent = draw.between(flattest, steepest);
            fillLevel(lengthM + Math.min(leftM * 0.15, draw.between(0.3, 1.5) * climbM), 1);
            slope(climbM, percent);
            slope(climbM * percent / (1.1 * percent), -1.1 * percent);
            if (leftM < 2 * shortestM) {
                fillLevel(toM, 1);
            }
        }
    }

    private void climbFirst() {
        double climbM = Math.min(18_000, draw.between(0.12, 0.25) * wantedM);
        double percent = draw.between(4, 7.5);
        slope(climbM, percent);
        double homeM = wantedM - lengthM;
        while (lengthM < wantedM) {
            fillLevelHere(Math.min(draw.between(2000, 6000), wantedM - lengthM));
            double fallM = climbM * percent / 100 * Math.min(1, 6000 / homeM) * draw.between(0.6, 1.4);
            double steep = draw.between(3, 7);
            if (lengthM < wantedM) {
                slope(Math.min(wantedM - lengthM, fallM * 100 / steep), -steep);
            }
        }
    }

    private void climbLast() {
        double climbM = Math.min(18_000, draw.between(0.12, 0.25) * wantedM);
        double hillsM = wantedM - climbM;
        if (draw.with(0.5)) {
            fillLevel(hillsM, 1);
        } else {
            hills(hillsM, 800, 3000, 3, 6);
        }
        slope(climbM, draw.between(4, 7.5));
    }

    private void fillLevelHere(double metres) {
        stretch(metres, draw.between(-0.7, 0.7));
    }
}
