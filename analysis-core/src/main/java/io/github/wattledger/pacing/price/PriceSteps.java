package io.github.wattledger.pacing.price;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How the price of a finding came about, written down while it was computed. Seconds are those of the recording. */
public sealed interface PriceSteps extends Serializable permits PriceSteps.Stops, PriceSteps.Replayed {
    /** The smallest share of their power at which the seconds that make up for a repair are tried. */
    double LEAST_SHARE = 0.2;

    /** The largest share of their power at which these seconds are tried. */
    double MOST_SHARE = 4;

    /**
     * Stops, which cost what they took.
     *
     * @param stops each of them, by rising time
     */
    record Stops(List<Interval> stops) implements PriceSteps {
        /** Copies the list. */
        public Stops {
            stops = List.copyOf(stops);
        }
    }

    /**
     * A race ridden again with the mistake repaired.
     *
     * @param targetW the power that could be held for the judged moving time, watts
     * @param stretches what was changed, by rising time
     * @param makingUp the seconds that make up for the repair
     * @param recordedMovingSeconds recorded moving time
     * @param recordedWorkKJ recorded work, kilojoules
     * @param recordedNormalizedPowerW recorded normalized power, watts
     * @param equalWork the end at which the total work is the recorded one, or null where there is none
     * @param equalNormalizedPower the end at which normalized power is the recorded one, or null where there is none
     * @param rig what it was ridden on
     */
    record Replayed(
            double targetW,
            List<Stretch> stretches,
            MakingUp makingUp,
            double recordedMovingSeconds,
            double recordedWorkKJ,
            double recordedNormalizedPowerW,
            @Nullable End equalWork,
            @Nullable End equalNormalizedPower,
            RigChoice rig)
            implements PriceSteps {
        /** Copies the list. */
        public Replayed {
            stretches = List.copyOf(stretches);
        }
    }

    /**
     * A stretch that was changed.
     *
     * @param when the stretch
     * @param change how
     * @param fromW the power that was too much or too little: normalized power of the stretch, or mean power on comparable
     *     ground; null where seconds are capped one by one
     * @param toW the power that it was brought to, watts
     * @param factor the factor of each pedalled second; null where seconds are capped one by one
     * @param changedSeconds how many seconds were changed
     * @param takenOutKJ work taken out, kilojoules; negative where it was put in
     */
    record Stretch(
            Interval when,
            StretchChange change,
            @Nullable Double fromW,
            double toW,
            @Nullable Double factor,
            int changedSeconds,
            double takenOutKJ)
            implements Serializable {}

    /**
     * The pedalled seconds whose power is multiplied by a share until the race is equal again.
     *
     * @param firstSecond the first of them
     * @param seconds how many
     * @param workKJ their work before the share, kilojoules
     */
    record MakingUp(int firstSecond, int seconds, double workKJ) implements Serializable {}

    /**
     * One end of the price.
     *
     * @param share the factor of the power of the seconds that make up for the repair
     * @param workKJ work of the race as replayed, kilojoules
     * @param normalizedPowerW its normalized power, watts
     * @param movingSeconds its moving time
     * @param savedSeconds recorded moving time less this moving time
     */
    record End(double share, double workKJ, double normalizedPowerW, double movingSeconds, double savedSeconds)
            implements Serializable {}
}
