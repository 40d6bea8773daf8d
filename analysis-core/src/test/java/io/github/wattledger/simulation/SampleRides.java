package io.github.wattledger.simulation;

import io.github.wattledger.ride.Interval;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;

/**
 * The rides in {@code sample-rides/}: one rider in one invented race, begun too hard and paced evenly, and one ordinary
 * ride with broken sensors. The program writes them, and those of {@link SeasonSamples}, into the folder that is its
 * argument.
 */
public final class SampleRides {
    /** The course of the race as a file without times. */
    static final String COURSE = "ebbwood-165.gpx";

    /** File name of the race begun too hard. */
    public static final String OVER_HARD_START = "over-hard-start.fit";
    /** File name of the race paced evenly. */
    public static final String EVEN_PACED = "even-paced.fit";
    /** File name of the ride with broken sensors that ends within a message. */
    public static final String DAMAGED = "damaged.fit";

    /** The first sample of the damaged ride that is not whole. */
    static final int DAMAGED_CUT_SAMPLE = 9600;
    /** How far the clock of the damaged ride is set back. */
    static final int DAMAGED_CLOCK_BACK_S = 15;

    private static final Weather RACE_DAY = new Weather(1.21, 2.0, 260, 12, 25);
    private static final Instant TRAINING_START = Instant.parse("2026-05-30T16:05:00Z");
    private static final Scenario.LeadIn LEAD_IN = new Scenario.LeadIn(90, 725);
    private static final double GROUP_SECONDS = 70 * 60;
    private static final double GROUP_W = 243;
    private static final double AFTER_GROUP_W = 174;
    private static final double EVEN_W = 187;

    private SampleRides() {}

    /** Writes the files. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("expected one argument, the folder to write to");
        }
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        for (Map.Entry<String, byte[]> file : files().entrySet()) {
            Files.write(folder.resolve(file.getKey()), file.getValue());
        }
        Files.write(folder.resolve(COURSE), CourseFileWriter.ebbwood());
        Path season = Files.createDirectories(folder.resolve("season"));
        for (Map.Entry<String, byte[]> file : SeasonSamples.files().entrySet()) {
            Files.write(season.resolve(file.getKey()), file.getValue());
        }
    }

    /** All files by name. */
    static Map<String, byte[]> files() {
        Map<String, byte[]> files = new TreeMap<>();
        files.put(OVER_HARD_START, FitRideWriter.write(overHardStart()));
        files.put(EVEN_PACED, FitRideWriter.write(evenPaced()));
        files.put(DAMAGED, FitRideWriter.writeCutShort(damaged(), DAMAGED_CUT_SAMPLE));
        return files;
    }

    /** Seventy minutes with the fast group, and what becomes of it. */
    public static RideTape overHardStart() {
        PacingPlan group = PacingPlan.startThenRest(GROUP_W, GROUP_SECONDS, AFTER_GROUP_W)
                .onTerrain(2.2)
                .withSurges(0, GROUP_SECONDS, 300, 25, 345)
                .withSurges(GROUP_SECONDS, 5 * 3600, 1500, 12, 320);
        Scenario scenario = race(group)
                .withHalts(
                        LEAD_IN,
                        new Scenario.Stop(EbbwoodCourse.FIRST_FEED_M, 240, true),
                        new Scenario.Stop(EbbwoodCourse.SECOND_FEED_M, 150, false));
        SensorNoise sensors = SensorNoise.ordinary(11).withPowerDropouts(new Interval(14_400, 14_445));
        return sensors.record(RoadSimulation.ride(scenario));
    }

    /** The same race at what seven hours allow. */
    public static RideTape evenPaced() {
        Scenario scenario = race(PacingPlan.steady(EVEN_W).onTerrain(1.6))
                .withHalts(
                        LEAD_IN,
                        new Scenario.Stop(EbbwoodCourse.FIRST_FEED_M, 90, true),
                        new Scenario.Stop(EbbwoodCourse.SECOND_FEED_M, 45, false));
        return SensorNoise.ordinary(12).withWorkCounter().record(RoadSimulation.ride(scenario));
    }

    /** An ordinary ride, whole, with everything that sensors and a recorder's clock can do to it. */
    public static RideTape damaged() {
        Scenario scenario = Scenario.of(
                        EbbwoodCourse.trainingLoop(),
                        SimulatedRider.ordinary(),
                        PacingPlan.steady(165).onTerrain(2))
                .withWeather(RACE_DAY)
                .withStyle(RidingStyle.FOREST_ROAD, 3)
                .startingAt(TRAINING_START);
        RideTape whole = SensorNoise.ordinary(13).record(RoadSimulation.ride(scenario));
        SensorFaults faults = new SensorFaults(whole)
                .powerSpike(900, 2874)
                .powerSpike(2413, 3351)
                .powerSpike(5120, 4095)
                .heartRateStuck(1800, 180)
                .heartRate(3000, 20, 0)
                .heartRate(3600, 45, Double.NaN)
                .powerDropout(4200, 120)
                .clockSetBack(6600, DAMAGED_CLOCK_BACK_S);
        for (int index = 7200; index < 7320; index += 15) {
            faults.repeatedTimestamp(index);
        }
        return whole.withSamples(faults.samples());
    }

    private static Scenario race(PacingPlan plan) {
        return Scenario.of(EbbwoodCourse.race(), SimulatedRider.ordinary(), plan)
                .withWeather(RACE_DAY)
                .withStyle(RidingStyle.FOREST_ROAD, 7);
    }
}
