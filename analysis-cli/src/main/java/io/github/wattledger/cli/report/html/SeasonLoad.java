package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.SeasonWords;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PeriodTotals;
import io.github.wattledger.season.SeasonReview;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The loads of a season, day by day and week by week.
 *
 * @param today the numbers of the last day
 * @param notes what to know when reading the loads
 * @param drawn the loads as curves, or null without any day
 * @param days the days in numbers
 * @param weeksDrawn the weeks as bars, or null without any
 * @param weeks the weeks in numbers
 */
public record SeasonLoad(
        List<Fact> today,
        List<String> notes,
        @Nullable Markup drawn,
        List<Day> days,
        @Nullable Markup weeksDrawn,
        List<Period> weeks) {
    /** A number of the last day, and what it means. */
    public record Fact(String label, Num number, String explained) {}

    /** A day, and the weeks without a ride after it that are folded into one row, or null. */
    public record Day(
            LocalDate day,
            Num stress,
            Num load7Days,
            Num load42Days,
            Num loadDifference,
            @Nullable Spell after) {}

    /** A week, and the weeks without a ride after it that are folded into one row, or null. */
    public record Period(
            LocalDate from,
            Num rides,
            Num hours,
            Num work,
            Num stress,
            Num load42Days,
            Num loadChange,
            @Nullable Spell after) {}

    static SeasonLoad of(SeasonReview season) {
        boolean isEmpty = season.load().days().isEmpty();
        List<Spell> spells = Spell.of(season.weeks());
        return new SeasonLoad(
                today(season.load()),
                isEmpty ? List.of() : SeasonWords.loadNotes(season),
                isEmpty ? null : SeasonCharts.load(season.load()),
                days(season.load(), spells),
                season.weeks().isEmpty() ? null : SeasonCharts.weeks(season.weeks()),
                weeks(season.weeks(), spells));
    }

    private static List<Fact> today(LoadHistory load) {
        LoadHistory.Day today = load.last();
        if (today == null) {
            return List.of();
        }
        String path = "load.days[" + (load.days().size() - 1) + "].";
        return SeasonWords.today(load).stream()
                .map(each -> new Fact(
                        PlainText.capital(each.label()),
                        Num.of(path + each.name(), each.value(), value -> each.words(), each.words()),
                        each.explained()))
                .toList();
    }

    private static List<Day> days(LoadHistory load, List<Spell> spells) {
        List<Day> days = new ArrayList<>();
        for (int i = 0; i < load.days().size(); i++) {
            LoadHistory.Day day = load.days().get(i);
            if (Spell.holding(spells, day.day()) != null) {
                continue;
            }
            String path = "load.days[" + i + "].";
            days.add(new Day(
                    day.day(),
                    Num.rounded(path + "trainingStress", day.trainingStress(), ""),
                    Num.tenths(path + "load7Days", day.load7Days()),
                    Num.tenths(path + "load42Days", day.load42Days()),
                    Num.signed(path + "loadDifference", day.loadDifference()),
                    Spell.holding(spells, day.day().plusDays(1))));
        }
        return days;
    }

    private static List<Period> weeks(List<PeriodTotals> weeks, List<Spell> spells) {
        List<Period> rows = new ArrayList<>();
        for (int i = 0; i < weeks.size(); i++) {
            PeriodTotals week = weeks.get(i);
            if (Spell.holding(spells, week.from()) != null) {
                continue;
            }
            String path = "weeks[" + i + "].";
            rows.add(new Period(
                    week.from(),
                    Num.whole(path + "rides", week.rideCount()),
                    Num.of(
                            path + "movingSeconds",
                            (double) week.movingSeconds(),
                            seconds -> SeasonWords.hours((long) seconds) + " h"),
                    Num.rounded(path + "workKJ", week.workKJ(), " kJ"),
                    Num.rounded(
                            path + "trainingStress", week.trainingStress(), week.ridesWithoutStress() > 0 ? " *" : ""),
                    Num.tenths(path + "load42Days", week.load42Days()),
                    Num.signed(path + "loadChange", week.loadChange()),
                    Spell.holding(spells, week.to())));
        }
        return rows;
    }
}
