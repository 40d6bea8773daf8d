package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What to ride to next time, in a few words for each part of a race. */
final class NextTimeWords {
    private NextTimeWords() {}

    /**
     * The caps of a review, each with what it averages over: the longest part first, then ever shorter efforts, each of
     * which may be harder. A cap on short efforts alone holds for every second.
     */
    static List<String> caps(PacingReview pacing) {
        List<Finding> capped = new ArrayList<>(pacing.findings().stream()
                .filter(finding -> finding.advice().capW() != null && part(finding) != null)
                .toList());
        capped.sort(Comparator.comparingDouble(finding -> finding.advice().capW()));
        List<String> caps = new ArrayList<>();
        for (Finding finding : capped) {
            String part = part(finding);
            Double watts = finding.advice().capW();
            if (part != null && watts != null) {
                Double bpm = finding.advice().capBpm();
                caps.add(part + ": at most " + Figures.watts(watts)
                        + (finding.kind() == FindingKind.SURGES ? " at any moment" : "")
                        + (bpm == null ? "" : " or " + Figures.beats(bpm)));
            }
        }
        return caps;
    }

    /** Why several caps stand beside one another, a sentence; empty with fewer than two. */
    static String whyCapsDiffer(PacingReview pacing) {
        return caps(pacing).size() < 2
                ? ""
                : "The caps differ because each is an average over the part that it names, and the shorter the part,"
                        + " the more of it can be made up for by easier riding after it; all of them hold at once.";
    }

    /** Whether a cap comes with a heart rate. */
    static boolean anyHeartRate(PacingReview pacing) {
        return pacing.findings().stream().anyMatch(finding -> finding.advice().capBpm() != null);
    }

    /**
     * What mistakes without a cap ask for, a short sentence each, the weightiest first; what the verdict rests on is second
     * at the latest, so that no verdict stands without what to do about it.
     */
    static List<String> others(RideReview review) {
        List<String> others = new ArrayList<>();
        for (Finding finding : review.pacing().findings()) {
            String action = action(finding, review);
            if (action != null) {
                boolean isVerdict = finding.kind() == review.pacing().verdictRestsOn();
                others.add(isVerdict ? Math.min(1, others.size()) : others.size(), action);
            }
        }
        return others;
    }

    /** The part of a race that a cap is for; null for a kind without a cap. */
    private static @Nullable String part(Finding finding) {
        return switch (finding.kind()) {
            case OVER_HARD_START -> {
                OptionalDouble seconds = finding.evidence().get("openingSeconds");
                yield seconds.isEmpty()
                        ? "opening, normalized"
                        : "opening (first " + Figures.span(seconds.getAsDouble()) + ", normalized)";
            }
            case FADE -> "first half, opening included";
            case THRESHOLD_RIDING_EARLY -> "first third, each effort of minutes";
            case SURGES -> "short efforts";
            case UNDER_PACED, ENERGY_CRASH, DRIFT, STOPPED_TIME, LATE_RESERVE, SPUN_OUT, OVER_GEARED -> null;
        };
    }

    /** What a mistake without a cap asks for; null for a kind with one. */
    private static @Nullable String action(Finding finding, RideReview review) {
        return switch (finding.kind()) {
            case STOPPED_TIME -> "stops: plan each before the start, the body's needs first";
            case ENERGY_CRASH ->
                EnergyWords.isFoodUnlikely(finding, review)
                        ? "look for another cause of the crash than food: heat, illness, too hard a start"
                        : "eat from the first hour on as you have practised, and drink to thirst";
            case LATE_RESERVE -> "spend what was left for the end earlier, from the middle on";
            case DRIFT -> "look at cooling, drinking and rest";
            case SPUN_OUT -> "tuck in and roll where the top gear spins out";
            case OVER_GEARED -> "a smaller chainring or a larger cog for the climbs";
            case UNDER_PACED -> {
                Double watts = finding.advice().capW();
                yield watts == null
                        ? null
                        : "there was more to give: towards " + Figures.watts(watts) + ", from early on";
            }
            case OVER_HARD_START, FADE, THRESHOLD_RIDING_EARLY, SURGES -> null;
        };
    }
}
