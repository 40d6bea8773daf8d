package io.github.wattledger.cli;

import io.github.wattledger.cli.report.html.HtmlComparison;
import io.github.wattledger.cli.report.text.TextComparison;
import io.github.wattledger.compare.Comparer;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.json.JsonDocument;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code wattledger compare}: where the time was won between rides over one course. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = "wattledger compare RIDE RIDE... [options]",
        header = "Shows where the time was won between rides over one course.",
        footer = {
            "",
            "The rides are aligned by position, or by distance where there is none. The gap",
            "is elapsed time, stops included; it begins with 0 where the compared part begins.",
            "",
            "Exit status: 0 done; 1 internal failure, or the report could not be",
            "written; 2 wrong usage; 3 a ride could not be read, or shares no course",
            "with the first."
        })
final class CompareCommand implements Callable<Integer> {
    private static final int MOST_RIDES = 20;

    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            index = "0..*",
            arity = "0..*",
            paramLabel = "RIDE",
            description = "Recorded files, two or more. Each is compared with the first.")
    private List<String> rides = List.of();

    @Option(
            names = "--from",
            paramLabel = "KM|MI",
            converter = OptionValues.Distance.class,
            description = "Begin at this distance of the first recording, for instance 3km.")
    private @Nullable Double fromM;

    @Option(
            names = "--to",
            paramLabel = "KM|MI",
            converter = OptionValues.Distance.class,
            description = "End at this distance of the first recording.")
    private @Nullable Double toM;

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "text (the default, for people), json (for programs) or html (a page).")
    private SeasonFormat format = SeasonFormat.TEXT;

    @Option(names = "--output", paramLabel = "FILE", description = "Write the report there, not to standard output.")
    private @Nullable String output;

    /**
     * A command.
     *
     * @param out where the report goes, as UTF-8 bytes
     */
    CompareCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() throws UnreadableRideException, IOException {
        if (rides.size() < 2 || rides.size() > MOST_RIDES) {
            throw Usage.error(
                    spec, rides.size() < 2 ? "give two rides or more" : "give " + MOST_RIDES + " rides at most");
        }
        double from = fromM == null ? 0 : fromM;
        double to = toM == null ? Double.POSITIVE_INFINITY : toM;
        if (to <= from) {
            throw Usage.error(spec, "--to must be beyond " + (fromM == null ? "the start" : "--from"));
        }
        Path target = output == null ? null : Usage.path(spec, "--output", output);
        List<Path> files = new ArrayList<>();
        for (String ride : rides) {
            files.add(InputFile.ride(ride));
        }
        RideComparison comparison =
                Comparer.compare(files.stream().map(RideInput::of).toList(), ReadOptions.DEFAULT, from, to);
        StringBuilder report = new StringBuilder();
        switch (format) {
            case TEXT -> new TextComparison().write(comparison, report);
            case JSON -> report.append(JsonDocument.of(comparison).text());
            case HTML -> new HtmlComparison().write(comparison, report);
        }
        OutputFile.deliver(report, target, out);
        return ExitStatus.DONE.code();
    }
}
