package io.github.wattledger.cli.fuzz;

import io.github.wattledger.cli.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tools.jackson.databind.JsonNode;

/**
 * Sends a file through the commands, within this process, and checks what comes back. A review as JSON is made of every
 * file; which of the other reports are made beside it is chosen by chance.
 */
final class WholePath {
    private static final int DONE = 0;
    private static final int WRONG_USAGE = 2;
    private static final int UNREADABLE = 3;
    private static final int FILES_SKIPPED = 4;

    /** Each so many outputs are checked against their schema. */
    private static final int SCHEMA_EVERY = 20;

    private static final List<String> FINDINGS =
            List.of("over-hard-start", "energy-crash", "fade", "surges", "drift", "stopped-time", "late-reserve");

    private static final String PROFILE = """
            mass_kg = 74
            bike_mass_kg = 11
            maximum_heart_rate_bpm = 184

            [[thresholds]]
            from = 2020-01-01
            power_w = 240
            heart_rate_bpm = 165

            [judgement]
            stop_seconds = 20
            """;

    private final Path folder;
    private final Random random;
    private final Promises promises = new Promises();
    private final List<String> commands = new ArrayList<>();
    private final List<String> rider;

    private WholePath(Path folder, Random random) throws IOException {
        this.folder = folder;
        this.random = random;
        this.rider = rider();
    }

    /** What became of a file. */
    enum Fate {
        REFUSED,
        /** With a note of the reader or of the cleaning. */
        NOTED,
        /** With at least one sample changed. */
        REPAIRED,
        UNTOUCHED,
        /** A promise was broken. */
        BROKEN
    }

    /**
     * What became of a file.
     *
     * @param broken a line for each broken promise
     * @param commands the commands in their order
     */
    record Result(Fate fate, List<String> broken, List<String> commands) {}

    /**
     * Checks one file.
     *
     * @param folder an empty folder to write to
     * @param sound the file before it was changed
     * @param random chooses the commands
     */
    static Result check(Path folder, Path file, Path sound, Random random) throws IOException {
        WholePath path = new WholePath(folder, random);
        Fate fate = path.review(file);
        path.others(file, sound, fate == Fate.REFUSED);
        List<String> broken = path.promises.broken();
        return new Result(broken.isEmpty() ? fate : Fate.BROKEN, broken, path.commands);
    }

    /**
     * Checks a season of a folder of files, read and then asked again from the store.
     *
     * @param temporary an empty folder to write to
     */
    static Result season(Path temporary, Path files, Random random) throws IOException {
        WholePath path = new WholePath(temporary, random);
        path.season(files);
        List<String> broken = path.promises.broken();
        return new Result(broken.isEmpty() ? Fate.UNTOUCHED : Fate.BROKEN, broken, path.commands);
    }

    private List<String> rider() throws IOException {
        return switch (random.nextInt(3)) {
            case 0 -> List.of();
            case 1 -> List.of("--threshold-power", "240", "--threshold-heart-rate", "165", "--mass", "74");
            default ->
                List.of(
                        "--rider",
                        Files.writeString(folder.resolve("rider.toml"), PROFILE).toString());
        };
    }

    private Outcome run(String command, Object... words) {
        List<String> all = new ArrayList<>(List.of(command));
        for (Object word : words) {
            if (word instanceof List<?> several) {
                several.forEach(each -> all.add(String.valueOf(each)));
            } else {
                all.add(String.valueOf(word));
            }
        }
        commands.add("wattledger " + String.join(" ", all));
        Outcome outcome = Outcome.of(all.toArray(new String[0]));
        boolean isDone = outcome.status() == DONE || (command.equals("season") && outcome.status() == FILES_SKIPPED);
        if (isDone) {
            promises.expect(outcome.err().isEmpty(), "a message beside a report: " + outcome.err());
        } else {
            promises.expect(outcome.out().isEmpty(), "a report beside a message");
            boolean isUsage = outcome.status() == WRONG_USAGE && command.equals("what-if");
            promises.expect(
                    isUsage || outcome.status() == UNREADABLE,
                    "status " + outcome.status() + " of " + commands.get(commands.size() - 1) + ": " + outcome.err());
            promises.message(command, outcome.err(), isUsage ? 2 : 1);
        }
        return outcome;
    }

    private String schema(String name) {
        return random.nextInt(SCHEMA_EVERY) == 0 ? name : "";
    }

