package io.github.wattledger.season;

import java.io.Serializable;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A week or a month.
 *
 * @param from its first day
 * @param to the day after its last
 * @param rideCount rides that began in it
 * @param ridesWithoutStress how many of them have no training stress because power or threshold is missing
 * @param movingSeconds moving time
 * @param workKJ work of the rides that have power, kilojoules; null when none has
 * @param trainingStress training stress of the rides that have it; 0 without rides, null when there are rides and none
 *     has it
 * @param load42Days load of 42 days at its end, or at the end of the season within it; null beyond
 * @param loadChange what the load of 42 days gained in it, from the start value where the season begins in it; or null
 */
public record PeriodTotals(
        LocalDate from,
        LocalDate to,
        int rideCount,
        int ridesWithoutStress,
        long movingSeconds,
        @Nullable Double workKJ,
        @Nullable Double trainingStress,
        @Nullable Double load42Days,
        @Nullable Double loadChange)
        implements Serializable {
    /** The weeks, Monday to Sunday, in which the season has a day; rides must be in time order. */
    static List<PeriodTotals> weeks(List<SeasonRide> rides, LoadHistory load) {
        return periods(
                rides,
                load,
                day -> day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)),
                first -> first.plusWeeks(1));
    }

    /** The calendar months in which the season has a day; rides must be in time order. */
    static List<PeriodTotals> months(List<SeasonRide> rides, LoadHistory load) {
        return periods(rides, load, day -> day.withDayOfMonth(1), first -> first.plusMonths(1));
    }

    private static List<PeriodTotals> periods(
            List<SeasonRide> rides,
            LoadHistory load,
            UnaryOperator<LocalDate> firstDay,
            UnaryOperator<LocalDate> next) {
        List<PeriodTotals> periods = new ArrayList<>();
        LoadHistory.Day last = load.last();
        if (last == null) {
            return periods;
        }
        int ride = 0;
        LocalDate from = firstDay.apply(load.days().get(0).day());
        while (!from.isAfter(last.day())) {
            LocalDate to = next.apply(from);
            int first = ride;
            while (ride < rides.size() && rides.get(ride).day().isBefore(to)) {
                ride++;
            }
            periods.add(of(from, to, rides.subList(first, ride), load, last));
            from = to;
        }
        return periods;
    }

    private static PeriodTotals of(
            LocalDate from, LocalDate to, List<SeasonRide> rides, LoadHistory load, LoadHistory.Day last) {
        int withoutStress = 0;
        long movingSeconds = 0;
        Double workKJ = null;
        Double stress = rides.isEmpty() ? (Double) 0.0 : null;
        for (SeasonRide ride : rides) {
            movingSeconds += ride.numbers().movingSeconds();
            Double work = ride.numbers().workKJ();
            if (work != null) {
                workKJ = (workKJ == null ? 0 : workKJ) + work;
            }
            Double each = ride.judgement().trainingStress();
            if (each == null) {
                withoutStress++;
            } else {
                stress = (stress == null ? 0 : stress) + each;
            }
        }
        LoadHistory.Day end = to.isAfter(last.day()) ? last : load.on(to.minusDays(1));
        LoadHistory.Day before = load.on(from.minusDays(1));
        Double load42DaysBefore = before != null
                ? (Double) before.load42Days()
                : !from.isAfter(load.days().get(0).day()) ? (Double) load.startLoad42Days() : null;
        return new PeriodTotals(
                from,
                to,
                rides.size(),
                withoutStress,
                movingSeconds,
                workKJ,
                stress,
                end == null ? null : (Double) end.load42Days(),
                end == null || load42DaysBefore == null ? null : (Double) (end.load42Days() - load42DaysBefore));
    }
}
