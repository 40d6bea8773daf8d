package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.Cautions;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.LastRaceWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.season.RacePacing;
import io.github.wattledger.season.RiderStanding;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Several riders as plain text of at most 80 columns: one line each, then what to look at. */
public final class TextRiders {
    private static final int SHORT_NAME_COLUMNS = 10;
    private static final int NAME_COLUMNS = 13;
    private static final String NONE = Table.NONE;

    /**
     * Writes the riders.
     *
     * @param riders one for each
     * @param skippedFiles how many files gave no ride
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(List<RiderStanding> riders, int skippedFiles, Appendable out) throws IOException {
        Page page = new Page();
        LocalDate asOf = riders.isEmpty() ? null : riders.get(0).asOf();
        page.paragraph(Figures.counted(riders.size(), "rider") + (asOf == null ? "." : " as of " + asOf + "."));
        page.blank();
        Table table = new Table(
                1, List.of("rider", "42 days", "7 days", "difference", "change", "week", "ride", "long", "last race"));
        for (RiderStanding rider : riders) {
            table.row(List.of(
                    shortened(PlainText.of(rider.name()), NAME_COLUMNS),
                    decimal(rider.load42Days()),
                    decimal(rider.load7Days()),
                    signed(rider.loadDifference()),
                    signed(rider.loadChange()),
                    rider.weekStress() == null ? NONE : Figures.decimal(rider.weekStress(), 0),
                    days(rider.daysSinceRide()),
                    days(rider.daysSinceLongRide()),
                    rider.lastVerdict() == null ? NONE : rider.lastVerdict().words()));
        }
        table.write(page);
        boolean hasLong = riders.stream().anyMatch(rider -> rider.daysSinceLongRide() != null);
        page.line("42 days, 7 days: load of so many days; difference: the one less the other; change: of the load of 42"
                + " days in a week; week: training stress of the last seven days; "
                + (hasLong
                        ? "ride, long: days since the last ride, and the last of three hours or more."
                        : "ride: days since the last ride. None has a ride of three hours or more."));
        pacing(page, riders);
        if (riders.stream().anyMatch(rider -> !rider.warnings().isEmpty())) {
            page.heading("WORTH A LOOK");
            for (RiderStanding rider : riders) {
                for (RiderStanding.Warning warning : rider.warnings()) {
                    page.item(PlainText.of(rider.name()) + ": " + PlainText.of(warning.reason()) + ".");
                }
            }
        }
        if (skippedFiles > 0) {
            page.blank();
            page.paragraph(skippedFiles + " file" + (skippedFiles == 1 ? " was" : "s were")
                    + " skipped; the season of each rider lists them.");
        }
        page.blank();
        page.paragraph(Cautions.RIDERS);
        out.append(page.toString());
    }

    private static void pacing(Page page, List<RiderStanding> riders) {
        if (riders.stream().allMatch(rider -> rider.races().isEmpty())) {
            return;
        }
        page.heading("PACING of the last races");
        Table table =
                new Table(3, List.of("rider", "day", "verdict", "mistakes cost", "opening", "fade", "earlier cap"));
        for (RiderStanding rider : riders) {
            for (RacePacing race : rider.races()) {
                table.row(List.of(
                        shortened(PlainText.of(rider.name()), SHORT_NAME_COLUMNS),
                        race.day().toString(),
                        race.verdict().words(),
                        LastRaceWords.cost(race),
                        race.openingOverTarget() == null ? NONE : Figures.fractionAsPercent(race.openingOverTarget()),
                        race.fadePercent() == null ? NONE : Figures.percent(race.fadePercent()),
                        LastRaceWords.lastCap(race, NONE)));
            }
        }
        table.write(page);
        page.line(LastRaceWords.LEGEND);
    }

    private static String shortened(String name, int columns) {
        String fitting = name;
        while (Page.columns(fitting) > columns) {
            fitting = fitting.substring(0, fitting.offsetByCodePoints(fitting.length(), -1));
        }
        return fitting;
    }

    private static String decimal(@Nullable Double value) {
        return value == null ? NONE : Figures.decimal(value, 1);
    }

    private static String signed(@Nullable Double value) {
        return value == null ? NONE : Figures.signed(value, 1);
    }

    private static String days(@Nullable Integer days) {
        return days == null ? NONE : days + " d";
    }
}
