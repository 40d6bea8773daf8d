package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.AnyFinding;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A finding in words, which every report lays out in its own way.
 *
 * @param title what it is
 * @param severity how much it weighs, one word
 * @param when from when to when
 * @param where from which kilometre to which, or why that is not known
 * @param evidence the numbers it rests on, in sentences; empty without any
 * @param cost the ends of the minutes that it cost, each with its name; empty where it has no price
 * @param how how the price was found, or empty
 * @param noPrice why it has no price, a sentence, or empty
 * @param nextTime what to do next time, a sentence
 */
public record FindingWords(
        String title,
        String severity,
        String when,
        String where,
        String evidence,
        List<String> cost,
        String how,
        String noPrice,
        String nextTime) {
    /** Copies the list. */
    public FindingWords {
        cost = List.copyOf(cost);
    }

    /** What stands over the findings. */
    public static final String ORDER = "the most serious first; times and places of the whole recording";

    /** What stands before the advice. */
    public static final String NEXT_TIME = "Next time: ";

    /** The library's findings of a review, in their order. */
    public static List<FindingWords> of(RideReview review, Units units) {
        List<FindingWords> all = new ArrayList<>();
        boolean isCautionSaid = false;
        for (Finding finding : review.pacing().findings()) {
            FindingWords words = of(finding, review, units);
            boolean isCaution = finding.advice().capBpm() != null && !isCautionSaid;
            isCautionSaid |= isCaution;
            all.add(isCaution ? words.withCaution(Cautions.HEART_RATE_CAP) : words);
        }
        return List.copyOf(all);
    }

    private FindingWords withCaution(String caution) {
        return new FindingWords(title, severity, when, where, evidence, cost, how, noPrice, nextTime + " " + caution);
    }

    /** What detectors of other programs found, in their order. */
    public static List<FindingWords> ofOthers(RideReview review, Units units) {
        return review.pacing().ownFindings().stream()
                .map(finding -> of(finding, review, units))
                .toList();
    }

    private static FindingWords of(AnyFinding finding, RideReview review, Units units) {
        Cost cost = finding instanceof Finding ours ? ours.cost() : null;
        Cost.Priced priced = cost instanceof Cost.Priced each ? each : null;
        return new FindingWords(
                title(finding),
                finding.severity().id(),
                finding.when().toString(),
                where(finding.startM(), finding.endM(), review, units),
                evidence(finding, review, units),
                priced == null || !(finding instanceof Finding priceable)
                        ? List.of()
                        : PriceWords.ends(priceable, priced),
                priced == null ? "" : PlainText.of(priced.how()),
                cost instanceof Cost.NotPriced notPriced ? "No price: " + PlainText.sentence(notPriced.reason()) : "",
                nextTime(finding, review));
    }

    private static String nextTime(AnyFinding finding, RideReview review) {
        String advice = PlainText.sentence(finding.advice().text());
        return finding instanceof Finding ours && ours.kind() == FindingKind.ENERGY_CRASH
                ? EnergyWords.nextTime(ours, review) + " " + advice
                : advice;
    }

    private static String evidence(AnyFinding finding, RideReview review, Units units) {
        String fuel = finding instanceof Finding ours ? EnergyWords.beside(ours, review) : "";
        String numbers = FindingSentences.of(finding, units);
        return fuel.isEmpty() ? numbers : numbers.isEmpty() ? fuel : numbers + " " + fuel;
    }

    /** What it is, how much it weighs, when and where. */
    public String heading() {
        return title + " (" + severity + "), " + when + ", " + where;
    }

    private static String title(AnyFinding finding) {
        return finding instanceof Finding ours
                ? title(ours.kind())
                : PlainText.capital(finding.kindId().replace('-', ' '));
    }

    /** A kind's name, with a capital. */
    public static String title(FindingKind kind) {
        return PlainText.capital(name(kind));
    }

    /** A kind's name within a sentence. */
    public static String name(FindingKind kind) {
        return switch (kind) {
            case OVER_HARD_START -> "over-hard start";
            case UNDER_PACED -> "under-paced";
            case OVER_GEARED -> "over-geared";
            case THRESHOLD_RIDING_EARLY -> "threshold riding early";
            case SURGES -> "surges";
            case FADE -> "fade";
            case ENERGY_CRASH -> "energy crash";
            case DRIFT -> "drift";
            case STOPPED_TIME -> "stopped time";
            case LATE_RESERVE -> "late reserve";
            case SPUN_OUT -> "spun out";
        };
    }

    /** What is said where nothing was found in a race. */
    public static String none(RideReview review) {
        return review.pacing().targetW() == null
                ? "Nothing stands out in what could be looked at without a threshold power; what was left out is named below."
                : "Nothing in the pacing stands out.";
    }

    static String where(@Nullable Double startM, @Nullable Double endM, RideReview review, Units units) {
        if (startM != null && endM != null) {
            boolean isPoint = units.distance(startM).equals(units.distance(endM));
            return isPoint ? units.at(startM) : units.between(startM, endM);
        }
        return review.ride().has(Channel.DISTANCE) ? units.place() + " not known" : "no distance in this file";
    }
}
