package io.github.wattledger.history;

import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.TrialCriticalPower;
import io.github.wattledger.ride.Outcome;
import java.io.Serializable;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What a rider's own rides before a day say on that day about what the rider can do: all that a judgement may rest on.
 * Nothing of the day itself and of later days is in it. {@link RiderTraits} has what is good to know beside it.
 *
 * @param day the day
 * @param rides how many rides of the year before the day were looked at
 * @param threshold threshold power by efforts of the last 90 days, or null when no ride has 20 minutes of riding
 * @param endurance what the long rides of the last year say about power for hours, or why they say nothing
 * @param criticalPower critical power and W′ by named trials, or why there is none
 * @param agreed what was agreed last in the year before the day, or null
 */
public record RiderHistory(
        LocalDate day,
        int rides,
        @Nullable OwnThreshold threshold,
        Outcome<OwnEndurance> endurance,
        Outcome<TrialCriticalPower> criticalPower,
        @Nullable Agreement agreed)
        implements Serializable {

    /** Threshold power by own efforts, watts, or null. */
    public @Nullable Double thresholdPowerW() {
        return threshold == null ? null : (Double) threshold.watts();
    }
}