    private Fate review(Path file) {
        List<String> effort = random.nextBoolean() ? List.of("--effort", "race") : List.of();
        Outcome json = run("review", file, rider, effort, "--format", "json");
        if (json.status() != DONE) {
            promises.expect(
                    json.err().contains(String.valueOf(file.getFileName())),
                    "a message without the file: " + json.err());
            return Fate.REFUSED;
        }
        JsonNode review = promises.json(json.out(), schema("review"));
        RideTotals totals = new RideTotals(promises);
        totals.review(review);
        if (random.nextInt(3) == 0) {
            promises.text(done(run("review", file, rider, effort)));
        }
        if (random.nextInt(5) == 0) {
            promises.page(done(run("review", file, rider, effort, "--format", "html")));
        }
        if (random.nextInt(5) == 0) {
            totals.seconds(done(run("review", file, "--format", "csv")), review);
        }
        if (random.nextInt(20) == 0) {
            String finding = FINDINGS.get(random.nextInt(FINDINGS.size()));
            promises.text(done(run("review", file, rider, effort, "--explain", finding)));
        }
        JsonNode quality = review.path("quality");
        if (quality.path("repairedSamples").asInt(0) > 0) {
            return Fate.REPAIRED;
        }
        return quality.path("notes").isEmpty() ? Fate.UNTOUCHED : Fate.NOTED;
    }

    /** The output of a report of a file that was reviewed before, which must be done, too. */
    private String done(Outcome outcome) {
        promises.expect(outcome.status() == DONE, "JSON is given, but not " + commands.get(commands.size() - 1));
        return outcome.out();
    }

    private void others(Path file, Path sound, boolean isRefused) {
        if (random.nextInt(5) == 0) {
            inspect(file, isRefused);
        }
        if (random.nextInt(5) == 0) {
            whatIf(file);
        }
        if (random.nextInt(isRefused ? 30 : 7) == 0) {
            compare(file, sound);
        }
    }

    private void inspect(Path file, boolean isRefused) {
        boolean isText = random.nextBoolean();
        Outcome outcome = run("inspect", file, "--format", isText ? "text" : "json");
        promises.expect(isRefused || outcome.status() == DONE, "reviewed, but not inspected: " + outcome.err());
        if (outcome.status() == DONE && isText) {
            promises.text(outcome.out());
        } else if (outcome.status() == DONE) {
            promises.json(outcome.out(), schema("inspection"));
        }
    }

    private void whatIf(Path file) {
        List<List<String>> changes = List.of(
                List.of("--with-mass", "70"),
                List.of("--with-position", "drops"),
                List.of("--with-power", "+5%"),
                List.of("--with-rolling-resistance", "-0.001"),
                List.of("--with-temperature", "30", "--with-drag-area", "-0.02"));
        List<String> change = changes.get(random.nextInt(changes.size()));
        boolean isText = random.nextBoolean();
        Outcome outcome = run("what-if", file, change, "--format", isText ? "text" : "json");
        if (outcome.status() == DONE && isText) {
            promises.text(outcome.out());
        } else if (outcome.status() == DONE) {
            promises.json(outcome.out(), schema("what-if"));
        }
    }

    private void compare(Path file, Path sound) {
        boolean isFirst = random.nextBoolean();
        String format = List.of("text", "json", "html").get(random.nextInt(3));
        Outcome outcome = run("compare", isFirst ? file : sound, isFirst ? sound : file, "--format", format);
        if (outcome.status() != DONE) {
            return;
        }
        switch (format) {
            case "text" -> promises.text(outcome.out());
            case "json" -> promises.json(outcome.out(), schema("compare"));
            default -> promises.page(outcome.out());
        }
    }

    private void season(Path files) {
        Path store = folder.resolve("store.sqlite");
        List<Object> words = List.of(files, "--store", store, "--workers", "1");
        List<String> threshold = random.nextBoolean() ? List.of() : List.of("--threshold-power", "250");
        Outcome first = run("season", words, threshold, "--format", "json");
        promises.json(first.out(), random.nextInt(4) == 0 ? "season" : "");
        Outcome again = run("season", words, threshold, "--format", "json");
        promises.expect(again.equals(first), "a season from its store is another one");
        if (random.nextInt(2) == 0) {
            promises.text(run("season", words, threshold).out());
        }
        if (random.nextInt(3) == 0) {
            promises.page(run("season", words, threshold, "--format", "html").out());
        }
        if (random.nextInt(4) == 0) {
            run("season", words, "--threshold-power", "200", "--tables", folder.resolve("tables"));
        }
        if (random.nextInt(10) == 0) {
            run("season", words, threshold, "--pages", folder.resolve("pages"));
        }
    }
}
