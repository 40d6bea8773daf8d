package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.cli.report.html.HtmlPlan;
import io.github.wattledger.cli.report.text.TextPlan;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.course.Route;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.json.JsonDocument;
import io.github.wattledger.plan.PlanOptions;
import io.github.wattledger.plan.PlanRider;
import io.github.wattledger.plan.RacePlan;
import io.github.wattledger.plan.SurfaceStretch;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.RouteFiles;
import io.github.wattledger.read.RouteResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.Rider;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code wattledger plan}: how hard to ride where on a course. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = {
            "wattledger plan COURSE [--rider FILE] [--threshold-power W] [--mass KG]",
            "                [--season FOLDER] [--day DATE]",
            "                [--target W | --time H:MM] [--stops H:MM]",
            "                [--wind M/S --wind-from DEGREES] [--temperature C]",
            "                [--surface KM-KM=NUMBER]... [--format text|json|html]",
            "                [--units metric|imperial] [--output FILE]",
        },
        header = "Plans a race: caps by ground, and the time as a range.",
        footer = {
            "",
            "COURSE is a GPX route or track, a FIT course, or a recorded ride of the course;",
            "times in it are not read. Without --target and --time the plan is for what you",
            "can hold for the time that results.",
            "",
            "Exit status: 0 done; 1 internal failure, or the plan could not be written;",
            "2 wrong usage; 3 the course, the rider profile or the season's store could not",
            "be read."
        })
final class PlanCommand implements Callable<Integer> {
    private static final String NO_PROFILE =
            "No rider profile was read: none stands in the folder of the course or of the season, and --rider names none."
                    + " What it would say of the days of your rides, such as past thresholds, is not known.";

    private final ReviewCommand.Core core;
    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(index = "0", paramLabel = "COURSE", description = "The file of the course, or - for standard input.")
    private String course = "";

    @Option(
            names = "--route",
            paramLabel = "N",
            converter = OptionValues.SessionNumber.class,
            description = "Which route of a file with several, counted from 1.")
    private @Nullable Integer routeIndex;

    @Option(
            names = "--target",
            paramLabel = "W",
            converter = NumberOptions.PlannedPower.class,
            description = "Plan for this normalized power.")
    private @Nullable Double targetW;

    @Option(
            names = "--time",
            paramLabel = "H:MM",
            converter = OptionValues.Seconds.class,
            description = "Plan for this time, stops included.")
    private @Nullable Integer goalSeconds;

    @Option(
            names = "--stops",
            paramLabel = "H:MM",
            converter = OptionValues.Seconds.class,
            description = "How long you will stand in all. Without it: as in your last races, where --season shows"
                    + " them, otherwise none.")
    private @Nullable Integer stoppedSeconds;

    @Option(
            names = "--day",
            paramLabel = "DATE",
            converter = OptionValues.Day.class,
            description = "The day of the race, for instance 2026-08-31; today without it. What holds of you on that"
                    + " day is taken.")
    private @Nullable LocalDate raceDay;

    @Mixin
    private SeasonOption season = new SeasonOption();

    @ArgGroup(exclusive = false, heading = "%nThe day and the course:%n")
    private Day day = new Day();

    @Mixin
    private RiderOptions rider = new RiderOptions();

