package io.github.wattledger.cli;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.profile.NotesFile;
import io.github.wattledger.cli.profile.RiderProfile;
import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.energy.Intake;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingDetector;
import io.github.wattledger.plan.KeptPlan;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
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

/** {@code wattledger review}: rides in, a report of each out. */
@Command(
        name = "review",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = {
            "wattledger [review] RIDE [--rider FILE] [--threshold-power W]",
            "                  [--threshold-heart-rate BPM] [--mass KG]",
            "                  [--notes FILE] [--plan FILE]",
            "                  [--session N] [--column NAME=HEADER]...",
            "                  [--from PLACE] [--to PLACE] [--laps A-B]",
            "                  [--effort auto|race|training] [--season FOLDER] [--eaten G]",
            "                  [--bunch FROM-TO]... [--next-group SHARE] [--alone]",
            "                  [--format text|json|csv|splits|html]",
            "                  [--units metric|imperial] [--explain FINDING] [--brief]",
            "                  [--output FILE]",
            "       wattledger [review] RIDE RIDE... [the same but for a part, --format",
            "                  and --explain]"
        },
        header = "Reviews recorded rides: how hard each was, how well it was paced.",
        footer = {
            "",
            "Exit status: 0 done; 1 internal failure, or the report could not be",
            "written; 2 wrong usage; 3 the ride, the rider profile or the season's store",
            "could not be read; 4 of several rides some were reviewed and some could not be.",
            "",
            "The numbers are about effort and heart rate; they are not medical advice."
        })
final class ReviewCommand implements Callable<Integer> {
    /** How a ride becomes a review: the core's doors, or a stand-in under test. */
    @FunctionalInterface
    interface Core {
        RideReview review(NamedRide ride, Rider rider, ReviewOptions options) throws UnreadableRideException;

        /** The ride as it was opened, for what only the ride can tell: a place on it, or its day. */
        default OpenedRide open(NamedRide ride, ReadOptions reading, @Nullable Integer sessionIndex)
                throws UnreadableRideException {
            return ride.open(reading, sessionIndex, InputStream.nullInputStream());
        }

        /** The bytes of a ride or a course, for the doors of the core that open it themselves. */
        default RideInput input(NamedRide ride) throws UnreadableRideException {
            return ride.input(InputStream.nullInputStream());
        }
    }

