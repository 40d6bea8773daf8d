package io.github.wattledger.cli.report;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * When a ride began, on the rider's clock where the file knows it and in UTC otherwise. Written by hand because the
 * formatters of the platform take longer to load than a report takes to write.
 */
public final class StartTime {
    private static final int MOST_OFFSET_SECONDS = 18 * 3600; // the range of java.time.ZoneOffset

    private static final int FIRST_YEAR = 1973;

    private final LocalDateTime local;
    private final @Nullable Integer offsetMinutes;

    private StartTime(LocalDateTime local, @Nullable Integer offsetMinutes) {
        this.local = local;
        this.offsetMinutes = offsetMinutes;
    }

    /**
     * A start.
     *
     * @param instant the moment
     * @param utcOffsetSeconds local time minus UTC; when null, not whole minutes or beyond 18 hours, UTC is shown
     */
    public static StartTime of(Instant instant, @Nullable Integer utcOffsetSeconds) {
        boolean usable = utcOffsetSeconds != null
                && utcOffsetSeconds % 60 == 0
                && Math.abs((long) utcOffsetSeconds) <= MOST_OFFSET_SECONDS;
        if (utcOffsetSeconds == null || !usable) {
            return new StartTime(LocalDateTime.ofEpochSecond(instant.getEpochSecond(), 0, ZoneOffset.UTC), null);
        }
        long localSecond = instant.getEpochSecond() + utcOffsetSeconds;
        return new StartTime(LocalDateTime.ofEpochSecond(localSecond, 0, ZoneOffset.UTC), utcOffsetSeconds / 60);
    }

    /** ISO 8601 with seconds, for instance {@code 2026-06-14T07:00:12+03:00} or {@code 2026-06-14T04:00:12Z}. */
    public String iso() {
        return date() + "T" + time() + ":" + two(local.getSecond()) + (offsetMinutes == null ? "Z" : offset());
    }

    /**
     * In words, for instance {@code 2026-06-14 07:00 (UTC+03:00)} or {@code 2026-06-14 04:00 UTC}. A start before any
     * bicycle computer is that of a recording without dates, whose start nobody knows.
     */
    public String words() {
        if (local.getYear() < FIRST_YEAR) {
            return "start time not known";
        }
        return date() + " " + time() + (offsetMinutes == null ? " UTC" : " (UTC" + offset() + ")");
    }

    private String date() {
        return local.toLocalDate().toString();
    }

    private String time() {
        return two(local.getHour()) + ":" + two(local.getMinute());
    }

    private String offset() {
        int minutes = offsetMinutes == null ? 0 : offsetMinutes;
        int size = Math.abs(minutes);
        return (minutes < 0 ? "-" : "+") + two(size / 60) + ":" + two(size % 60);
    }

    private static String two(int number) {
        return number < 10 ? "0" + number : Integer.toString(number);
    }
}
