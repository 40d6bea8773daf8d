package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.RiderProfile;
import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.cli.report.html.HtmlSeason;
import io.github.wattledger.cli.report.html.PageNames;
import io.github.wattledger.cli.report.text.TextRiders;
import io.github.wattledger.cli.report.text.TextSeason;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.json.JsonDocument;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.season.SeasonRequest;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRun;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code wattledger season}: folders of rides in, one report out; or one line for each rider. */
@Command(
        name = "season",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = {
            "wattledger season FOLDER... [--rider FILE | --riders] [--store FILE]",
            "                  [--threshold-power W] [--threshold-heart-rate BPM]",
            "                  [--mass KG] [--zone ZONE] [--as-of DATE] [--forget-gone]",
            "                  [--workers N]",
            "                  [--format text|json|html] [--tables FOLDER]",
            "                  [--units metric|imperial] [--pages FOLDER] [--output FILE]"
        },
        header = "Reviews all rides of a season: load, best efforts, pacing.",
        footer = {
            "",
            "The command reads files that end in .fit, .gpx, .csv, .gz or .zip or have no",
            "ending, in the folders and all folders below. Results are kept, so that the",
            "next run reads only what is new; interrupting a run loses nothing that was done.",
            "",
            "Exit status: 0 done; 1 internal failure, or the store or a report could not",
            "be written; 2 wrong usage; 3 a folder or a rider profile could not be read;",
            "4 done, but some files were skipped: the report lists them.",
            "",
            "The numbers are about effort and heart rate; they are not medical advice."
        })
final class SeasonCommand implements Callable<Integer> {

    /** Where a day begins first; no ride anywhere has a later date. */
    private static final ZoneOffset FIRST_ZONE = ZoneOffset.ofHours(14);

