package io.github.wattledger.simulation;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.GZIPOutputStream;

/**
 * The rides in {@code sample-rides/season/}: ten weeks of the rider of the other samples, twelve rides. Four are small
 * invented races, begun much too hard at first and evenly at last; one evening holds a test of 20 minutes that the
 * threshold in the profile does not explain.
 */
public final class SeasonSamples {
    /** File name of the rider profile. */
    static final String PROFILE = "rider.toml";

    private static final String PROFILE_TEXT = """
            # The invented rider of these rides.
            mass_kg = 74
            bike_mass_kg = 11
            maximum_heart_rate_bpm = 184

            [[thresholds]]
            from = 2026-03-01
            power_w = 240
            heart_rate_bpm = 165
            """;

    private static final Weather SPRING = new Weather(1.23, 1.5, 240, 9, 17);

    private SeasonSamples() {}

    /** All files by name; rides are FIT within gzip. */
    static Map<String, byte[]> files() {
        Map<String, byte[]> files = new TreeMap<>();
        rides().forEach((name, scenario) -> files.put(name + ".fit.gz", gzip(fit(scenario))));
        files.put(PROFILE, PROFILE_TEXT.getBytes(StandardCharsets.UTF_8));
        return files;
    }

    /** The rides in time order. */
    static Map<String, Scenario> rides() {
        Map<String, Scenario> rides = new LinkedHashMap<>();
        loop(rides, "2026-04-05", "long-loop", PacingPlan.steady(160));
        evening(rides, "2026-04-08", "evening", PacingPlan.steady(150));
        evening(rides, "2026-04-15", "evening", PacingPlan.steady(175));
        loop(rides, "2026-04-19", "first-race", PacingPlan.startThenRest(252, 3000, 176));
        evening(rides, "2026-04-23", "evening", PacingPlan.steady(140));
        loop(rides, "2026-05-02", "second-race", PacingPlan.startThenRest(245, 2400, 188));
        evening(rides, "2026-05-06", "evening", PacingPlan.steady(155));
        add(
                rides,
                "2026-05-13",
                "twenty-minute-test",
                "T01:30:00Z",
                EbbwoodCourse.testLoop(),
                PacingPlan.startThenRest(272, 1260, 130));
        loop(rides, "2026-05-17", "third-race", PacingPlan.startThenRest(222, 1800, 206));
        evening(rides, "2026-05-21", "evening", PacingPlan.steady(150));
        loop(rides, "2026-05-31", "fourth-race", PacingPlan.steady(211));
        evening(rides, "2026-06-10", "evening", PacingPlan.steady(145));
        return rides;
    }

    private static void loop(Map<String, Scenario> rides, String day, String name, PacingPlan plan) {
        add(rides, day, name, "T16:00:00Z", EbbwoodCourse.trainingLoop(), plan.onTerrain(1.6));
    }

    private static void evening(Map<String, Scenario> rides, String day, String name, PacingPlan plan) {
        // 18:30 on the rider's clock is the next day by UTC.
        add(rides, day, name, "T01:30:00Z", EbbwoodCourse.eveningLoop(), plan);
    }

    private static void add(
            Map<String, Scenario> rides, String day, String name, String time, Course course, PacingPlan plan) {
        Instant start = Instant.parse(day + time);
        boolean nextDayByUtc = time.startsWith("T0");
        rides.put(
                day + "-" + name,
                Scenario.of(course, SimulatedRider.ordinary(), plan)
                        .withWeather(SPRING)
                        .withStyle(RidingStyle.FOREST_ROAD, 100 + rides.size())
                        .startingAt(nextDayByUtc ? start.plusSeconds(86_400) : start));
    }

    private static byte[] fit(Scenario scenario) {
        return FitRideWriter.write(SensorNoise.ordinary(200 + scenario.seed()).record(RoadSimulation.ride(scenario)));
    }

    private static byte[] gzip(byte[] content) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }
}
