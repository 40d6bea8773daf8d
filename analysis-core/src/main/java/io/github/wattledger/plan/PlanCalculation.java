package io.github.wattledger.plan;

import io.github.wattledger.course.Route;
import io.github.wattledger.course.RouteClimb;
import io.github.wattledger.pacing.Opening;
import io.github.wattledger.ride.NamedPoint;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.RigChoice;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The steps of a plan, each from those before: target, table, ride of the table, and what hangs on them. */
final class PlanCalculation {
    /** No cap of a race of hours lies above it. */
    private static final double CAP_OF_THRESHOLD = 0.95;

    /** Where a noisy file says downhill the road may rise: at least this share of the target is ridden. */
    private static final double FLOOR_OF_TARGET = 0.25;

    /** 6 km/h; slower than this a bicycle is pushed. */
    private static final double SLOWEST_MPS = 6 / 3.6;

    private static final double EXPONENT = PowerPlanner.USUAL_EXPONENT;

    /** Where limits that hang on the target begin, before it is known; about that of a race of six hours. */
    private static final double USUAL_TARGET = 0.75;

    private static final double SECTION_M = 25_000;

    /** Sections shorter than this are joined with the next, metres. */
    private static final double SHORTEST_SECTION_M = 2000;

    private static final double NEAR_TOP_M = 500;

    /** Own choice. */
    private static final double MOST_STOPPED_SHARE = 0.5;

    private final Route route;
    private final PlanRider rider;
    private final PlanOptions options;
    private final PlanRoad road;
    private final Measure density;
    private final Conditions day;
    private final Series grades;
    private final double stopped;
    private final PlanTarget target;
    private final PowerLimits limits;
    private final PowerByPiece best;
    private final CapTable table;
    private final PowerByPiece ridden;
    private final TableRide ride;
    private final @Nullable PlanAltitude altitude;
    private final List<PlanInfluence> influences;
    private final TimeRange moving;

    PlanCalculation(Route route, PlanRider rider, PlanOptions options) {
        this.route = route;
        this.rider = rider;
        this.options = options;
        this.road = PlanRoad.of(route, options.surfaces());
        RigChoice rig = rider.rig();
        this.density = new Air(
                        options.temperatureC(),
                        route.hasAltitude() ? Math.max(-500, Math.min(9000, route.meanAltitudeM())) : null,
                        null,
                        null)
                .density();
        Double wind = options.windMps();
        Double from = options.windFromDegrees();
        this.day = new Conditions(
                rig.totalKg(),
                rig.dragAreaM2().value(),
                rig.rollingResistance().value(),
                1,
                density.value(),
                wind == null ? 0 : wind,
                from == null ? 0 : Math.toRadians(from),
                1);
        this.grades = Series.generate(road.pieces(), road::grade);
        PlanRoad.Grouped grouped = road.grouped(day);
        this.target = targetOf(grouped.planner(limits(USUAL_TARGET * rider.thresholdPowerW()), EXPONENT));
        this.limits = limits(target.watts());
        PowerByPiece ofGroups = grouped.planner(limits, EXPONENT).best(target.watts());
        this.best = new PowerByPiece(
                grouped.spread(ofGroups.watts()),
                grouped.spread(ofGroups.speedMps()),
                ofGroups.seconds(),
                ofGroups.effortW(),
                ofGroups.averageW());
        PowerPlanner planner = road.planner(day, limits, EXPONENT);
        this.table = CapTable.of(grades, best, planner, target.watts());
        this.ridden = planner.ridden(table.ofPieces(grades));
        this.ride = TableRide.of(road, day, ridden.watts(), options.fastestDescentMps());
        this.altitude = PlanAltitude.of(route);
        this.influences = new TimeSpread(road, day, table.ofPieces(grades), limits)
                .of(rider.rig(), density, target, options, route.ascentM(), altitude == null ? 1 : altitude.lowShare());
        this.moving = TimeSpread.around(ride.seconds(), influences);
        this.stopped = stoppedOf(ride.seconds());
    }

    PlanTarget target() {
        return target;
    }

    TimeRange moving() {
        return moving;
    }

    double stoppedSeconds() {
        return stopped;
    }

    List<PlanInfluence> influences() {
        return influences;
    }

    @Nullable PlanAltitude altitude() {
        return altitude;
    }

    @Nullable PlanFuel fuel() {
        return PlanFuel.of(rider, ridden.averageW(), ride.seconds());
    }

    /** What the usual mistakes would cost, and what the plan gains. */
    Mistakes mistakes() {
        return new Mistakes(road, day, limits, grades, table.ofPieces(grades));
    }

    private double stoppedOf(double movingSeconds) {
        Integer given = options.stoppedSeconds();
        double share = usualStoppedShare();
        return given != null ? given : movingSeconds * share / (1 - share);
    }

    /** Somebody who stood for most of a race did not finish it as a race; such a habit is no plan. */
    private double usualStoppedShare() {
        Double usual = rider.usualStoppedShare();
        return usual == null ? 0 : Math.min(MOST_STOPPED_SHARE, Math.max(0, usual));
    }

