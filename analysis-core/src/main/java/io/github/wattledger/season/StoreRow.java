package io.github.wattledger.season;

import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A row that a query gave. Each of its values was read once, so that a row which is both summed and taken apart costs no
 * more than one of them.
 */
final class StoreRow {
    private final Columns columns;
    private final @Nullable Object[] values;

    private StoreRow(Columns columns, @Nullable Object[] values) {
        this.columns = columns;
        this.values = values;
    }

    /** The columns of a query, which all its rows share. */
    static final class Columns {
        private final Map<String, Integer> places = new HashMap<>();
        private final int count;

        Columns(ResultSetMetaData query) throws SQLException {
            this.count = query.getColumnCount();
            for (int place = 0; place < count; place++) {
                places.put(query.getColumnName(place + 1), place);
            }
        }

        /** The row on which the answer of the query stands. */
        StoreRow read(ResultSet answer) throws SQLException {
            @Nullable Object[] values = new Object[count];
            for (int place = 0; place < count; place++) {
                values[place] = answer.getObject(place + 1);
            }
            return new StoreRow(this, values);
        }
    }

    /** How many values it has. */
    int size() {
        return values.length;
    }

    /** Where a column is, from 0; -1 where the query has no column of that name. */
    int placeOf(String column) {
        return columns.places.getOrDefault(column, -1);
    }

    /** The value in a place, from 0; null for NULL. */
    @Nullable Object at(int place) {
        return values[place];
    }

    /**
     * The value of a column, or null for NULL.
     *
     * @throws SQLException when the query has no such column
     */
    @Nullable Object value(String column) throws SQLException {
        int place = placeOf(column);
        if (place < 0) {
            throw new SQLException("the store has no column " + column);
        }
        return values[place];
    }

    /** The text of a column, or null for NULL. */
    @Nullable String text(String column) throws SQLException {
        Object value = value(column);
        return value == null ? null : value.toString();
    }

    /** The whole number of a column, or null for NULL. */
    @Nullable Integer whole(String column) throws SQLException {
        Number number = number(column);
        return number == null ? null : (Integer) number.intValue();
    }

    /** The whole number of a column that may need more than 32 bits, or null for NULL. */
    @Nullable Long large(String column) throws SQLException {
        Number number = number(column);
        return number == null ? null : (Long) number.longValue();
    }

    /** The real number of a column, or null for NULL. */
    @Nullable Double real(String column) throws SQLException {
        Number number = number(column);
        return number == null ? null : (Double) number.doubleValue();
    }

    /**
     * The bytes of a column that is never NULL.
     *
     * @throws SQLException when it holds something else
     */
    byte[] bytes(String column) throws SQLException {
        if (value(column) instanceof byte[] bytes) {
            return bytes;
        }
        throw new SQLException("a value of the store in the column " + column + " is not of bytes");
    }

    private @Nullable Number number(String column) throws SQLException {
        Object value = value(column);
        if (value == null || value instanceof Number) {
            return (Number) value;
        }
        throw new SQLException("a value of the store in the column " + column + " is no number");
    }

    /**
     * What a column that is never NULL gives.
     *
     * @throws SQLException when it is missing all the same
     */
    static <T> T required(@Nullable T value) throws SQLException {
        if (value == null) {
            throw new SQLException("a value of the store is missing");
        }
        return value;
    }
}
