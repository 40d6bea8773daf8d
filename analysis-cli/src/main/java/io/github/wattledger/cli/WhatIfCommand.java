package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.cli.report.html.HtmlWhatIf;
import io.github.wattledger.cli.report.text.TextWhatIf;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.course.Course;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.Replayer;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.RigChoice;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collections;
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
            "2 wrong usage; 3 the ride, the rider profile or the season's store could not be",
            "read, or the ride cannot be ridden again."
        })
final class WhatIfCommand implements Callable<Integer> {
    private final ReviewCommand.Core core;
    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "RIDE",
            description = "The recorded file to ride again, or - for standard input. Without one: --distance and"
                    + " --power.")
    private @Nullable String ride;

    @ArgGroup(exclusive = false, heading = "%nThe ride:%n")
    private RidePart part = new RidePart();

    @ArgGroup(exclusive = false, heading = "%nOr a road, ridden at a steady power without wind:%n")
    private WhatIfRoad road = new WhatIfRoad();

    @ArgGroup(exclusive = false, heading = "%nRider and bicycle as they are:%n")
    private WhatIfRider asItIs = new WhatIfRider();

    @ArgGroup(exclusive = false, heading = "%nWhat to change, one or several:%n")
    private WhatIfChange with = new WhatIfChange();

    @Mixin
    private ColumnOption columns = new ColumnOption();

    @Option(
            names = "--format",
            paramLabel = "WORD",
            description = "text (the default, for people), json (for programs) or html (a page).")
    private SeasonFormat format = SeasonFormat.TEXT;

    @Mixin
    private SeasonOption season = new SeasonOption();

    @Mixin
    private UnitsOption units = new UnitsOption();

    @Mixin
    private OutputOption output = new OutputOption();

    /**
     * A command.
     *
     * @param core opens the ride
     * @param out where the answer goes, as UTF-8 bytes
     */
    WhatIfCommand(ReviewCommand.Core core, PrintStream out) {
        this.core = core;
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
                            + " --with-pressure, --with-air-density and --bunch-share");
        }
        Units shown = units.units(spec, format != SeasonFormat.JSON);
        NamedRide named = ride == null ? null : NamedRide.named(ride);
        Path target = output.file(spec, named == null ? List.of() : List.of(named));
        WhatIfReport report;
        try {
            report = named == null ? ofRoad(change) : ofRide(named, change);
        } catch (Bounds.OutOfBoundsException e) {
            throw with.refused(spec, e, shown);
        }
        StringBuilder text = new StringBuilder();
        switch (format) {
            case TEXT -> new TextWhatIf(shown).write(report, text);
            case JSON -> text.append(report.json().text());
            case HTML -> new HtmlWhatIf(shown).write(report, text);
        }
        OutputFile.deliver(text, target, out);
        return ExitStatus.DONE.code();
    }

    private WhatIfReport ofRide(NamedRide named, WhatIf.Change change)
            throws UnreadableRideException, UnreadableProfileException, UnreadableStoreException {
        List<String> ofRoad = road.given();
        if (!ofRoad.isEmpty()) {
            throw Usage.error(spec, ofRoad.get(0) + " is for a road without a ride; a RIDE has its own");
        }
        Adjustment power = with.powerW();
        if (power != null && power.kind() == Adjustment.Kind.TO) {
            throw Usage.refused(spec, "--with-power", "a ride has no one power; give a change such as +10 or +5%");
        }
        ReadOptions reading = columns.reading(spec);
        Rider rider = asItIs.rider(spec, named.folder());
        Selection selection = part.selection(
                spec,
                units.units(spec, format != SeasonFormat.JSON),
                sessionIndex -> core.open(named, reading, sessionIndex).ride());
        OpenedRide opened = core.open(named, reading, selection.sessionIndex());
        OwnRides ownRides = season.ridesBefore(spec, rider, ZoneOffset.UTC, opened.localDay(ZoneOffset.UTC));
        Replayer.Replayed replayed;
        try {
            replayed = Replayer.whatIf(opened, rider, asItIs.position(), change, selection, ownRides)
                    .orElseThrow(reason -> new UnreadableRideException(Reason.NOT_SUITABLE, named + ": " + reason));
        } catch (Bounds.OutOfBoundsException e) {
            throw e;
        } catch (IllegalArgumentException e) {
            throw part.refused(spec, e);
        }
        columns.requireTable(spec, Collections.singletonList(replayed.source().format()));
        return WhatIfReport.ofRide(replayed);
    }

    private WhatIfReport ofRoad(WhatIf.Change change) throws UnreadableProfileException, UnreadableStoreException {
        Double distanceM = road.distanceM();
        Double powerW = road.powerW();
        if (distanceM == null || powerW == null) {
            throw Usage.error(
                    spec,
                    road.given().isEmpty()
                            ? "give a RIDE, or --distance and --power"
                            : "without a RIDE, both --distance and --power are needed");
        }
        if (part.isGiven()) {
            throw Usage.error(spec, "--session, --from and --to are for a RIDE");
        }
        if (columns.isGiven()) {
            throw Usage.error(spec, "--column is for a RIDE");
        }
        requireAnswerable(change, powerW);
        double ascentM = road.ascentM();
        Rider rider = asItIs.rider(spec, null);
        Course course;
        try {
            course = Course.ofHills(distanceM, ascentM);
        } catch (IllegalArgumentException e) {
            throw Usage.refused(spec, "--ascent", "expected a tenth of the distance at most");
        }
        RigChoice rig = RigChoice.ofNoRide(
                rider.massKg(), rider.bikeMassKg(), rider.dragAreaM2(), rider.rollingResistance(), asItIs.position());
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        OwnRides ownRides = season.ridesBefore(spec, rider, ZoneId.systemDefault(), today);
        RigChoice known = ownRides == null ? rig : ownRides.traitsOn(today).fill(rig);
        return WhatIfReport.ofRoad(WhatIf.steady(course, powerW, known, road.air(), change), ascentM);
    }

    /** A usage error when the change of a road leads to a power or to air that the core has no answer for. */
    private void requireAnswerable(WhatIf.Change change, double powerW) {
        Adjustment power = change.powerW();
        double changedW = power == null ? powerW : power.of(powerW);
        if (!NumberOptions.STEADY_POWER_W.contains(changedW)) {
            throw Usage.refused(
                    spec,
                    "--with-power",
                    "brings the power to " + Decimals.of(changedW, 1) + " W, "
                            + Unit.WATT.expected(NumberOptions.STEADY_POWER_W, Units.METRIC));
        }
        if (road.hasAirDensity()
                && !change.air().equals(Air.UNKNOWN)
                && change.air().densityKgPerM3() == null) {
            throw Usage.error(spec, "the air is given by --air-density; change it by --with-air-density");
        }
    }
}
