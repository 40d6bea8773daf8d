package io.github.wattledger.cli.report.words;

import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.Influence;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Position;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What another position, mass, tyre, air or power is worth, in words. */
public final class WhatIfWords {
    /** Below this it rounds to nothing, minutes. */
    private static final double NOTICEABLE_MINUTES = 0.05;

    private static final String BUNCH =
            "What the bunch saves counts as it is given and is not in the range. Close groups on"
                    + " a road save 25 to 50 % of the drag by published measurements, wide gaps less; on gravel nobody has"
                    + " measured it.";

    private WhatIfWords() {}

    /** What is changed, and over how much of the distance. */
    public static String question(WhatIf.Answer answer, Units units) {
        return "What if: " + String.join(", ", changes(answer, units)) + ", "
                + extent(answer.change().extent());
    }

    /** What everything rests on: the rider and bicycle as they are, then what was left out or kept. */
    public static List<String> basis(WhatIfReport report, Units units) {
        WhatIf.Answer answer = report.answer();
        List<String> basis = new ArrayList<>();
        basis.add("As it is: " + LibraryWords.of(answer.rig().numbers(), units) + "; position: "
                + answer.rig().position().words() + "; air "
                + Figures.decimal(answer.asItIs().airDensityKgPerM3(), 3) + " kg/m3.");
        answer.rig().refusal().ifPresent(basis::add);
        boolean isBunch = answer.change().bunchSaving() != null;
        basis.add(
                report.source() == null
                        ? "There is no wind, no " + (isBunch ? "other " : "")
                                + "bunch and no braking; every stretch is ridden at its own steady speed."
                        : "Wind, bunch, surface and stops are as they were that day.");
        if (isBunch) {
            basis.add(BUNCH);
        }
        if (answer.change().riderKg() != null) {
            basis.add(Cautions.MASS);
        }
        if (answer.change().position() == Position.AERO_BARS) {
            basis.add(Cautions.AERO_BARS);
        }
        if (answer.influences().stream().anyMatch(each -> each.input() == Influence.Input.BRAKES)) {
            basis.add(
                    "Freewheeled stretches roll at the speed that the change gives. Whether the rider would brake there, in"
                            + " bends say, cannot be known: at one end of the range none of them is ridden faster than it was.");
        }
        return basis;
    }

    private static List<String> changes(WhatIf.Answer answer, Units units) {
        WhatIf.Change change = answer.change();
        WhatIf.State before = answer.asItIs();
        WhatIf.State after = answer.changed();
        List<String> changes = new ArrayList<>();
        if (change.position() != null) {
            changes.add(change.position().words() + " instead of "
                    + answer.rig().position().words() + " (drag area " + Figures.decimal(after.dragAreaM2(), 3)
                    + " instead of " + Figures.decimal(before.dragAreaM2(), 3) + " m2)");
        }
        if (change.dragAreaM2() != null) {
            changes.add("drag area " + Figures.decimal(after.dragAreaM2(), 3) + " instead of "
                    + Figures.decimal(before.dragAreaM2(), 3) + " m2");
        }
        Double bunchSaving = change.bunchSaving();
        if (bunchSaving != null) {
            changes.add("in a bunch that saves " + Figures.percent(100 * bunchSaving) + " of the drag");
        }
        if (change.riderKg() != null) {
            changes.add(units.mass().number(after.massKg(), 1) + " instead of "
                    + units.mass().words(before.massKg(), 1) + " in all");
        }
        if (change.rollingResistance() != null) {
            changes.add("rolling resistance " + Figures.decimal(after.rollingResistance(), 4) + " instead of "
                    + Figures.decimal(before.rollingResistance(), 4));
        }
        Adjustment power = change.powerW();
        if (power != null) {
            changes.add(power(power, before.powerW(), after.powerW()));
        }
        if (before.airDensityKgPerM3() != after.airDensityKgPerM3()) {
            changes.add("air of " + Figures.decimal(after.airDensityKgPerM3(), 3) + " instead of "
                    + Figures.decimal(before.airDensityKgPerM3(), 3) + " kg/m3");
        }
        return changes;
    }

    private static String power(Adjustment power, @Nullable Double before, @Nullable Double after) {
        if (before != null && after != null) {
            return Figures.watts(after) + " instead of " + Figures.watts(before);
        }
        boolean isFactor = power.kind() == Adjustment.Kind.TIMES;
        double more = isFactor ? (power.amount() - 1) * 100 : power.amount();
        return Figures.brief(Math.abs(more)) + (isFactor ? " %" : " W") + (more < 0 ? " less power" : " more power");
    }

    private static String extent(WhatIf.Extent extent) {
        if (extent.share() == 1) {
            return "over the whole distance";
        }
        return extent.isSpread()
                ? "over " + Figures.percent(extent.share() * 100) + " of the distance, spread alike"
                : "from " + Figures.brief(extent.part().from() * 100) + " to "
                        + Figures.percent(extent.part().to() * 100) + " of the distance";
    }

    /** The minutes saved or lost, with their range. */
    public static String worth(WhatIf.Answer answer) {
        double minutes = answer.savedMinutes();
        double low = answer.lowMinutes();
        double high = answer.highMinutes();
        if (Math.abs(minutes) < NOTICEABLE_MINUTES) {
            return "It makes no difference that could be reported.";
        }
        String range;
        if (low < 0 && high > 0) {
            range = "between " + Figures.minutes(-low) + " lost and " + Figures.minutes(high) + " saved";
        } else if (minutes > 0) {
            range = Figures.brief(low) + " to " + Figures.minutes(high);
        } else {
            range = Figures.brief(-high) + " to " + Figures.minutes(-low);
        }
        return (minutes > 0 ? "Saves " : "Costs ") + Figures.minutes(Math.abs(minutes)) + " (" + range + ").";
    }

    /** What was ridden again, or the road that nobody has ridden yet. */
    public static String road(WhatIfReport report, Units units) {
        WhatIf.Answer answer = report.answer();
        String distance = units.distanceWords(answer.distanceM());
        RideSource source = report.source();
        Interval ridden = report.ridden();
        if (source != null && ridden != null) {
            return RideWords.name(source, "a ride") + ", " + ridden + ", " + distance
                    + ", ridden again with its recorded power";
        }
        Double ascent = report.ascentM();
        Double watts = answer.asItIs().powerW();
        return distance
                + (watts == null ? "" : " at a steady " + Figures.watts(watts))
                + (ascent == null || ascent == 0 ? ", level" : ", " + units.heightWords(ascent) + " up and down");
    }

    /** One number of the range with its lowest and highest value. */
    public static String input(Influence influence, Units units) {
        Measure range = influence.range();
        return switch (influence.input()) {
            case RIDER_MASS -> "rider " + mass(range, units);
            case BICYCLE_MASS -> "bicycle " + mass(range, units);
            case DRAG_AREA -> "drag area " + ends(range, 2) + " m2";
            case POSITION_RATIO -> "the other position, drag times " + ends(range, 2);
            case ROLLING_RESISTANCE -> "rolling resistance " + ends(range, 4);
            case AIR_DENSITY -> "air " + ends(range, 2) + " kg/m3";
            case BRAKES -> "brakes where it would roll faster";
            case MODEL -> "the model itself, times " + ends(range, 2);
        };
    }

    private static String mass(Measure range, Units units) {
        return units.mass().number(range.low(), 0) + " to " + units.mass().words(range.high(), 0);
    }

    private static String ends(Measure range, int decimals) {
        return Figures.decimal(range.low(), decimals) + " to " + Figures.decimal(range.high(), decimals);
    }
}
