package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.RiderFile;
import io.github.wattledger.cli.profile.RiderProfile;
import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.cli.report.json.JsonWhatIf;
import io.github.wattledger.cli.report.text.TextWhatIf;
import io.github.wattledger.course.Course;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.Replayer;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code wattledger what-if}: what another position, mass, tyre, air or power is worth. */
@Command(
        name = "what-if",
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        sortOptions = false,
        customSynopsis = {
            "wattledger what-if RIDE [as it is]... with something else...",
            "       wattledger what-if --distance 200mi --power 200 [as it is]... with...",
        },
        header = "Tells what another position, mass, tyre, air or power is worth in minutes.",
        footer = {
            "",
            "A change is a value (0.32), a difference (+10, -3) or a share (+5%%, -20%%).",
            "For instance: wattledger what-if --distance 200mi --power 200 \\",
            "                --with-position aero-bars --share 25%%",
            "              wattledger what-if RIDE --with-power +5%%",
            "",
            "Exit status: 0 done; 1 internal failure; 2 wrong usage; 3 the ride or the",
            "rider profile could not be read, or the ride cannot be ridden again."
        })
final class WhatIfCommand implements Callable<Integer> {
    private static final double LEAST_DISTANCE_M = 100;
    private static final double MOST_DISTANCE_M = 10_000_000;
    private static final double MOST_POWER_W = 2500;
    private static final double PA_PER_HPA = 100;

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
    private Road road = new Road();

    @ArgGroup(exclusive = false, heading = "%nRider and bicycle as they are:%n")
    private AsItIs asItIs = new AsItIs();

    @ArgGroup(exclusive = false, heading = "%nWhat to change, one or several:%n")
    private With with = new With();

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

    /** A road that nobody has recorded. */
    static final class Road {
        @Option(
                names = "--distance",
                paramLabel = "KM|MI",
                converter = OptionValues.Distance.class,
                description = "Its length, for instance 160km or 200mi.")
        private @Nullable Double distanceM;

        @Option(
                names = "--power",
                paramLabel = "W",
                converter = OptionValues.PlainNumber.class,
                description = "The steady power, watts.")
        private @Nullable Double powerW;

        @Option(
                names = "--ascent",
                paramLabel = "M",
                converter = OptionValues.PlainNumber.class,
                description = "Metres climbed in all, in hills of 4 %% and down again; 0 without it.")
        private @Nullable Double ascentM;

        @Option(
                names = "--temperature",
                paramLabel = "C",
                converter = OptionValues.PlainNumber.class,
                description = "Degrees Celsius; without it the standard atmosphere's, 15 at sea level.")
        private @Nullable Double temperatureC;

        @Option(
                names = "--altitude",
                paramLabel = "M",
                converter = OptionValues.PlainNumber.class,
                description = "Metres above the sea, for the density of the air; 0 without it.")
        private @Nullable Double altitudeM;

        @Option(
                names = "--pressure",
                paramLabel = "HPA",
                converter = OptionValues.PlainNumber.class,
                description = "Air pressure where the road is, hPa, instead of an altitude.")
        private @Nullable Double pressureHpa;

        @Option(
                names = "--air-density",
                paramLabel = "KG/M3",
                converter = OptionValues.PlainNumber.class,
                description = "Density of the air, instead of temperature and altitude.")
        private @Nullable Double densityKgPerM3;

        private List<String> given() {
            List<String> given = new ArrayList<>();
            addIf(given, "--distance", distanceM);
            addIf(given, "--power", powerW);
            addIf(given, "--ascent", ascentM);
            addIf(given, "--temperature", temperatureC);
            addIf(given, "--altitude", altitudeM);
            addIf(given, "--pressure", pressureHpa);
            addIf(given, "--air-density", densityKgPerM3);
            return given;
        }
    }

    /** Rider and bicycle before the change. */
    static final class AsItIs {
        @Option(
                names = "--rider",
                paramLabel = "FILE",
                description = "Your rider profile; the options below go before what it says.")
        private @Nullable String riderFile;

