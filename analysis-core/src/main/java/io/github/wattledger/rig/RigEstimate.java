package io.github.wattledger.rig;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Drag area and rolling resistance from a ride itself: the balance of energy over pieces of 500 m, as in the virtual
 * elevation of the trade, put as a line. What the pedals gave, less height and motion won and bearings, per metre, is
 * rolling resistance plus drag area times dynamic pressure. A steady wind is estimated along with it where the ride has
 * positions. The fit is robust: pieces with drafts and gusts count little, and brakes are left out.
 *
 * <p>Equation: Martin et al. (1998), Journal of Applied Biomechanics 14:276-291. Drafting shows as less drag, a road that
 * changes as a mean: these are the numbers of this ride, not of the rider.
 *
 * @param dragAreaM2 drag area, spokes left out, m2
 * @param dragAreaErrorM2 its standard error, m2, the mass taken as right
 * @param rollingResistance coefficient of rolling resistance, roughness included
 * @param rollingResistanceError its standard error, the mass taken as right
 * @param pieces the number of pieces that were used
 * @param together how both are off together, and with the mass
 */
public record RigEstimate(
        double dragAreaM2,
        double dragAreaErrorM2,
        double rollingResistance,
        double rollingResistanceError,
        int pieces,
        OffTogether together)
        implements Serializable {
    private static final double PIECE_M = 500;
    private static final int LEAST_PIECES = 20;

    // Plausible for a person on a bicycle on a road; beyond them something else is at work.
    private static final double LEAST_DRAG_AREA_M2 = 0.15;
    private static final double MOST_DRAG_AREA_M2 = 0.65;
    private static final double LEAST_ROLLING = 0.002;
    private static final double MOST_ROLLING = 0.03;

    /*
     * Plausible together. In metres per second on the flat at 200 W: 20 km/h is an upright rider on soft ground; 42 km/h is
     * what the hour record of 2015, 54.5 km/h at some 440 W on boards (from memory), comes down to by the cube root.
     */
    private static final double POWER_W = 200;
    private static final double SLOWEST_MPS = 20 / 3.6;
    private static final double FASTEST_MPS = 42 / 3.6;

    /** Nobody rides lower than this, a position for aero bars, on ground softer than hard gravel. Own choice. */
    private static final double LOW_POSITION_M2 = 0.25;

    private static final double HARD_GRAVEL = 0.012; // from memory

    /** Who sits higher than this, bolt upright, does not ride on better tyres and asphalt than those below. Own choice. */
    private static final double HIGH_POSITION_M2 = 0.50;

    /** Race tyres on a smooth taxiway (Martin et al. 1998). */
    private static final double SMOOTH_ASPHALT = 0.0032;

    /** A typical drag area is right to a quarter, two standard errors of this: one less certain is no better. */
    private static final double MOST_RELATIVE_ERROR = 0.125;

    private static final String TOO_ALIKE = "the ride does not tell drag from rolling resistance closely enough";

    /**
     * Estimates from a ride. Refused are a ride without power, distance, speed or altitude, one with fewer than 20 pieces
     * pedalled without a gap, a drag area with a standard error above an eighth of itself, and numbers that no rider on a road has, each alone or
     * both together.
     *
     * @param course the course of this ride, or null where it leads nowhere
     * @param totalMassKg rider and bicycle with all that is on it, kg; both results rise with it
     */
    public static Outcome<RigEstimate> of(Ride ride, @Nullable Course course, double totalMassKg) {
        for (Channel channel : List.of(Channel.POWER, Channel.DISTANCE, Channel.SPEED, Channel.ALTITUDE)) {
            if (!ride.has(channel)) {
                return Outcome.refused("no " + channel.label() + " in this file");
            }
        }
        if (course == null) {
            return Outcome.refused("the ride leads nowhere");
        }
        // Any drag area does here: wheels, drive and mass are all that is read of it.
        Rig rig = Rig.of(totalMassKg, Position.HOODS.dragAreaM2(), Rig.TYPICAL_ROLLING_RESISTANCE);
        double density = Air.of(ride).density().value();
        List<EnergyPiece> pieces = EnergyPiece.of(ride, course, rig, density, PIECE_M);
        if (pieces.size() < LEAST_PIECES) {
            return Outcome.refused("too few stretches were pedalled without a gap");
        }
        PairFit fit = PairFit.of(pieces, rig, density);
        if (fit == null) {
            return Outcome.refused(TOO_ALIKE);
        }
        double newtonsPerUnit = rig.massKg() * RoadLoad.GRAVITY_MPS2;
        double rolling = fit.rollingN() / newtonsPerUnit;
        double rollingError = fit.rollingErrorN() / newtonsPerUnit;
        OffTogether together = new OffTogether(
                fit.areaPerKg(),
                fit.rollingNPerKg() / newtonsPerUnit - rolling / rig.massKg(),
                fit.areaErrorM2() > 0 ? fit.correlation() * rollingError / fit.areaErrorM2() : 0,
                Math.sqrt(1 - fit.correlation() * fit.correlation()));
        return judged(new RigEstimate(
                fit.areaM2() - rig.spokeDragAreaM2(),
                fit.areaErrorM2(),
                rolling,
                rollingError,
                pieces.size(),
                together));
    }

    /** These numbers with another account of how they are off together. */
    public RigEstimate withTogether(OffTogether other) {
        return new RigEstimate(dragAreaM2, dragAreaErrorM2, rollingResistance, rollingResistanceError, pieces, other);
    }

    /** The estimate, or why it is of no use. */
    static Outcome<RigEstimate> judged(RigEstimate estimate) {
        double area = estimate.dragAreaM2;
        double rolling = estimate.rollingResistance;
        if (!(estimate.dragAreaErrorM2 <= MOST_RELATIVE_ERROR * Math.abs(area))) {
            return Outcome.refused(TOO_ALIKE);
        }
        if (!(area >= LEAST_DRAG_AREA_M2 && area <= MOST_DRAG_AREA_M2)) {
            return Outcome.refused(
                    String.format(Locale.ROOT, "it comes out at a drag area of %.2f m2, which is not plausible", area));
        }
        if (!(rolling >= LEAST_ROLLING && rolling <= MOST_ROLLING)) {
            return Outcome.refused(String.format(
                    Locale.ROOT, "it comes out at a rolling resistance of %.4f, which is not plausible", rolling));
        }
        if (!arePlausibleTogether(area, rolling)) {
            return Outcome.refused(String.format(
                    Locale.ROOT,
                    "it comes out at a drag area of %.2f m2 with a rolling resistance of %.4f, which is not plausible",
                    area,
                    rolling));
        }
        return Outcome.of(estimate);
    }

    /**
     * Whether one rider can have both. A ride that does not tell them apart can give too much of one for too little of the
     * other, at an ordinary speed; a wrong power meter gives too much or too little of both.
     */
    private static boolean arePlausibleTogether(double areaM2, double rolling) {
        // The mass is that of an ordinary rider, so that the same pair is judged alike whoever rides.
        Rig rig = Rig.of(Rig.TYPICAL_RIDER_KG + Rig.TYPICAL_BICYCLE_KG, areaM2, rolling);
        double levelMps = RoadLoad.of(rig, AirDensity.SEA_LEVEL_KG_PER_M3).speedMps(POWER_W, 0, 0);
        boolean isLowOnSoftGround = areaM2 < LOW_POSITION_M2 && rolling > HARD_GRAVEL;
        boolean isUprightOnRaceTyres = areaM2 > HIGH_POSITION_M2 && rolling < SMOOTH_ASPHALT;
        return levelMps >= SLOWEST_MPS && levelMps <= FASTEST_MPS && !isLowOnSoftGround && !isUprightOnRaceTyres;
    }
}
