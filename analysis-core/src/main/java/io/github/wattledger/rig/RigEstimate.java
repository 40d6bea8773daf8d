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
 * positions. The fit is robust: pieces with brakes, drafts and gusts count little.
 *
 * <p>Equation: Martin et al. (1998), Journal of Applied Biomechanics 14:276-291. Drafting shows as less drag, a road that
 * changes as a mean: these are the numbers of this ride, not of the rider.
 *
 * @param dragAreaM2 drag area, spokes left out, m2
 * @param dragAreaErrorM2 its standard error, m2
 * @param rollingResistance coefficient of rolling resistance, roughness included
 * @param rollingResistanceError its standard error
 * @param pieces the number of pieces that were used
 */
public record RigEstimate(
        double dragAreaM2, double dragAreaErrorM2, double rollingResistance, double rollingResistanceError, int pieces)
        implements Serializable {
    private static final int LEAST_PIECES = 20;

    // Plausible for a person on a bicycle on a road; beyond them something else is at work.
    private static final double LEAST_DRAG_AREA_M2 = 0.15;
    private static final double MOST_DRAG_AREA_M2 = 0.65;
    private static final double LEAST_ROLLING = 0.002;
    private static final double MOST_ROLLING = 0.03;

    /** A drag area less certain than this share of itself is no better than a typical one. */
    private static final double MOST_RELATIVE_ERROR = 0.08;

    private static final String TOO_ALIKE = "the ride does not tell drag from rolling resistance closely enough";

    /**
     * Estimates from a ride. Refused are a ride without power, distance, speed or altitude, one with fewer than 20 pieces
     * pedalled without a gap, a drag area less certain than 8 %, and numbers that no rider on a road has.
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
        List<EnergyPiece> pieces = EnergyPiece.of(ride, course, rig);
        if (pieces.size() < LEAST_PIECES) {
            return Outcome.refused("too few stretches were pedalled without a gap");
        }
        EnergyFit fit = EnergyFit.of(pieces, rig, Air.of(ride).density().value());
        if (fit == null) {
            return Outcome.refused(TOO_ALIKE);
        }
        double newtonsPerUnit = rig.massKg() * RoadLoad.GRAVITY_MPS2;
        return judged(new RigEstimate(
                fit.areaM2() - rig.spokeDragAreaM2(),
                fit.areaErrorM2(),
                fit.rollingN() / newtonsPerUnit,
                fit.rollingErrorN() / newtonsPerUnit,
                pieces.size()));
    }

    private static Outcome<RigEstimate> judged(RigEstimate estimate) {
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
        return Outcome.of(estimate);
    }
}
