package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.SecondState;
import java.util.Locale;

/**
 * Reports a ride that no bicycle has done: a speed of a motor vehicle, a climb of a lift. Nothing is changed, since the
 * samples may be right and only the sport wrong.
 */
final class BeyondCycling {
    /** Over a whole ride; the record for an hour on a track is 56.8 km/h (2022). */
    private static final double FASTEST_MEAN_MPS = 60 / 3.6;

    private static final int SHORTEST_RIDE_SECONDS = 600;

    /** The best climbers gain some 650 m in 20 minutes (common knowledge of the trade, no source). */
    private static final double MOST_CLIMBED_M = 700;

    private static final int CLIMB_SECONDS = 1200;

    /** As in the sum of ascents: smaller rises are noise of the altimeter. */
    private static final double LEAST_RISE_M = 3;

    private final SecondTable table;
    private final Notes notes;

    private BeyondCycling(SecondTable table, Notes notes) {
        this.table = table;
        this.notes = notes;
    }

    static void report(SecondTable table, Notes notes) {
        BeyondCycling check = new BeyondCycling(table, notes);
        check.reportSpeed();
        check.reportClimb();
    }

    private void reportSpeed() {
        double[] distance = table.column(Channel.DISTANCE);
        if (distance == null) {
            return;
        }
        int riding = 0;
        for (int row = 0; row < table.seconds(); row++) {
            riding += table.state(row) == SecondState.RIDING ? 1 : 0;
        }
        int[] rows = Columns.measuredRows(distance);
        if (rows.length == 0 || riding < SHORTEST_RIDE_SECONDS) {
            return;
        }
        double meanMps = (distance[rows[rows.length - 1]] - distance[rows[0]]) / riding;
        if (meanMps > FASTEST_MEAN_MPS) {
            notes.found(
                    "faster-than-cycling",
                    String.format(
                            Locale.ROOT,
                            "The mean speed is %.0f km/h, more than any bicycle ride: was this a motor vehicle?",
                            meanMps * 3.6));
        }
    }

    private void reportClimb() {
        double[] altitude = table.column(Channel.ALTITUDE);
        if (altitude == null) {
            return;
        }
        double[] climbed = climbedUpTo(altitude);
        double most = 0;
        for (int row = CLIMB_SECONDS; row < climbed.length; row++) {
            most = Math.max(most, climbed[row] - climbed[row - CLIMB_SECONDS]);
        }
        if (most > MOST_CLIMBED_M) {
            notes.found(
                    "climbs-faster-than-cycling",
                    String.format(
                            Locale.ROOT,
                            "The altitude gains %,.0f m within 20 min, more than any rider climbs: the ascent is not "
                                    + "to be believed.",
                            most));
        }
    }

    /** Metres climbed up to each row while the timer ran, without rises smaller than the noise. */
    private double[] climbedUpTo(double[] altitude) {
        double[] climbed = new double[altitude.length];
        double total = 0;
        double lowest = Double.NaN;
        for (int row = 0; row < altitude.length; row++) {
            double metres = table.isPaused(row) ? Double.NaN : altitude[row];
            if (table.isPaused(row) || Double.isNaN(lowest) || metres < lowest) {
                lowest = metres;
            } else if (metres - lowest >= LEAST_RISE_M) {
                total += metres - lowest;
                lowest = metres;
            }
            climbed[row] = total;
        }
        return climbed;
    }
}
