package io.github.wattledger.simulation.trial;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.Gusts;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.Shelter;
import io.github.wattledger.simulation.SimulatedRider;
import io.github.wattledger.simulation.SpeedLimits;
import io.github.wattledger.simulation.Surroundings;
import io.github.wattledger.simulation.Weather;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A race of 85 to 110 km of which it is known where its rider was in a bunch and what that saved. The saving wanders, the
 * wind comes in patches and from the side, junctions slow the rider, and the sensors are ordinary ones.
 */
final class BunchDayRace {
    private static final double FREEWHEEL_BELOW_GRADE = -0.03;
    private static final double DENSITY = 1.2;
    private static final double USUAL_MPS = 9.5;
    private static final double UNEVEN_REACH_M = 60;
    private static final double SAVING_WANDER = 0.25;
    private static final double SAVING_REACH_M = 500;
    private static final double MOST_SAVING = 0.7;

    private final BunchDay day;
    private final SimulatedRider rider;
    private final Course course;
    private final double targetW;
    private final double overTarget;
    private final double groundGain;
    private final double[] uneven;
    private final double[] savingWander;
    private final Weather weather;
    private final Surroundings alone;
    private final Ride recorded;
    private final @Nullable Interval bunch;
    private final double knownAreaM2;
    private final double knownRolling;

    /** Rides the race of a seed. */
    BunchDayRace(BunchDay day, long seed) {
        this.day = day;
        Draw draw = Draw.of(seed);
        this.rider =
                SimulatedRider.tireless().withBody(draw.between(62, 82), draw.between(8, 12), draw.between(0.29, 0.38));
        this.course = course(draw, day, draw.between(85_000, 110_000));
        int cells = (int) Math.ceil(course.lengthM() / Course.CELL_M) + 1;
        this.uneven = wander(draw, cells, UNEVEN_REACH_M, draw.between(0.03, 0.08));
        this.savingWander = wander(draw, cells, SAVING_REACH_M, SAVING_WANDER);
        this.targetW = draw.between(170, 230);
        this.overTarget = draw.between(1, 1.25);
        this.groundGain = draw.between(1, 3);
        this.weather = new Weather(DENSITY, day.windMps(), draw.between(0, 360), 15, 15);
        this.alone = new Surroundings(junctions(draw, cells), Shelter.NONE, gusts(draw, cells));
        double startShare = draw.with(0.5) ? 0 : draw.between(0.05, 0.8);
        this.knownAreaM2 = rider.dragAreaM2() * (1 + 0.06 * Math.max(-2, Math.min(2, draw.gaussian())));
        this.knownRolling = meanRolling() * draw.between(0.9, 1.1);
        RiddenRace ridden;
        if (day.saving() == 0) {
            ridden = ride(0, 0);
            this.bunch = null;
        } else if (Double.isInfinite(day.bunchMinutes())) {
            ridden = ride(0, course.lengthM());
            this.bunch = new Interval(0, ridden.seconds());
        } else {
            double guessedM = day.bunchMinutes() * 60 * USUAL_MPS;
            double fromM = Math.min(startShare * course.lengthM(), course.lengthM() - 1.2 * guessedM);
            RiddenRace first = ride(fromM, fromM + guessedM);
            double tookSeconds = first.secondAt(fromM + guessedM) - first.secondAt(fromM);
            // The second time the bunch lasts as long as it should.
            double toM = fromM + guessedM * day.bunchMinutes() * 60 / tookSeconds;
            ridden = ride(fromM, toM);
            this.bunch = new Interval(ridden.secondAt(fromM), ridden.secondAt(toM));
        }
        SensorNoise sensors = SensorNoise.ordinary(seed).withPowerJitter(0.03);
        this.recorded =
                Cleaning.clean(sensors.record(ridden.ride()).toRecording()).ride();
    }

    /** The race with a bunch from one place to another. */
    private RiddenRace ride(double fromM, double toM) {
        PacingPlan plan = moment -> {
            double ground = Math.max(0.8, Math.min(1.2, 1 + groundGain * moment.grade()));
            double metres = moment.distanceM();
            double inBunch = metres >= fromM && metres < toM ? overTarget : 1;
            return moment.grade() < FREEWHEEL_BELOW_GRADE
                    ? 0
                    : targetW * inBunch * ground * (1 + uneven[cell(uneven, metres)]);
        };
        Shelter shelter = metres -> {
            double saving = day.saving() * (1 + savingWander[cell(savingWander, metres)]);
            return metres >= fromM && metres < toM ? 1 - Math.max(0, Math.min(MOST_SAVING, saving)) : 1;
        };
        return new RiddenRace(RoadSimulation.ride(Scenario.of(course, rider, plan)
                .withWeather(weather)
                .withSurroundings(new Surroundings(alone.limits(), shelter, alone.gusts()))));
    }

