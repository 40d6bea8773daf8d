package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import java.util.Arrays;

/**
 * Replaces single samples of altitude, speed, temperature, cadence and position that their channel cannot give: outside
 * what exists, or further from the samples around them than a bicycle gets in the time.
 */
final class ChannelRepair {
    /** The shore of the Dead Sea lies at about -430 m, the highest summit at 8,849 m. */
    private static final Limit ALTITUDE = new Limit(
            Channel.ALTITUDE, -500, 9000, 8, "altitude-spikes", "outside -500 to 9,000 m, or over 8 m in a second");

    /** Full braking on a dry road stays under 1 g; no rider accelerates as fast. */
    private static final Limit SPEED = new Limit(
            Channel.SPEED,
            0,
            DistanceRepair.TOP_SPEED_MPS,
            8,
            "speed-spikes",
            "below 0, over 130 km/h, or 8 m/s off within a second");

    /** Beyond any weather that is ridden in; a device in the sun may read over 50. Real devices change by 2 in a second. */
    private static final Limit TEMPERATURE = new Limit(
            Channel.TEMPERATURE, -50, 65, 5, "temperature-spikes", "outside -50 to 65 °C, or over 5 °C in a second");

    /** Sprinters on the track reach some 170 (common knowledge of the trade). Sensors leap, so that no rate is known. */
    private static final double HIGHEST_CADENCE_RPM = 200;

    private static final double METRES_PER_DEGREE = 111_320;

    private final SecondTable table;
    private final Notes notes;

    private ChannelRepair(SecondTable table, Notes notes) {
        this.table = table;
        this.notes = notes;
    }

    /** What a channel can give: the range, the most by which it changes in a second, and how a repair is called. */
    private record Limit(Channel channel, double low, double high, double perSecond, String code, String words) {}

    static void repair(SecondTable table, Notes notes) {
        ChannelRepair repair = new ChannelRepair(table, notes);
        repair.repair(ALTITUDE);
        repair.repair(SPEED);
        repair.repair(TEMPERATURE);
        repair.repairCadence();
        repair.repairPosition();
    }

    private void repair(Limit limit) {
        double[] column = table.column(limit.channel());
        if (column == null) {
            return;
        }
        int[] measured = Columns.measuredRows(column);
        double[] inRange = withinRange(column, limit);
        int[] possible = Columns.measuredRows(inRange);
        Believed believed = Believed.among(possible, new Step(inRange, limit.perSecond()));
        int[] kept = believed.believedRows();
        int replaced = measured.length - kept.length;
        if (replaced == 0 && limit.channel() != Channel.ALTITUDE) {
            return;
        }
        double[] values = Arrays.stream(kept).mapToDouble(row -> inRange[row]).toArray();
        if (limit.channel() == Channel.ALTITUDE) {
            levelSteps(believed, values);
        }
        Columns.replace(column, measured, kept, values);
        if (replaced > 0) {
            notes.repaired(
                    limit.code(),
                    replaced,
                    Notes.count(replaced, limit.channel().label() + " sample") + " replaced by the values around "
                            + (replaced == 1 ? "it" : "them") + " (" + limit.words() + ").");
        }
        if (kept.length == 0) {
            table.drop(limit.channel());
        }
    }

    /** What a channel can do: a change needs its time. */
    private static final class Step implements Believed.Step {
        private final double[] values;
        private final double perSecond;
        private final SpareSecond time;

        Step(double[] values, double perSecond) {
            this.values = values;
            this.perSecond = perSecond;
            this.time = new SpareSecond(values.length, false);
        }

        @Override
        public boolean isPossible(int fromRow, int toRow) {
            return Math.abs(values[toRow] - values[fromRow]) <= perSecond * time.mostSeconds(fromRow, toRow);
        }

        @Override
        public void believe(int previousRow, int row) {
            double change = previousRow < 0 ? 0 : Math.abs(values[row] - values[previousRow]);
            time.believe(previousRow, row, change / perSecond);
        }
    }

