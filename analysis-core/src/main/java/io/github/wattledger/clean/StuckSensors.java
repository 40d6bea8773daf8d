package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;

/** Reports a sensor that gave exactly the same reading for minutes; nothing is changed, since it may be true. */
final class StuckSensors {
    private static final int SUSPICIOUS_SECONDS = 120;

    private StuckSensors() {}

    static void report(SecondTable table, Notes notes) {
        reportOne(table, notes, Channel.POWER, "power-stuck", "Power");
        reportOne(table, notes, Channel.HEART_RATE, "heart-rate-stuck", "Heart rate");
    }

    private static void reportOne(SecondTable table, Notes notes, Channel channel, String code, String label) {
        double[] column = table.column(channel);
        if (column == null) {
            return;
        }
        int stuck = 0;
        int from = 0;
        while (from < column.length) {
            int to = endOfReading(column, from);
            if (to - from >= SUSPICIOUS_SECONDS && column[from] != 0) {
                stuck += to - from;
            }
            from = to;
        }
        if (stuck > 0) {
            notes.found(
                    code,
                    stuck,
                    label + " stood at exactly one value for 2 min or more, " + stuck + " s in all; left as it is.");
        }
    }

    /** The first row after one that reads otherwise; a row without a reading equals no other. */
    private static int endOfReading(double[] column, int from) {
        double reading = column[from];
        int end = from + 1;
        while (end < column.length && column[end] == reading) {
            end++;
        }
        return end;
    }
}
