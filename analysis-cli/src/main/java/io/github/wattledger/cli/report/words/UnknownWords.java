package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Ability;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is not known about a ride and would change what is said of it, in one line. */
final class UnknownWords {
    private UnknownWords() {}

    /** A sentence that begins with {@code Not known:}. No recording tells whether a rider was alone or in a bunch. */
    static String of(RideReview review) {
        List<String> unknown = new ArrayList<>();
        boolean hasPower = review.ride().has(Channel.POWER);
        if (!hasPower) {
            unknown.add("power");
        }
        if (!review.ride().has(Channel.HEART_RATE)) {
            unknown.add("heart rate");
        }
        add(unknown, hasPower ? threshold(review) : null);
        if (review.pacing().verdict() != Verdict.NOT_JUDGED) {
            Ability.Source source = review.ability().source();
            if (review.pacing().targetW() != null && (source == null || source.isGuide())) {
                unknown.add("your endurance beyond the guide");
            }
            if (review.pacing().bunch() == null) {
                unknown.add("whether you rode alone or in a bunch");
            }
        }
        if (unknown.isEmpty()) {
            unknown.add("what you ate, drank and felt");
        }
        return "Not known: " + String.join("; ", unknown) + ".";
    }

    private static @Nullable String threshold(RideReview review) {
        Double watts = review.rider().thresholdPowerW();
        Origin origin = review.rider().thresholdPowerOrigin();
        if (watts == null) {
            return "threshold power";
        }
        if (origin == Origin.ESTIMATED) {
            return "threshold power (at least " + Figures.watts(watts) + " by this ride)";
        }
        if (review.pacing().targetW() == null) {
            return "threshold power (" + Figures.watts(watts) + " is not believed)";
        }
        return origin == Origin.DEVICE
                ? "whether the device's threshold of " + Figures.watts(watts) + " is up to date"
                : null;
    }

    private static void add(List<String> unknown, @Nullable String what) {
        if (what != null) {
            unknown.add(what);
        }
    }
}
