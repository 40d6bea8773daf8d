package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.PacingPlan;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The power of a sensible rider by place, with mistakes put in: somewhat harder uphill, easier downhill, freewheeling on
 * fast descents. All of it belongs to places, none to times, so that a race can be ridden again with one thing changed.
 */
final class SensiblePower implements PacingPlan {
    private static final double FREEWHEEL_GRADE = -0.03;
    private static final double EASIEST_DOWNHILL = 0.6;
    private static final double HARDEST_UPHILL = 1.25;
    /** Below this speed nobody stops pedalling for a bend or a bottle, m/s. */
    private static final double NO_REST_BELOW_MPS = 4;

    private final Riding riding;
    private final double baseW;
    private final double share;
    private final Unevenness unevenness;
    private final double[] factors;
    private final double[] boutsW;
    private final @Nullable BitSet freewheeled;

    /**
     * How a rider rides.
     *
     * @param uphillGain relative change of power per unit of grade uphill: 3 gives 15 % more at 5 %
     * @param downhillGain the same downhill
     * @param mostW what no climb is ridden above on average, watts
     * @param freewheelMps speed on a descent from which the rider freewheels
     */
    record Riding(double uphillGain, double downhillGain, double mostW, double freewheelMps) {}

    private SensiblePower(
            Riding riding,
            double baseW,
            double share,
            Unevenness unevenness,
            double[] factors,
            double[] boutsW,
            @Nullable BitSet freewheeled) {
        this.riding = riding;
        this.baseW = baseW;
        this.share = share;
        this.unevenness = unevenness;
        this.factors = factors;
        this.boutsW = boutsW;
        this.freewheeled = freewheeled;
    }

    /**
     * A race without a mistake.
     *
     * @param baseW power on level ground, watts
     * @param unevenness by what each place multiplies it
     */
    static SensiblePower of(Riding riding, double baseW, Unevenness unevenness) {
        double[] ones = new double[unevenness.cells()];
        double[] none = new double[unevenness.cells()];
        Arrays.fill(ones, 1);
        Arrays.fill(none, Double.NaN);
        return new SensiblePower(riding, baseW, 1, unevenness, ones, none, null);
    }

    /** The same with another power on level ground. */
    SensiblePower withBaseW(double otherW) {
        return new SensiblePower(riding, otherW, share, unevenness, factors, boutsW, freewheeled);
    }

    /** The same with every power multiplied. */
    SensiblePower times(double otherShare) {
        return new SensiblePower(riding, baseW, share * otherShare, unevenness, factors, boutsW, freewheeled);
    }

    /** The same with the mistakes that are made by power put in. */
    SensiblePower with(List<Mistake> mistakes) {
        double[] levels = factors.clone();
        double[] bouts = boutsW.clone();
        for (Mistake mistake : mistakes) {
            if (mistake instanceof Mistake.Level level) {
                multiply(levels, level);
            } else if (mistake instanceof Mistake.Crash crash) {
                multiply(levels, crash.level());
            } else if (mistake instanceof Mistake.Bouts each) {
                each.stretches()
                        .forEach(stretch ->
                                Arrays.fill(bouts, cell(stretch.fromM()), cell(stretch.toM()), each.watts()));
            }
        }
        return new SensiblePower(riding, baseW, share, unevenness, levels, bouts, freewheeled);
    }

    /** The same power in the same places as in a race: descents are freewheeled where they were, whatever the speed. */
    SensiblePower freewheelingAsIn(RiddenRace race) {
        BitSet cells = new BitSet();
        Course course = race.ride().scenario().course();
        for (int second = 1; second < race.seconds(); second++) {
            double fromM = race.distanceM(second - 1);
            if (race.powerW(second) == 0 && course.gradeAt(fromM) < FREEWHEEL_GRADE) {
                cells.set(cell(fromM), cell(race.distanceM(second)) + 1);
            }
        }
        return new SensiblePower(riding, baseW, share, unevenness, factors, boutsW, cells);
    }

    private boolean freewheels(Moment moment) {
        if (!(moment.grade() < FREEWHEEL_GRADE)) {
            return false;
        }
        double fromMps = freewheeled == null ? riding.freewheelMps() : NO_REST_BELOW_MPS;
        boolean isPlaceForIt = freewheeled == null || freewheeled.get(cell(moment.distanceM()));
        return isPlaceForIt && moment.speedMps() > fromMps;
    }

    private static void multiply(double[] levels, Mistake.Level level) {
        for (int cell = 0; cell < levels.length; cell++) {
            levels[cell] *= level.factorAt((cell + 0.5) * Course.CELL_M);
        }
    }

    private int cell(double distanceM) {
        int cell = (int) Math.floor(distanceM / Course.CELL_M);
        return Math.max(0, Math.min(unevenness.cells() - 1, cell));
    }

    double baseW() {
        return baseW;
    }

    /** By what the mistakes multiply the sensible power at a place; bouts left out. */
    double factorAt(double distanceM) {
        return factors[cell(distanceM)];
    }

    /** Whether a bout of one power lies at a place. */
    boolean isBoutAt(double distanceM) {
        return !Double.isNaN(boutsW[cell(distanceM)]);
    }

    @Override
    public double powerW(Moment moment) {
        int cell = cell(moment.distanceM());
        if (freewheels(moment)) {
            return 0;
        }
        if (!Double.isNaN(boutsW[cell])) {
            return share * boutsW[cell];
        }
        double gain = moment.grade() > 0 ? riding.uphillGain() : riding.downhillGain();
        double ground = Math.max(EASIEST_DOWNHILL, Math.min(HARDEST_UPHILL, 1 + gain * moment.grade()));
        boolean rests = unevenness.of(cell) == 0 && moment.speedMps() > NO_REST_BELOW_MPS;
        double local = rests ? 0 : Math.max(unevenness.of(cell), EASIEST_DOWNHILL);
        return share * factors[cell] * local * Math.min(riding.mostW(), baseW * ground);
    }
}
