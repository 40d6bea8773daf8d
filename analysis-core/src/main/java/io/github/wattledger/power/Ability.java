package io.github.wattledger.power;

import java.io.Serializable;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the rider could be expected to hold for the length of this ride.
 *
 * @param criticalPowerW critical power, watts, or null while it is not known
 * @param wPrimeKJ W′, the work that can be done above critical power, kilojoules, or null while it is not known
 * @param source where the numbers come from, or null when there are none
 * @param fitErrorW standard error of the critical power, watts, or null where critical power was not fitted
 * @param sustainablePowerW power sustainable for {@code forSeconds}, watts, or null when the threshold is unknown
 * @param forSeconds the duration asked about, seconds
 * @param evidence what the numbers rest on, or null when it was not looked at
 */
public record Ability(
        @Nullable Double criticalPowerW,
        @Nullable Double wPrimeKJ,
        @Nullable Source source,
        @Nullable Double fitErrorW,
        @Nullable Double sustainablePowerW,
        int forSeconds,
        @Nullable AbilityEvidence evidence)
        implements Serializable {
    /** Where the numbers come from. */
    public enum Source {
        /** Sustainable power from the general guide ({@link SustainablePower#guideW}); critical power not known. */
        GUIDE,
        /**
         * Sustainable power from the rider's own other rides: long bests ({@link SustainablePower#fromBests}) or the long
         * rides of a year ({@link OwnEndurance}); {@link SustainablePower#source()} tells which.
         */
        OWN_BESTS,
        /** Critical power and W′ from this ride's curve, sustainable power (where there is one) from the guide. */
        RIDE_FIT_AND_GUIDE,
        /** Critical power and W′ from this ride's curve, sustainable power from own long bests in other rides. */
        RIDE_FIT_AND_OWN_BESTS,
        /** Critical power and W′ as given, sustainable power (where there is one) from the guide. */
        GIVEN_AND_GUIDE,
        /** Critical power and W′ as given, sustainable power from own long bests in other rides. */
        GIVEN_AND_OWN_BESTS;

        /** The source's fixed word, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /** Whether the sustainable power rests on the general guide. */
        public boolean isGuide() {
            return this == GUIDE || this == RIDE_FIT_AND_GUIDE || this == GIVEN_AND_GUIDE;
        }

        /** Whether critical power and W′ were given rather than found in the ride. */
        public boolean isGiven() {
            return this == GIVEN_AND_GUIDE || this == GIVEN_AND_OWN_BESTS;
        }
    }

    /** The same ability without the balance of W′ second by second. */
    public Ability withoutBalance() {
        return evidence == null
                ? this
                : new Ability(
                        criticalPowerW,
                        wPrimeKJ,
                        source,
                        fitErrorW,
                        sustainablePowerW,
                        forSeconds,
                        evidence.withoutBalance());
    }
}
