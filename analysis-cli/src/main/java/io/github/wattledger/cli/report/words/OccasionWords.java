package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Occasion;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Ability;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.Collectors;

/** What a ride was taken for, why, and how to have it judged otherwise: among the first lines of every report. */
public final class OccasionWords {
    private static final String JUDGE_IT = " --effort race judges it.";
    private static final double SECONDS_PER_HOUR = 3600;

    /** More laps than this are counted instead of listed. */
    private static final int MOST_LAPS_NAMED = 4;

    private OccasionWords() {}

    /** A sentence or two. */
    public static String of(RideReview review) {
        Occasion occasion = review.pacing().occasion();
        if (occasion.isRace() && review.pacing().verdict() == Verdict.NOT_JUDGED) {
            return "Not judged, though " + whyRace(occasion) + ": "
                    + review.pacing().verdictReason() + ".";
        }
        String doubt = review.thresholdDoubt();
        if (doubt != null && occasion.reason() == Occasion.Reason.THRESHOLD_NOT_KNOWN) {
            return "Race or training? Cannot tell without the true threshold power. " + PlainText.of(doubt)
                    + " Give the true one with --threshold-power, or --effort race.";
        }
        String sentence = sentence(occasion, target(review));
        if (!occasion.isRace() || isThresholdKnown(review)) {
            return sentence;
        }
        return doubt != null
                ? sentence + " " + PlainText.of(doubt)
                        + " So parts of the ride are compared and nothing is said of the level. Give the true one with"
                        + " --threshold-power."
                : sentence
                        + " Threshold power is not known, so parts of it are compared and nothing is said of the level."
                        + " Give --threshold-power.";
    }

    /** Why a ride was taken for a race without a look at how it was ridden. */
    private static String whyRace(Occasion occasion) {
        return switch (occasion.reason()) {
            case RACE_DAY -> "the rider profile names this day as a race day";
            case SEVERAL_SPORTS -> "it is one part of a race of several sports";
            default -> "asked to be judged as a race";
        };
    }

    private static boolean isThresholdKnown(RideReview review) {
        return review.pacing().targetW() != null;
    }

    /** What a level is a share of. */
    private static String target(RideReview review) {
        Ability.Source source = review.ability().source();
        return source == null || source.isGuide() ? "the guide" : "what your own rides say";
    }

    private static String sentence(Occasion occasion, String target) {
        Evidence evidence = occasion.evidence();
        return switch (occasion.reason()) {
            case ASKED_AS_RACE -> "Judged as a race, as asked.";
            case RACE_DAY -> "Judged as a race: the rider profile names this day as a race day.";
            case SEVERAL_SPORTS -> "Judged as a race: one part of a race of several sports.";
            case HARD_FOR_ITS_LENGTH ->
                "Judged as a race: hard for " + riding(evidence) + " (" + share(evidence) + " of " + target + "), "
                        + stops(evidence) + ".";
            case ASKED_AS_TRAINING -> "Not judged as a race, as asked.";
            case UNDER_FORTY_MINUTES -> "Not judged: it was ridden for less than 40 minutes.";
            case LAPS_OF_WORK_AND_REST ->
                "A session, not judged as a race: " + laps(occasion.workLaps()) + "." + JUDGE_IT;
            case INDOOR_SPORT, NOTHING_MOVED, NO_POSITION_AND_LEVEL -> "Indoors, not judged as a race." + JUDGE_IT;
            case LONG_STOPS, MANY_STOPS -> "An outing, not judged as a race: " + stops(evidence) + "." + JUDGE_IT;
            case BELOW_GUIDE ->
                "Not judged as a race: " + Figures.watts(number(evidence, "normalizedPowerW")) + " is "
                        + share(evidence) + " of " + target + " for " + riding(evidence) + "." + JUDGE_IT;
            case NO_POWER -> "Race or training? Cannot tell: there is no power in this file.";
            case THRESHOLD_NOT_KNOWN ->
                "Race or training? Cannot tell: the rider's threshold power is not known. Give --threshold-power or"
                        + " --effort race.";
            case HARD_FIRST_HALF_ONLY ->
                "Race or training? Cannot tell: only the first half was hard (" + share(evidence) + " of " + target
                        + " as a whole). --effort race judges it.";
            case BETWEEN_RACE_AND_TRAINING ->
                "Race or training? Cannot tell: " + share(evidence) + " of " + target + " for " + riding(evidence)
                        + ", " + stops(evidence) + ", fits a long training ride and an under-paced race." + JUDGE_IT;
        };
    }

    private static String riding(Evidence evidence) {
        return Figures.span(SECONDS_PER_HOUR * number(evidence, "ridingHours"));
    }

    private static String share(Evidence evidence) {
        return Figures.decimal(number(evidence, "shareOfGuide"), 2);
    }

    private static String stops(Evidence evidence) {
        double tenSeconds = number(evidence, "stopsOfTenSeconds");
        if (tenSeconds == 0) {
            return "never stopped";
        }
        return "stopped for " + Figures.percent(number(evidence, "stoppedSharePercent")) + " of the time ("
                + Figures.counted((int) tenSeconds, "stop") + " of ten seconds or more)";
    }

    static String laps(List<Occasion.WorkLap> laps) {
        if (laps.size() > MOST_LAPS_NAMED) {
            DoubleSummaryStatistics watts =
                    laps.stream().mapToDouble(Occasion.WorkLap::meanPowerW).summaryStatistics();
            return laps.size() + " laps, from lap " + laps.get(0).number() + " to lap "
                    + laps.get(laps.size() - 1).number() + ", about "
                    + Figures.clock(laps.get(0).seconds()) + " each at "
                    + Figures.decimal(watts.getMin(), 0) + " to " + Figures.watts(watts.getMax()) + ", with rests";
        }
        String numbers = laps.stream().map(lap -> String.valueOf(lap.number())).collect(Collectors.joining(", "));
        String watts =
                laps.stream().map(lap -> Figures.decimal(lap.meanPowerW(), 0)).collect(Collectors.joining(", "));
        return "laps " + numbers + ", about " + Figures.clock(laps.get(0).seconds()) + " each at " + watts
                + " W, with rests";
    }

    private static double number(Evidence evidence, String name) {
        return evidence.get(name).orElse(Double.NaN);
    }
}
