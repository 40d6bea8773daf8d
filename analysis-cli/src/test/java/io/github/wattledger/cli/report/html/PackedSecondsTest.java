package io.github.wattledger.cli.report.html;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ride.Series;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Random;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PackedSecondsTest {
    private static byte[] unpacked(PackedSeconds packed) throws IOException {
        byte[] bytes = Base64.getDecoder().decode(packed.base64());
        try (GZIPInputStream gzip = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
            return gzip.readAllBytes();
        }
    }

    @Test
    void aDifferenceOfSevenBitsTakesAByteAndAGapIsNought() throws IOException {
        PackedSeconds packed = new PackedSeconds(5).add(Series.of(3, 3, Double.NaN, 1, 101), 1);
        // By the definition: +3 is 7, 0 is 1, missing is 0, -2 is 4, +100 is 201 = 73 + 128, then 1.
        assertThat(unpacked(packed)).containsExactly(7, 1, 0, 4, (byte) 201, 1);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void everyValueComesBackToWithinHalfAStep(long seed) throws IOException {
        Random random = new Random(seed);
        double step = 0.5;
        double[] values = random.doubles(2000, -50_000, 400_000).toArray();
        for (int i = 0; i < 300; i++) {
            values[random.nextInt(values.length)] = Double.NaN;
        }
        byte[] bytes = unpacked(new PackedSeconds(values.length).add(Series.of(values), step));
        int at = 0;
        long value = 0;
        for (double expected : values) {
            long code = 0;
            int shift = 0;
            int group;
            do {
                group = bytes[at++];
                code |= (long) (group & 127) << shift;
                shift += 7;
            } while ((group & 128) != 0);
            if (Double.isNaN(expected)) {
                assertThat(code).isZero();
            } else {
                value += code % 2 == 1 ? (code - 1) / 2 : -code / 2;
                assertThat(Math.abs(value * step - expected)).isLessThanOrEqualTo(step / 2);
            }
        }
        assertThat(at).isEqualTo(bytes.length);
    }
}
