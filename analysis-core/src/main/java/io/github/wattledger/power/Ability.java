package io.github.wattledger.power;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What the rider could be expected to hold for the length of this ride.
 *
 * @param criticalPowerW critical power, watts, or null while it is not known
 * @param wPrimeKJ W′, the work that can be done above critical power, kilojoules, or null while it is not known
 * @param source where the sustainable power comes from, or null when there is none
 * @param fitErrorW standard error of the critical power, watts, or null without a fit
 * @param sustainablePowerW power sustainable for {@code forSeconds}, watts, or null when the threshold is unknown
 * @param forSeconds the duration asked about, seconds
 */
public record Ability(
        @Nullable Double criticalPowerW,
        @Nullable Double wPrimeKJ,
        @Nullable Source source,
        @Nullable Double fitErrorW,
        @Nullable Double sustainablePowerW,
        int forSeconds)
        implements Serializable {
    /** Where the sustainable power comes from. */
    public enum Source {
        /** The general guide from threshold power ({@link SustainablePower#guideW}). */
        GUIDE
    }
}