    /** A copy without the values that do not exist. */
    private static double[] withinRange(double[] column, Limit limit) {
        double[] inRange = column.clone();
        for (int row = 0; row < inRange.length; row++) {
            if (!(inRange[row] >= limit.low() && inRange[row] <= limit.high())) {
                inRange[row] = Double.NaN;
            }
        }
        return inRange;
    }

    /**
     * An altimeter that leaps and stays there was set anew: nothing was climbed. What came before moves by the leap, since
     * the later setting is the better one.
     */
    private void levelSteps(Believed believed, double[] altitudes) {
        int steps = 0;
        double shift = 0;
        for (int k = altitudes.length - 1; k > 0; k--) {
            boolean step = believed.startsStretch(k);
            double change = altitudes[k] - altitudes[k - 1];
            altitudes[k] += shift;
            if (step) {
                shift += change;
                steps++;
            }
        }
        if (altitudes.length > 0) {
            altitudes[0] += shift;
        }
        if (steps > 0) {
            notes.repaired(
                    "altitude-steps",
                    steps,
                    "The altitude leaps " + Notes.times(steps)
                            + " and stays there, as when an altimeter is set: the leap does not count as a climb.");
        }
    }

    private void repairCadence() {
        double[] cadence = table.column(Channel.CADENCE);
        if (cadence == null) {
            return;
        }
        int removed = 0;
        for (int row = 0; row < cadence.length; row++) {
            if (cadence[row] < 0 || cadence[row] > HIGHEST_CADENCE_RPM) {
                cadence[row] = Double.NaN;
                removed++;
            }
        }
        if (removed > 0) {
            notes.repaired(
                    "cadence-spikes",
                    removed,
                    Notes.count(removed, "cadence sample") + " set missing (below 0 or over 200 rpm).");
        }
    }

    private void repairPosition() {
        double[] latitude = table.column(Channel.LATITUDE);
        double[] longitude = table.column(Channel.LONGITUDE);
        if (latitude == null || longitude == null) {
            return;
        }
        int[] measured = rowsWithFix(latitude, longitude);
        Believed believed = Believed.among(measured, (from, to) -> {
            double metres = metres(latitude[from], longitude[from], latitude[to], longitude[to]);
            return metres <= DistanceRepair.TOP_SPEED_MPS * (to - from + 1);
        });
        int[] kept = believed.believedRows();
        int next = 0;
        int removed = 0;
        for (int row = 0; row < latitude.length; row++) {
            if (next < kept.length && kept[next] == row) {
                next++;
            } else if (!Double.isNaN(latitude[row]) && !Double.isNaN(longitude[row])) {
                latitude[row] = Double.NaN;
                longitude[row] = Double.NaN;
                removed++;
            }
        }
        if (removed > 0) {
            notes.repaired(
                    "position-spikes",
                    removed,
                    Notes.count(removed, "position") + " set missing (no fix, or further than 130 km/h goes).");
        }
        if (kept.length == 0) {
            table.drop(Channel.LATITUDE);
            table.drop(Channel.LONGITUDE);
        }
    }

    private static int[] rowsWithFix(double[] latitude, double[] longitude) {
        double[] both = new double[latitude.length];
        for (int row = 0; row < both.length; row++) {
            // A receiver without a fix writes 0 degrees north and east, which is open sea.
            boolean noFix = latitude[row] == 0 && longitude[row] == 0;
            both[row] = noFix ? Double.NaN : latitude[row] + longitude[row];
        }
        return Columns.measuredRows(both);
    }

    /** Metres on a sphere between two near positions in degrees; exact enough to bound a speed. */
    private static double metres(double latitude1, double longitude1, double latitude2, double longitude2) {
        double north = (latitude2 - latitude1) * METRES_PER_DEGREE;
        double turn = Math.abs(longitude2 - longitude1);
        double east = Math.min(turn, 360 - turn) * METRES_PER_DEGREE * Math.cos(Math.toRadians(latitude1));
        return Math.hypot(north, east);
    }
}
