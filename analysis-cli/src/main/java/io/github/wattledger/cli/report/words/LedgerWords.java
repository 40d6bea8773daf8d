package io.github.wattledger.cli.report.words;

import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.pacing.price.PriceSteps;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Where the time of a ride went and what the mistakes cost, in words. */
public final class LedgerWords {
    private LedgerWords() {}

    /**
     * A part of the elapsed time.
     *
     * @param id one word for it, for programs
     * @param label what it is, in lower case
     * @param minutes how long it was
     */
    public record Part(String id, String label, double minutes) {}

    /**
     * What a mistake cost, or all mistakes together.
     *
     * @param number the number of its finding, counted from 1, or null where it belongs to no single finding
     * @param label what it is, in lower case
     * @param minutes the range, with its unit
     * @param ends how the two ends of the range stand in two columns
     */
    public record Loss(@Nullable Integer number, String label, String minutes, PriceEnds ends) {}

    /** The parts that add up to the elapsed time. */
    public static List<Part> parts(TimeLedger ledger) {
        return List.of(
                new Part("riding", "riding", ledger.movingMinutes()),
                new Part("stopped", "stopped, timer running", ledger.stoppedMinutes()),
                new Part("paused", "paused, timer stopped", ledger.pausedMinutes()),
                new Part("missing", "missing, nothing recorded", ledger.missingMinutes()));
    }

    /** The losses, in the order of the ledger's entries. */
    public static List<Loss> losses(PacingReview pacing) {
        List<Loss> losses = new ArrayList<>();
        for (TimeLedger.Entry entry : pacing.ledger().entries()) {
            FindingKind kind = kind(entry.label());
            LostTime.LowEnd lowEnd = lowEnd(pacing, entry);
            losses.add(new Loss(
                    kind == null ? null : number(pacing, kind),
                    kind == null ? PlainText.of(entry.label()) : FindingWords.name(kind),
                    PriceWords.of(entry.minutesLow(), entry.minutesHigh(), lowEnd),
                    PriceEnds.of(lowEnd)));
        }
        return losses;
    }

    /** What all priced mistakes cost together, both ends with their names; null where nothing was priced. */
    static @Nullable String together(PacingReview pacing) {
        return pacing.ledger()
                .allAtOnce()
                .map(entry -> PriceWords.of(entry.minutesLow(), entry.minutesHigh(), lowEnd(pacing, entry)))
                .orElse(null);
    }

    private static LostTime.@Nullable LowEnd lowEnd(PacingReview pacing, TimeLedger.Entry entry) {
        FindingKind kind = kind(entry.label());
        if (kind != null) {
            return pacing.finding(kind).map(PriceWords::lowEnd).orElse(null);
        }
        LostTime lost = pacing.lost();
        return lost != null && entry.label().equals(TimeLedger.ALL_AT_ONCE) ? lost.lowEnd() : null;
    }

    /** What to know when reading the losses: the ledger's own notes, then which findings have no price and why. */
    public static List<String> notes(PacingReview pacing, Units units) {
        List<String> notes = new ArrayList<>(howTotalsRelate(pacing));
        pacing.ledger().notes().forEach(note -> notes.add(PlainText.sentence(LibraryWords.of(note, units))));
        Map<String, List<String>> namesByReason = withoutPrice(pacing);
        if (!isNothingPriced(pacing, namesByReason)) {
            namesByReason.forEach((reason, names) -> notes.add(
                    "No price in minutes for " + String.join(", ", names) + ": " + PlainText.sentence(reason)));
        }
        return notes;
    }

    /** What the ends of a price are, and why the line against the rider's ability is no part of the others. */
    private static List<String> howTotalsRelate(PacingReview pacing) {
        List<String> notes = new ArrayList<>();
        if (pacing.findings().stream().anyMatch(finding -> finding.priceSteps() instanceof PriceSteps.Replayed)
                && !pacing.ledger().entries().isEmpty()) {
            notes.add(PriceWords.ENDS);
        }
        if (pacing.ledger().entries().stream().anyMatch(entry -> isAgainstAbility(entry.label()))) {
            notes.add("The line against your ability asks another question: how much faster an even race at what you"
                    + " could be expected to hold would have been, from the low to the high end of that power. It is not"
                    + " added to the others.");
        }
        return notes;
    }

    /** What an even race at the high end of the rider's ability would have won, minutes; 0 where that is not known. */
    static double mostAgainstAbility(PacingReview pacing) {
        return pacing.ledger().entries().stream()
                .filter(entry -> isAgainstAbility(entry.label()))
                .mapToDouble(TimeLedger.Entry::minutesHigh)
                .max()
                .orElse(0);
    }

    private static boolean isAgainstAbility(String label) {
        return kind(label) == null && !label.equals(TimeLedger.ALL_AT_ONCE);
    }

    /** Why nothing has a price, a sentence; null where there is no loss to price, or some has one. */
    public static @Nullable String nothingPriced(PacingReview pacing) {
        Map<String, List<String>> namesByReason = withoutPrice(pacing);
        return isNothingPriced(pacing, namesByReason)
                ? "Nothing is priced in minutes: "
                        + PlainText.sentence(namesByReason.keySet().iterator().next())
                : null;
    }

    /** What is said where there is no loss at all. */
    public static String nothingToPrice(PacingReview pacing) {
        if (pacing.verdict() == Verdict.NOT_JUDGED) {
            return "Nothing is priced in minutes: the pacing was not judged.";
        }
        return withoutPrice(pacing).isEmpty()
                ? "Nothing to price: no mistake was found."
                : "Nothing is priced in minutes.";
    }

    /** Whether the ledger is empty, and all findings lack a price for one and the same reason. */
    private static boolean isNothingPriced(PacingReview pacing, Map<String, List<String>> namesByReason) {
        return pacing.ledger().entries().isEmpty()
                && namesByReason.size() == 1
                && namesByReason.values().iterator().next().size()
                        == pacing.findings().size();
    }

    private static Map<String, List<String>> withoutPrice(PacingReview pacing) {
        Map<String, List<String>> namesByReason = new LinkedHashMap<>();
        for (Finding finding : pacing.findings()) {
            if (finding.cost() instanceof Cost.NotPriced notPriced) {
                namesByReason
                        .computeIfAbsent(PlainText.of(notPriced.reason()), reason -> new ArrayList<>())
                        .add(FindingWords.name(finding.kind()));
            }
        }
        return namesByReason;
    }

    private static @Nullable FindingKind kind(String label) {
        for (FindingKind kind : FindingKind.values()) {
            if (kind.id().equals(label)) {
                return kind;
            }
        }
        return null;
    }

    private static @Nullable Integer number(PacingReview pacing, FindingKind kind) {
        for (int i = 0; i < pacing.findings().size(); i++) {
            if (pacing.findings().get(i).kind() == kind) {
                return i + 1;
            }
        }
        return null;
    }
}
