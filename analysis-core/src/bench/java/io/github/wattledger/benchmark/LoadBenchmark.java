package io.github.wattledger.benchmark;

import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.ZoneScheme;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
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
 * All load numbers of a twelve-hour ride against one loop that does the same work without the metrics' own methods: what
 * pure functions, one a metric, cost over a single pass.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(3)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class LoadBenchmark {
    private Ride ride = Ride.ofWatts();

    /** The same ride for both, which must agree on it. */
    @Setup
    public void prepare() {
        ride = SeededRide.twelveHours();
        RideLoad load = load();
        OnePass pass = onePass();
        requireEqual("normalizedPowerW", load.normalizedPowerW(), pass.normalizedPowerW);
        requireEqual("workKJ", load.workKJ(), pass.workKJ);
        requireEqual("trainingStress", load.trainingStress(), pass.trainingStress);
        requireEqual("distanceM", load.distanceM(), pass.distanceM);
        requireEqual("maximumHeartRateBpm", load.maximumHeartRateBpm(), pass.maximumHeartRateBpm);
        requireEqual("ascentM", load.ascentM(), pass.ascentM);
        requireEqual("averageHeartRateBpm", load.averageHeartRateBpm(), pass.averageHeartRateBpm);
        requireEqual("averageCadenceRpm", load.averageCadenceRpm(), pass.averageCadenceRpm);
        requireEqual("decouplingPercent", load.decouplingPercent(), pass.decouplingPercent);
        for (int zone = 0; zone < load.powerZones().size(); zone++) {
            requireEqual("power zone", (double) load.powerZones().get(zone).seconds(), pass.powerZoneSeconds[zone]);
        }
        for (int zone = 0; zone < load.heartRateZones().size(); zone++) {
            requireEqual(
                    "heart-rate zone", (double) load.heartRateZones().get(zone).seconds(), pass.heartZoneSeconds[zone]);
        }
    }

    @Benchmark
    public RideLoad load() {
        return RideLoad.of(
                ride,
                SeededRide.THRESHOLD_POWER_W,
                SeededRide.THRESHOLD_HEART_RATE_BPM,
                ZoneScheme.POWER_SEVEN_LEVELS,
                ZoneScheme.HEART_RATE_FIVE_LEVELS);
    }

    /** Everything in one loop (after counting the timer seconds, which the halves need), plain sums. */
    @Benchmark
    public OnePass onePass() {
        return new OnePass(ride);
    }

    private static void requireEqual(String name, @Nullable Double ours, double other) {
        if (ours == null || !(Math.abs(ours - other) <= 1e-9 * Math.abs(other))) {
            throw new AssertionError(name + " " + ours + " and " + other);
        }
    }

    /** The reference and its result. */
    public static final class OnePass {
        final double workKJ;
        final double normalizedPowerW;
        final double averageHeartRateBpm;
        final double maximumHeartRateBpm;
        final double averageCadenceRpm;
        final double distanceM;
        final double ascentM;
        final double trainingStress;
        final double decouplingPercent;
        final int[] powerZoneSeconds =
                new int[ZoneScheme.POWER_SEVEN_LEVELS.zones().size()];
        final int[] heartZoneSeconds =
                new int[ZoneScheme.HEART_RATE_FIVE_LEVELS.zones().size()];

        OnePass(Ride ride) {
            Series power = ride.series(Channel.POWER);
            Series heartRate = ride.series(Channel.HEART_RATE);
            Series cadence = ride.series(Channel.CADENCE);
            Series distance = ride.series(Channel.DISTANCE);
            Series altitude = ride.series(Channel.ALTITUDE);
            double[] powerFrom = bounds(ZoneScheme.POWER_SEVEN_LEVELS, SeededRide.THRESHOLD_POWER_W);
            double[] heartFrom = bounds(ZoneScheme.HEART_RATE_FIVE_LEVELS, SeededRide.THRESHOLD_HEART_RATE_BPM);
            int half = (ride.seconds() - ride.countSeconds(SecondState.PAUSED)) / 2;
            Window whole = new Window();
            Window[] halves = {new Window(), new Window()};
            double joules = 0;
            int powerSeconds = 0;
            double beats = 0;
            int beatSeconds = 0;
            double[] halfBeats = new double[2];
            int[] halfBeatSeconds = new int[2];
            double mostBeats = 0;
            double turns = 0;
            int turnSeconds = 0;
            double firstMetre = Double.NaN;
            double lastMetre = Double.NaN;
            double climbed = 0;
            double low = Double.POSITIVE_INFINITY;
            double high = 0;
            boolean rising = false;
            int timer = 0;
            for (int second = 0; second < ride.seconds(); second++) {
                if (ride.state(second) == SecondState.PAUSED) {
                    continue;
                }
                int which = timer < half ? 0 : 1;
                timer++;
                double watts = power.get(second);
                if (!Double.isNaN(watts)) {
                    joules += watts;
                    powerSeconds++;
                    whole.add(watts);
                    halves[which].add(watts);
                    powerZoneSeconds[zone(powerFrom, watts)]++;
                }
                double bpm = heartRate.get(second);
                if (!Double.isNaN(bpm)) {
                    beats += bpm;
                    beatSeconds++;
                    halfBeats[which] += bpm;
                    halfBeatSeconds[which]++;
                    mostBeats = Math.max(mostBeats, bpm);
                    heartZoneSeconds[zone(heartFrom, bpm)]++;
                }
                if (cadence.get(second) > 0) {
                    turns += cadence.get(second);
                    turnSeconds++;
                }
                double metre = distance.get(second);
                if (!Double.isNaN(metre)) {
                    firstMetre = Double.isNaN(firstMetre) ? metre : firstMetre;
                    lastMetre = metre;
                }
                double height = altitude.get(second);
                if (!Double.isNaN(height)) {
                    if (rising) {
                        high = Math.max(high, height);
                        if (height <= high - 3) {
                            climbed += high - low;
                            rising = false;
                            low = height;
                        }
                    } else {
                        low = Math.min(low, height);
                        if (height >= low + 3) {
                            rising = true;
                            high = height;
                        }
                    }
                }
            }
            workKJ = joules / 1000;
            normalizedPowerW = whole.normalizedPowerW();
            averageHeartRateBpm = beats / beatSeconds;
            maximumHeartRateBpm = mostBeats;
            averageCadenceRpm = turns / turnSeconds;
            distanceM = lastMetre - firstMetre;
            ascentM = rising ? climbed + high - low : climbed;
            trainingStress = powerSeconds * Math.pow(normalizedPowerW / SeededRide.THRESHOLD_POWER_W, 2) / 36;
            double first = halves[0].normalizedPowerW() / (halfBeats[0] / halfBeatSeconds[0]);
            double second = halves[1].normalizedPowerW() / (halfBeats[1] / halfBeatSeconds[1]);
            decouplingPercent = (first - second) / first * 100;
        }

        private static double[] bounds(ZoneScheme scheme, double threshold) {
            return scheme.zones().stream()
                    .mapToDouble(zone -> zone.fromFraction() * threshold)
                    .toArray();
        }

        private static int zone(double[] from, double reading) {
            int zone = from.length - 1;
            while (zone > 0 && reading < from[zone]) {
                zone--;
            }
            return zone;
        }
    }

    private static final class Window {
        private final double[] watts = new double[30];
        private int count;
        private double sum;
        private double fourthPowers;

        void add(double power) {
            int slot = count % 30;
            sum += power - watts[slot];
            watts[slot] = power;
            count++;
            if (count >= 30) {
                double square = sum / 30 * (sum / 30);
                fourthPowers += square * square;
            }
        }

        double normalizedPowerW() {
            return Math.pow(fourthPowers / (count - 29), 0.25);
        }
    }
}
