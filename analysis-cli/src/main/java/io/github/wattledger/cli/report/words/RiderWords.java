package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.history.OwnThreshold;
import io.github.wattledger.history.RiderHistory;
import io.github.wattledger.intake.Known;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.intake.RiderOnDay;
import java.util.List;

/** What a ride was judged by, and where that came from. */
public final class RiderWords {
    private RiderWords() {}

    /** Whether somebody or something named a threshold power that is not believed; an estimate from the ride is none. */
    static boolean isThresholdDoubted(RideReview review) {
        return review.isThresholdDoubtful() && review.rider().thresholdPowerOrigin() != Origin.ESTIMATED;
    }

    /** Threshold power, threshold heart rate and mass, a sentence or two each. */
    public static List<String> judgedBy(RideReview review, Units units) {
        RiderOnDay rider = review.rider();
        Known heartRate = rider.thresholdHeartRate();
        Double mass = rider.massKg();
        return List.of(
                thresholdPower(review),
                "Threshold heart rate: "
                        + (heartRate == null
                                ? "not known"
                                : Figures.beats(heartRate.value()) + from(heartRate.origin()))
                        + ".",
                "Mass: " + (mass == null ? "not known" : units.mass().words(mass, 1)) + ".");
    }

    private static String from(Origin origin) {
        return switch (origin) {
            case GIVEN -> ", as given";
            case PROFILE -> ", from the rider profile";
            case OWN_RIDES -> ", from your own rides";
            case DEVICE -> ", as set on the device";
            case ESTIMATED -> ", estimated from this ride";
        };
    }

    /** Threshold power, where it came from, and whether it is believed. */
    public static String thresholdPower(RideReview review) {
        Double watts = review.rider().thresholdPowerW();
        Origin origin = review.rider().thresholdPowerOrigin();
        String doubt = review.thresholdDoubt();
        return watts == null || origin == null || doubt == null
                ? thresholdPower(review.rider())
                : "Threshold power: not known. " + Figures.watts(watts) + from(origin) + ", is not believed. "
                        + PlainText.of(doubt) + " Give the true one with --threshold-power.";
    }

    /** Threshold power and where it came from. */
    static String thresholdPower(RiderOnDay rider) {
        Double watts = rider.thresholdPowerW();
        if (watts == null) {
            return "Threshold power: not known. Give it with --threshold-power.";
        }
        String value = Figures.watts(watts);
        Origin source = rider.thresholdPowerOrigin();
        if (source == null) {
            return "Threshold power: " + value + ".";
        }
        return switch (source) {
            case GIVEN -> "Threshold power: " + value + ", as given.";
            case PROFILE -> "Threshold power: " + value + ", from the rider profile.";
            case OWN_RIDES -> "Threshold power: about " + value + ", from your own rides" + effort(rider) + ".";
            case DEVICE -> "Threshold power: " + value + ", as set on the device. Check that it is up to date.";
            case ESTIMATED ->
                "Threshold power: at least " + value + ", estimated from the efforts in this ride. Give your own with"
                        + " --threshold-power.";
        };
    }

    /** The effort that a threshold from own rides rests on, in brackets. */
    private static String effort(RiderOnDay rider) {
        RiderHistory history = rider.history();
        OwnThreshold own = history == null ? null : history.threshold();
        return own == null
                ? ""
                : " (an effort of " + own.day() + " implies at least " + Figures.watts(own.impliedW()) + ")";
    }
}
