package io.github.wattledger.simulation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Writes a rider's decade into a folder, for measurements: arguments are the folder and the number of rides. Each ride
 * is simulated on its own course length and power; about one in eight is long. See {@code docs/benchmarks.md}.
 */
public final class SimulatedDecade {
    private static final Instant FIRST = Instant.parse("2016-01-02T08:00:00Z");
    private static final int DAYS = 3650;

    private SimulatedDecade() {}

    /** Writes the files. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 2) {
            throw new IllegalArgumentException("expected two arguments, the folder to write to and how many rides");
        }
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        int count = Integer.parseInt(arguments[1]);
        List<IOException> failures = new ArrayList<>();
        IntStream.range(0, count).parallel().forEach(i -> {
            try {
                write(folder, i, count);
            } catch (IOException e) {
                synchronized (failures) {
                    failures.add(e);
                }
            }
        });
        if (!failures.isEmpty()) {
            throw failures.get(0);
        }
    }

    private static void write(Path folder, int index, int count) throws IOException {
        Random chance = new Random(4711L * index);
        boolean isLong = chance.nextInt(8) == 0;
        double kilometres = isLong ? 80 + chance.nextInt(80) : 20 + chance.nextInt(45);
        double watts = 120 + chance.nextInt(110);
        Course course = Course.rolling(kilometres * 1000, 30 + chance.nextInt(60), 3000, 0.008);
        Instant start = FIRST.plusSeconds(86_400L * DAYS * index / count + chance.nextInt(6 * 3600));
        Scenario scenario = Scenario.of(
                        course,
                        SimulatedRider.ordinary(),
                        PacingPlan.steady(watts).onTerrain(1.5))
                .withStyle(RidingStyle.FOREST_ROAD, index)
                .startingAt(start);
        byte[] file = FitRideWriter.write(SensorNoise.ordinary(index).record(RoadSimulation.ride(scenario)));
        Path year = Files.createDirectories(folder.resolve(start.toString().substring(0, 4)));
        Files.write(year.resolve(String.format(Locale.ROOT, "%05d.fit", index)), file);
    }
}
