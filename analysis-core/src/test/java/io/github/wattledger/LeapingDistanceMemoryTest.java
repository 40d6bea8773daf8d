package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.rider.Rider;
import java.lang.management.ManagementFactory;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The memory of a review follows what was ridden, not the numbers of the file. */
class LeapingDistanceMemoryTest {
    private static final int RECORDS = 110;

    /** The largest distance of a FIT record: 2^32 - 2 of 1/100 m (public FIT profile). */
    private static final double LARGEST_M = 42_949_672.94;

    /** One double for each 25 m of the largest distance, the grid of a course. */
    private static final double ONE_NODE_EACH_25_M_BYTES = LARGEST_M / 25 * Double.BYTES;

    private static Recording recording(int secondsApart, IntToDoubleFunction metres) {
        Samples.Builder samples = Samples.builder();
        for (int i = 0; i < RECORDS; i++) {
            samples.at(1_781_413_200L + (long) i * secondsApart)
                    .set(Channel.DISTANCE, metres.applyAsDouble(i))
                    .set(Channel.ALTITUDE, 100 + i % 20)
                    .set(Channel.POWER, 200)
                    .set(Channel.SPEED, 8);
        }
        return Recording.of(samples.build());
    }

    private static long allocatedBytes(Recording recording) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        // Once before, so that classes are loaded.
        Reviewer.review(recording, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
        long before = threads.getCurrentThreadAllocatedBytes();
        Reviewer.review(recording, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
        return threads.getCurrentThreadAllocatedBytes() - before;
    }

    /**
     * Records a second apart or ten that leap together, once, to and fro, and at the end. What may be needed beyond an
     * honest ride of the same seconds is the notes and the repair, for which as much again is ample; that is far below
     * one number for each 25 m of the distance in the file.
     */
    @ParameterizedTest
    @CsvSource({
        "1, each", "1, once", "1, every-other", "1, last",
        "10, each", "10, once", "10, every-other", "10, last"
    })
    void aLeapTakesNoMemory(int secondsApart, String leap) {
        long honest = allocatedBytes(recording(secondsApart, i -> 8.0 * i * secondsApart));
        long leaping = allocatedBytes(recording(secondsApart, i -> switch (leap) {
            case "each" -> LARGEST_M / (RECORDS - 1) * i;
            case "once" -> i < RECORDS / 2 ? 8.0 * i * secondsApart : LARGEST_M - 8.0 * (RECORDS - i) * secondsApart;
            case "every-other" -> i % 2 == 0 ? 8.0 * i * secondsApart : LARGEST_M;
            default -> i < RECORDS - 1 ? 8.0 * i * secondsApart : LARGEST_M;
        }));
        assertThat((double) honest).isLessThan(ONE_NODE_EACH_25_M_BYTES / 4);
        assertThat(leaping).isLessThan(2 * honest + 200_000);
    }

    /**
     * Six hours between two records leave time for any distance of the field. Even then a node each 25 m is for what
     * 130 km/h, the limit of the cleaning, covers in the time: altitude and grade, while they are fitted and in the course.
     */
    @Test
    void aWayThatTimeAllowsIsBoundedByTheTopSpeed() {
        int secondsApart = 6 * 3600;
        long honest = allocatedBytes(recording(secondsApart, i -> 8.0 * i));
        long leaping = allocatedBytes(recording(secondsApart, i -> LARGEST_M / (RECORDS - 1) * i));
        double mostNodes = 130 / 3.6 * RECORDS * secondsApart / 25;
        assertThat((double) leaping - honest).isLessThan(mostNodes * 4 * Double.BYTES);
    }
}
