package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.util.List;
import java.util.Optional;

/**
 * Power of two stretches of a race on comparable ground: means over the grade bands that both stretches have, each band
 * weighted by the seconds that both have of it.
 *
 * @param earlyW mean power of the earlier stretch, watts
 * @param lateW mean power of the later stretch, watts
 */
record LikeGround(double earlyW, double lateW) {
    /** Seconds that a band must have in both stretches to be compared. */
    private static final int LEAST_BAND_SECONDS = 60;

    /** Seconds that all compared bands must have together. */
    private static final int LEAST_COMPARED_SECONDS = 300;

    /** Compares a later stretch with an earlier one; empty when there is too little comparable ground. */
    static Optional<LikeGround> of(Race race, Interval early, Interval late) {
        Bands earlyBands = Bands.of(race, early);
        Bands lateBands = Bands.of(race, late);
        double earlyW = 0;
        double lateW = 0;
        int seconds = 0;
        for (int band = 0; band < GradeBands.count(); band++) {
            int shared = Math.min(earlyBands.seconds[band], lateBands.seconds[band]);
            if (shared >= LEAST_BAND_SECONDS) {
                earlyW += shared * earlyBands.sumW[band] / earlyBands.seconds[band];
                lateW += shared * lateBands.sumW[band] / lateBands.seconds[band];
                seconds += shared;
            }
        }
        return seconds < LEAST_COMPARED_SECONDS
                ? Optional.empty()
                : Optional.of(new LikeGround(earlyW / seconds, lateW / seconds));
    }

    /** Power of a later stretch over that of an earlier one; {@code NaN} when there is too little comparable ground. */
    static double keptShare(Race race, Interval early, Interval late) {
        return of(race, early, late).map(LikeGround::keptShare).orElse(Double.NaN);
    }

    /** Power of the later stretch over that of the earlier one. */
    double keptShare() {
        return lateW / earlyW;
    }

    /** Brings a stretch to the power of the race before it; changes nothing where there is too little comparable ground. */
    static Repair repair(Race race, Interval stretch) {
        List<Repair.Stretch> changes = of(race, new Interval(0, stretch.fromSecond()), stretch).stream()
                .map(like -> new Repair.Stretch(stretch, StretchChange.TO_EARLIER_POWER, like.lateW, like.earlyW))
                .toList();
        return new Repair(Repair.Turn.FACTORS, changes, 0);
    }

    /** Whether a second is compared at all: it was pedalled, and its ground is known. */
    static boolean isCompared(Race race, int second) {
        return race.ride().state(second) == SecondState.RIDING
                && race.watts().get(second) >= Ride.PEDALLING_W
                && race.gradeBands().of(second) != GradeBands.UNKNOWN;
    }

    /** Power and time of a stretch in each grade band. */
    static final class Bands {
        private final double[] sumW = new double[GradeBands.count()];
        private final int[] seconds = new int[GradeBands.count()];

        static Bands of(Race race, Interval stretch) {
            Bands bands = new Bands();
            for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
                if (isCompared(race, second)) {
                    int band = race.gradeBands().of(second);
                    bands.sumW[band] += race.watts().get(second);
                    bands.seconds[band]++;
                }
            }
            return bands;
        }

        /** Mean power in a band, watts; {@code NaN} where the stretch has none of it. */
        double meanW(int band) {
            return sumW[band] / seconds[band];
        }
    }
}
