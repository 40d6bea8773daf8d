package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.LedgerWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.PriceEnds;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.TimeLedger;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the time went and what the mistakes cost, as a page shows it.
 *
 * @param times the parts of the elapsed time
 * @param elapsed their sum
 * @param timeBar the parts as one bar
 * @param losses what each mistake cost
 * @param together rows that are not parts of a sum: all repaired at once, and against the rider's ability
 * @param ends the names of the two ends of a price
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
        List<String> ends,
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
     * @param ends what its ends are where they have other names than the columns, or empty
     * @param first the end in the first column
     * @param second the end in the second column
     * @param bar both ends as a bar
     */
    public record Loss(@Nullable Integer number, String label, String ends, Num first, Num second, Markup bar) {}

    static Account of(PacingReview pacing, Units units) {
        TimeLedger ledger = pacing.ledger();
        double most = 0;
        for (TimeLedger.Entry entry : ledger.entries()) {
            most = Math.max(most, entry.minutesHigh());
        }
        Scale minutes = Scale.fromZero(Math.max(most, 1));
        List<Loss> losses = new ArrayList<>();
        List<Loss> together = new ArrayList<>();
        List<LedgerWords.Loss> words = LedgerWords.losses(pacing);
        List<String> ends =
                PriceEnds.heads(words.stream().map(LedgerWords.Loss::ends).toList());
        for (int i = 0; i < words.size(); i++) {
            Loss loss = loss(words.get(i), ledger.entries().get(i), ends, minutes, i);
            (loss.number() == null ? together : losses).add(loss);
        }
        String nothingPriced = LedgerWords.nothingPriced(pacing);
        String otherwise = nothingPriced == null ? LedgerWords.nothingToPrice(pacing) : nothingPriced;
        return new Account(
                times(ledger),
                clock("elapsedMinutes", ledger.elapsedMinutes()),
                timeBar(ledger),
                losses,
                together,
                ends,
                words.isEmpty() ? null : LossBars.scale(minutes),
                LedgerWords.notes(pacing, units),
                words.isEmpty() ? otherwise : null);
    }

    private static List<Time> times(TimeLedger ledger) {
        return LedgerWords.parts(ledger).stream()
                .map(part -> time(part, ledger.elapsedMinutes()))
                .toList();
    }

    private static Time time(LedgerWords.Part part, double elapsedMinutes) {
        Svg key = new Svg();
        key.open("svg", "class", "key", "width", "16", "height", "12", "aria-hidden", "true");
        key.rect("time-" + part.id(), "0.5", "15", "0.5", "11");
        key.close("svg");
        double share = elapsedMinutes > 0 ? part.minutes() / elapsedMinutes : 0;
        String words = part.minutes() > 0 && share < 0.005 ? "under 1 %" : Figures.fractionAsPercent(share);
        return new Time(key.done(), PlainText.capital(part.label()), clock(part), words);
    }

    private static Num clock(LedgerWords.Part part) {
        return switch (part.id()) {
            case "riding" -> clock("movingMinutes", part.minutes());
            // The JSON report has no field for it: it is what the others leave.
            case "paused" -> Num.inWords(Figures.clock(part.minutes() * 60));
            default -> clock(part.id() + "Minutes", part.minutes());
        };
    }

    private static Num clock(String name, double minutes) {
        return Num.of("pacing.ledger." + name, minutes, value -> Figures.clock(value * 60));
    }

    private static Markup timeBar(TimeLedger ledger) {
        Svg bar = new Svg();
        bar.open("svg", "class", "time-bar", "width", "100%", "height", "34", "aria-hidden", "true");
        double from = 0;
        for (LedgerWords.Part part : LedgerWords.parts(ledger)) {
            double share = ledger.elapsedMinutes() > 0 ? part.minutes() / ledger.elapsedMinutes() : 0;
            if (share > 0) {
                bar.rect("time-" + part.id(), Svg.percent(from), Svg.percent(share), "1", "32");
            }
            from += share;
        }
        return bar.close("svg").done();
    }

    private static Loss loss(
            LedgerWords.Loss words, TimeLedger.Entry entry, List<String> heads, Scale minutes, int index) {
        String path = "pacing.ledger.entries[" + index + "].";
        Num low = Num.of(path + "minutesLow", entry.minutesLow(), PriceEnds::brief);
        Num high = Num.of(path + "minutesHigh", entry.minutesHigh(), PriceEnds::brief);
        List<String> names = words.ends().names();
        return new Loss(
                words.number(),
                PlainText.capital(words.label()),
                names.equals(heads) ? "" : String.join(" / ", names),
                words.ends().isHighFirst() ? high : low,
                words.ends().isHighFirst() ? low : high,
                LossBars.bar(minutes, entry.minutesLow(), entry.minutesHigh()));
    }
}
