package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.cli.report.html.HtmlWhatIf;
import io.github.wattledger.cli.report.text.TextWhatIf;
import io.github.wattledger.course.Course;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.Replayer;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.RigChoice;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
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

/** {@code wattledger what-if}: what another position, mass, tyre, air or power is worth. */
@Command(
        name = "what-if",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = {
            "wattledger what-if RIDE [as it is]... with something else...",
            "       wattledger what-if --distance 200mi --power 200 [as it is]... with...",
        },
        header = "Says what another position, mass, tyre, air or power is worth in minutes.",
        footer = {
            "",
            "A change is a value (0.32), a difference (+10, -3) or a share (+5%%, -20%%).",
            "For instance: wattledger what-if --distance 200mi --power 200 \\",
            "                --with-position aero-bars --share 25%%",
            "              wattledger what-if RIDE --with-power +5%%",
            "",
            "Exit status: 0 done; 1 internal failure, or the report could not be written;",
            "2 wrong usage; 3 the ride or the rider profile could not be read, or the",
            "ride cannot be ridden again."
        })
final class WhatIfCommand implements Callable<Integer> {
    private static final double LEAST_DISTANCE_M = 100;
    private static final double MOST_DISTANCE_M = 10_000_000;
    private static final double MOST_POWER_W = 2500;

    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "RIDE",
            description = "The recorded file to ride again. Without one: --distance and --power.")
    private @Nullable String ride;

    @ArgGroup(exclusive = false, heading = "%nThe ride:%n")
    private RideChoice rideChoice = new RideChoice();

    @ArgGroup(exclusive = false, heading = "%nOr a road, ridden at a steady power without wind:%n")
    private WhatIfRoad road = new WhatIfRoad();

    @ArgGroup(exclusive = false, heading = "%nRider and bicycle as they are:%n")
    private WhatIfRider asItIs = new WhatIfRider();

    @ArgGroup(exclusive = false, heading = "%nWhat to change, one or several:%n")
    private WhatIfChange with = new WhatIfChange();

    /** Which part of a recorded file. */
    static final class RideChoice {
        @Option(
                names = "--session",
                paramLabel = "N",
                converter = OptionValues.SessionNumber.class,
                description = "The session of the file, counted from 1. Without it: the first of cycling.")
        private @Nullable Integer sessionIndex;

        @Option(
                names = "--from",
                paramLabel = "H:MM:SS",
                converter = OptionValues.ElapsedTime.class,
                description = "Leave out what comes before, elapsed time.")
        private @Nullable Integer fromSecond;

        @Option(
                names = "--to",
                paramLabel = "H:MM:SS",
                converter = OptionValues.ElapsedTime.class,
                description = "Leave out what comes after.")
        private @Nullable Integer toSecond;

        private boolean isGiven() {
            return sessionIndex != null || fromSecond != null || toSecond != null;
        }
    }

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "text (the default, for people), json (for programs) or html (a page).")
    private SeasonFormat format = SeasonFormat.TEXT;

    @Mixin
    private OutputOption output = new OutputOption();

    /**
     * A command.
     *
     * @param out where the answer goes, as UTF-8 bytes
     */
    WhatIfCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() throws UnreadableRideException, UnreadableProfileException, IOException {
        WhatIf.Change change = with.change(spec);
        if (change.over(WhatIf.Extent.WHOLE).equals(WhatIf.Change.NOTHING)) {
            throw Usage.error(
                    spec,
                    "nothing is changed: give at least one of --with-position, --with-drag-area, --with-mass,"
                            + " --with-rolling-resistance, --with-power, --with-temperature, --with-altitude,"
                            + " --with-pressure and --with-air-density");
        }
        Path target = output.file(spec);
        WhatIfReport report = ride == null ? ofRoad(change) : ofRide(ride, change);
        StringBuilder text = new StringBuilder();
        switch (format) {
            case TEXT -> new TextWhatIf().write(report, text);
            case JSON -> text.append(report.json().text());
            case HTML -> new HtmlWhatIf().write(report, text);
        }
        OutputFile.deliver(text, target, out);
        return ExitStatus.DONE.code();
    }

    private WhatIfReport ofRide(String name, WhatIf.Change change)
            throws UnreadableRideException, UnreadableProfileException {
        List<String> ofRoad = road.given();
        if (!ofRoad.isEmpty()) {
            throw Usage.error(spec, ofRoad.get(0) + " is for a road without a ride; a RIDE has its own");
        }
        Integer from = rideChoice.fromSecond;
        Integer to = rideChoice.toSecond;
        if (to != null && to <= (from == null ? 0 : from)) {
            throw Usage.error(spec, "--to must be later than " + (from == null ? "the start" : "--from"));
        }
        Adjustment power = with.powerW();
        if (power != null && power.kind() == Adjustment.Kind.TO) {
            throw Usage.error(
                    spec, "--with-power of a RIDE takes a change such as +10 or +5%: a ride has no one power");
        }
        Selection selection = Selection.WHOLE_RIDE.withSeconds(from, to).withSessionIndex(rideChoice.sessionIndex);
        Path file = InputFile.ride(name);
        Rider rider = asItIs.rider(spec);
        try {
            return WhatIfReport.ofRide(Replayer.whatIf(
                    RideInput.of(file), ReadOptions.DEFAULT, rider, asItIs.position(), change, selection));
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
    }

    private WhatIfReport ofRoad(WhatIf.Change change) throws UnreadableProfileException {
        Double distanceM = road.distanceM();
        Double powerW = road.powerW();
        if (distanceM == null || powerW == null) {
            throw Usage.error(
                    spec,
                    road.given().isEmpty()
                            ? "give a RIDE, or --distance and --power"
                            : "without a RIDE, both --distance and --power are needed");
        }
        if (rideChoice.isGiven()) {
            throw Usage.error(spec, "--session, --from and --to are for a RIDE");
        }
        requireWithin("--distance", distanceM, LEAST_DISTANCE_M, MOST_DISTANCE_M, "0.1 to 10000 km");
        requireWithin("--power", powerW, 1, MOST_POWER_W, "1 to 2500");
        double ascentM = road.ascentM();
        Rider rider = asItIs.rider(spec);
        try {
            Course course = Course.ofHills(distanceM, ascentM);
            RigChoice rig = RigChoice.ofNoRide(
                    rider.massKg(),
                    rider.bikeMassKg(),
                    rider.dragAreaM2(),
                    rider.rollingResistance(),
                    asItIs.position());
            Air air = road.air();
            return WhatIfReport.ofRoad(WhatIf.steady(course, powerW, rig, air, change), ascentM);
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
    }

    private void requireWithin(String option, double value, double least, double most, String expected) {
        if (!(value >= least && value <= most)) {
            throw Usage.error(spec, "Invalid value for option '" + option + "': expected " + expected);
        }
    }
}
