package io.github.wattledger.cli.report.text;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.clean.RecordingSummary.ChannelSummary;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.RecordingWords;
import io.github.wattledger.cli.report.words.RideWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.intake.FileInspection;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a file holds, for people: at most 80 columns, ASCII but for names from the file. */
public final class TextInspection {
    private static final int LABEL = 26;
    private static final int COVERAGE = 10;
    private static final int SAMPLES = 9;
    private static final int VALUE = 16;

    /**
     * Writes an inspection.
     *
     * @param inspection what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(FileInspection inspection, Appendable out) throws IOException {
        Page page = new Page();
        page.paragraph("Inspection of " + PlainText.of(inspection.file()));
        page.paragraph(PlainText.of(inspection.format()) + ", "
                + Figures.counted(inspection.bytes(), "byte") + ", "
                + Figures.counted(inspection.sessions().size(), "session"));
        page.paragraph("SHA-256 " + inspection.sha256());
        page.heading("THE FILE");
        notes(page, inspection.notes(), "Read without damage.");
        for (FileInspection.Session session : inspection.sessions()) {
            session(page, session);
        }
        out.append(page.toString());
    }

    private static void session(Page page, FileInspection.Session session) {
        page.heading("SESSION " + (session.source().sessionIndex() + 1));
        page.line(RideWords.session(session.source(), session.quality()));
        samples(page, session.summary());
        channels(page, session.summary().channels());
        LoadTable.write(
                page, session.load(), session.ride(), session.ride(), session.deviceTotals(), false, Units.METRIC);
        page.heading("NOTES");
        notes(page, session.quality().notes(), "None.");
    }

    private static void samples(Page page, RecordingSummary summary) {
        page.heading("SAMPLES");
        page.labelled("samples in the file", LABEL, Integer.toString(summary.sampleCount()));
        Double usual = summary.usualIntervalSeconds();
        page.labelled("usual interval", LABEL, usual == null ? "none" : Figures.brief(usual) + " s");
        Integer longest = summary.longestIntervalSeconds();
        page.labelled("longest interval", LABEL, longest == null ? "none" : Figures.span(longest));
        page.labelled("gaps, timer running", LABEL, stretches(summary.gaps()));
        page.labelled("pauses, timer stopped", LABEL, stretches(summary.pauses()));
        page.labelled("laps", LABEL, summary.lapCount() == 0 ? "none" : Integer.toString(summary.lapCount()));
    }

    private static String stretches(List<Interval> stretches) {
        Interval longest = stretches.stream()
                .max(Comparator.comparingInt(Interval::seconds))
                .orElse(null);
        if (longest == null) {
            return "none";
        }
        String where = " at " + Figures.clock(longest.fromSecond());
        if (stretches.size() == 1) {
            return "1 of " + Figures.span(longest.seconds()) + where;
        }
        return stretches.size() + ", " + Figures.span(RecordingSummary.totalSeconds(stretches))
                + " in all, the longest " + Figures.span(longest.seconds()) + where;
    }

    private static void channels(Page page, List<ChannelSummary> channels) {
        page.heading("CHANNELS, cleaned");
        if (channels.isEmpty()) {
            page.line("None.");
            return;
        }
        page.row("  " + Page.padRight("", LABEL) + Page.padLeft("coverage", COVERAGE)
                + Page.padLeft("samples", SAMPLES)
                + Page.padLeft("lowest", VALUE)
                + Page.padLeft("highest", VALUE));
        for (ChannelSummary each : channels) {
            Double coverage = each.coveragePercent();
            page.row("  " + Page.padRight(each.channel().label(), LABEL)
                    + Page.padLeft(coverage == null ? "-" : Figures.decimal(coverage, 1) + " %", COVERAGE)
                    + Page.padLeft(Integer.toString(each.sampleCount()), SAMPLES)
                    + Page.padLeft(value(each.channel(), each.lowest()), VALUE)
                    + Page.padLeft(value(each.channel(), each.highest()), VALUE));
        }
    }

    private static String value(Channel channel, @Nullable Double value) {
        if (value == null) {
            return "-";
        }
        String digits = switch (channel) {
            case LATITUDE, LONGITUDE -> Figures.decimal(value, 5); // a metre
            case LEFT_SHARE -> Figures.decimal(value, 2);
            default -> Figures.brief(value);
        };
        return channel.unit().isEmpty() ? digits : digits + " " + PlainText.of(channel.unit());
    }

    private static void notes(Page page, List<QualityNote> notes, String none) {
        if (notes.isEmpty()) {
            page.line(none);
        }
        RecordingWords.notes(notes, Units.METRIC).forEach(page::item);
    }
}