    private final Core core;
    private final PrintStream out;
    private final Failures failures;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "RIDE",
            description = "A recorded file, or - for standard input; several are reviewed one after another. The"
                    + " format is found by the content.")
    private List<String> rides = List.of();

    @Mixin
    private SeasonOption season = new SeasonOption();

    @Mixin
    private RiderOptions rider = new RiderOptions();

    @Mixin
    private NotesOption notes = new NotesOption();

    @Mixin
    private RidePart part = new RidePart();

    @Option(
            names = "--laps",
            paramLabel = "A-B",
            converter = OptionValues.Laps.class,
            description = "Only these laps of the recorder, for instance 3 or 3-7; not together with --from and --to.")
    private @Nullable LapRange laps;

    @Mixin
    private ColumnOption columns = new ColumnOption();

    @Option(
            names = "--effort",
            paramLabel = "WORD",
            description = "auto (the default) judges the pacing when the ride was hard enough for a race; race judges"
                    + " it where the recording allows it: with power, and 40 minutes of riding or more; training never"
                    + " does.")
    private Effort effort = Effort.AUTO;

    @Mixin
    private BunchOptions bunches = new BunchOptions();

    @Option(
            names = "--eaten",
            paramLabel = "G",
            converter = OptionValues.Eaten.class,
            description = "The carbohydrate that you ate and drank, grams an hour, for instance 55; or hour by hour, as"
                    + " in 60/60/40, where the last number holds for the hours after it. It says more of an energy"
                    + " crash or a fade.")
    private @Nullable Intake eaten;

    @Mixin
    private ReviewForm form = new ReviewForm();

    @Mixin
    private UnitsOption units = new UnitsOption();

    @Mixin
    private OutputOption output = new OutputOption();

    /**
     * A command.
     *
     * @param out where the reports go, as UTF-8 bytes
     * @param failures says which of several rides could not be reviewed
     */
    ReviewCommand(Core core, PrintStream out, Failures failures) {
        this.core = core;
        this.out = out;
        this.failures = failures;
    }

    @Override
    public Integer call() throws UnreadableRideException, UnreadableProfileException, IOException {
        requireWhatFits();
        KeptPlan plan = form.plan(spec);
        ReadOptions reading = columns.reading(spec);
        List<NamedRide> inputs = NamedRide.named(spec, rides);
        Path target = output.file(spec, inputs);
        if (inputs.size() > 1) {
            return each(inputs, reading, target).code();
        }
        StringBuilder text = new StringBuilder();
        report(inputs.get(0), reading, plan, text);
        OutputFile.deliver(text, target, out);
        return ExitStatus.DONE.code();
    }

    /** A report of each ride that can be reviewed, and a line on standard error for each that cannot. */
    private ExitStatus each(List<NamedRide> inputs, ReadOptions reading, @Nullable Path target) throws OutputFailure {
        StringBuilder all = new StringBuilder();
        ExitStatus failed = null;
        for (NamedRide input : inputs) {
            StringBuilder text = new StringBuilder();
            try {
                report(input, reading, null, text);
                all.append(all.isEmpty() ? "" : "\n").append(text);
            } catch (UnreadableRideException | UnreadableProfileException | IOException | RuntimeException e) {
                ExitStatus status = failures.say(Usage.name(spec), input.toString(), e);
                failed = failed == null || status == ExitStatus.INTERNAL_FAILURE ? status : failed;
            }
        }
        OutputFile.deliver(all, target, out);
        if (failed == null) {
            return ExitStatus.DONE;
        }
        return all.isEmpty() || failed == ExitStatus.INTERNAL_FAILURE ? failed : ExitStatus.FILES_SKIPPED;
    }

    private void report(NamedRide input, ReadOptions reading, @Nullable KeptPlan plan, StringBuilder text)
            throws UnreadableRideException, UnreadableProfileException, IOException {
        RiderProfile profile = rider.profile(spec, input.folder());
        NotesFile.Taken noted = notes.notes(spec, input, failures);
        Selection selection = selection(input, reading);
        ReviewOptions options = ReviewOptions.WHOLE_RIDE
                .withSelection(selection)
                .withEffort(effort)
                .withLimits(profile.limits())
                .withDetectors(plugged())
                .withReading(reading)
                .withIntake(eaten)
                .withNotes(noted.notes())
                .withCompany(
                        bunches.company(spec, notesWithin(noted.notes(), input, reading, selection.sessionIndex())))
                .withPlan(plan);
        RideReview review;
        try {
            review = core.review(
                    input, profile.rider(), options.withOwnRides(ownRides(input, profile.rider(), options)));
        } catch (IllegalArgumentException e) {
            if (bunches.isGiven()) {
                bunches.requireWithin(
                        spec,
                        core.open(input, reading, selection.sessionIndex())
                                .ride()
                                .seconds());
            }
            throw laps == null ? part.refused(spec, e) : Usage.refused(spec, "--laps", e.getMessage());
        }
        columns.requireTable(spec, Collections.singletonList(review.source().format()));
        NotesOption.sayMisplaced(spec, noted, review.ride(), failures);
        PlanReview against = plan == null ? null : PlanFile.against(plan, review, input.toString());
        form.report(units(), profile.limits(), against, rides.size() > 1).write(review, text);
    }

    /** The notes as far as they lie within the recording, which is opened for it only where a next group rests on them. */
    private RideNotes notesWithin(RideNotes noted, NamedRide input, ReadOptions reading, @Nullable Integer sessionIndex)
            throws UnreadableRideException {
        if (!bunches.restsOnNotes() || noted.inBunch().isEmpty()) {
            return noted;
        }
        return noted.within(core.open(input, reading, sessionIndex).ride().seconds());
    }

    private Selection selection(NamedRide input, ReadOptions reading) throws UnreadableRideException {
        Selection selection = part.selection(
                spec,
                units(),
                sessionIndex -> core.open(input, reading, sessionIndex).ride());
        return laps == null
                ? selection
                : Selection.WHOLE_RIDE.withLaps(laps.first(), laps.last()).withSessionIndex(selection.sessionIndex());
    }

    /** What the rides before this one say; null where no season is named. */
    private @Nullable OwnRides ownRides(NamedRide input, Rider known, ReviewOptions options)
            throws UnreadableRideException, UnreadableStoreException {
        if (!season.isGiven()) {
            return null;
        }
        LocalDate day = core.open(input, options.reading(), options.selection().sessionIndex())
                .localDay(options.zone());
        return season.ridesBefore(spec, known, options.zone(), day);
    }

    /** Detectors of other jars on the class path. */
    private static List<FindingDetector> plugged() {
        return ServiceLoader.load(FindingDetector.class).stream()
                .map(ServiceLoader.Provider::get)
                .toList();
    }

    private Units units() {
        return units.units(spec, form.isForPeople());
    }

    private void requireWhatFits() {
        units();
        boolean areSeveral = rides.size() > 1;
        form.requireWhatFits(spec);
        if (eaten != null && areSeveral) {
            throw Usage.error(spec, "--eaten is for one ride");
        }
        if (eaten != null && !form.showsFood()) {
            throw Usage.error(spec, "--eaten is for --format text, json and html, and not together with --explain");
        }
        if (laps != null && part.hasPlace()) {
            throw Usage.error(spec, "--laps cannot be combined with --from or --to");
        }
        if (areSeveral && bunches.isGiven()) {
            throw Usage.error(spec, "--bunch, --alone and --next-group are for one ride");
        }
        if (bunches.isGiven() && !form.isJudged()) {
            throw Usage.error(spec, "--bunch, --alone and --next-group change nothing in --format csv");
        }
        if (areSeveral && notes.isGiven()) {
            throw Usage.error(spec, "--notes is for one ride; of several, each has its RIDE.notes.toml beside it");
        }
        if (areSeveral) {
            form.requireForSeveral(spec, part.isGiven() || laps != null);
        }
    }
}
