package io.github.wattledger.cli.report.text;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.words.BriefWords;
import io.github.wattledger.cli.report.words.Units;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** A review in at most 15 narrow lines without a table, to be pasted into a message. */
public final class TextBrief implements Report {
    /** The most lines there can be. */
    static final int MOST_LINES = 15;

    /** What a message shows without breaking a line again on most screens. */
    static final int WIDTH = 64;

    private final Units units;

    /** A report in these units. */
    public TextBrief(Units units) {
        this.units = units;
    }

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        for (String line : lines(review, units)) {
            out.append(line).append('\n');
        }
    }

    /**
     * The lines. Where they would be too many, advice without a cap goes first, then the less dear mistakes, then what is said
     * of a bunch, and the dearest mistake last.
     */
    static List<String> lines(RideReview review, Units units) {
        BriefWords words = BriefWords.of(review, units);
        int mistakes = words.mistakes().size();
        int advice = words.nextTime().size();
        int bunch = words.bunch().size();
        List<String> lines = lines(words, bunch, mistakes, advice);
        while (lines.size() > MOST_LINES && mistakes + advice + bunch > 0) {
            if (advice > 0) {
                advice--;
            } else if (mistakes > 1) {
                mistakes--;
            } else if (bunch > 0) {
                bunch--;
            } else {
                mistakes--;
            }
            lines = lines(words, bunch, mistakes, advice);
        }
        return lines.size() > MOST_LINES ? shortened(lines) : lines;
    }

    private static List<String> lines(BriefWords words, int bunch, int mistakes, int advice) {
        Page page = new Page(WIDTH);
        page.paragraph(words.ride());
        page.paragraph(words.verdict());
        String because = (words.because() + " " + String.join(" ", words.bunch().subList(0, bunch))).strip();
        if (!because.isEmpty()) {
            page.paragraph(because);
        }
        if (!words.recalled().isEmpty()) {
            page.paragraph(words.recalled());
        }
        list(page, words.mistakesHeading(), shown(words, mistakes));
        List<String> nextTime = new ArrayList<>(words.caps());
        nextTime.addAll(words.nextTime().subList(0, advice));
        list(page, words.nextTimeHeading(), nextTime);
        page.paragraph(words.notKnown());
        return page.toString().lines().toList();
    }

    /** Some of the mistakes; where not all that a brief would name have room, a line more says how many there are besides. */
    private static List<String> shown(BriefWords words, int mistakes) {
        int leftOut = words.mistakes().size() - mistakes;
        if (leftOut == 0) {
            return words.mistakes();
        }
        List<String> shown = new ArrayList<>(words.mistakes().subList(0, mistakes));
        int further = leftOut + words.furtherMistakes();
        shown.add(shown.isEmpty() ? further + " in the report" : "and " + further + " more in the report");
        return shown;
    }

    private static void list(Page page, String heading, List<String> items) {
        if (!items.isEmpty()) {
            page.paragraph(heading);
            items.forEach(item -> page.wrapped("- ", "  ", item));
        }
    }

    /** A file's name can be as long as it likes. */
    private static List<String> shortened(List<String> lines) {
        List<String> shortened = new ArrayList<>(lines.subList(lines.size() - MOST_LINES + 1, lines.size()));
        shortened.add(0, lines.get(0));
        return shortened;
    }
}
