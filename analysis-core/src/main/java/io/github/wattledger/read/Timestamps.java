package io.github.wattledger.read;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.OptionalLong;

/** Reads points in time as ISO 8601 writes them; shared by the text formats and by readers of one's own. */
public final class Timestamps {
    /** A date and hours and minutes are needed for a point in time: {@code 2024-05-04T07:00}. */
    private static final int SHORTEST = 16;

    private static final int LONGEST = 40;
    private static final int DATE_LENGTH = 10;

    private Timestamps() {}

    /**
     * Seconds since 1970-01-01T00:00:00Z, fractions cut off; empty when the text is no point in time. A blank may stand
     * for the {@code T}. A time without zone is taken as UTC; {@link #hasZone} says which it is.
     */
    public static OptionalLong epochSecond(String text) {
        String iso = text.strip();
        if (iso.length() < SHORTEST || iso.length() > LONGEST) {
            return OptionalLong.empty();
        }
        if (iso.charAt(DATE_LENGTH) == ' ') {
            iso = iso.substring(0, DATE_LENGTH) + 'T' + iso.substring(DATE_LENGTH + 1);
        }
        try {
            return OptionalLong.of(
                    hasZone(iso)
                            ? OffsetDateTime.parse(iso).toEpochSecond()
                            : LocalDateTime.parse(iso).toEpochSecond(ZoneOffset.UTC));
        } catch (DateTimeException e) {
            return OptionalLong.empty();
        }
    }

    /** Whether a point in time says its zone: it ends in {@code Z} or in an offset such as {@code +02:00}. */
    public static boolean hasZone(String text) {
        String iso = text.strip();
        int time = Math.min(iso.length(), DATE_LENGTH);
        return iso.endsWith("Z") || iso.endsWith("z") || iso.indexOf('+', time) > 0 || iso.indexOf('-', time) > 0;
    }
}