    private static int cell(double[] byCell, double metres) {
        return Math.max(0, Math.min(byCell.length - 1, (int) (metres / Course.CELL_M)));
    }

    /** Chance with memory, by cells. */
    private static double[] wander(Draw draw, int cells, double reachM, double deviation) {
        double memory = Math.exp(-Course.CELL_M / reachM);
        double[] values = new double[cells];
        double value = deviation * draw.gaussian();
        for (int cell = 0; cell < cells; cell++) {
            value = memory * value + deviation * Math.sqrt(1 - memory * memory) * draw.gaussian();
            values[cell] = value;
        }
        return values;
    }

    /** Nearly level to hilly road, that goes back to the height of its start by and by. */
    private static Course course(Draw draw, BunchDay day, double lengthM) {
        double firstDegrees = draw.between(0, 360);
        double bendM = draw.between(8000, 20_000);
        double bends = draw.between(15, 50);
        double steepest = draw.between(0.8, 4);
        double smooth = draw.between(0.004, 0.0065);
        double rough = draw.between(0.008, 0.011);
        double smoothLengthM = draw.between(0.12, 0.30) * lengthM;
        double smoothFromM = draw.between(0, lengthM - smoothLengthM);
        Course.Builder road = Course.builder()
                .startLine(46, 7, 300)
                .rollers(draw.between(1, 12), draw.between(1200, 3000))
                .heading(metres -> day.isLoop()
                        ? (firstDegrees + 360 * metres / lengthM) % 360
                        : firstDegrees + bends * Math.sin(2 * Math.PI * metres / bendM));
        double atM = 0;
        double heightM = 0;
        while (atM < lengthM) {
            double pieceM = Math.round(draw.between(100, 1500) / Course.CELL_M) * Course.CELL_M;
            double home = Math.max(-1, Math.min(1, -heightM / 60));
            double percent = steepest * (0.5 * home + draw.between(-0.7, 0.7));
            double rolling = switch (day.road()) {
                case ONE_KIND -> smooth * draw.between(0.9, 1.2);
                case ONE_SMOOTH_STRETCH -> atM >= smoothFromM && atM < smoothFromM + smoothLengthM ? 0.005 : rough;
                case MIXED -> draw.between(0.005, 0.012);
            };
            road.stretch(pieceM, percent, rolling);
            atM += pieceM;
            heightM += pieceM * percent / 100;
        }
        return road.build();
    }

    private double meanRolling() {
        double sum = 0;
        int cells = (int) (course.lengthM() / Course.CELL_M);
        for (int cell = 0; cell < cells; cell++) {
            sum += course.rollingResistanceAt((cell + 0.5) * Course.CELL_M);
        }
        return sum / cells;
    }

    private Gusts gusts(Draw draw, int cells) {
        double calmMps = draw.between(0.3, 0.6);
        double ofMean = draw.between(0.15, 0.3) * day.windMps();
        double[] patches =
                wander(draw, cells, draw.between(1200, 4000), day.patchiness() * Math.hypot(calmMps, ofMean));
        double raceSeconds = course.lengthM() / 8.5;
        return (steadyMps, distanceM, seconds, speedMps) -> {
            double share = day.builds() ? 0.3 + 1.4 * Math.min(1, seconds / raceSeconds) : 1;
            double angle = weather.windFromDegrees() - course.headingDegreesAt(distanceM);
            double side = share * day.windMps() * Math.sin(Math.toRadians(angle));
            double along = speedMps + share * steadyMps + patches[cell(patches, distanceM)];
            double drag = along * Math.hypot(along, side);
            return Math.signum(drag) * Math.sqrt(Math.abs(drag)) - speedMps;
        };
    }

    private static SpeedLimits junctions(Draw draw, int cells) {
        double[] mps = new double[cells];
        Arrays.fill(mps, Double.POSITIVE_INFINITY);
        double junctionM = draw.between(3000, 12_000);
        while (junctionM < (cells - 1) * Course.CELL_M) {
            mps[(int) (junctionM / Course.CELL_M)] = draw.between(4, 8);
            junctionM += draw.between(4000, 14_000);
        }
        return SpeedLimits.of(mps);
    }

    /** What a recorder of it wrote, cleaned. */
    Ride recorded() {
        return recorded;
    }

    /** When the rider was in the bunch; null in a race alone. */
    @Nullable Interval bunch() {
        return bunch;
    }

    /** The rig of a rider who knows the drag area to 6 % and says of what kind the road was, its rolling known to 10 %. */
    RigChoice knownRig() {
        return rig(knownAreaM2, knownRolling);
    }

    /** The rig of a rider who knows the masses alone. */
    RigChoice unknownRig() {
        return rig(null, null);
    }

    private RigChoice rig(@Nullable Double areaM2, @Nullable Double rolling) {
        return RigChoice.ofNoRide(rider.massKg(), rider.bikeMassKg(), areaM2, rolling, Position.HOODS);
    }
}