    @Mixin
    private RigOptions rig = new RigOptions();

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "text (the default, for people), json (for programs) or html (a card to print, A5).")
    private SeasonFormat format = SeasonFormat.TEXT;

    @Mixin
    private UnitsOption units = new UnitsOption();

    @Mixin
    private OutputOption output = new OutputOption();

    /** What is expected of the day, and what the file of the course does not say. */
    static final class Day {
        @Option(
                names = "--wind",
                paramLabel = "M/S",
                converter = NumberOptions.WindSpeed.class,
                description = "Expected wind at the height of the rider, about half of a forecast's.")
        private @Nullable Double windMps;

        @Option(
                names = "--wind-from",
                paramLabel = "DEGREES",
                converter = NumberOptions.WindFrom.class,
                description = "Where it comes from: 0 north, 90 east, 180 south, 270 west.")
        private @Nullable Double windFromDegrees;

        @Option(
                names = "--temperature",
                paramLabel = "C",
                converter = NumberOptions.Temperature.class,
                description = "Expected temperature, degrees Celsius.")
        private @Nullable Double temperatureC;

        @Option(
                names = "--ascent",
                paramLabel = "M",
                converter = NumberOptions.Ascent.class,
                description = "The ascent by the organiser, to compare the file's with.")
        private @Nullable Double ascentM;

        @Option(
                names = "--surface",
                paramLabel = "KM-KM=NUMBER",
                converter = OptionValues.Surface.class,
                description =
                        "Rolling resistance of a part, kilometres or miles from the start, for instance 12-30=0.012 or"
                                + " 7.5-19mi=0.012. Several are possible.")
        private List<SurfaceStretch> surfaces = List.of();

        @Option(
                names = "--fastest",
                paramLabel = "KM/H",
                converter = NumberOptions.FastestSpeed.class,
                description =
                        "The highest speed you ride on descents. Without it: as in your rides, where --season shows it,"
                                + " otherwise 54 km/h.")
        private @Nullable Double fastestMps;
    }

    /**
     * A command.
     *
     * @param core opens the course
     * @param out where the plan goes, as UTF-8 bytes
     */
    PlanCommand(ReviewCommand.Core core, PrintStream out) {
        this.core = core;
        this.out = out;
    }

    @Override
    public Integer call() throws UnreadableRideException, UnreadableProfileException, IOException {
        Units shown = units();
        NamedRide named = NamedRide.named(course);
        Path target = output.file(spec, List.of(named));
        Path beside = profileFolder(named);
        PlanRider known = planRider(rig.with(rider.profile(spec, beside).rider()));
        PlanOptions options = options(known);
        RideInput input = core.input(named);
        RouteResult read = RouteFiles.read(input, ReadLimits.DEFAULT);
        Route route = route(read);
        requireOnTheCourse(route);
        RacePlan plan = RacePlan.of(route, known, options);
        StringBuilder text = new StringBuilder();
        List<String> notes = new ArrayList<>();
        read.notes().forEach(note -> notes.add(note.text()));
        if (season.isGiven() && !rider.hasProfile(beside)) {
            notes.add(NO_PROFILE);
        }
        switch (format) {
            case TEXT -> new TextPlan(shown).write(plan, notes, text);
            case JSON ->
                text.append(JsonDocument.of(plan, input.shownName(), read).text());
            case HTML -> new HtmlPlan(shown).write(plan, text);
        }
        OutputFile.deliver(text, target, out);
        return ExitStatus.DONE.code();
    }

    /** Where the profile is looked for: beside the course, otherwise in the folder of the season. */
    private @Nullable Path profileFolder(NamedRide named) {
        Path ofSeason = season.profileFolder(spec);
        return ofSeason == null || RiderOptions.isProfileIn(named.folder()) ? named.folder() : ofSeason;
    }

    private Route route(RouteResult read) throws UnreadableRideException {
        try {
            return Route.of(read.line(routeIndex == null ? null : Integer.valueOf(routeIndex + 1)));
        } catch (UnreadableRideException e) {
            throw new UnreadableRideException(e.reason(), course + ": " + e.getMessage() + " (--route N)", e);
        } catch (IllegalArgumentException e) {
            throw new UnreadableRideException(
                    Reason.NOT_SUITABLE, course + ": is " + e.getMessage() + "; a plan needs a course", e);
        }
    }

    private PlanOptions options(PlanRider known) {
        requireTime("--time", goalSeconds, PlanOptions.GOAL_SECONDS);
        requireTime("--stops", stoppedSeconds, PlanOptions.STOPPED_SECONDS);
        if (day.ascentM != null && !PlanOptions.ORGANISER_ASCENT_M.contains(day.ascentM)) {
            throw Usage.refused(spec, "--ascent", Unit.METRE.expected(PlanOptions.ORGANISER_ASCENT_M, units()));
        }
        try {
            return PlanOptions.DEFAULT
                    .withTargetW(targetW)
                    .withGoalSeconds(goalSeconds)
                    .withStoppedSeconds(stoppedSeconds)
                    .withWind(day.windMps, day.windFromDegrees)
                    .withTemperatureC(day.temperatureC)
                    .withOrganiserAscentM(day.ascentM)
                    .withFastestDescentMps(day.fastestMps == null ? known.usualFastestMps() : day.fastestMps)
                    .withSurfaces(day.surfaces);
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
    }

    private Units units() {
        return units.units(spec, format != SeasonFormat.JSON);
    }

    private void requireOnTheCourse(Route route) {
        for (int i = 0; i < day.surfaces.size(); i++) {
            if (!day.surfaces.get(i).beginsOn(route)) {
                throw Usage.refused(
                        spec,
                        "--surface",
                        i,
                        "begins after the end of the course, which is " + units().distanceWords(route.lengthM())
                                + " long");
            }
        }
    }

    private void requireTime(String option, @Nullable Integer seconds, Bounds bounds) {
        if (seconds != null && !bounds.contains(seconds)) {
            throw Usage.refused(
                    spec,
                    option,
                    "expected " + Interval.clock((int) bounds.low()) + " to " + Interval.clock((int) bounds.high()));
        }
    }

    private PlanRider planRider(Rider known) throws UnreadableStoreException {
        ZoneId zone = ZoneId.systemDefault();
        LocalDate day = raceDay == null ? LocalDate.now(zone) : raceDay;
        OwnRides own = season.ridesBefore(spec, known, zone, day);
        RiderOnDay onDay = RiderOnDay.of(known, RecordingDevice.UNKNOWN, day, own);
        if (onDay.thresholdPowerW() == null) {
            throw Usage.error(
                    spec,
                    "a plan needs your threshold power: give --threshold-power, or a rider profile with it"
                            + (own == null
                                    ? ", or the season of your rides"
                                    : "; your rides of the 90 days before " + day + " do not show it"));
        }
        PlanRider rider = PlanRider.of(onDay.rig(rig.position()), onDay);
        return own == null ? rider : rider.withOwnRides(own, day);
    }
}
