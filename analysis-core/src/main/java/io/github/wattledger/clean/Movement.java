package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.SecondState;

/** Makes speed and distance agree, and finds the seconds in which the rider stood with the timer running. */
final class Movement {
    private static final double STANDING_MPS = 0.8;
    private static final int SHORTEST_STOP_SECONDS = 3;

    private final SecondTable table;
    private final Notes notes;

    private Movement(SecondTable table, Notes notes) {
        this.table = table;
        this.notes = notes;
    }

    static void complete(SecondTable table, Notes notes) {
        Movement movement = new Movement(table, notes);
        movement.deriveSpeed();
        movement.deriveDistance();
        movement.markStops();
    }

    private void deriveSpeed() {
        double[] distance = table.column(Channel.DISTANCE);
        if (table.has(Channel.SPEED) || distance == null) {
            return;
        }
        double[] speed = table.columnOrNew(Channel.SPEED);
        for (int row = 1; row < speed.length; row++) {
            if (!table.isPaused(row)) {
                speed[row] = distance[row] - distance[row - 1];
            }
        }
        notes.found("speed-from-distance", "There is no speed; it is taken from the distance.");
    }

    private void deriveDistance() {
        double[] speed = table.column(Channel.SPEED);
        if (table.has(Channel.DISTANCE) || speed == null) {
            return;
        }
        double[] distance = table.columnOrNew(Channel.DISTANCE);
        double covered = 0;
        for (int row = 0; row < distance.length; row++) {
            covered += Double.isNaN(speed[row]) ? 0 : speed[row];
            distance[row] = covered;
        }
        notes.found("distance-from-speed", "There is no distance; it is summed up from the speed.");
    }

    private void markStops() {
        double[] speed = table.column(Channel.SPEED);
        if (speed == null) {
            return;
        }
        double[] watts = table.column(Channel.POWER);
        int from = 0;
        for (int row = 0; row <= speed.length; row++) {
            boolean stands = row < speed.length
                    && table.state(row) == SecondState.RIDING
                    && speed[row] < STANDING_MPS
                    && !(watts != null && watts[row] > 0);
            if (!stands) {
                if (row - from >= SHORTEST_STOP_SECONDS) {
                    for (int k = from; k < row; k++) {
                        table.setState(k, SecondState.STOPPED);
                    }
                }
                from = row + 1;
            }
        }
    }
}
