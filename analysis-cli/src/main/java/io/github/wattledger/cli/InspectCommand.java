package io.github.wattledger.cli;

import io.github.wattledger.cli.report.text.TextInspection;
import io.github.wattledger.intake.FileInspection;
import io.github.wattledger.intake.Inspector;
import io.github.wattledger.json.JsonDocument;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.UnreadableRideException;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code wattledger inspect}: what a file holds, without any judgement. */
@Command(
        name = "inspect",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = {
            "wattledger inspect RIDE [--column NAME=HEADER]... [--format text|json]",
            "                  [--output FILE]"
        },
        header = "Says what a recorded file holds, without judging it.",
        footer = {
            "",
            "Exit status: 0 done; 1 internal failure, or the report could not be",
            "written; 2 wrong usage; 3 the ride could not be read."
        })
final class InspectCommand implements Callable<Integer> {
    private final ReviewCommand.Core core;
    private final PrintStream out;

    @Parameters(
            index = "0",
            paramLabel = "RIDE",
            description = "The recorded file, or - for standard input. Its format is found by its content.")
    private String ride = "";

    @Mixin
    private ColumnOption columns = new ColumnOption();

    @Spec
    private @Nullable CommandSpec spec;

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "text (the default, for people) or json (for programs).")
    private InspectionFormat format = InspectionFormat.TEXT;

    @Mixin
    private OutputOption output = new OutputOption();

    /**
     * A command.
     *
     * @param core opens the ride
     * @param out where the report goes, as UTF-8 bytes
     */
    InspectCommand(ReviewCommand.Core core, PrintStream out) {
        this.core = core;
        this.out = out;
    }

    @Override
    public Integer call() throws UnreadableRideException, IOException {
        ReadOptions reading = columns.reading(spec);
        NamedRide named = NamedRide.named(ride);
        Path target = output.file(spec, List.of(named));
        FileInspection inspection = Inspector.inspect(core.input(named), reading);
        columns.requireTable(spec, Collections.singletonList(inspection.format()));
        StringBuilder report = new StringBuilder();
        switch (format) {
            case TEXT -> new TextInspection().write(inspection, report);
            case JSON -> report.append(JsonDocument.of(inspection).text());
        }
        OutputFile.deliver(report, target, out);
        return ExitStatus.DONE.code();
    }
}
