package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.power.Ability;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** The whole judgement in one sentence, from the evidence of the finding that it rests on. */
public final class VerdictSentence {
    private VerdictSentence() {}

    /** The sentence without the verdict itself, for a place where the verdict stands above it as a heading. */
    public static String withoutVerdict(RideReview review) {
        String sentence = of(review);
        int colon = sentence.indexOf(": ");
        return colon < 0 ? sentence : PlainText.capital(sentence.substring(colon + 2));
    }

    /** The verdict and what it rests on. */
    public static String of(RideReview review) {
        PacingReview pacing = review.pacing();
        return switch (pacing.verdict()) {
            case OVER_HARD_START -> overHardStart(review);
            case FADED -> faded(evidence(pacing, FindingKind.FADE));
            case UNEVEN -> uneven(evidence(pacing, FindingKind.SURGES));
            case EVEN -> "Even: the effort was held steady from start to end" + againstGuide(review) + ".";
            case NEGATIVE_SPLIT -> negativeSplit(evidence(pacing, FindingKind.LATE_RESERVE));
            case UNDER_PACED -> "Under-paced: easier throughout than you can ride" + againstGuide(review) + ".";
            case NOT_JUDGED -> notJudged(pacing.verdictReason());
        };
    }

    private static String overHardStart(RideReview review) {
        Evidence start = evidence(review.pacing(), FindingKind.OVER_HARD_START);
        OptionalDouble opening = start.get("openingNormalizedPowerW");
        if (opening.isEmpty()) {
            return "Over-hard start.";
        }
        OptionalDouble seconds = start.get("openingSeconds");
        StringBuilder text = new StringBuilder("Over-hard start: ")
                .append(seconds.isEmpty() ? "the opening" : "the first " + Figures.span(seconds.getAsDouble()))
                .append(" at ")
                .append(Figures.watts(opening.getAsDouble()));
        OptionalDouble target = start.get("targetW");
        if (target.isPresent()) {
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
            return "Faded: power and heart rate fell together late in the ride.";
        }
        OptionalDouble late = fade.get("latePowerW");
        OptionalDouble early = fade.get("earlyPowerW");
        if (late.isEmpty() || early.isEmpty()) {
            return "Faded: power went down on comparable ground.";
        }
        OptionalDouble loss = fade.get("lossPercent");
        return "Faded: " + Figures.watts(late.getAsDouble()) + " late against " + Figures.watts(early.getAsDouble())
                + " early on comparable ground"
                + (loss.isEmpty() ? "" : ", " + Figures.percent(loss.getAsDouble()) + " less") + ".";
    }

    private static String uneven(Evidence surges) {
        OptionalDouble count = surges.get("count");
        return "Uneven: neither start nor end stands out, but the effort went up and down"
                + (count.isEmpty() ? "" : ", with " + Figures.brief(count.getAsDouble()) + " surges above threshold")
                + wPrimeLeft(surges) + ".";
    }

    private static String wPrimeLeft(Evidence evidence) {
        OptionalDouble left = evidence.get("lowestWPrimeShare");
        return left.isEmpty() ? "" : ", W' down to " + Figures.fractionAsPercent(left.getAsDouble());
    }

    private static String negativeSplit(Evidence reserve) {
        OptionalDouble last = reserve.get("lastSixthNormalizedPowerW");
        OptionalDouble rest = reserve.get("restNormalizedPowerW");
        return "Negative split: the second half was the harder one"
                + (last.isEmpty() || rest.isEmpty()
                        ? ""
                        : ", with " + Figures.watts(last.getAsDouble()) + " in the last sixth after "
                                + Figures.watts(rest.getAsDouble()))
                + ".";
    }

    private static String notJudged(@Nullable String reason) {
        return reason == null ? "Not judged." : "Not judged: " + PlainText.sentence(reason);
    }

    private static String againstGuide(RideReview review) {
        Double normalized = review.load().normalizedPowerW();
        Double target = review.pacing().targetW();
        if (normalized == null || target == null) {
            return "";
        }
        return ", at " + Figures.watts(normalized) + " normalized power against " + target(review, target) + " for "
                + Figures.span(review.ability().forSeconds());
    }

    private static String target(RideReview review, double watts) {
        Ability.Source source = review.ability().source();
        return source == null || source.isGuide()
                ? "a guide of " + Figures.watts(watts)
                : Figures.watts(watts) + " by your own long bests";
    }

    private static Evidence evidence(PacingReview pacing, FindingKind kind) {
        for (Finding finding : pacing.findings()) {
            if (finding.kind() == kind) {
                return finding.evidence();
            }
        }
        return Evidence.none();
    }
}
