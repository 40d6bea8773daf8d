package io.github.wattledger.energy;

import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.Collections;
import java.util.List;

/**
 * The carbohydrate that a rider says was eaten and drunk during a ride, by hour of the clock.
 *
 * @param gramsByHour grams in each hour of the ride, the first hour first, each within
 *     {@link Bounds#EATEN_G_PER_HOUR}; the hours after the last one had as much as the last one
 * @param mixtureOfSugars whether it was a mixture of sugars, as made for sport, and not one kind alone
 */
public record Intake(List<Double> gramsByHour, boolean mixtureOfSugars) implements Serializable {
    /**
     * The share of what is eaten that the body burns, and the most of it in an hour: 86 % of 90 g/h and 75 % of 120 g/h in
     * the third hour (Podlogar et al. 2022, Eur J Appl Physiol 122:2393-2401).
     */
    private static final double BURNED_SHARE = 0.85;

    private static final double MOST_BURNED_G_PER_HOUR = 75;

    /** The most in an hour of one kind of sugar alone: about 60 g/h is its ceiling (Jeukendrup 2014, Sports Med 44:S25). */
    private static final double MOST_BURNED_OF_ONE_SUGAR_G_PER_HOUR = 55;

    private static final int SECONDS_PER_HOUR = 3600;

    /** @throws IllegalArgumentException when there is no hour, or an hour's grams are out of range */
    public Intake {
        gramsByHour = List.copyOf(gramsByHour);
        if (gramsByHour.isEmpty()) {
            throw new IllegalArgumentException("gramsByHour is empty, expected one number or more");
        }
        gramsByHour.forEach(grams -> Bounds.EATEN_G_PER_HOUR.require("gramsByHour", grams));
    }

    /**
     * The same amount of a mixture of sugars in every hour.
     *
     * @throws IllegalArgumentException when it is out of range
     */
    public static Intake ofGramsPerHour(double gramsPerHour) {
        return new Intake(Collections.singletonList(gramsPerHour), true);
    }

    /**
     * The grams eaten up to a second of the ride, as if each hour's grams were eaten evenly.
     *
     * @param second 0 or more
     */
    public double gramsUntil(int second) {
        return sumUntil(second, 1, Double.POSITIVE_INFINITY);
    }

    /**
     * The grams that the body burned by a second of what was eaten up to it: 0.85 of it, and no more than 75 g in an hour of
     * a mixture of sugars or 55 g of one kind.
     *
     * @param second 0 or more
     */
    public double burnedGUntil(int second) {
        return sumUntil(
                second, BURNED_SHARE, mixtureOfSugars ? MOST_BURNED_G_PER_HOUR : MOST_BURNED_OF_ONE_SUGAR_G_PER_HOUR);
    }

    private double sumUntil(int second, double share, double mostPerHour) {
        double sum = 0;
        for (int hour = 0; hour * SECONDS_PER_HOUR < second; hour++) {
            double grams = gramsByHour.get(Math.min(hour, gramsByHour.size() - 1));
            double part = Math.min(1, (double) (second - hour * SECONDS_PER_HOUR) / SECONDS_PER_HOUR);
            sum += part * Math.min(share * grams, mostPerHour);
        }
        return sum;
    }
}
