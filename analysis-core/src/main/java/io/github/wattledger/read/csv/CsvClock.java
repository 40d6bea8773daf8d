package io.github.wattledger.read.csv;

import io.github.wattledger.read.Timestamps;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the time column: points in time of ISO 8601, seconds or milliseconds since 1970, or seconds or
 * {@code h:mm:ss} since the start. The first cell that can be read decides which of these it is.
 */
final class CsvClock {
    private static final Pattern ELAPSED = Pattern.compile("(\\d{1,4}):(\\d{2})(?::(\\d{2})(?:[.,]\\d+)?)?");

    /** Smaller numbers count from the start of the ride: 1973 is before every bicycle computer. */
    private static final double LEAST_EPOCH_SECOND = 1e8;

    private static final double LEAST_EPOCH_MILLISECOND = 1e11;
    private static final double MOST_EPOCH_MILLISECOND = 1e14;

    /** What a time column holds. */
    enum Kind {
        /** Points in time with a zone. */
        ZONED,
        /** Points in time without a zone. */
        LOCAL,
        /** Seconds since 1970. */
        EPOCH_SECONDS,
        /** Milliseconds since 1970. */
        EPOCH_MILLISECONDS,
        /** Time since the start. */
        ELAPSED
    }

    private final double secondsPerUnit;
    private @Nullable Kind kind;

    CsvClock(String header) {
        String lower = header.replace(" ", "");
        secondsPerUnit = lower.endsWith("(ms)") || lower.endsWith("[ms]")
                ? 0.001
                : lower.endsWith("(min)") || lower.endsWith("[min]") ? 60 : 1;
    }

    /** What the column holds; null before the first cell that could be read. */
    @Nullable Kind kind() {
        return kind;
    }

    /** Seconds since 1970, or since the start for {@link Kind#ELAPSED}; empty when the cell is not what the others are. */
    OptionalLong seconds(String cell) {
        double number = CsvNumber.parse(cell);
        if (!Double.isNaN(number)) {
            return ofNumber(number);
        }
        Matcher elapsed = ELAPSED.matcher(cell);
        if (elapsed.matches()) {
            return as(Kind.ELAPSED, ofClock(elapsed));
        }
        OptionalLong time = Timestamps.epochSecond(cell);
        if (time.isEmpty()) {
            return time;
        }
        return as(Timestamps.hasZone(cell) ? Kind.ZONED : Kind.LOCAL, time.getAsLong());
    }

    private OptionalLong ofNumber(double number) {
        if (number >= LEAST_EPOCH_MILLISECOND && number < MOST_EPOCH_MILLISECOND) {
            return as(Kind.EPOCH_MILLISECONDS, (long) Math.floor(number / 1000));
        }
        if (number >= LEAST_EPOCH_SECOND && number < LEAST_EPOCH_MILLISECOND) {
            return as(Kind.EPOCH_SECONDS, (long) Math.floor(number));
        }
        if (number >= 0 && number < LEAST_EPOCH_SECOND) {
            return as(Kind.ELAPSED, (long) Math.floor(number * secondsPerUnit));
        }
        return OptionalLong.empty();
    }

    private static long ofClock(Matcher clock) {
        long first = Long.parseLong(clock.group(1));
        long second = Long.parseLong(clock.group(2));
        String third = clock.group(3);
        return third == null ? first * 60 + second : first * 3600 + second * 60 + Long.parseLong(third);
    }

    private OptionalLong as(Kind found, long seconds) {
        if (kind == null) {
            kind = found;
        }
        return kind == found ? OptionalLong.of(seconds) : OptionalLong.empty();
    }
}
