package io.github.wattledger.benchmark;

import io.github.wattledger.course.Route;
import io.github.wattledger.plan.PlanOptions;
import io.github.wattledger.plan.PlanRider;
import io.github.wattledger.plan.RacePlan;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A whole plan for 300 km of hills with 12,000 points: smoothing, target, table, ride, range and mistakes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class PlanBenchmark {
    private static final int POINTS = 12_001;
    private static final double SPACING_M = 25;
    private static final PlanRider RIDER =
            PlanRider.of(RigChoice.ofNoRide(75.0, 9.0, 0.36, 0.007, Position.HOODS), 250);

    private final RouteLine line = new RouteLine(
            "Hills",
            Series.generate(POINTS, i -> 0.4 * Math.cos(2 * Math.PI * i / (POINTS - 1))),
            Series.generate(POINTS, i -> 0.4 * Math.sin(2 * Math.PI * i / (POINTS - 1))),
            Series.generate(POINTS, i -> 300 + 30 * Math.sin(i / 25.0) + 40 * Math.sin(i / 83.0)),
            Series.generate(POINTS, i -> i * SPACING_M),
            List.of(),
            false);

    @Benchmark
    public RacePlan plan() {
        return RacePlan.of(Route.of(line), RIDER, PlanOptions.DEFAULT);
    }
}
