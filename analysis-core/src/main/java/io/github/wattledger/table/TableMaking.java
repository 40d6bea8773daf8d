package io.github.wattledger.table;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.season.SeasonReview;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tech.tablesaw.api.BooleanColumn;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/**
 * Fills tables of the library.
 *
 * <p>It stands apart from the public doors since Java may look for the library's classes as soon as a class that uses them
 * is loaded: the doors must first be able to say that the library is missing.
 */
final class TableMaking {
    private TableMaking() {}

    static <T> Table of(SeasonLayout<T> layout, SeasonReview season) {
        List<T> rows = layout.rows().apply(season);
        Table table = Table.create(layout.name());
        for (SeasonColumn<T> column : layout.columns()) {
            Column<?> filled = empty(column);
            for (T row : rows) {
                append(column.value().apply(row), filled);
            }
            table.addColumns(filled);
        }
        return table;
    }

    private static Column<?> empty(SeasonColumn<?> column) {
        return switch (column.kind()) {
            case DAY -> DateColumn.create(column.name());
            case TEXT -> StringColumn.create(column.name());
            case WHOLE_NUMBER -> IntColumn.create(column.name());
            case NUMBER -> DoubleColumn.create(column.name());
            case YES_OR_NO -> BooleanColumn.create(column.name());
        };
    }

    private static void append(@Nullable Object value, Column<?> column) {
        if (value == null) {
            column.appendMissing();
        } else {
            column.appendObj(value);
        }
    }

    static Table secondsOf(Ride ride) {
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
