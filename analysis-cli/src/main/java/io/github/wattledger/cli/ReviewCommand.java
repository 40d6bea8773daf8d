package io.github.wattledger.cli;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.profile.RiderFile;
import io.github.wattledger.cli.profile.RiderProfile;
import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.text.TextBrief;
import io.github.wattledger.cli.report.text.TextExplanation;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingDetector;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code wattledger review}: one ride in, one report out. */
@Command(
        name = "review",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = {
            "wattledger review RIDE [--rider FILE] [--threshold-power W]",
            "                  [--threshold-heart-rate BPM] [--mass KG]",
            "                  [--session N] [--column NAME=HEADER]...",
            "                  [--from H:MM:SS] [--to H:MM:SS] [--laps A-B]",
            "                  [--effort auto|race|training]",
            "                  [--bunch FROM-TO]... [--next-group PERCENT] [--alone]",
            "                  [--format text|json|csv|splits|html]",
            "                  [--explain FINDING] [--brief] [--output FILE]"
        },
        header = "Reviews one recorded ride: how hard it was, how well it was paced.",
        footer = {
            "",
            "Exit status: 0 done; 1 internal failure, or the report could not be",
            "written; 2 wrong usage; 3 the ride or the rider profile could not be read.",
            "",
            "The numbers are about effort and heart rate; they are not medical advice."
        })
final class ReviewCommand implements Callable<Integer> {
    /** How a file becomes a review: the core's front door, or a stand-in under test. */
    @FunctionalInterface
    interface Core {
        RideReview review(Path file, Rider rider, ReviewOptions options) throws UnreadableRideException;
    }

    private final Core core;
    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "RIDE",
            description = "The recorded file. Its format is found by its content.")
    private String ride = "";

    @Option(
            names = "--rider",
            paramLabel = "FILE",
            description =
                    "Your rider profile, a TOML file: see 'wattledger rider --example'. The options below count more"
                            + " than what it says.")
    private @Nullable String riderFile;

    @Mixin
    private ThresholdOptions thresholds = new ThresholdOptions();

    @Option(
            names = "--mass",
            paramLabel = "KG",
            converter = OptionValues.PlainNumber.class,
            description = "Your mass, kilograms.")
    private @Nullable Double massKg;

    @Option(
            names = "--session",
            paramLabel = "N",
            converter = OptionValues.SessionNumber.class,
            description = "The session of the file to review, counted from 1, whatever its sport. Without it: the first"
                    + " of cycling. 'wattledger inspect' lists them.")
    private @Nullable Integer sessionIndex;

    @Mixin
    private ColumnOption columns = new ColumnOption();

    @Option(
            names = "--from",
            paramLabel = "H:MM:SS",
            converter = OptionValues.ElapsedTime.class,
            description = "Leave out what comes before: elapsed time, pauses counted. Two parts are hours and minutes:"
                    + " 1:30 is an hour and a half.")
    private @Nullable Integer fromSecond;

    @Option(
            names = "--to",
            paramLabel = "H:MM:SS",
            converter = OptionValues.ElapsedTime.class,
            description = "Leave out what comes after this elapsed time.")
    private @Nullable Integer toSecond;

    @Option(
            names = "--laps",
            paramLabel = "A-B",
            converter = OptionValues.Laps.class,
            description = "Only these laps of the recorder, for instance 3 or 3-7; not together with --from and --to.")
    private @Nullable LapRange laps;

    @Option(
            names = "--effort",
            paramLabel = "WORD",
            description = "auto (the default) judges the pacing when the ride was hard enough for a race; race judges"
                    + " it in any case; training never does.")
    private Effort effort = Effort.AUTO;

    @Mixin
    private BunchOptions bunches = new BunchOptions();

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "text (the default, for people), json (for programs), csv (the cleaned recording, one row a"
                    + " second, not judged), splits (hours, laps, climbs and sections as CSV) or html (a page with"
                    + " charts, one file).")
    private ReportFormat format = ReportFormat.TEXT;

    @Option(
            names = "--explain",
            paramLabel = "FINDING",
            description =
                    "Instead of the report, show step by step how the numbers of a finding came about, for instance"
                            + " over-hard-start. As text.")
    private @Nullable FindingKind explain;

    @Option(
            names = "--brief",
            description =
                    "Instead of the report, at most 15 lines to send in a message: the verdict, the dearest mistakes,"
                            + " the caps for next time, what is not known. As text.")
    private boolean isBrief;

    @Mixin
    private OutputOption output = new OutputOption();

    /**
     * A command.
     *
     * @param out where the report goes, as UTF-8 bytes
     */
    ReviewCommand(Core core, PrintStream out) {
        this.core = core;
        this.out = out;
    }

    @Override
    public Integer call() throws UnreadableRideException, UnreadableProfileException, IOException {
        ReviewOptions options = options().withReading(ReadOptions.DEFAULT.withCsvColumns(columns.csvColumns(spec)));
        Path file = InputFile.ride(ride);
        Path target = outputPath(file);
        RiderProfile profile =
                riderFile == null ? RiderProfile.EMPTY : RiderFile.read(Usage.path(spec, "--rider", riderFile));
        Rider rider = withFlags(profile.rider());
        RideReview review;
        try {
            review = core.review(
                    file, rider, options.withLimits(profile.limits()).withDetectors(plugged()));
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
        columns.requireTable(spec, review.source().format());
        StringBuilder report = new StringBuilder();
        report(profile.limits()).write(review, report);
        OutputFile.deliver(report, target, out);
        return ExitStatus.DONE.code();
    }

    private Report report(JudgementLimits limits) {
        if (explain != null) {
            return new TextExplanation(explain, limits);
        }
        return isBrief ? new TextBrief() : format.report();
    }

    /** Detectors of other jars on the class path. */
    private static List<FindingDetector> plugged() {
        List<FindingDetector> plugged = new ArrayList<>();
        for (FindingDetector detector : ServiceLoader.load(FindingDetector.class)) {
            plugged.add(detector);
        }
        return plugged;
    }

    private ReviewOptions options() {
        if (explain != null && format != ReportFormat.TEXT) {
            throw Usage.error(spec, "--explain is written as text only");
        }
        if (isBrief && (explain != null || format != ReportFormat.TEXT)) {
            throw Usage.error(
                    spec,
                    "--brief is written as text only" + (explain == null ? "" : ", and not together with --explain"));
        }
        if (laps != null && (fromSecond != null || toSecond != null)) {
            throw Usage.error(spec, "--laps cannot be combined with --from or --to");
        }
        if (toSecond != null && toSecond <= (fromSecond == null ? 0 : fromSecond)) {
            throw Usage.error(spec, "--to must be later than " + (fromSecond == null ? "the start" : "--from"));
        }
        Selection part = laps == null
                ? Selection.WHOLE_RIDE.withSeconds(fromSecond, toSecond)
                : Selection.WHOLE_RIDE.withLaps(laps.first(), laps.last());
        return ReviewOptions.WHOLE_RIDE
                .withSelection(part.withSessionIndex(sessionIndex))
                .withEffort(effort)
                .withCompany(bunches.company(spec));
    }

    private Rider withFlags(Rider profile) {
        Rider rider = thresholds.with(spec, profile);
        return Usage.with(spec, rider, "--mass", massKg, rider::withMassKg);
    }

    private @Nullable Path outputPath(Path file) throws IOException {
        Path path = output.file(spec);
        if (path != null && Files.exists(path) && Files.exists(file) && Files.isSameFile(path, file)) {
            throw Usage.error(spec, "--output would overwrite the ride itself");
        }
        return path;
    }
}
