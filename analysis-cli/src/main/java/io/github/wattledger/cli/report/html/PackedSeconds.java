package io.github.wattledger.cli.report.html;

import io.github.wattledger.ride.Series;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.function.IntToDoubleFunction;
import java.util.zip.GZIPOutputStream;

/**
 * Channels of one value a second, made small: each value is rounded to its step, and written as the difference from the
 * measured one before it. A difference d becomes the number 2d + 1 when it is 0 or above and -2d when it is below, in
 * groups of seven bits, the lowest first, with the eighth bit set on all but the last; 0 is "not measured". The channels
 * follow one another; the whole is compressed by gzip and written as base64. The page's script reads it again.
 */
final class PackedSeconds {
    private static final int LOW_BITS = 0x7F;
    private static final int MORE = 0x80;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final int seconds;

    PackedSeconds(int seconds) {
        this.seconds = seconds;
    }

    /**
     * Adds a channel.
     *
     * @param step what values are rounded to, in the channel's unit
     */
    PackedSeconds add(Series values, double step) {
        return add(values::get, step);
    }

    /** Adds a channel from its values; {@code NaN} is "not measured". */
    PackedSeconds add(IntToDoubleFunction values, double step) {
        long before = 0;
        for (int second = 0; second < seconds; second++) {
            double value = values.applyAsDouble(second);
            if (Double.isNaN(value)) {
                bytes.write(0);
                continue;
            }
            long now = Math.round(value / step);
            long difference = now - before;
            write(difference >= 0 ? 2 * difference + 1 : -2 * difference);
            before = now;
        }
        return this;
    }

    private void write(long number) {
        long rest = number;
        while (rest > LOW_BITS) {
            bytes.write((int) (rest & LOW_BITS) | MORE);
            rest >>>= 7;
        }
        bytes.write((int) rest);
    }

    String base64() {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            bytes.writeTo(gzip);
        } catch (IOException e) {
            throw new UncheckedIOException("memory cannot fail to be written to", e);
        }
        return Base64.getEncoder().encodeToString(packed.toByteArray());
    }
}
