package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.Cautions;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.OwnRidesWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.SeasonWords;
import io.github.wattledger.cli.report.words.Units;
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
import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A season as plain text of at most 80 columns. */
public final class TextSeason {
    private static final int WEEKS_SHOWN = 12;
    private static final int FILES_LISTED = 20;
    private static final Set<Integer> DURATIONS_SHOWN =
            Set.of(5, 30, 60, 300, 600, 1200, 3600, 7200, 14_400, 21_600, 28_800, 36_000, 43_200, 54_000);
    private static final String NONE = Table.NONE;

    private final Units units;

    /**
     * A report.
     *
     * @param units in which it is written
     */
    public TextSeason(Units units) {
        this.units = units;
    }

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
            pacing(page, season.pacing());
            bests(page, season);
            threshold(page, season.threshold());
            rider(page, season.rider());
            durability(page, season.durability());
            periods(page, "MONTHS", season.months(), Period.ofMonths(1));
            periods(page, "WEEKS from Monday, the last " + WEEKS_SHOWN, lastOf(season.weeks()), Period.ofWeeks(1));
            load(page, season);
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
        for (SeasonWords.Today each : SeasonWords.today(load)) {
            page.labelled(each.label(), 20, each.words() + " (" + each.explained() + ")");
        }
        SeasonWords.loadNotes(season).forEach(page::line);
    }

    private static void periods(Page page, String title, List<PeriodTotals> periods, Period length) {
        page.heading(title);
        Table table = new Table(
                1, List.of("from", "rides", "hours", "kJ", "stress", SeasonWords.LOAD_OF_42_DAYS, "change in a week"));
        int from = 0;
        while (from < periods.size()) {
            int to = from;
            while (to < periods.size() && periods.get(to).rideCount() == 0) {
                to++;
            }
            if (to - from > 1) {
                table.row(withoutRides(periods.get(from), periods.get(to - 1), length));
            } else {
                to = from + 1;
                table.row(row(periods.get(from)));
            }
            from = to;
        }
        table.write(page);
        if (periods.stream().anyMatch(period -> period.ridesWithoutStress() > 0)) {
            page.line(SeasonWords.WITHOUT_SOME);
        }
    }

    private static List<String> row(PeriodTotals period) {
        String mark = period.ridesWithoutStress() > 0 ? " *" : "";
        return List.of(
                period.from().toString(),
                String.valueOf(period.rideCount()),
                SeasonWords.hours(period.movingSeconds()),
                whole(period.workKJ()),
                whole(period.trainingStress()) + mark,
                period.load42Days() == null ? NONE : Figures.decimal(period.load42Days(), 1),
                signed(period.loadChange()));
    }

    /** Several periods without a ride in one row, from the first day of them to the last: what the loads were at their end. */
    private static List<String> withoutRides(PeriodTotals first, PeriodTotals last, Period length) {
        List<String> row = new ArrayList<>(row(last));
        row.set(0, first.from() + " to");
        row.set(1, last.from().plus(length).minusDays(1) + ": 0");
        return row;
    }

    private static void bests(Page page, SeasonReview season) {
        BestEfforts all = season.bests();
        BestEfforts recent = season.recentBests();
        if (all == null || recent == null || all.efforts().isEmpty()) {
            return;
        }
        page.heading("BEST EFFORTS; stops count as 0 W");
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

    private void rider(Page page, @Nullable RiderFromRides rider) {
        if (rider == null) {
            return;
        }
        page.heading("THE RIDER, FROM OWN RIDES, on " + rider.history().day());
        OwnRidesWords.section(rider, units).forEach(page::line);
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
        Table table = new Table(2, List.of("day", "verdict", "moving", "intensity", "decoupling", "mistakes cost"));
        for (SeasonRide ride : pacing.rides()) {
            RideJudgement judgement = ride.judgement();
            Double intensity = judgement.intensityFactor();
            Double decoupling = ride.numbers().decouplingPercent();
            table.row(List.of(
                    ride.day().toString(),
                    judgement.verdict().words(),
                    Figures.clock(ride.numbers().movingSeconds()),
                    intensity == null ? NONE : Figures.decimal(intensity, 2),
                    decoupling == null ? NONE : Figures.decimal(decoupling, 1) + " %",
                    SeasonWords.price(judgement)));
        }
        table.write(page);
        SeasonWords.named(pacing).forEach(page::item);
        page.line(SeasonWords.PRICES);
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
