package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.EvidenceSentences;
import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Where the time went and what the mistakes cost, as a page shows it.
 *
 * @param times the parts of the elapsed time
 * @param elapsed their sum
 * @param timeBar the parts as one bar
 * @param losses what each mistake cost
 * @param together rows that are no parts of a sum: all repaired at once, and against the rider's ability
 * @param scale minutes along the head of the bars, or null without losses
 * @param notes what to know when reading them
 * @param nothingPriced why there is no price at all, or null
 */
public record Account(
        List<Time> times,
        Num elapsed,
        Markup timeBar,
        List<Loss> losses,
        List<Loss> together,
        @Nullable Markup scale,
        List<String> notes,
        @Nullable String nothingPriced) {
    /**
     * A part of the elapsed time.
     *
     * @param key a sample of its filling
     * @param label what it is
     * @param clock its length
     * @param share its share in words
     */
    public record Time(Markup key, String label, Num clock, String share) {}

    /**
     * A line of the account.
     *
     * @param number the finding it belongs to, or null
     * @param label what it is
     * @param range minutes in words
     * @param low the lower end
     * @param high the upper end
     * @param bar both ends as a bar
     */
    public record Loss(@Nullable Integer number, String label, String range, Num low, Num high, Markup bar) {}

    static Account of(PacingReview pacing) {
        TimeLedger ledger = pacing.ledger();
        double most = 0;
        for (TimeLedger.Entry entry : ledger.entries()) {
            most = Math.max(most, entry.minutesHigh());
        }
        Scale minutes = Scale.fromZero(Math.max(most, 1));
        List<Loss> losses = new ArrayList<>();
        List<Loss> together = new ArrayList<>();
        for (int i = 0; i < ledger.entries().size(); i++) {
            TimeLedger.Entry entry = ledger.entries().get(i);
            FindingKind kind = kind(entry.label());
            Loss loss = loss(pacing, entry, kind, minutes, i);
            (kind == null ? together : losses).add(loss);
        }
        return new Account(
                times(ledger),
                clock("elapsedMinutes", ledger.elapsedMinutes()),
                timeBar(ledger),
                losses,
                together,
                ledger.entries().isEmpty() ? null : scale(minutes),
                notes(pacing),
                ledger.entries().isEmpty() ? whyNot(pacing) : null);
    }

    private static List<Time> times(TimeLedger ledger) {
        return List.of(
                time(
                        "riding",
                        "Riding",
                        clock("movingMinutes", ledger.movingMinutes()),
                        ledger.movingMinutes(),
                        ledger),
                time(
                        "stopped",
                        "Standing, timer running",
                        clock("stoppedMinutes", ledger.stoppedMinutes()),
                        ledger.stoppedMinutes(),
                        ledger),
                time(
                        "paused",
                        "Timer paused",
                        // The JSON report has no field for it: it is what the others leave.
                        new Num("", null, Figures.clock(ledger.pausedMinutes() * 60)),
                        ledger.pausedMinutes(),
                        ledger),
                time(
                        "missing",
                        "Nothing recorded",
                        clock("missingMinutes", ledger.missingMinutes()),
                        ledger.missingMinutes(),
                        ledger));
    }

    private static Time time(String style, String label, Num clock, double minutes, TimeLedger ledger) {
        Svg key = new Svg();
        key.open("svg", "class", "key", "width", "16", "height", "12", "aria-hidden", "true");
        key.leaf("rect", "class", "time-" + style, "x", "0.5", "y", "0.5", "width", "15", "height", "11");
        key.close("svg");
        double share = ledger.elapsedMinutes() > 0 ? minutes / ledger.elapsedMinutes() : 0;
        String words = minutes > 0 && share < 0.005 ? "under 1 %" : Figures.fractionAsPercent(share);
        return new Time(key.done(), label, clock, words);
    }

    private static Num clock(String name, double minutes) {
        return Num.of("pacing.ledger." + name, minutes, value -> Figures.clock(value * 60));
    }

    private static Markup timeBar(TimeLedger ledger) {
        Svg bar = new Svg();
        bar.open("svg", "class", "time-bar", "width", "100%", "height", "34", "aria-hidden", "true");
        double from = 0;
        double[] parts = {
            ledger.movingMinutes(), ledger.stoppedMinutes(), ledger.pausedMinutes(), ledger.missingMinutes()
        };
        String[] styles = {"time-riding", "time-stopped", "time-paused", "time-missing"};
        for (int i = 0; i < parts.length && ledger.elapsedMinutes() > 0; i++) {
            double share = parts[i] / ledger.elapsedMinutes();
            if (share > 0) {
                bar.leaf(
                        "rect",
                        "class",
                        styles[i],
                        "x",
                        Svg.percent(from),
                        "width",
                        Svg.percent(share),
                        "y",
                        "1",
                        "height",
                        "32");
            }
            from += share;
        }
        return bar.close("svg").done();
    }

    private static Loss loss(
            PacingReview pacing, TimeLedger.Entry entry, @Nullable FindingKind kind, Scale minutes, int index) {
        Integer number = null;
        for (int i = 0; i < pacing.findings().size() && kind != null; i++) {
            if (pacing.findings().get(i).kind() == kind) {
                number = i + 1;
                break;
            }
        }
        String label = kind == null ? capital(PlainText.of(entry.label())) : EvidenceSentences.title(kind);
        String path = "pacing.ledger.entries[" + index + "].";
        return new Loss(
                number,
                label,
                range(entry.minutesLow(), entry.minutesHigh()),
                Num.of(path + "minutesLow", entry.minutesLow(), value -> Figures.decimal(value, 1)),
                Num.of(path + "minutesHigh", entry.minutesHigh(), value -> Figures.decimal(value, 1)),
                bar(minutes, entry.minutesLow(), entry.minutesHigh()));
    }

    static Markup bar(Scale minutes, double low, double high) {
        Svg bar = new Svg();
        bar.open("svg", "class", "loss-bar", "width", "100%", "height", "22", "aria-hidden", "true");
        for (double tick : minutes.ticks(4)) {
            String x = Svg.percent(minutes.share(tick));
            bar.leaf("line", "class", "grid", "x1", x, "x2", x, "y1", "0", "y2", "22");
        }
        double from = Math.max(0, minutes.share(Math.max(0, low)));
        double to = Math.max(from, minutes.share(Math.max(0, high)));
        if (from > 0) {
            bar.leaf("rect", "class", "sure", "x", "0", "width", Svg.percent(from), "y", "5", "height", "12");
        }
        if (to > from) {
            bar.leaf(
                    "rect",
                    "class",
                    "perhaps",
                    "x",
                    Svg.percent(from),
                    "width",
                    Svg.percent(to - from),
                    "y",
                    "5",
                    "height",
                    "12");
        }
        if (to == 0) {
            bar.leaf("line", "class", "nought", "x1", "1", "x2", "1", "y1", "4", "y2", "18");
        }
        return bar.close("svg").done();
    }

    static Markup scale(Scale minutes) {
        Svg scale = new Svg();
        scale.open("svg", "class", "loss-scale", "width", "100%", "height", "18", "aria-hidden", "true");
        List<Double> ticks = minutes.ticks(4);
        for (int i = 0; i < ticks.size(); i++) {
            double share = minutes.share(ticks.get(i));
            boolean isLast = i == ticks.size() - 1;
            String anchor = i == 0 ? "first" : share > 0.9 ? "last" : "";
            scale.words(
                    "text",
                    Figures.brief(ticks.get(i)) + (isLast ? " min" : ""),
                    "class",
                    "foot " + anchor + (i > 0 && !isLast ? " fine" : ""),
                    "x",
                    Svg.percent(share),
                    "y",
                    "13");
        }
        return scale.close("svg").done();
    }

    private static List<String> notes(PacingReview pacing) {
        List<String> notes = new ArrayList<>();
        for (String note : pacing.ledger().notes()) {
            notes.add(PlainText.sentence(note));
        }
        List<String> unpriced = new ArrayList<>();
        if (!pacing.ledger().entries().isEmpty()) {
            for (Finding finding : pacing.findings()) {
                if (finding.cost() instanceof Cost.NotPriced notPriced) {
                    unpriced.add(EvidenceSentences.title(finding.kind()).toLowerCase(Locale.ROOT) + " ("
                            + PlainText.of(notPriced.reason()) + ")");
                }
            }
        }
        if (!unpriced.isEmpty()) {
            notes.add("Without a price in minutes: " + String.join("; ", unpriced) + ".");
        }
        return notes;
    }

    private static String whyNot(PacingReview pacing) {
        for (Finding finding : pacing.findings()) {
            if (finding.cost() instanceof Cost.NotPriced notPriced) {
                return "Nothing is priced in minutes: " + PlainText.sentence(notPriced.reason());
            }
        }
        return pacing.verdict() == Verdict.NOT_JUDGED
                ? "Nothing is priced in minutes: the pacing was not judged."
                : "Nothing to price: no mistake was found.";
    }

    private static @Nullable FindingKind kind(String label) {
        for (FindingKind kind : FindingKind.values()) {
            if (kind.id().equals(label)) {
                return kind;
            }
        }
        return null;
    }

    static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** Minutes from one number to another. */
    static String range(double low, double high) {
        if (low == 0 && high == 0) {
            return "nothing";
        }
        String from = Figures.decimal(low, 1);
        String to = Figures.decimal(high, 1);
        return from.equals(to) ? to + " min" : from + " to " + to + " min";
    }
}
