package io.github.wattledger.cli.report.html;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** Calendar days along a chart. */
final class Days {
    private static final int MOST_LABELS = 10;
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
        int step = 1;
        while (months / step > MOST_LABELS) {
            step = step == 1 ? 3 : step == 3 ? 6 : step + 6;
        }
        int index = 0;
        LocalDate day = first.withDayOfMonth(1).plusMonths(first.getDayOfMonth() == 1 ? 0 : 1);
        while (!day.isAfter(last)) {
            if ((day.getMonthValue() - 1) % step == 0 || (step > 12 && day.getMonthValue() == 1)) {
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
}