        @Option(
                names = "--mass",
                paramLabel = "KG",
                converter = OptionValues.PlainNumber.class,
                description = "Your mass, kilograms; 75 when nothing says it.")
        private @Nullable Double massKg;

        @Option(
                names = "--bicycle-mass",
                paramLabel = "KG",
                converter = OptionValues.PlainNumber.class,
                description = "The bicycle with all that is on it; 11 when nothing says it.")
        private @Nullable Double bicycleMassKg;

        @Option(
                names = "--position",
                paramLabel = "WORD",
                converter = OptionValues.PositionWord.class,
                description = "hoods (without it), drops or aero-bars.")
        private Position position = Position.HOODS;

        @Option(
                names = "--drag-area",
                paramLabel = "M2",
                converter = OptionValues.PlainNumber.class,
                description = "Your drag area in that position. Without it: the ride's own, or a typical one.")
        private @Nullable Double dragAreaM2;

        @Option(
                names = "--rolling-resistance",
                paramLabel = "NUMBER",
                converter = OptionValues.PlainNumber.class,
                description = "Coefficient of rolling resistance. Without it: the ride's own, or 0.006.")
        private @Nullable Double rollingResistance;
    }

    /** What is changed. */
    static final class With {
        @Option(
                names = "--with-position",
                paramLabel = "WORD",
                converter = OptionValues.PositionWord.class,
                description = "hoods, drops or aero-bars.")
        private @Nullable Position position;

        @Option(
                names = "--with-drag-area",
                paramLabel = "CHANGE",
                converter = OptionValues.Change.class,
                description = "Another drag area, m2: 0.32 or -20%%.")
        private @Nullable Adjustment dragAreaM2;

        @Option(
                names = "--with-mass",
                paramLabel = "CHANGE",
                converter = OptionValues.Change.class,
                description = "Another mass of the rider, kg: 72 or -3. A difference may be the bicycle's.")
        private @Nullable Adjustment riderKg;

        @Option(
                names = "--with-rolling-resistance",
                paramLabel = "CHANGE",
                converter = OptionValues.Change.class,
                description = "Another rolling resistance: 0.005 or -10%%.")
        private @Nullable Adjustment rollingResistance;

        @Option(
                names = "--with-power",
                paramLabel = "CHANGE",
                converter = OptionValues.Change.class,
                description = "Another power, watts: 210, +10 or +5%%; of a RIDE +10 or +5%%.")
        private @Nullable Adjustment powerW;

        @Option(
                names = "--with-temperature",
                paramLabel = "C",
                converter = OptionValues.PlainNumber.class,
                description = "Another temperature.")
        private @Nullable Double temperatureC;

        @Option(
                names = "--with-altitude",
                paramLabel = "M",
                converter = OptionValues.PlainNumber.class,
                description = "Another altitude, for the density of the air alone.")
        private @Nullable Double altitudeM;

        @Option(
                names = "--with-pressure",
                paramLabel = "HPA",
                converter = OptionValues.PlainNumber.class,
                description = "Another pressure of the air.")
        private @Nullable Double pressureHpa;

        @Option(
                names = "--with-air-density",
                paramLabel = "KG/M3",
                converter = OptionValues.PlainNumber.class,
                description = "Another density of the air.")
        private @Nullable Double densityKgPerM3;

        @Option(
                names = "--share",
                paramLabel = "SHARE",
                converter = OptionValues.ShareOfDistance.class,
                description = "Over how much of the distance: 25%% of it, spread alike, or 75%%-100%%, its last"
                        + " quarter. Without it: all of it.")
        private WhatIf.Extent extent = WhatIf.Extent.WHOLE;
    }

