package io.github.wattledger.ride;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** When a ride began, on the rider's clock where the file knows it and in UTC otherwise. */
public final class StartTime {
    private static final int MOST_OFFSET_SECONDS = 18 * 3600; // the range of java.time.ZoneOffset

    private static final DateTimeFormatter ISO_UTC = format("uuuu-MM-dd'T'HH:mm:ss'Z'");
    private static final DateTimeFormatter ISO_LOCAL = format("uuuu-MM-dd'T'HH:mm:ssxxx");
    private static final DateTimeFormatter WORDS_UTC = format("uuuu-MM-dd HH:mm 'UTC'");
    private static final DateTimeFormatter WORDS_CLOCK = format("uuuu-MM-dd HH:mm '(zone not known)'");
    private static final DateTimeFormatter WORDS_LOCAL = format("uuuu-MM-dd HH:mm '(UTC'xxx')'");

    private final OffsetDateTime start;
    private final boolean isLocal;

    private StartTime(OffsetDateTime start, boolean isLocal) {
        this.start = start;
        this.isLocal = isLocal;
    }

    private static DateTimeFormatter format(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ROOT);
    }

    /**
     * A start.
     *
     * @param instant the moment
     * @param utcOffsetSeconds local time minus UTC; when it is null, not whole minutes or beyond 18 hours, UTC is shown
     */
    public static StartTime of(Instant instant, @Nullable Integer utcOffsetSeconds) {
        boolean isUsable = utcOffsetSeconds != null
                && utcOffsetSeconds % 60 == 0
                && Math.abs((long) utcOffsetSeconds) <= MOST_OFFSET_SECONDS;
        return utcOffsetSeconds == null || !isUsable
                ? new StartTime(instant.atOffset(ZoneOffset.UTC), false)
                : new StartTime(instant.atOffset(ZoneOffset.ofTotalSeconds(utcOffsetSeconds)), true);
    }

    /**
     * ISO 8601 with seconds, for instance {@code 2026-06-14T07:00:12+03:00} or {@code 2026-06-14T04:00:12Z}; null for a
     * recording without dates, whose start nobody knows.
     */
    public @Nullable String iso() {
        return !isKnown() ? null : (isLocal ? ISO_LOCAL : ISO_UTC).format(start);
    }

    /**
     * In words where the recording does not say in which zone its clock ran, for instance {@code
     * 2026-06-14 04:00 (zone not known)}.
     */
    public String wordsOfClock() {
        return isKnown() ? WORDS_CLOCK.format(start) : words();
    }

    /**
     * In words, for instance {@code 2026-06-14 07:00 (UTC+03:00)} or {@code 2026-06-14 04:00 UTC}. Of a recording without
     * dates they say that its start is not known.
     */
    public String words() {
        return !isKnown() ? "start time not known" : (isLocal ? WORDS_LOCAL : WORDS_UTC).format(start);
    }

    private boolean isKnown() {
        return Recording.isDated(start.toEpochSecond());
    }
}
