package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;

/** Removes the zeros that devices write where a sensor was not there. */
final class AbsentSensors {
    private AbsentSensors() {}

    static void remove(SecondTable table, Notes notes) {
        removeZeros(table, notes);
        removeZeroHeartRate(table, notes);
        if (!table.has(Channel.POWER)) {
            table.drop(Channel.ACCUMULATED_WORK);
        }
    }

    /** Asked again after single bad samples are repaired: one of them among zeros is no sensor either. */
    static void removeZeros(SecondTable table, Notes notes) {
        dropIfAllZero(table, notes, Channel.POWER, "no-power-meter", "Power is 0 throughout: taken as no power meter.");
        dropIfAllZero(table, notes, Channel.ALTITUDE, "no-altimeter", "Altitude is 0 throughout: taken as missing.");
        dropIfAllZero(table, notes, Channel.SPEED, "no-speed", "Speed is 0 throughout: taken as missing.");
        dropIfAllZero(table, notes, Channel.DISTANCE, "no-distance", "Distance is 0 throughout: taken as missing.");
        dropIfAllZero(table, notes, Channel.CADENCE, "no-cadence", "Cadence is 0 throughout: taken as missing.");
    }

    private static void dropIfAllZero(SecondTable table, Notes notes, Channel channel, String code, String text) {
        double[] column = table.column(channel);
        if (column == null) {
            return;
        }
        for (double value : column) {
            if (!Double.isNaN(value) && value != 0) {
                return;
            }
        }
        table.drop(channel);
        notes.found(code, text);
    }

    /** A living heart does not stand still: 0 means that the strap lost its contact, or was never worn. */
    private static void removeZeroHeartRate(SecondTable table, Notes notes) {
        double[] column = table.column(Channel.HEART_RATE);
        if (column == null) {
            return;
        }
        int zeros = 0;
        int others = 0;
        for (int row = 0; row < column.length; row++) {
            if (column[row] == 0) {
                column[row] = Double.NaN;
                zeros++;
            } else if (!Double.isNaN(column[row])) {
                others++;
            }
        }
        if (others == 0) {
            table.drop(Channel.HEART_RATE);
            notes.found("no-heart-rate-strap", "Heart rate is 0 throughout: taken as no strap.");
        } else if (zeros > 0) {
            notes.repaired(
                    "heart-rate-zero", zeros, Notes.count(zeros, "second") + " with a heart rate of 0 set missing.");
        }
    }
}
