package io.github.wattledger.benchmark;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.rider.Rider;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The whole review of a twelve-hour recording from decoded samples on, and beside it the curve alone: all the rest
 * together should take no longer than the curve.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(3)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class ReviewBenchmark {
    private static final Rider RIDER = Rider.UNKNOWN
            .withThresholdPowerW(SeededRide.THRESHOLD_POWER_W)
            .withThresholdHeartRateBpm(SeededRide.THRESHOLD_HEART_RATE_BPM);

    private Recording recording = Recording.of(Samples.builder().build());
    private Ride ride = Ride.ofWatts();

    /** Samples as a reader hands them over, and the ride they become. */
    @Setup
    public void prepare() {
        recording = SeededRecording.twelveHours();
        ride = review().ride();
    }

    @Benchmark
    public RideReview review() {
        return Reviewer.review(recording, RIDER, ReviewOptions.WHOLE_RIDE);
    }

    @Benchmark
    public MeanMaximalCurve curveAlone() {
        return MeanMaximalCurve.of(ride);
    }
}
