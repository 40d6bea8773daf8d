package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import java.util.Arrays;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Makes the distance one that can have been ridden: it never falls, and rises no faster than a bicycle goes. A single
 * bad sample is replaced by the values around it; a counter that was set back, or that leapt and stays where it leapt to,
 * goes on from where it was.
 */
final class DistanceRepair {
    /** 130 km/h: about the highest speed that riders reach on descents (common knowledge of the trade, no source). */
    static final double TOP_SPEED_MPS = 130 / 3.6;

    /** Longer than any ride and any leap of a counter; larger numbers would swallow the metres that are added to them. */
    private static final double LARGEST_M = 1e10;

    /** Share by which the device's own distance may differ before a note says so. */
    private static final double MOST_DIFFERENCE = 0.05;

    private static final double LEAST_DIFFERENCE_M = 100;

    private final double[] distance;
    private final double @Nullable [] speed;
    private final SpareSecond time;
    private int falls;
    private int leaps;
    private double leaptM;

    private DistanceRepair(double[] distance, double @Nullable [] speed) {
        this.distance = distance;
        this.speed = speed;
        this.time = new SpareSecond(distance.length, true);
    }

    static void repair(SecondTable table, Notes notes) {
        double[] distance = table.column(Channel.DISTANCE);
        if (distance != null) {
            boolean isLeft = new DistanceRepair(distance, table.column(Channel.SPEED)).repair(notes);
            if (!isLeft) {
                table.drop(Channel.DISTANCE);
            }
        }
    }

    /** Repairs, and says whether a distance is left. */
    private boolean repair(Notes notes) {
        for (int row = 0; row < distance.length; row++) {
            if (!Double.isFinite(distance[row])) {
                distance[row] = Double.NaN;
            }
        }
        int[] measured = Columns.measuredRows(distance);
        int[] possible = Arrays.stream(measured)
                .filter(row -> Math.abs(distance[row]) <= LARGEST_M)
                .toArray();
        Believed believed = Believed.among(possible, new Step());
        int[] kept = believed.believedRows();
        Columns.replace(distance, measured, kept, straightened(believed, kept));
        note(measured.length - kept.length, notes);
        return kept.length > 0 || measured.length == 0;
    }

    /** What a distance can do: it never falls, and needs its time. */
    private final class Step implements Believed.Step {
        @Override
        public boolean isPossible(int fromRow, int toRow) {
            double riddenM = distance[toRow] - distance[fromRow];
            return riddenM >= 0 && riddenM <= TOP_SPEED_MPS * time.mostSeconds(fromRow, toRow);
        }

        @Override
        public void believe(int previousRow, int row) {
            double riddenM = previousRow < 0 ? 0 : distance[row] - distance[previousRow];
            time.believe(previousRow, row, riddenM / TOP_SPEED_MPS);
        }
    }

    private double[] straightened(Believed believed, int[] kept) {
        double[] straight = new double[kept.length];
        double offset = 0;
        for (int k = 0; k < kept.length; k++) {
            double raw = distance[kept[k]];
            if (k > 0 && believed.startsStretch(k)) {
                double change = raw - distance[kept[k - 1]];
                double riddenM = 0;
                if (change < 0) {
                    falls++;
                } else {
                    leaps++;
                    riddenM = riddenAtSpeedM(kept[k - 1], kept[k]);
                    leaptM += change - riddenM;
                }
                offset = straight[k - 1] + riddenM - raw;
            }
            straight[k] = raw + offset;
        }
        return straight;
    }

    /** Metres that the speed gives for a step whose distance cannot be; 0 where there is no speed. */
    private double riddenAtSpeedM(int fromRow, int toRow) {
        if (speed == null || !(speed[toRow] >= 0 && speed[toRow] <= TOP_SPEED_MPS)) {
            return 0;
        }
        return speed[toRow] * Math.min(toRow - fromRow, Believed.LASTING_SAMPLES);
    }

    private void note(int doubted, Notes notes) {
        if (doubted > 0) {
            notes.repaired(
                    "distance-spikes",
                    doubted,
                    Notes.count(doubted, "distance sample")
                            + " replaced by the values around them (a fall and return, or faster than 130 km/h).");
        }
        if (falls > 0) {
            notes.repaired(
                    "distance-falls",
                    falls,
                    "The distance falls " + Notes.times(falls) + " and goes on from there; it is carried on instead.");
        }
        if (leaps > 0) {
            notes.repaired(
                    "distance-leaps",
                    leaps,
                    String.format(
                            Locale.ROOT,
                            "The distance leaps %s faster than 130 km/h, by %,.0f m in all; that is left out.",
                            Notes.times(leaps),
                            leaptM));
        }
    }

    /** Notes a device whose own distance is another one than its records give; nothing is changed. */
    static void compare(SecondTable table, @Nullable Double deviceM, Notes notes) {
        double[] distance = table.column(Channel.DISTANCE);
        if (distance == null || deviceM == null || deviceM <= 0) {
            return;
        }
        int[] rows = Columns.measuredRows(distance);
        if (rows.length < 2) {
            return;
        }
        double coveredM = distance[rows[rows.length - 1]] - distance[rows[0]];
        double difference = Math.abs(coveredM - deviceM);
        if (difference > Math.max(LEAST_DIFFERENCE_M, MOST_DIFFERENCE * deviceM)) {
            notes.found(
                    "distance-differs-from-device",
                    String.format(
                            Locale.ROOT,
                            "The records give %.1f km, the device itself says %.1f km; the records are used.",
                            coveredM / 1000,
                            deviceM / 1000));
        }
    }
}