    @Option(
            names = "--format",
            paramLabel = "WORD",
            converter = OptionValues.InspectionFormatWord.class,
            description = "text (the default, for people) or json (for programs).")
    private InspectionFormat format = InspectionFormat.TEXT;

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
        WhatIf.Change change = change();
        if (change.over(WhatIf.Extent.WHOLE).equals(WhatIf.Change.NOTHING)) {
            throw Usage.error(
                    spec,
                    "nothing is changed: give at least one of --with-position, --with-drag-area, --with-mass,"
                            + " --with-rolling-resistance, --with-power, --with-temperature, --with-altitude,"
                            + " --with-pressure and --with-air-density");
        }
        WhatIfReport report = ride == null ? ofRoad(change) : ofRide(ride, change);
        StringBuilder text = new StringBuilder();
        switch (format) {
            case TEXT -> new TextWhatIf().write(report, text);
            case JSON -> new JsonWhatIf().write(report, text);
        }
        OutputFile.deliver(text, null, out);
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
        Adjustment power = with.powerW;
        if (power != null && power.kind() == Adjustment.Kind.TO) {
            throw Usage.error(
                    spec, "--with-power of a RIDE takes a change such as +10 or +5%: a ride has no one power");
        }
        Selection selection = Selection.ofSeconds(from, to).withSessionIndex(rideChoice.sessionIndex);
        Path file = InputFile.ride(name);
        Rider rider = rider();
        try {
            Replayer.Replayed replayed =
                    Replayer.whatIf(file, ReadOptions.DEFAULT, rider, asItIs.position, change, selection);
            return new WhatIfReport(replayed.source(), replayed.ridden(), null, replayed.answer(), replayed.notes());
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
    }

    private WhatIfReport ofRoad(WhatIf.Change change) throws UnreadableProfileException {
        Double distanceM = road.distanceM;
        Double powerW = road.powerW;
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
        double ascentM = road.ascentM == null ? 0 : road.ascentM;
        Rider rider = rider();
        try {
            Course course = Course.ofHills(distanceM, ascentM);
            RigChoice rig = RigChoice.ofNoRide(
                    rider.massKg(), rider.bikeMassKg(), rider.dragAreaM2(), rider.rollingResistance(), asItIs.position);
            Air air = air(road.temperatureC, road.altitudeM, road.pressureHpa, road.densityKgPerM3);
            return new WhatIfReport(null, null, ascentM, WhatIf.steady(course, powerW, rig, air, change), List.of());
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
    }

    private void requireWithin(String option, double value, double least, double most, String expected) {
        if (!(value >= least && value <= most)) {
            throw Usage.error(spec, "Invalid value for option '" + option + "': expected " + expected);
        }
    }

    private WhatIf.Change change() {
        try {
            return new WhatIf.Change(
                    with.position,
                    with.dragAreaM2,
                    with.riderKg,
                    with.rollingResistance,
                    with.powerW,
                    air(with.temperatureC, with.altitudeM, with.pressureHpa, with.densityKgPerM3),
                    with.extent);
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
    }

    private static Air air(
            @Nullable Double temperatureC,
            @Nullable Double altitudeM,
            @Nullable Double pressureHpa,
            @Nullable Double densityKgPerM3) {
        return new Air(temperatureC, altitudeM, pressureHpa == null ? null : pressureHpa * PA_PER_HPA, densityKgPerM3);
    }

    private Rider rider() throws UnreadableProfileException {
        String file = asItIs.riderFile;
        RiderProfile profile = file == null ? RiderProfile.EMPTY : RiderFile.read(Usage.path(spec, "--rider", file));
        Rider rider = profile.rider();
        rider = Usage.with(spec, rider, "--mass", asItIs.massKg, rider::withMassKg);
        rider = Usage.with(spec, rider, "--bicycle-mass", asItIs.bicycleMassKg, rider::withBikeMassKg);
        rider = Usage.with(spec, rider, "--drag-area", asItIs.dragAreaM2, rider::withDragAreaM2);
        return Usage.with(spec, rider, "--rolling-resistance", asItIs.rollingResistance, rider::withRollingResistance);
    }

    private static void addIf(List<String> options, String option, @Nullable Object value) {
        if (value != null) {
            options.add(option);
        }
    }
}
