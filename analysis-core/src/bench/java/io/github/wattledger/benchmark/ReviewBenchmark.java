package io.github.wattledger.benchmark;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.rider.Rider;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The whole review of a recording from decoded samples on, on five shapes of power. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(3)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class ReviewBenchmark {
    private static final Rider RIDER = Rider.UNKNOWN
            .withThresholdPowerW(SeededRide.THRESHOLD_POWER_W)
            .withThresholdHeartRateBpm(SeededRide.THRESHOLD_HEART_RATE_BPM);

    /** The power of the ride. */
    @Param
    public PowerShape shape = PowerShape.FOREST_ROADS;

    private Recording recording = Recording.of(Samples.builder().build());

    /** Samples as a reader hands them over. */
    @Setup
    public void prepare() {
        recording = SeededRecording.of(shape.ride());
    }

    @Benchmark
    public RideReview review() {
        return Reviewer.review(recording, RIDER, ReviewOptions.WHOLE_RIDE);
    }
}
