package io.github.wattledger.testing;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Recording;

/** What every reader promises whatever the bytes are: a result within the limits or one line, within five seconds. */
public final class FuzzedReading {
    private static final long MOST_NANOS = 5_000_000_000L;

    /** Small, so that no find needs a large file. */
    public static final ReadOptions OPTIONS =
            ReadOptions.DEFAULT.withLimits(new ReadLimits(1_000_000, 50_000, 20, 4_000_000));

    /** The same limits for a format by itself. */
    public static final ReadRequest REQUEST = ReadRequest.DEFAULT.withLimits(OPTIONS.limits());

    private FuzzedReading() {}

    /** A reading that may fail with the one exception. */
    public interface Reading {
        /** Reads. */
        ReadResult read() throws UnreadableRideException;
    }

    /** Checks the promises. */
    public static void check(Reading reading) {
        long start = System.nanoTime();
        try {
            ReadResult result = reading.read();
            long samples = 0;
            for (Recording recording : result.recordings()) {
                assertThat(recording.samples().size()).isPositive();
                samples += recording.samples().size();
            }
            assertThat(samples).isLessThanOrEqualTo(OPTIONS.limits().maximumSamples());
            for (ReadNote note : result.notes()) {
                assertIsOneLine(note.text());
            }
        } catch (UnreadableRideException e) {
            assertIsOneLine(String.valueOf(e.getMessage()));
        }
        assertThat(System.nanoTime() - start).isLessThan(MOST_NANOS);
    }

    private static void assertIsOneLine(String text) {
        assertThat(text).isNotBlank();
        assertThat(text.chars().anyMatch(Character::isISOControl)).as(text).isFalse();
    }
}
