package io.github.wattledger.table;

import java.time.LocalDate;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/**
 * A column of a season's table, whatever the table is made with.
 *
 * @param <T> what a row is about
 * @param name as in the JSON report, the unit last
 * @param kind of which kind the values are
 * @param value the value in a row, null where it is not known
 */
record SeasonColumn<T>(String name, Kind kind, Function<T, @Nullable Object> value) {
    /** What a column holds. */
    enum Kind {
        /** {@link LocalDate}. */
        DAY,
        /** {@link String}. */
        TEXT,
        /** {@link Integer}. */
        WHOLE_NUMBER,
        /** {@link Double}. */
        NUMBER,
        /** {@link Boolean}. */
        YES_OR_NO
    }

    static <T> SeasonColumn<T> day(String name, Function<T, LocalDate> day) {
        return new SeasonColumn<>(name, Kind.DAY, day::apply);
    }

    static <T> SeasonColumn<T> text(String name, Function<T, @Nullable String> text) {
        return new SeasonColumn<>(name, Kind.TEXT, text::apply);
    }

    static <T> SeasonColumn<T> wholeNumber(String name, ToIntFunction<T> number) {
        return new SeasonColumn<>(name, Kind.WHOLE_NUMBER, number::applyAsInt);
    }

    /** A number that was made as a real one and has no decimals. */
    static <T> SeasonColumn<T> wholeNumberOf(String name, Function<T, @Nullable Double> number) {
        return new SeasonColumn<>(name, Kind.WHOLE_NUMBER, row -> {
            Double value = number.apply(row);
            return value == null ? null : value.intValue();
        });
    }

    static <T> SeasonColumn<T> number(String name, Function<T, @Nullable Double> number) {
        return new SeasonColumn<>(name, Kind.NUMBER, number::apply);
    }

    static <T> SeasonColumn<T> yesOrNo(String name, Predicate<T> answer) {
        return new SeasonColumn<>(name, Kind.YES_OR_NO, answer::test);
    }
}
