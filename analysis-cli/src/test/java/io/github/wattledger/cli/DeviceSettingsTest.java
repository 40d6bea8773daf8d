package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A wrong setting of a device is never the user's wrong usage, and every command treats it alike. */
class DeviceSettingsTest {
    private static final Instant MORNING = Instant.parse("2026-06-15T08:00:00Z");

    @TempDir
    Path temp;

    private static Outcome ok(String... words) {
        Outcome outcome = Outcome.of(words);
        assertThat(outcome.err()).doesNotContain("expected").doesNotContain("failure");
        assertThat(outcome.status()).isZero();
        return outcome;
    }

    private static JsonNode json(String... words) {
        return JsonMapper.shared()
                .readTree(ok(Stream.concat(Stream.of(words), Stream.of("--format", "json"))
                                .toArray(String[]::new))
                        .out());
    }

    private static List<String> codes(JsonNode notes) {
        return notes.values().stream().map(note -> note.get("code").asString()).toList();
    }

    @Test
    void aThresholdThatNobodyCanHaveIsIgnoredWithANote() {
        String file = DeviceRide.write(temp.resolve("ride.fit"), MORNING, 5, 72).toString();
        JsonNode review = json("review", file);
        assertThat(review.get("rider").get("thresholdPowerSource").asString()).isEqualTo("estimated");
        // At threshold, training stress is 100 an hour; nobody rides an hour and a half much beyond it.
        assertThat(review.get("load").get("trainingStress").asDouble()).isLessThan(200);
        assertThat(codes(review.get("quality").get("notes"))).contains("device-threshold-power-ignored");
        assertThat(unwrapped(ok("review", file).out())).contains("a threshold power of 5 W, outside 30 to 700 W");
    }

    @Test
    void aMassThatNobodyCanHaveIsIgnoredWithANote() {
        String file =
                DeviceRide.write(temp.resolve("ride.fit"), MORNING, 250, 10).toString();
        assertThat(codes(json("review", file).get("quality").get("notes"))).contains("device-mass-ignored");
        assertThat(unwrapped(ok("review", file).out())).contains("a mass of the rider of 10 kg, outside 25 to 250 kg");
        String[] whatIf = {"what-if", file, "--with-mass", "-3"};
        assertThat(codes(json(whatIf).get("notes"))).containsExactly("device-mass-ignored");
        assertThat(unwrapped(ok(whatIf).out()))
                .contains("a mass of the rider of 10 kg, outside 25 to 250 kg", "rider 75 kg");
        assertThat(codes(json("what-if", file, "--mass", "70", "--with-mass", "-3")
                        .get("notes")))
                .isEmpty();
    }

    /** Both within their bounds: 25 kg is the lightest rider, 4 kg the lightest bicycle. */
    @Test
    void theLightestRiderMayRideTheLightestBicycle() throws IOException {
        Path folder = Files.createDirectory(temp.resolve("rides"));
        String file =
                DeviceRide.write(folder.resolve("ride.fit"), MORNING, 250, 72).toString();
        String profile = Files.writeString(folder.resolve("rider.toml"), """
                        mass_kg = 25
                        bike_mass_kg = 4
                        """).toString();
        assertThat(ok("review", file, "--rider", profile, "--effort", "race").out())
                .contains("rider 25 kg, bicycle 4 kg");
        ok("what-if", file, "--rider", profile, "--with-drag-area", "-10%");
        assertThat(ok("season", folder.toString()).out()).contains(": 1 ride,");
    }

    /** 05:00 UTC is 22:00 of the day before in Los Angeles (UTC-7 in June): the threshold of that day holds. */
    @Test
    void aSeasonsRowAndItsPageJudgeByTheThresholdOfOneDay() throws IOException {
        Path folder = Files.createDirectory(temp.resolve("rides"));
        DeviceRide.write(folder.resolve("night.fit"), Instant.parse("2026-06-15T05:00:00Z"), 5, 72);
        Files.writeString(folder.resolve("rider.toml"), """
                [[thresholds]]
                from = 2026-06-01
                power_w = 200

                [[thresholds]]
                from = 2026-06-15
                power_w = 280
                """);
        Path pages = temp.resolve("pages");
        String[] season = {"season", folder.toString(), "--zone", "America/Los_Angeles", "--pages", pages.toString()};
        JsonNode row = json(season).get("rides").get(0);
        assertThat(row.get("day").asString()).isEqualTo("2026-06-14");
        assertThat(row.get("thresholdPowerW").asDouble()).isEqualTo(200);
        String page;
        try (Stream<Path> files = Files.list(pages)) {
            page = Files.readString(files.filter(file -> !file.endsWith("index.html"))
                    .findFirst()
                    .orElseThrow());
        }
        assertThat(page).contains("200 W").doesNotContain("280 W");
    }

    /** The words of a report without its line ends. */
    private static String unwrapped(String report) {
        return report.replaceAll("\\s+", " ");
    }
}
