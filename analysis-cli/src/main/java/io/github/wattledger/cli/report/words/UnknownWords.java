package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.energy.FuelReview;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What is not known about a ride and would change what is said of it, in one line. */
final class UnknownWords {
    private UnknownWords() {}

    /** A sentence that begins with {@code Not known:}. No recording tells for sure whether a rider was alone or in a bunch. */
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
            if (review.pacing().bunch() == null && leadsSomewhere(review.ride())) {
                unknown.add(ProposedBunchWords.unknown(review.pacing().proposedBunch()));
            }
        }
        FuelReview fuel = review.fuel();
        if (fuel != null && fuel.intakeWouldTell()) {
            unknown.add(EnergyWords.ASKED);
        }
        if (unknown.isEmpty()) {
            unknown.add(
                    review.notes().isEmpty() ? "what you ate, drank and felt" : "what the rider's notes do not say");
        }
        return "Not known: " + String.join("; ", unknown) + ".";
    }

    /** Nobody rides in a bunch where nothing moves. */
    private static boolean leadsSomewhere(Ride ride) {
        return ride.has(Channel.DISTANCE) || ride.has(Channel.SPEED) || ride.has(Channel.LATITUDE);
    }

    private static String notLookedAt(RideReview review) {
        return review.pacing().verdict() == Verdict.NOT_JUDGED
                ? ""
                : "; so the start, surges and drift were not looked at";
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
        if (RiderWords.isThresholdDoubted(review)) {
            return "threshold power (" + Figures.watts(watts) + " is not believed" + notLookedAt(review) + ")";
        }
        OptionalDouble shareOfGuide = review.pacing().occasion().evidence().get("shareOfGuide");
        if (shareOfGuide.isPresent() && isBeyondGuide(shareOfGuide.getAsDouble(), review.ability())) {
            return "whether your threshold power is above " + Figures.watts(watts) + " (the ride was "
                    + Figures.decimal(shareOfGuide.getAsDouble(), 2) + " of the guide)";
        }
        return origin == Origin.DEVICE
                ? "whether the device's threshold of " + Figures.watts(watts) + " still holds"
                : null;
    }

    /**
     * Whether normalized power passed the range within which the guide holds for eight of ten riders. That refutes no
     * threshold, for normalized power flatters a ride of surges and some riders hold more, but it has to be said.
     */
    private static boolean isBeyondGuide(double shareOfGuide, Ability ability) {
        AbilityEvidence evidence = ability.evidence();
        SustainablePower guide = evidence == null ? null : evidence.sustainable();
        return guide != null
                && guide.source() == SustainablePower.Source.GUIDE
                && shareOfGuide > guide.highW() / guide.watts();
    }

    private static void add(List<String> unknown, @Nullable String what) {
        if (what != null) {
            unknown.add(what);
        }
    }
}
