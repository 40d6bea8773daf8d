package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.power.Ability;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** The whole judgement in a sentence or two, from the evidence of the finding that it rests on. */
public final class VerdictSentence {
    private VerdictSentence() {}

    /**
     * The verdict, without a full stop. A ride that was too easy throughout lost what an even ride at the rider's best would
     * have won; where a mistake cost more than that, it stands first.
     */
    static String verdict(RideReview review) {
        PacingReview pacing = review.pacing();
        String verdict = pacing.verdict().words();
        List<Finding> dearest = pacing.verdict() == Verdict.UNDER_PACED ? DearestMistakes.of(pacing) : List.of();
        boolean costMore = !dearest.isEmpty()
                && DearestMistakes.highMinutes(dearest.get(0)) > LedgerWords.mostAgainstAbility(pacing);
        return PlainText.capital(
                costMore
                        ? FindingWords.name(dearest.get(0).kind()) + " cost most, and the ride was " + verdict
                        : verdict);
    }

    /** The verdict and what all mistakes cost together, without what it rests on. */
    static String withMinutes(RideReview review) {
        String verdict = verdict(review) + ".";
        String minutes = minutes(review);
        return minutes.isEmpty() ? verdict : verdict + " " + minutes;
    }

    /** What all mistakes cost together, or that there was none, a sentence; empty where mistakes have no price. */
    static String minutes(RideReview review) {
        String together = LedgerWords.together(review.pacing());
        if (together == null) {
            return isWithoutMistake(review.pacing()) ? "No mistake was found." : "";
        }
        return together.equals(PriceWords.NOTHING) ? "No mistake cost time." : "The mistakes cost " + together + ".";
    }

    /** Whether all was looked at and nothing stands out; without a target some mistakes cannot be seen. */
    private static boolean isWithoutMistake(PacingReview pacing) {
        return pacing.verdict() != Verdict.NOT_JUDGED
                && pacing.targetW() != null
                && pacing.findings().stream()
                        .noneMatch(finding -> finding.kind().isMistake());
    }

    /** What the verdict rests on, a sentence or two; empty where nothing is to be said. */
    static String because(RideReview review) {
        FindingKind kind = review.pacing().verdictRestsOn();
        boolean isFree = kind != null
                && review.pacing().finding(kind).map(Finding::cost).orElse(null) instanceof Cost.Priced price
                && Figures.minutes(price.lowMinutes(), price.highMinutes()).equals(PriceWords.NOTHING);
        return PlainText.capital(reason(review)) + (isFree ? " That alone cost no time." : "");
    }

    /** What the verdict rests on, a sentence without its capital; empty where nothing is to be said. */
    private static String reason(RideReview review) {
        PacingReview pacing = review.pacing();
        return switch (pacing.verdict()) {
            case OVER_HARD_START -> overHardStart(review);
            case FADED -> faded(evidence(pacing, FindingKind.FADE));
            case UNEVEN -> uneven(pacing);
            case EVEN -> even(pacing) + againstGuide(review) + ".";
            case NEGATIVE_SPLIT -> negativeSplit(pacing);
            case UNDER_PACED -> "easier throughout than you can ride" + againstGuide(review) + ".";
            case NOT_JUDGED ->
                pacing.verdictReason() == null || !pacing.occasion().isRace()
                        ? ""
                        : PlainText.of(pacing.verdictReason()) + ".";
        };
    }

    private static String overHardStart(RideReview review) {
        Evidence start = evidence(review.pacing(), FindingKind.OVER_HARD_START);
        OptionalDouble opening = start.get("openingNormalizedPowerW");
        if (opening.isEmpty()) {
            return "";
        }
        OptionalDouble seconds = start.get("openingSeconds");
        StringBuilder text = new StringBuilder()
                .append(seconds.isEmpty() ? "the opening" : "the first " + Figures.span(seconds.getAsDouble()))
                .append(" at ")
                .append(Figures.watts(opening.getAsDouble()));
        OptionalDouble planned = start.get("plannedCapW");
        OptionalDouble target = start.get("targetW");
        if (planned.isPresent()) {
            text.append(" against the ")
                    .append(Figures.watts(planned.getAsDouble()))
                    .append(" of the plan");
        } else if (target.isPresent()) {
            text.append(" against ")
                    .append(target(review, target.getAsDouble()))
                    .append(" for ")
                    .append(Figures.span(review.ability().forSeconds()));
        }
        text.append(wPrimeLeft(start));
        OptionalDouble rest = start.get("restNormalizedPowerW");
        if (rest.isPresent()) {
            text.append(", the rest at ").append(Figures.watts(rest.getAsDouble()));
        }
        OptionalDouble loss = evidence(review.pacing(), FindingKind.FADE).get("lossPercent");
        if (loss.isPresent()) {
            text.append(", fading by ").append(Figures.percent(loss.getAsDouble()));
        }
        return text.append('.').toString();
    }

