package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.LibraryWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.cli.report.words.WhatIfWords;
import io.github.wattledger.replay.Influence;
import io.github.wattledger.replay.WhatIf;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Everything the template of a what-if shows.
 *
 * @param frame what every page has
 * @param road what was ridden again, or the road that nobody has ridden yet
 * @param worth the minutes saved or lost, with their range
 * @param question what is changed
 * @param rows the numbers as they are and changed
 * @param scale minutes along the head of the bars
 * @param parts what the range is made of
 * @param all the whole range
 * @param saved the minutes saved
 * @param basis what everything rests on
 */
public record WhatIfPage(
        Frame frame,
        String road,
        String worth,
        String question,
        List<Row> rows,
        Markup scale,
        List<Part> parts,
        Part all,
        Num saved,
        List<String> basis) {
    /** A number as it is and changed. */
    public record Row(String label, Num asItIs, Num changed) {}

    /** One of the numbers that make the range, and what is saved at its ends. */
    public record Part(String label, Markup bar, Num low, Num high) {}

    static WhatIfPage of(WhatIfReport report, Units units) {
        WhatIf.Answer answer = report.answer();
        Scale minutes = scale(answer);
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < answer.influences().size(); i++) {
            Influence each = answer.influences().get(i);
            String path = "influences[" + i + "].";
            parts.add(new Part(
                    PlainText.capital(WhatIfWords.input(each, units)),
                    bar(minutes, answer, each.savedAtLowMinutes(), each.savedAtHighMinutes()),
                    Num.tenths(path + "savedAtLowMinutes", each.savedAtLowMinutes()),
                    Num.tenths(path + "savedAtHighMinutes", each.savedAtHighMinutes())));
        }
        List<String> basis = new ArrayList<>(WhatIfWords.basis(report, units));
        report.notes().forEach(note -> basis.add(PlainText.of(LibraryWords.of(note.text(), units))));
        return new WhatIfPage(
                Frame.still(WhatIfWords.question(answer, units)),
                WhatIfWords.road(report, units),
                WhatIfWords.worth(answer),
                WhatIfWords.question(answer, units),
                rows(answer, units),
                LossBars.scale(minutes),
                parts,
                new Part(
                        "",
                        bar(minutes, answer, answer.lowMinutes(), answer.highMinutes()),
                        Num.tenths("savedMinutes.low", answer.lowMinutes()),
                        Num.tenths("savedMinutes.high", answer.highMinutes())),
                Num.tenths("savedMinutes.value", answer.savedMinutes()),
                basis);
    }

    private static Scale scale(WhatIf.Answer answer) {
        double least = Math.min(0, Math.min(answer.lowMinutes(), answer.savedMinutes()));
        double most = Math.max(0, Math.max(answer.highMinutes(), answer.savedMinutes()));
        for (Influence each : answer.influences()) {
            least = Math.min(least, Math.min(each.savedAtLowMinutes(), each.savedAtHighMinutes()));
            most = Math.max(most, Math.max(each.savedAtLowMinutes(), each.savedAtHighMinutes()));
        }
        return Scale.around(least, most);
    }

    private static Markup bar(Scale minutes, WhatIf.Answer answer, double oneEnd, double otherEnd) {
        return LossBars.between(minutes, Math.min(oneEnd, otherEnd), Math.max(oneEnd, otherEnd), answer.savedMinutes());
    }

    private static List<Row> rows(WhatIf.Answer answer, Units units) {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row(
                "Moving time",
                Num.of("asItIs.movingSeconds", answer.asItIsSeconds(), Figures::clock),
                Num.of("changed.movingSeconds", answer.changedSeconds(), Figures::clock)));
        rows.add(new Row(
                "Speed, moving",
                speed(answer, answer.asItIsSeconds(), units),
                speed(answer, answer.changedSeconds(), units)));
        if (answer.asItIs().powerW() != null) {
            rows.add(row(answer, "Power", "powerW", WhatIf.State::powerW, Figures::watts));
        }
        rows.add(row(
                answer,
                "Rider, bicycle and load",
                "massKg",
                WhatIf.State::massKg,
                mass -> units.mass().words(mass, 1)));
        rows.add(row(answer, "Drag area", "dragAreaM2", WhatIf.State::dragAreaM2, decimals(3, " m2")));
        rows.add(row(
                answer, "Rolling resistance", "rollingResistance", WhatIf.State::rollingResistance, decimals(4, "")));
        rows.add(row(answer, "Air", "airDensityKgPerM3", WhatIf.State::airDensityKgPerM3, decimals(3, " kg/m3")));
        return rows;
    }

    private static DoubleFunction<String> decimals(int decimals, String unit) {
        return value -> Figures.decimal(value, decimals) + unit;
    }

    private static Row row(
            WhatIf.Answer answer,
            String label,
            String name,
            Function<WhatIf.State, @Nullable Double> number,
            DoubleFunction<String> words) {
        return new Row(
                label,
                Num.fine("asItIs." + name, number.apply(answer.asItIs()), words),
                Num.fine("changed." + name, number.apply(answer.changed()), words));
    }

    /** The JSON report has no field for it: it follows from distance and time. */
    private static Num speed(WhatIf.Answer answer, double seconds, Units units) {
        return new Num("", null, units.speedWords(answer.distanceM() / seconds));
    }
}
