package io.github.wattledger.cli;

import io.github.wattledger.cli.report.html.HtmlComparison;
import io.github.wattledger.cli.report.text.TextComparison;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.compare.Comparer;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.intake.RidePlace;
import io.github.wattledger.json.JsonDocument;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
        customSynopsis = {
            "wattledger compare RIDE RIDE... [--column NAME=HEADER]...",
            "                  [--from PLACE] [--to PLACE]",
            "                  [--format text|json|html]",
            "                  [--units metric|imperial] [--output FILE]"
        },
        header = "Shows where the time was won between rides over one course.",
        footer = {
            "",
            "The rides are aligned by position, or by distance where there is none. The gap",
            "is elapsed time, stops included; it begins with 0 where the compared part",
            "begins.",
            "",
            "Exit status: 0 done; 1 internal failure, or the report could not be",
            "written; 2 wrong usage; 3 a ride could not be read, or shares no course",
            "with the first."
        })
final class CompareCommand implements Callable<Integer> {
    private static final int MOST_RIDES = 20;

    private final ReviewCommand.Core core;
    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            index = "0..*",
            arity = "0..*",
            paramLabel = "RIDE",
            description = "Recorded files, two or more; one of them may be - for standard input. Each is compared"
                    + " with the first.")
    private List<String> rides = List.of();

    @Option(
            names = RidePart.FROM,
            paramLabel = RidePart.PLACE,
            converter = OptionValues.Place.class,
            description = "Begin at this place of the first recording: an elapsed time as 1:30:00 or 2h30, or a"
                    + " distance as 40km or 25mi.")
    private @Nullable RidePlace from;

    @Option(
            names = RidePart.TO,
            paramLabel = RidePart.PLACE,
            converter = OptionValues.Place.class,
            description = "End at this time or distance of the first recording.")
    private @Nullable RidePlace to;

    @Mixin
    private ColumnOption columns = new ColumnOption();

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "text (the default, for people), json (for programs) or html (a page).")
    private SeasonFormat format = SeasonFormat.TEXT;

    @Mixin
    private UnitsOption units = new UnitsOption();

    @Mixin
    private OutputOption output = new OutputOption();

    /**
     * A command.
     *
     * @param core opens the rides
     * @param out where the report goes, as UTF-8 bytes
     */
    CompareCommand(ReviewCommand.Core core, PrintStream out) {
        this.core = core;
        this.out = out;
    }

    @Override
    public Integer call() throws UnreadableRideException, IOException {
        if (rides.size() < 2 || rides.size() > MOST_RIDES) {
            throw Usage.error(
                    spec, rides.size() < 2 ? "give two rides or more" : "give " + MOST_RIDES + " rides at most");
        }
        Units shown = units.units(spec, format != SeasonFormat.JSON);
        List<NamedRide> named = NamedRide.named(spec, rides);
        Path target = output.file(spec, named);
        List<RideInput> inputs = new ArrayList<>();
        for (NamedRide ride : named) {
            inputs.add(core.input(ride));
        }
        ReadOptions reading = columns.reading(spec);
        Double fromM = metres(RidePart.FROM, from, inputs.get(0), reading);
        Double toM = metres(RidePart.TO, to, inputs.get(0), reading);
        RidePart.requireOrder(spec, fromM, toM);
        RideComparison comparison;
        try {
            comparison = Comparer.compare(
                    inputs, reading, fromM == null ? 0 : fromM, toM == null ? Double.POSITIVE_INFINITY : toM);
        } catch (UnreadableRideException e) {
            requireBeforeTheEnd(inputs.get(0), reading, shown);
            throw e;
        }
        List<@Nullable String> formats = new ArrayList<>();
        formats.add(comparison.reference().source().format());
        comparison
                .others()
                .forEach(other -> formats.add(other.compared().source().format()));
        columns.requireTable(spec, formats);
        StringBuilder report = new StringBuilder();
        switch (format) {
            case TEXT -> new TextComparison(shown).write(comparison, report);
            case JSON -> report.append(JsonDocument.of(comparison).text());
            case HTML -> new HtmlComparison(shown).write(comparison, report);
        }
        OutputFile.deliver(report, target, out);
        return ExitStatus.DONE.code();
    }

    /** A usage error where the part begins after the end of the first recording, which then has nothing to share. */
    private void requireBeforeTheEnd(RideInput first, ReadOptions reading, Units shown) throws UnreadableRideException {
        if (from != null) {
            Ride ride = OpenedRide.of(first, reading, null).ride();
            if (ride.has(Channel.DISTANCE)) {
                RidePart.requireBeforeTheEnd(spec, from, ride, shown);
            }
        }
    }

    /** The distance of a place of the first recording, which is opened only when the place is a time. */
    private @Nullable Double metres(String option, @Nullable RidePlace place, RideInput input, ReadOptions reading)
            throws UnreadableRideException {
        if (place instanceof RidePlace.AtDistance distance) {
            return distance.metres();
        }
        if (place == null) {
            return null;
        }
        try {
            return place.metresOf(OpenedRide.of(input, reading, null).ride());
        } catch (IllegalArgumentException e) {
            throw Usage.refused(spec, option, String.valueOf(e.getMessage()));
        }
    }
}