    private static String faded(Evidence fade) {
        if (fade.entries().isEmpty()) {
            return "power and heart rate fell together late in the ride.";
        }
        OptionalDouble late = fade.get("latePowerW");
        OptionalDouble early = fade.get("earlyPowerW");
        if (late.isEmpty() || early.isEmpty()) {
            return "power went down on comparable ground.";
        }
        OptionalDouble loss = fade.get("lossPercent");
        return Figures.watts(late.getAsDouble()) + " late against " + Figures.watts(early.getAsDouble())
                + " early on comparable ground"
                + (loss.isEmpty() ? "" : ", " + Figures.percent(loss.getAsDouble()) + " less") + ".";
    }

    private static String even(PacingReview pacing) {
        if (pacing.targetW() == null) {
            return "both halves were equally hard on like ground; without a threshold power surges were not looked at";
        }
        return evidence(pacing, FindingKind.SURGES).entries().isEmpty()
                ? "the effort was held steady from start to end"
                : "both halves were equally hard on like ground, though the effort went up and down";
    }

    private static String uneven(PacingReview pacing) {
        Evidence surges = evidence(pacing, FindingKind.SURGES);
        OptionalDouble count = surges.get("count");
        Double halves = pacing.secondHalfOverFirst();
        if (pacing.verdictRestsOn() == null && halves != null) {
            return "the second half was " + Figures.percent(100 * (1 - halves))
                    + " weaker than the first on like ground.";
        }
        Evidence early = evidence(pacing, FindingKind.THRESHOLD_RIDING_EARLY);
        OptionalDouble seconds = early.get("totalSeconds");
        if (pacing.verdictRestsOn() == FindingKind.THRESHOLD_RIDING_EARLY && seconds.isPresent()) {
            return Figures.span(seconds.getAsDouble()) + " near threshold power in the first third.";
        }
        return "neither start nor end stands out, but the effort went up and down"
                + (count.isEmpty()
                        ? ""
                        : ", with " + Figures.counted((int) count.getAsDouble(), "surge") + " above threshold")
                + wPrimeLeft(surges) + ".";
    }

    private static String wPrimeLeft(Evidence evidence) {
        OptionalDouble left = evidence.get("lowestWPrimeShare");
        return left.isEmpty() ? "" : ", W' down to " + Figures.fractionAsPercent(left.getAsDouble());
    }

    private static String negativeSplit(PacingReview pacing) {
        Evidence reserve = evidence(pacing, FindingKind.LATE_RESERVE);
        OptionalDouble gain = reserve.get("gainPercent");
        if (gain.isPresent()) {
            return "the last sixth was " + Figures.percent(gain.getAsDouble())
                    + " harder than what came before it on like ground.";
        }
        Double halves = pacing.secondHalfOverFirst();
        return "the second half was "
                + (halves == null
                        ? "the harder one"
                        : Figures.percent(100 * (halves - 1)) + " harder than the first on like ground")
                + ".";
    }

    private static String againstGuide(RideReview review) {
        Double normalized = judgedNormalizedPowerW(review);
        Double target = review.pacing().targetW();
        if (normalized == null || target == null) {
            return "";
        }
        return ", at " + Figures.watts(normalized) + " normalized power against " + target(review, target) + " for "
                + Figures.span(review.ability().forSeconds());
    }

    /** That of the load, unless only a part of what was reviewed was judged. */
    private static @Nullable Double judgedNormalizedPowerW(RideReview review) {
        if (review.pacing().judged().equals(review.reviewed())) {
            return review.load().normalizedPowerW();
        }
        OptionalDouble ofPart =
                NormalizedPower.of(review.ride(), review.pacing().judged());
        return ofPart.isEmpty() ? review.load().normalizedPowerW() : (Double) ofPart.getAsDouble();
    }

    private static String target(RideReview review, double watts) {
        Ability.Source source = review.ability().source();
        return source == null || source.isGuide()
                ? "a guide of " + Figures.watts(watts)
                : Figures.watts(watts) + " by your own rides";
    }

    private static Evidence evidence(PacingReview pacing, FindingKind kind) {
        return pacing.finding(kind).map(Finding::evidence).orElse(Evidence.none());
    }
}
