package io.github.wattledger.table;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import java.util.Locale;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** The seconds of a ride as a table. */
public final class RideTable {
    private RideTable() {}

    /**
     * One row for each second of the ride: the second, counted from 0, its state, and every channel that was measured. A
     * channel's column has its name in lower case with its unit in brackets. What was not measured is missing.
     */
    public static Table of(Ride ride) {
        Table table = Table.create("seconds");
        IntColumn seconds = IntColumn.create("second");
        StringColumn states = StringColumn.create("state");
        for (int second = 0; second < ride.seconds(); second++) {
            seconds.append(second);
            states.append(ride.state(second).name().toLowerCase(Locale.ROOT));
        }
        table.addColumns(seconds, states);
        for (Channel channel : ride.channels()) {
            String unit = channel.unit().isEmpty() ? "" : " [" + channel.unit() + "]";
            table.addColumns(DoubleColumn.create(
                    channel.label() + unit, ride.series(channel).toArray()));
        }
        return table;
    }
}
