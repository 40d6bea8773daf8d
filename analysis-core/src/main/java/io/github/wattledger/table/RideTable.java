package io.github.wattledger.table;

import io.github.wattledger.ride.Ride;
import tech.tablesaw.api.Table;

/** The seconds of a ride as a table. */
public final class RideTable {
    private RideTable() {}

    /**
     * One row for each second of the ride: the second, counted from 0, its state, and every channel that was measured. A
     * channel's column has its name in lower case with its unit in brackets. What was not measured is missing.
     *
     * @throws IllegalStateException when Tablesaw, an optional dependency, is not on the class path
     */
    public static Table of(Ride ride) {
        TableLibrary.require();
        return TableMaking.secondsOf(ride);
    }
}
