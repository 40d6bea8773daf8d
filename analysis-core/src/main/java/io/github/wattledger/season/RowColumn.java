package io.github.wattledger.season;

import java.sql.SQLException;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A column of a table of the store: one declaration for the schema, for writing a row and for reading it.
 *
 * @param <S> what a row is made from
 * @param <T> the type of the values
 * @param name the column's name, with its unit at the end
 * @param type its type in SQL, with NOT NULL where a value is never missing
 * @param value takes the value from what a row is made from; null where it is missing
 * @param reader reads the value by the column's name; null for NULL
 */
record RowColumn<S, T>(String name, String type, Function<S, @Nullable T> value, Reader<T> reader) {
    /** Reads a value of a row by the name of its column. */
    @FunctionalInterface
    interface Reader<T> {
        @Nullable T read(StoreRow row, String name) throws SQLException;
    }

    /** Text, or NULL. */
    static <S> RowColumn<S, String> text(String name, Function<S, @Nullable String> value) {
        return new RowColumn<>(name, "TEXT", value, StoreRow::text);
    }

    /** A whole number, or NULL. */
    static <S> RowColumn<S, Integer> whole(String name, Function<S, @Nullable Integer> value) {
        return new RowColumn<>(name, "INTEGER", value, StoreRow::whole);
    }

    /** A whole number that may need more than 32 bits, or NULL. */
    static <S> RowColumn<S, Long> large(String name, Function<S, @Nullable Long> value) {
        return new RowColumn<>(name, "INTEGER", value, StoreRow::large);
    }

    /** A real number, or NULL. */
    static <S> RowColumn<S, Double> real(String name, Function<S, @Nullable Double> value) {
        return new RowColumn<>(name, "REAL", value, StoreRow::real);
    }

    /** Makes a column that refuses a row where its value is missing. */
    static <S, T> RowColumn<S, T> required(RowColumn<S, T> column) {
        return new RowColumn<>(column.name, column.type + " NOT NULL", column.value, column.reader);
    }

    /** Its declaration in the schema. */
    String declaration() {
        return name + " " + type;
    }

    /** The value that is written for a row; null where it is missing. */
    @Nullable Object of(S source) {
        return value.apply(source);
    }

    /** The value in a row that was read; null where it is missing. */
    @Nullable T orNull(StoreRow row) throws SQLException {
        return reader.read(row, name);
    }

    /** The value in a row of a column that is never NULL. */
    T in(StoreRow row) throws SQLException {
        return StoreRow.required(reader.read(row, name));
    }
}
