package io.github.wattledger.benchmark;

import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.season.BestEfforts;
import java.util.Set;
import java.util.TreeSet;
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
import org.openjdk.jmh.infra.Blackhole;

/**
 * The mean-maximal curve at the durations that a page and a season together ask for, on five shapes of power, against
 * the plain loop over running sums at the same durations.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(3)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class CurveBenchmark {
    /** The power of the ride. */
    @Param
    public PowerShape shape = PowerShape.FOREST_ROADS;

    private Ride ride = Ride.ofWatts();
    private int[] durations = {};

    /** The two must agree in every bit. */
    @Setup
    public void prepare() {
        ride = shape.ride();
        MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
        Set<Integer> asked = new TreeSet<>(curve.logSpacedSeconds());
        asked.addAll(BestEfforts.DURATIONS);
        durations = asked.stream()
                .mapToInt(Integer::intValue)
                .filter(seconds -> seconds <= ride.seconds())
                .toArray();
        double[] plain = plainLoop();
        for (int i = 0; i < durations.length; i++) {
            if (curve.bestWatts(durations[i]) != plain[i]) {
                throw new AssertionError("the two disagree at " + durations[i] + " s");
            }
        }
    }

    /** The curve is made and asked for power alone. */
    @Benchmark
    public void watts(Blackhole blackhole) {
        MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
        for (int seconds : durations) {
            blackhole.consume(curve.bestWatts(seconds));
        }
    }

    /** The curve is made and asked where each best lies and whether it may be low as well. */
    @Benchmark
    public void windows(Blackhole blackhole) {
        MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
        for (int seconds : durations) {
            blackhole.consume(curve.bestWindow(seconds));
        }
    }

    /** Every window of these lengths, compared one by one. */
    @Benchmark
    public double[] plainLoop() {
        long[] work = runningWork(ride.series(Channel.POWER));
        double[] best = new double[durations.length];
        for (int i = 0; i < durations.length; i++) {
            int seconds = durations[i];
            long most = 0;
            for (int start = 0; start + seconds < work.length; start++) {
                long joules = work[start + seconds] - work[start];
                if (joules > most) {
                    most = joules;
                }
            }
            best[i] = (double) most / seconds;
        }
        return best;
    }

    private static long[] runningWork(Series watts) {
        long[] work = new long[watts.size() + 1];
        for (int second = 0; second < watts.size(); second++) {
            work[second + 1] = work[second] + (watts.isMeasured(second) ? (long) watts.get(second) : 0);
        }
        return work;
    }
}
