package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.load.ZoneTime;
import io.github.wattledger.ride.Channel;

/** Zones in words. */
public final class ZoneWords {
    private ZoneWords() {}

    /** The bounds of a zone, for instance {@code 138 to 188 W} or {@code 375 W and more}. */
    public static String bounds(ZoneTime zone, String unit) {
        Double to = zone.to();
        String from = Figures.decimal(zone.from(), 0);
        return to == null ? from + " " + unit + " and more" : from + " to " + Figures.decimal(to, 0) + " " + unit;
    }

    /** Why there are no power zones, where there are none. */
    public static String noPowerZones(RideReview review) {
        return none(review, Channel.POWER, "threshold power", review.rider().thresholdPowerW() != null);
    }

    /** Why there are no heart-rate zones, where there are none. */
    public static String noHeartRateZones(RideReview review) {
        return none(
                review,
                Channel.HEART_RATE,
                "threshold heart rate",
                review.rider().thresholdHeartRateBpm() != null);
    }

    private static String none(RideReview review, Channel channel, String threshold, boolean isKnown) {
        if (!review.ride().has(channel)) {
            return "There is no " + channel.label() + " in this file.";
        }
        return isKnown ? "Not computed." : "Not computed: " + threshold + " is not known.";
    }
}
