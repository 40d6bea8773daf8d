package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.LibraryWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.cli.report.words.WhatIfWords;
import io.github.wattledger.replay.Influence;
import io.github.wattledger.replay.WhatIf;
import java.io.IOException;

/** The answer to a what-if, for people: at most 80 columns, the minutes first and what they rest on after them. */
public final class TextWhatIf {
    private static final int LABEL = 12;
    private static final int INPUT = 44;

    private final Units units;

    /** A report in these units. */
    public TextWhatIf(Units units) {
        this.units = units;
    }

    /**
     * Writes an answer.
     *
     * @param report what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(WhatIfReport report, Appendable out) throws IOException {
        WhatIf.Answer answer = report.answer();
        Page page = new Page();
        page.paragraph(WhatIfWords.question(answer, units));
        page.blank();
        page.paragraph(WhatIfWords.worth(answer));
        page.heading("THE ROAD");
        page.line(WhatIfWords.road(report, units));
        row(page, "as it is", answer.asItIsSeconds(), answer.distanceM());
        row(page, "changed", answer.changedSeconds(), answer.distanceM());
        page.heading("WHAT IT RESTS ON");
        WhatIfWords.basis(report, units).forEach(page::line);
        report.notes().forEach(note -> page.paragraph(LibraryWords.of(note.text(), units)));
        page.heading("WHAT THE RANGE IS MADE OF, each alone at its ends, minutes");
        for (Influence each : answer.influences()) {
            page.row("  " + Page.padRight(WhatIfWords.input(each, units), INPUT)
                    + Page.padLeft(Figures.decimal(each.savedAtLowMinutes(), 1), 8) + " to "
                    + Figures.decimal(each.savedAtHighMinutes(), 1));
        }
        out.append(page.toString());
    }

    private void row(Page page, String label, double seconds, double distanceM) {
        page.row("  " + Page.padRight(label, LABEL) + Page.padLeft(Figures.clock(seconds), 9)
                + Page.padLeft(units.speedWords(distanceM / seconds), 13));
    }
}