    private PlanTarget targetOf(PowerPlanner planner) {
        TargetSearch search = new TargetSearch(planner, rider);
        Double given = options.targetW();
        Integer goal = options.goalSeconds();
        if (given != null) {
            return search.given(given);
        }
        if (goal == null) {
            return search.sustainable();
        }
        Integer stops = options.stoppedSeconds();
        return search.forMovingSeconds(Math.max(60, stops != null ? goal - stops : goal * (1 - usualStoppedShare())));
    }

    private PowerLimits limits(double targetW) {
        Double criticalW = rider.power().criticalPowerW();
        double ofThresholdW = CAP_OF_THRESHOLD * rider.thresholdPowerW();
        // At or below critical power the balance of W' does not fall, so that it needs no watching.
        double capW = criticalW == null ? ofThresholdW : Math.min(ofThresholdW, criticalW);
        return new PowerLimits(
                Math.min(capW, FLOOR_OF_TARGET * targetW), capW, SLOWEST_MPS, options.fastestDescentMps());
    }

    List<GroundCap> caps() {
        List<GroundCap> caps = new ArrayList<>();
        for (Ground ground : table.grounds()) {
            double lengthM = 0;
            double seconds = 0;
            for (int i = 0; i < road.pieces(); i++) {
                if (Ground.of(grades.get(i)) == ground) {
                    lengthM += road.pieceM();
                    seconds += road.pieceM() / ridden.speedMps().get(i);
                }
            }
            double capW = table.capW(ground);
            caps.add(new GroundCap(ground, capW, rider.capBpm(capW), lengthM, seconds));
        }
        return caps;
    }

    OpeningCap opening() {
        double capW = (double) Math.round(Opening.CAP_OVER_TARGET * target.watts());
        double seconds = OpeningCap.secondsOf(moving.seconds());
        double byCapsW = ride.effortUntilW(ridden.watts(), seconds);
        return new OpeningCap(seconds, capW, byCapsW, rider.capBpm(capW), rider.usualOpening());
    }

    List<ClimbCap> climbs() {
        List<ClimbCap> climbs = new ArrayList<>();
        for (RouteClimb climb : route.climbs()) {
            double seconds =
                    ride.secondsAtM(climb.toM(), road.pieceM()) - ride.secondsAtM(climb.fromM(), road.pieceM());
            double capW = table.capOfClimbW(climb.meanGrade());
            climbs.add(new ClimbCap(climb, nameNear(climb.toM()), capW, rider.capBpm(capW), seconds));
        }
        return climbs;
    }

    private @Nullable String nameNear(double atM) {
        String name = null;
        double nearest = NEAR_TOP_M;
        for (NamedPoint each : route.namedPoints()) {
            double off = Math.abs(each.distanceM() - atM);
            if (off <= nearest) {
                nearest = off;
                name = each.name();
            }
        }
        return name;
    }

    /** Where to look at the clock: the named points, or every 25 km where there are fewer than two. */
    private List<NamedPoint> sectionEnds() {
        List<NamedPoint> ends = new ArrayList<>();
        double last = 0;
        List<NamedPoint> points = new ArrayList<>(route.namedPoints());
        if (points.size() < 2) {
            points.clear();
            for (double at = SECTION_M; at < route.lengthM(); at += SECTION_M) {
                points.add(new NamedPoint("km " + Math.round(at / 1000), at));
            }
        }
        for (NamedPoint each : points) {
            if (each.distanceM() - last >= SHORTEST_SECTION_M
                    && route.lengthM() - each.distanceM() >= SHORTEST_SECTION_M) {
                ends.add(each);
                last = each.distanceM();
            }
        }
        ends.add(new NamedPoint("finish", route.lengthM()));
        return ends;
    }

    List<Section> sections() {
        List<Section> sections = new ArrayList<>();
        double fromM = 0;
        double fromSeconds = 0;
        for (NamedPoint end : sectionEnds()) {
            double toM = end.distanceM();
            double toSeconds = toM >= route.lengthM() ? ride.seconds() : ride.secondsAtM(toM, road.pieceM());
            TimeRange arrival = moving.part(toSeconds).plus(stopped * toSeconds / moving.seconds());
            sections.add(new Section(end.name(), fromM, toM, effortW(fromM, toM), toSeconds - fromSeconds, arrival));
            fromM = toM;
            fromSeconds = toSeconds;
        }
        return sections;
    }

    private double effortW(double fromM, double toM) {
        int from = (int) (fromM / road.pieceM());
        int to = Math.min(road.pieces(), Math.max(from + 1, (int) Math.round(toM / road.pieceM())));
        double sum = 0;
        double time = 0;
        for (int i = from; i < to; i++) {
            sum += Math.pow(ridden.watts().get(i), 4) / ridden.speedMps().get(i);
            time += 1 / ridden.speedMps().get(i);
        }
        return Math.pow(sum / time, 0.25);
    }
}
