package io.github.wattledger.benchmark;

import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
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

/** The exact mean-maximal curve of a twelve-hour ride against the plain double loop over running sums. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(3)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class CurveBenchmark {
    private Ride ride = Ride.ofWatts();

    /** The ride with its six channels; its missing seconds make the curve look for bests that they lowered. */
    @Setup
    public void prepare() {
        ride = SeededRide.twelveHours();
        MeanMaximalCurve curve = curve();
        double[] plain = plainLoop();
        for (int seconds = 1; seconds <= plain.length; seconds++) {
            if (curve.watts(seconds) != plain[seconds - 1]) {
                throw new AssertionError("the two disagree at " + seconds + " s");
            }
        }
    }

    @Benchmark
    public MeanMaximalCurve curve() {
        return MeanMaximalCurve.of(ride);
    }

    /** Every window of every length, compared one by one. */
    @Benchmark
    public double[] plainLoop() {
        long[] work = runningWork(ride.series(Channel.POWER));
        double[] best = new double[work.length - 1];
        for (int seconds = 1; seconds < work.length; seconds++) {
            long most = 0;
            for (int start = 0; start + seconds < work.length; start++) {
                long joules = work[start + seconds] - work[start];
                if (joules > most) {
                    most = joules;
                }
            }
            best[seconds - 1] = (double) most / seconds;
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
