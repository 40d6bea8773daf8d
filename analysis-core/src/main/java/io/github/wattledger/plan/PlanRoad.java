package io.github.wattledger.plan;

import io.github.wattledger.course.Route;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RoadLoad;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A route cut into pieces of about 200 m, under the conditions of a day. */
final class PlanRoad {
    /** Pieces are alike for the solver when grade and wind differ by less. */
    private static final double SAME_GRADE = 0.001;

    private static final double SAME_WIND_MPS = 0.25;

    private final double pieceM;
    private final List<Double> grades = new ArrayList<>();
    private final List<Double> bearings = new ArrayList<>();
    private final List<Double> ownRolling = new ArrayList<>();

    private PlanRoad(double pieceM) {
        this.pieceM = pieceM;
    }

    static PlanRoad of(Route route, List<SurfaceStretch> surfaces) {
        int pieces = Math.max(1, (int) Math.round(route.lengthM() / Route.PIECE_M));
        PlanRoad road = new PlanRoad(route.lengthM() / pieces);
        for (int piece = 0; piece < pieces; piece++) {
            double from = piece * road.pieceM;
            double middle = from + road.pieceM / 2;
            road.grades.add(route.gradeBetweenM(from, from + road.pieceM));
            road.bearings.add(route.bearingBetweenM(from, from + road.pieceM));
            double own = Double.NaN;
            for (SurfaceStretch each : surfaces) {
                own = middle >= each.fromM() && middle < each.toM() ? each.rollingResistance() : own;
            }
            road.ownRolling.add(own);
        }
        return road;
    }

    int pieces() {
        return grades.size();
    }

    double pieceM() {
        return pieceM;
    }

    double grade(int piece) {
        return grades.get(piece);
    }

    RoadPiece piece(int piece, Conditions day) {
        double bearing = bearings.get(piece);
        // Without positions every other piece meets the wind, as a loop does on the whole.
        double along = Double.isNaN(bearing) ? (piece % 2 == 0 ? 1 : -1) : Math.cos(bearing - day.windFromRadians());
        double headwind = day.windMps() * along;
        return new RoadPiece(pieceM, Math.max(-0.4, Math.min(0.4, grades.get(piece) * day.gradeFactor())), headwind);
    }

    RoadLoad load(int piece, Conditions day) {
        return load(day, ownRolling.get(piece));
    }

    private static RoadLoad load(Conditions day, double own) {
        double rolling = (Double.isNaN(own) ? day.rollingResistance() : own) * day.rollingFactor();
        double within = Math.max(Bounds.ROLLING_RESISTANCE.low(), Math.min(Bounds.ROLLING_RESISTANCE.high(), rolling));
        return RoadLoad.of(Rig.of(day.massKg(), day.dragAreaM2(), within), day.densityKgPerM3());
    }

    /** A planner over the pieces in their order. */
    PowerPlanner planner(Conditions day, PowerLimits limits, double exponent) {
        List<RoadPiece> pieces = new ArrayList<>();
        List<RoadLoad> loads = new ArrayList<>();
        for (int piece = 0; piece < pieces(); piece++) {
            pieces.add(piece(piece, day));
            loads.add(load(piece, day));
        }
        return new PowerPlanner(pieces, loads, limits, exponent);
    }

    /** The same road with pieces of like ground put together, which is solved many times faster. */
    Grouped grouped(Conditions day) {
        record Kind(long grade, long wind, double rolling) {}
        Map<Kind, Integer> groups = new LinkedHashMap<>();
        List<RoadPiece> pieces = new ArrayList<>();
        List<RoadLoad> loads = new ArrayList<>();
        int[] groupOf = new int[pieces()];
        for (int i = 0; i < pieces(); i++) {
            RoadPiece piece = piece(i, day);
            Kind kind = new Kind(
                    Math.round(piece.grade() / SAME_GRADE),
                    Math.round(piece.headwindMps() / SAME_WIND_MPS),
                    ownRolling.get(i));
            Integer known = groups.get(kind);
            if (known == null) {
                groups.put(kind, pieces.size());
                groupOf[i] = pieces.size();
                pieces.add(piece);
                loads.add(load(i, day));
            } else {
                groupOf[i] = known;
                RoadPiece sum = pieces.get(known);
                double length = sum.lengthM() + pieceM;
                double share = pieceM / length;
                pieces.set(
                        known,
                        new RoadPiece(
                                length,
                                sum.grade() + share * (piece.grade() - sum.grade()),
                                sum.headwindMps() + share * (piece.headwindMps() - sum.headwindMps())));
            }
        }
        return new Grouped(pieces, loads, groupOf);
    }

    /** A road whose pieces of like ground are put together. */
    static final class Grouped {
        private final List<RoadPiece> pieces;
        private final List<RoadLoad> loads;
        private final int[] groupOf;

        private Grouped(List<RoadPiece> pieces, List<RoadLoad> loads, int[] groupOf) {
            this.pieces = pieces;
            this.loads = loads;
            this.groupOf = groupOf;
        }

        PowerPlanner planner(PowerLimits limits, double exponent) {
            return new PowerPlanner(pieces, loads, limits, exponent);
        }

        /** A number of each group as one of each piece. */
        Series spread(Series ofGroups) {
            return Series.generate(groupOf.length, piece -> ofGroups.get(groupOf[piece]));
        }
    }
}
