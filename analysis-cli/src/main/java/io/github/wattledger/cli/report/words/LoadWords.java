package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Ride;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A number of a ride's load, ours beside what the device stored, in words.
 *
 * @param number which number it is
 * @param here ours, or null where it could not be computed
 * @param device the device's, or null where it stored none
 * @param otherwise why ours could not be computed
 * @param missing the channel that the file lacks for it, or null
 */
public record LoadWords(
        LoadNumber number,
        @Nullable Double here,
        @Nullable Double device,
        String otherwise,
        @Nullable Channel missing) {
    /**
     * The numbers in the order of their declaration. Stopped time is left out: a report shows it where the time went.
     *
     * @param load our numbers
     * @param ride the whole recording
     * @param totals what the device stored for it, or null
     * @param isThresholdKnown whether there is a threshold power
     */
    public static List<LoadWords> of(
            RideLoad load, Ride ride, @Nullable DeviceTotals totals, boolean isThresholdKnown) {
        List<LoadWords> rows = new ArrayList<>();
        for (LoadNumber number : LoadNumber.values()) {
            if (number != LoadNumber.STOPPED_SECONDS) {
                Channel missing = number.needs().stream()
                        .filter(channel -> !ride.has(channel))
                        .findFirst()
                        .orElse(null);
                rows.add(new LoadWords(
                        number,
                        number.of(load),
                        totals == null ? null : number.of(totals),
                        otherwise(number, missing, isThresholdKnown),
                        missing));
            }
        }
        return rows;
    }

    /**
     * Why the numbers that go by threshold power are not to be relied on, a sentence; null where they are, or there are none.
     */
    public static @Nullable String doubt(RideReview review) {
        Double watts = review.rider().thresholdPowerW();
        if (watts == null || review.load().intensityFactor() == null) {
            return null;
        }
        String numbers = "Intensity factor and training stress go by a threshold power of " + Figures.watts(watts);
        if (review.rider().thresholdPowerOrigin() == Origin.ESTIMATED) {
            return numbers + " or more, estimated from this ride: with a higher one both are lower.";
        }
        return RiderWords.isThresholdDoubted(review)
                ? numbers + " that is not believed; the notes on the recording say why."
                : null;
    }

    private static String otherwise(LoadNumber number, @Nullable Channel missing, boolean isThresholdKnown) {
        if (missing != null) {
            return "no " + missing.label() + " in this file";
        }
        return number.needsThresholdPower() && !isThresholdKnown ? "threshold power is not known" : "not computed";
    }

    /** What it is called; the device's average speed is another one than ours, so that the label says which is ours. */
    public String label() {
        return number == LoadNumber.AVERAGE_SPEED && device != null ? "average speed, here moving" : number.label();
    }

    /** A value of this number with its unit. */
    public String inUnits(double value, Units units) {
        return wording(number.quantity()).of(value, units);
    }

    private static Wording wording(LoadNumber.Quantity quantity) {
        return switch (quantity) {
            case TIME -> Wording.CLOCK;
            case DISTANCE -> Wording.DISTANCE;
            case HEIGHT -> Wording.HEIGHT;
            case SPEED -> Wording.SPEED;
            case WORK -> Wording.KILOJOULES;
            case POWER -> Wording.WATTS;
            case RATIO -> Wording.HUNDREDTHS;
            case STRESS -> Wording.WHOLE;
            case HEART_RATE -> Wording.BEATS;
            case CADENCE -> Wording.REVOLUTIONS;
            case WATTS_PER_BEAT -> Wording.WATTS_PER_BEAT;
            case PERCENTAGE -> Wording.TENTH_OF_PERCENT;
        };
    }
}