    private final PrintStream out;
    private final PrintStream err;
    private final SeasonNotes notes = new SeasonNotes();

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "FOLDER", description = "Folders of rides, or single files.")
    private List<String> folders = List.of();

    @Mixin
    private RiderOptions riderOptions = new RiderOptions();

    @Option(
            names = "--riders",
            description =
                    "Each FOLDER holds a folder for each rider, each with a rider.toml; the report has one line for"
                            + " each rider.")
    private boolean severalRiders;

    @Option(
            names = "--store",
            paramLabel = "FILE",
            description = "Where results are kept. Without it: .wattledger-season.sqlite in the first folder; of a"
                    + " single file, in the folder where it lies.")
    private @Nullable String storeFile;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            converter = OptionValues.Zone.class,
            description = "Your time zone, for instance Europe/Lisbon, for rides that do not know their local time."
                    + " Without it: UTC.")
    private ZoneId zone = ZoneOffset.UTC;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = OptionValues.Day.class,
            description =
                    "The season's last day, for instance 2026-08-31; later rides are left out. Without it: the day"
                            + " of the last ride.")
    private @Nullable LocalDate asOf;

    @Option(
            names = "--forget-gone",
            description = "Drop rides whose files are gone. Without it they stay in the season, from the store.")
    private boolean forgetGone;

    @Option(
            names = "--workers",
            paramLabel = "N",
            converter = OptionValues.Workers.class,
            description = "How many rides are reviewed at once. Without it: one for each processor.")
    private int workers = Runtime.getRuntime().availableProcessors();

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description =
                    "text (the default, for people), json (for programs) or html (a page with charts, one file; with"
                            + " --riders a page of tables).")
    private SeasonFormat format = SeasonFormat.TEXT;

    @Option(
            names = "--tables",
            paramLabel = "FOLDER",
            description = "Also write rides.csv, days.csv and bests.csv into this folder.")
    private @Nullable String tablesFolder;

    @Option(
            names = "--pages",
            paramLabel = "FOLDER",
            description =
                    "Also write pages into this folder: index.html for the season, and a page of each ride, linked"
                            + " from it. With --riders: index.html for all riders, and a folder for each season.")
    private @Nullable String pagesFolder;

    @Mixin
    private UnitsOption units = new UnitsOption();

    @Mixin
    private OutputOption output = new OutputOption();

    /**
     * A command.
     *
     * @param out where the report goes, as UTF-8 bytes
     * @param err where progress is shown
     */
    SeasonCommand(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    @Override
    public Integer call() throws UnreadableRideException, UnreadableProfileException, IOException {
        if (severalRiders && (riderOptions.isGiven() || storeFile != null || tablesFolder != null)) {
            throw Usage.error(
                    spec,
                    "--riders cannot be combined with --rider, --threshold-power, --threshold-heart-rate, --mass,"
                            + " --store or --tables: each rider has a folder and a profile of its own");
        }
        shown();
        List<Path> roots = new ArrayList<>();
        for (String folder : folders) {
            roots.add(NamedRide.seasonPath(folder));
        }
        Path target = output.file(spec, roots.stream().map(NamedRide::new).toList());
        ExecutorService executor = Executors.newFixedThreadPool(workers);
        try {
            return severalRiders ? riders(roots, target, executor) : season(roots, target, executor);
        } finally {
            executor.shutdownNow();
        }
    }

    private int season(List<Path> roots, @Nullable Path target, ExecutorService executor)
            throws UnreadableRideException, UnreadableProfileException, IOException {
        Path first = roots.get(0);
        Path home = Files.isDirectory(first)
                ? first
                : Objects.requireNonNullElse(first.toAbsolutePath().getParent(), first);
        Path store = storeFile == null ? home.resolve(SeasonStoreFile.NAME) : Usage.path(spec, "--store", storeFile);
        SeasonRequest request = request(roots, store, home);
        SeasonReview season = run(request, executor);
        if (season.rides().isEmpty() && season.skipped().isEmpty()) {
            throw new UnreadableRideException(
                    Reason.NOT_A_RECORDING,
                    roots.get(0) + ": holds no ride; looked in it and in all folders below for" + " files that end in "
                            + endings() + " or have no ending");
        }
        StringBuilder report = new StringBuilder();
        switch (format) {
            case TEXT -> new TextSeason(shown()).write(season, report);
            case JSON -> report.append(JsonDocument.of(season).text());
            case HTML -> new HtmlSeason(shown()).write(season, new PageNames(), report);
        }
        if (pagesFolder != null) {
            new SeasonPages(Usage.path(spec, "--pages", pagesFolder), request, executor, shown()).write(season);
        }
        if (tablesFolder != null) {
            SeasonTablesFolder.write(season, Usage.path(spec, "--tables", tablesFolder));
        }
        OutputFile.deliver(report, target, out);
        return (season.skipped().isEmpty() ? ExitStatus.DONE : ExitStatus.FILES_SKIPPED).code();
    }

    private int riders(List<Path> roots, @Nullable Path target, ExecutorService executor)
            throws UnreadableRideException, UnreadableProfileException, IOException {
        RidersSeasons riders = RidersSeasons.of(roots, asOf, new RidersSeasons.Seasons() {
            @Override
            public SeasonRequest request(Path rider) throws UnreadableProfileException {
                return SeasonCommand.this.request(List.of(rider), rider.resolve(SeasonStoreFile.NAME), rider);
            }

            @Override
            public SeasonReview run(SeasonRequest request) throws UnreadableRideException, IOException {
                return SeasonCommand.this.run(request, executor);
            }
        });
        int skipped = riders.skippedFiles();
        StringBuilder report = new StringBuilder();
        switch (format) {
            case TEXT -> new TextRiders().write(riders.standings(), skipped, report);
            case JSON ->
                report.append(JsonDocument.ofRiders(riders.standings(), skipped).text());
            case HTML -> RidersPages.writeAlone(riders, report);
        }
        if (pagesFolder != null) {
            new RidersPages(Usage.path(spec, "--pages", pagesFolder), executor, shown()).write(riders);
        }
        OutputFile.deliver(report, target, out);
        return (skipped == 0 ? ExitStatus.DONE : ExitStatus.FILES_SKIPPED).code();
    }

    /** The units of what is written for people. */
    private Units shown() {
        return units.units(spec, format != SeasonFormat.JSON || pagesFolder != null);
    }

    /** How the files end that are looked for, {@code .csv, .fit or .gz}. */
    private static String endings() {
        List<String> endings =
                SeasonRun.fileEndings().stream().map(ending -> "." + ending).toList();
        int last = endings.size() - 1;
        return String.join(", ", endings.subList(0, last)) + " or " + endings.get(last);
    }

    private SeasonRequest request(List<Path> roots, Path store, Path home) throws UnreadableProfileException {
        RiderProfile profile = riderOptions.profile(spec, home);
        SeasonRequest request = SeasonRequest.of(roots, store)
                .withRider(profile.rider())
                .withLimits(profile.limits())
                .withZone(zone)
                .withAsOf(asOf)
                .withToday(LocalDate.now(FIRST_ZONE))
                .withNotes(notes::of);
        return forgetGone ? request.forgettingGone() : request;
    }

    private SeasonReview run(SeasonRequest request, ExecutorService executor)
            throws UnreadableRideException, IOException {
        SeasonProgress progress = new SeasonProgress(err, SeasonProgress.hasWatcher(System.getenv()));
        try {
            SeasonReview season = SeasonRun.run(request, executor, workers, progress);
            notes.holdAgainst(season.rides(), request.store());
            return season;
        } finally {
            progress.end();
            notes.newProblems().forEach(line -> new Failures(err).line(Usage.name(spec), line));
        }
    }
}
