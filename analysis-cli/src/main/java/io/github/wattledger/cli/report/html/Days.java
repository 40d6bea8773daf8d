package io.github.wattledger.cli.report.html;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** Calendar days along a chart. */
final class Days {
    private static final int MOST_LABELS = 8;
    private static final int[] MONTH_STEPS = {1, 3, 6};
    private static final int[] YEAR_STEPS = {1, 2, 5, 10, 20};
    private static final String[] MONTHS = {
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"
    };

    private Days() {}

    /** From the start of a day to the end of another. */
    static Scale scale(LocalDate first, LocalDate last) {
        return Scale.linear((double) first.toEpochDay(), last.toEpochDay() + 1.0);
    }

    /** Names months under a chart, or years where there are many. */
    static void foot(Plot plot, LocalDate first, LocalDate last) {
        long months = ChronoUnit.MONTHS.between(first.withDayOfMonth(1), last.withDayOfMonth(1)) + 1;
        if (months <= 2) {
            int index = 0;
            LocalDate monday = first.plusDays((8 - first.getDayOfWeek().getValue()) % 7);
            for (LocalDate day = monday; !day.isAfter(last); day = day.plusWeeks(1)) {
                plot.foot(
                        (double) day.toEpochDay(),
                        day.getDayOfMonth() + " " + MONTHS[day.getMonthValue() - 1],
                        index++ % 2 == 1);
            }
            return;
        }
        for (int step : MONTH_STEPS) {
            if (months / step <= MOST_LABELS) {
                months(plot, first, last, step);
                return;
            }
        }
        int step = 0;
        while (step < YEAR_STEPS.length - 1 && months / 12 / YEAR_STEPS[step] > MOST_LABELS) {
            step++;
        }
        years(plot, first, last, YEAR_STEPS[step]);
    }

    private static void months(Plot plot, LocalDate first, LocalDate last, int step) {
        int index = 0;
        LocalDate day = first.withDayOfMonth(1).plusMonths(first.getDayOfMonth() == 1 ? 0 : 1);
        while (!day.isAfter(last)) {
            if ((day.getMonthValue() - 1) % step == 0) {
                boolean named = index == 0 || day.getMonthValue() == 1;
                plot.foot(
                        (double) day.toEpochDay(),
                        MONTHS[day.getMonthValue() - 1] + (named ? " " + day.getYear() : ""),
                        index % 2 == 1);
                index++;
            }
            day = day.plusMonths(1);
        }
    }

    private static void years(Plot plot, LocalDate first, LocalDate last, int step) {
        int index = 0;
        for (int year = first.getYear() + 1; year <= last.getYear(); year++) {
            if (year % step == 0) {
                plot.foot((double) LocalDate.of(year, 1, 1).toEpochDay(), Integer.toString(year), index % 2 == 1);
                index++;
            }
        }
    }
}
