package io.github.wattledger.energy;

import java.io.Serializable;
import java.util.Optional;

/**
 * What the literature says of carbohydrate during a ride of a duration, grams an hour, each end never above seven tenths
 * of the same end of what the ride uses. It is a range for healthy, trained adults. It is no advice for a person: that is for a licensed
 * dietitian or a physician.
 *
 * <p>Source: Burke et al. 2011, J Sports Sci 29 Suppl 1:S17-S27; Thomas, Erdman and Burke 2016, Med Sci Sports Exerc
 * 48:543-568 (both rules from memory); Jeukendrup 2014, Sports Med 44 Suppl 1:S25-S33; Wallis and Podlogar 2022.
 *
 * @param lowGPerHour the lower end, grams an hour
 * @param highGPerHour the upper end, grams an hour
 * @param mixtureOfSugars whether the upper end is reached only with a mixture of sugars, and only by riders used to it
 */
public record IntakeGuide(double lowGPerHour, double highGPerHour, boolean mixtureOfSugars) implements Serializable {
    private static final double NONE_NEEDED_BELOW_HOURS = 1;
    private static final double LONG_FROM_HOURS = 2.5;

    /** Above this one kind of sugar is no longer taken up, grams an hour. */
    private static final double ONE_SUGAR_G_PER_HOUR = 60;

    private static final double LOW_G_PER_HOUR = 30;
    private static final double MOST_G_PER_HOUR = 90;

    /** Riders who ride easily burn less, and need less. Own choice. */
    private static final double MOST_SHARE_OF_USE = 0.7;

    /**
     * The published range for a duration.
     *
     * @param hours how long the ride lasts, hours, 0 or more
     * @param usedGPerHour carbohydrate that the ride uses, grams an hour
     * @return empty for rides of under an hour, which need none
     * @throws IllegalArgumentException when the hours are out of range
     */
    public static Optional<IntakeGuide> of(double hours, Estimate usedGPerHour) {
        if (!(hours >= 0)) {
            throw new IllegalArgumentException("hours " + hours + ", expected 0 or more");
        }
        if (hours < NONE_NEEDED_BELOW_HOURS) {
            return Optional.empty();
        }
        boolean isLong = hours > LONG_FROM_HOURS;
        double low = Math.min(isLong ? ONE_SUGAR_G_PER_HOUR : LOW_G_PER_HOUR, MOST_SHARE_OF_USE * usedGPerHour.low());
        double high =
                Math.min(isLong ? MOST_G_PER_HOUR : ONE_SUGAR_G_PER_HOUR, MOST_SHARE_OF_USE * usedGPerHour.high());
        return Optional.of(new IntakeGuide(low, high, high > ONE_SUGAR_G_PER_HOUR));
    }
}
