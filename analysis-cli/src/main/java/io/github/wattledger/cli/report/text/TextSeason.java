package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.Cautions;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.OwnRidesWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.SeasonWords;
import io.github.wattledger.power.Durability;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PacingTrend;
import io.github.wattledger.season.PeriodTotals;
import io.github.wattledger.season.RideJudgement;
import io.github.wattledger.season.RiderFromRides;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import io.github.wattledger.season.ThresholdCheck;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A season as plain text of at most 80 columns. */
public final class TextSeason {
    private static final int WEEKS_SHOWN = 12;
    private static final int FILES_LISTED = 20;
    private static final Set<Integer> DURATIONS_SHOWN =
            Set.of(5, 30, 60, 300, 600, 1200, 3600, 7200, 14_400, 21_600, 28_800, 36_000, 43_200, 54_000);
    private static final String NONE = "-";

    /**
     * Writes a season.
     *
     * @param season what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(SeasonReview season, Appendable out) throws IOException {
        Page page = new Page();
        LocalDate asOf = season.asOf();
        if (asOf == null || season.load().days().isEmpty()) {
            page.paragraph(SeasonWords.withoutCalendar(season));
        } else {
            page.paragraph(SeasonWords.summary(season, asOf));
            load(page, season);
            periods(page, "MONTHS", season.months());
            periods(page, "WEEKS from Monday, the last " + WEEKS_SHOWN, lastOf(season.weeks()));
            bests(page, season);
            threshold(page, season.threshold());
            rider(page, season.rider());
            durability(page, season.durability());
            pacing(page, season.pacing());
        }
        leftOut(page, season);
        page.blank();
        page.paragraph(Cautions.SEASON);
        out.append(page.toString());
    }

    private static List<PeriodTotals> lastOf(List<PeriodTotals> weeks) {
        return weeks.subList(Math.max(0, weeks.size() - WEEKS_SHOWN), weeks.size());
    }

    private static void load(Page page, SeasonReview season) {
        LoadHistory load = season.load();
        LoadHistory.Day today = load.last();
        if (today == null) {
            return;
        }
        page.heading("LOAD on " + today.day());
        for (SeasonWords.Today each : SeasonWords.today(today)) {
            page.labelled(each.label(), 18, each.words() + " (" + each.explained() + ")");
        }
        SeasonWords.loadNotes(season).forEach(page::line);
    }

    private static void periods(Page page, String title, List<PeriodTotals> periods) {
        page.heading(title);
        page.row("  from        rides   hours       kJ   stress  chronic     ramp");
        for (PeriodTotals period : periods) {
            String mark = period.ridesWithoutStress() > 0 ? " *" : "";
            page.row("  " + period.from() + Page.padLeft(String.valueOf(period.rideCount()), 7)
                    + Page.padLeft(SeasonWords.hours(period.movingSeconds()), 8)
                    + Page.padLeft(whole(period.workKJ()), 9)
                    + Page.padLeft(whole(period.trainingStress()) + mark, 9)
                    + Page.padLeft(period.chronic() == null ? NONE : Figures.decimal(period.chronic(), 1), 9)
                    + Page.padLeft(signed(period.ramp()), 9));
        }
        if (periods.stream().anyMatch(period -> period.ridesWithoutStress() > 0)) {
            page.line(SeasonWords.WITHOUT_SOME);
        }
    }

    private static void bests(Page page, SeasonReview season) {
        BestEfforts all = season.bests();
        BestEfforts recent = season.recentBests();
        if (all == null || recent == null || all.efforts().isEmpty()) {
            return;
        }
        page.heading("BEST EFFORTS");
        page.row("  over        season                last 90 days");
        boolean anyLow = false;
        for (BestEfforts.Effort effort : all.efforts()) {
            if (!DURATIONS_SHOWN.contains(effort.seconds())) {
                continue;
            }
            BestEfforts.Effort late = recent.over(effort.seconds());
            anyLow |= effort.mayBeLow() || (late != null && late.mayBeLow());
            page.row("  " + Page.padRight(Figures.duration(effort.seconds()), 10)
                    + Page.padRight(effort(effort), 22)
                    + (late == null ? NONE : effort(late)));
        }
        if (anyLow) {
            page.line("~ seconds without power may have lowered this number");
        }
    }

    private static String effort(BestEfforts.Effort effort) {
        return Page.padLeft(Figures.watts(effort.watts()), 6) + (effort.mayBeLow() ? "~ " : "  ") + effort.day();
    }

    private static void threshold(Page page, @Nullable ThresholdCheck check) {
        if (check == null) {
            return;
        }
        page.heading("THRESHOLD POWER");
        SeasonWords.threshold(check).forEach(page::line);
    }

    private static void rider(Page page, @Nullable RiderFromRides rider) {
        if (rider == null) {
            return;
        }
        page.heading("THE RIDER, FROM OWN RIDES, on " + rider.history().day());
        OwnRidesWords.section(rider).forEach(page::line);
    }

    private static void durability(Page page, List<Durability> durability) {
        if (durability.isEmpty()) {
            return;
        }
        page.heading("DURABILITY: best efforts of the last 90 days, fresh and tired");
        durability.forEach(each -> page.line(SeasonWords.durability(each)));
        page.line(SeasonWords.ONLY_ALL_OUT);
    }

    private static void pacing(Page page, PacingTrend pacing) {
        page.heading("RACES AND LONG RIDES");
        if (pacing.rides().isEmpty()) {
            page.line(SeasonWords.NO_RACES);
            return;
        }
        page.row("  day         moving   verdict          intensity  decoupling    mistakes cost");
        for (SeasonRide ride : pacing.rides()) {
            RideJudgement judgement = ride.judgement();
            page.row("  " + ride.day() + "  "
                    + Page.padLeft(Figures.clock(ride.numbers().movingSeconds()), 8) + " "
                    + Page.padRight(judgement.verdict().words(), 16)
                    + Page.padLeft(
                            judgement.intensityFactor() == null
                                    ? NONE
                                    : Figures.decimal(judgement.intensityFactor(), 2),
                            9)
                    + Page.padLeft(
                            ride.numbers().decouplingPercent() == null
                                    ? NONE
                                    : Figures.decimal(ride.numbers().decouplingPercent(), 1) + " %",
                            12)
                    + Page.padLeft(SeasonWords.price(judgement), 17));
        }
        SeasonWords.trend(pacing).forEach(page::line);
    }

    private static void leftOut(Page page, SeasonReview season) {
        listed(
                page,
                "NOT IN THE CALENDAR: rides whose date cannot be believed",
                season.ridesOutsideCalendar().stream()
                        .map(SeasonWords::outsideCalendar)
                        .toList());
        listed(
                page,
                "THERE TWICE, counted once",
                season.duplicates().stream().map(SeasonWords::duplicate).toList());
        listed(
                page,
                "GONE: files no longer there, their rides kept from the store",
                season.goneFiles().stream().sorted().map(PlainText::of).toList());
        listed(
                page,
                "SKIPPED: " + Figures.counted(season.skipped().size(), "file"),
                season.skipped().stream().map(SeasonWords::skipped).toList());
    }

    private static void listed(Page page, String heading, List<String> all) {
        if (all.isEmpty()) {
            return;
        }
        page.heading(heading);
        all.stream().limit(FILES_LISTED).forEach(page::item);
        if (all.size() > FILES_LISTED) {
            page.line("and " + (all.size() - FILES_LISTED) + " more; --format json lists all");
        }
    }

    private static String signed(@Nullable Double value) {
        return value == null ? NONE : Figures.signed(value, 1);
    }

    private static String whole(@Nullable Double value) {
        return value == null ? NONE : Figures.decimal(value, 0);
    }
}
