package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** How the price of a finding came about, written down while it was computed. Seconds are those of the recording. */
public sealed interface PriceSteps extends Serializable permits PriceSteps.Stops, PriceSteps.Replayed {
    /** The share of their power that the seconds which take back keep is sought from here. */
    double LEAST_SHARE = 0.2;

    /** And to here. */
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
     * A race ridden again with the finding mended.
     *
     * @param targetW the power that could be held for the judged moving time, watts
     * @param stretches what was changed, by rising time
     * @param takingBack the seconds that take back what was left over or missing
     * @param recordedMovingSeconds recorded moving time
     * @param recordedWorkKJ recorded work, kilojoules
     * @param recordedNormalizedPowerW recorded normalized power, watts
     * @param equalWork the end at which the total work is the recorded one, or null where there is none
     * @param equalNormalizedPower the end at which normalized power is, or null where there is none
     * @param rig what it was ridden on
     */
    record Replayed(
            double targetW,
            List<Stretch> stretches,
            TakingBack takingBack,
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

    /** How a stretch was mended. */
    enum Mending {
        /** Every pedalled second by one factor, so that normalized power is the target. */
        TO_TARGET,
        /** The pedalled seconds above the target brought down to it. */
        CAPPED_AT_TARGET,
        /** Every pedalled second by one factor, so that power is what it was earlier on comparable ground. */
        TO_EARLIER_POWER,
        /** Every pedalled second by one factor, so that normalized power is that of the race before. */
        TO_POWER_BEFORE;

        /** The mending's fixed word, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * A stretch that was mended.
     *
     * @param when the stretch
     * @param mending how
     * @param fromW the power that was too much or too little: normalized power of the stretch, or mean power on comparable
     *     ground; null where seconds are capped one by one
     * @param toW the power that it was mended to, watts
     * @param factor by what each pedalled second was multiplied; null where seconds are capped one by one
     * @param changedSeconds how many seconds were changed
     * @param takenOutKJ work taken out, kilojoules; negative where it was put in
     */
    record Stretch(
            Interval when,
            Mending mending,
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
    record TakingBack(int firstSecond, int seconds, double workKJ) implements Serializable {}

    /**
     * One end of the price.
     *
     * @param share by what the power of the seconds that take back is multiplied
     * @param workKJ work of the race as replayed, kilojoules
     * @param normalizedPowerW its normalized power, watts
     * @param movingSeconds its moving time
     * @param savedSeconds recorded moving time less that
     */
    record End(double share, double workKJ, double normalizedPowerW, double movingSeconds, double savedSeconds)
            implements Serializable {}
}
