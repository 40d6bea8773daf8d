package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.OwnRidesWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.SeasonWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.season.SeasonReview;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything the template of a season's page shows, in the order in which it is shown.
 *
 * @param frame what every page has
 * @param rider whose season it is, or null
 * @param riders the address of the page of all riders, or null
 * @param title what the season is, a few words
 * @param summary how much was ridden
 * @param isEmpty whether there is no ride at all
 * @param ownRides what the rides say of their rider, in sentences
 * @param leftOut files that gave no ride of their own, as many as fit
 * @param leftOutCount how many of them there are
 */
public record SeasonPage(
        Frame frame,
        @Nullable String rider,
        @Nullable String riders,
        String title,
        String summary,
        boolean isEmpty,
        SeasonLoad load,
        SeasonBests bests,
        List<String> ownRides,
        SeasonRaces races,
        List<SeasonRow> rides,
        List<String> leftOut,
        int leftOutCount) {
    private static final int FILES_LISTED = 50;

    static SeasonPage of(
            SeasonReview season, Units units, PageNames pages, @Nullable String rider, @Nullable String riders) {
        LocalDate asOf = season.asOf();
        boolean isEmpty = asOf == null || season.load().days().isEmpty();
        String title = isEmpty ? "A season" : season.load().days().get(0).day() + " to " + asOf;
        List<String> leftOut = leftOut(season);
        return new SeasonPage(
                Frame.still((rider == null ? "Season " : PlainText.of(rider) + ", season ") + title),
                rider == null ? null : PlainText.of(rider),
                riders,
                title,
                asOf == null || isEmpty ? SeasonWords.withoutCalendar(season) : SeasonWords.ridden(season),
                isEmpty,
                SeasonLoad.of(season),
                SeasonBests.of(season),
                season.rider() == null ? List.of() : OwnRidesWords.section(season.rider(), units),
                SeasonRaces.of(season, pages),
                SeasonRow.of(season, units, pages),
                leftOut.subList(0, Math.min(FILES_LISTED, leftOut.size())),
                leftOut.size());
    }

    private static List<String> leftOut(SeasonReview season) {
        List<String> lines = new ArrayList<>();
        season.skipped().forEach(each -> lines.add("Skipped: " + SeasonWords.skipped(each)));
        season.ridesOutsideCalendar()
                .forEach(ride -> lines.add("Not in the calendar: " + SeasonWords.outsideCalendar(ride)));
        season.duplicates().forEach(each -> lines.add("There twice, counted once: " + SeasonWords.duplicate(each)));
        season.goneFiles().forEach(file -> lines.add("No longer there, kept from the store: " + PlainText.of(file)));
        return lines;
    }
}
