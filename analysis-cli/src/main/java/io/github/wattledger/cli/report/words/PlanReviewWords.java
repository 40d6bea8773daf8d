package io.github.wattledger.cli.report.words;

import io.github.wattledger.plan.CapReview;
import io.github.wattledger.plan.PlanReview;
import java.util.ArrayList;
import java.util.List;

/** A ride held against its plan, in words. */
public final class PlanReviewWords {
    private static final int MINUTE = 60;

    private PlanReviewWords() {}

    /** The whole difference and what it is made of. */
    public static String whole(PlanReview review) {
        double power = 0;
        double day = 0;
        double stops = 0;
        for (var each : review.sections()) {
            power += each.powerSeconds();
            day += each.daySeconds();
            stops += each.stopSeconds();
        }
        double all = review.differenceSeconds();
        String versus = all < 0 ? " faster than planned" : " slower than planned";
        return Figures.minutes(Math.abs(all) / MINUTE) + versus + ": power " + minutes(power) + ", the day "
                + minutes(day) + " (wind, ground, group, rig), stops " + minutes(stops) + "."
                + (review.isCutShort() ? " The ride ends before the course does; only what was ridden counts." : "");
    }

    /** Minutes with a sign; more is slower. */
    public static String minutes(double seconds) {
        return Figures.signed(seconds / MINUTE, 1) + " min";
    }

    /** How the opening was ridden. */
    public static String opening(PlanReview review) {
        if (Double.isNaN(review.openingW())) {
            return "The opening has no power.";
        }
        String ridden = "The opening: " + Figures.watts(review.openingW()) + " normalized; the plan allowed "
                + Figures.watts(review.openingCapW()) + ": ";
        if (review.isOpeningAboveCap()) {
            return ridden + "above it.";
        }
        boolean isWithin = Math.round(review.openingW()) > Math.round(review.openingCapW());
        return ridden + (isWithin ? "kept (up to 5 % above counts as kept)." : "kept.");
    }

    /** What the words beside the caps mean; empty where no cap was ridden against. */
    public static List<String> capRule(PlanReview review) {
        return review.caps().isEmpty()
                ? List.of()
                : List.of(
                        "Kept: within 5 % of the cap on the whole. Above: more than 5 % above it for over 8 min in all."
                                + " Descents are left out.");
    }

    /** Whether each cap was kept, a line each. */
    public static List<String> caps(PlanReview review) {
        List<String> lines = new ArrayList<>();
        for (CapReview each : review.caps()) {
            String words = PlanWords.ground(each.ground()) + ": cap " + Figures.watts(each.capW()) + ", ridden "
                    + Figures.watts(each.riddenW()) + ", ";
            lines.add(words
                    + switch (each.outcome()) {
                        case KEPT -> "kept";
                        case BELOW -> "below";
                        case ABOVE -> "above for " + Figures.minutes(each.secondsAbove() / (double) MINUTE);
                    });
        }
        return lines;
    }
}
