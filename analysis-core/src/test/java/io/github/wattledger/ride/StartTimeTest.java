package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StartTimeTest {
    private static final Instant START = Instant.parse("2026-06-14T04:00:12Z");

    @Test
    void theRidersClockIsShownWhereTheFileKnowsIt() {
        assertThat(StartTime.of(START, 10_800).iso()).isEqualTo("2026-06-14T07:00:12+03:00");
        assertThat(StartTime.of(START, 10_800).words()).isEqualTo("2026-06-14 07:00 (UTC+03:00)");
    }

    @Test
    void elseItIsUtc() {
        assertThat(StartTime.of(START, null).iso()).isEqualTo("2026-06-14T04:00:12Z");
        assertThat(StartTime.of(START, null).words()).isEqualTo("2026-06-14 04:00 UTC");
    }

    /** Against the platform's own formatter. */
    @ParameterizedTest
    @ValueSource(ints = {3_600, -12_600, 20_700, -43_200, 64_800})
    void isoAgreesWithThePlatform(int offsetSeconds) {
        String expected =
                DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(START.atOffset(ZoneOffset.ofTotalSeconds(offsetSeconds)));
        assertThat(StartTime.of(START, offsetSeconds).iso()).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(ints = {61, -30, 64_860, Integer.MIN_VALUE, Integer.MAX_VALUE})
    void anOffsetThatCannotBeIsNotShown(int offsetSeconds) {
        assertThat(StartTime.of(START, offsetSeconds).iso()).isEqualTo("2026-06-14T04:00:12Z");
    }

    /** A table without dates counts from 0: nobody rode on the first of January 1970. */
    @Test
    void aStartThatNobodyKnowsIsNotOf1970() {
        StartTime start = StartTime.of(Instant.ofEpochSecond(5), null);
        assertThat(start.words()).isEqualTo("start time not known");
        assertThat(start.iso()).isNull();
    }
}
