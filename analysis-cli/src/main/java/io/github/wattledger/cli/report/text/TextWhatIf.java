package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.Influence;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.Measure;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The answer to a what-if, for people: at most 80 columns, the minutes first and what they rest on after them. */
public final class TextWhatIf {
    private static final int LABEL = 12;
    private static final int INPUT = 44;

    /** Below this it rounds to nothing, minutes. */
    private static final double NOTICEABLE_MINUTES = 0.05;

    /**
     * Writes an answer.
     *
     * @param report what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(WhatIfReport report, Appendable out) throws IOException {
        WhatIf.Answer answer = report.answer();
        Page page = new Page();
        page.paragraph("What if: " + String.join(", ", changes(answer)) + ", "
                + extent(answer.change().extent()));
        page.blank();
        page.paragraph(worth(answer));
        page.heading("THE ROAD");
        page.line(road(report));
        row(page, "as it is", answer.asItIsSeconds(), answer.distanceM());
        row(page, "changed", answer.changedSeconds(), answer.distanceM());
        page.heading("WHAT IT RESTS ON");
        page.line("As it is: " + answer.rig().numbers() + "; position: "
                + answer.rig().position().words() + "; air "
                + Figures.decimal(answer.asItIs().airDensityKgPerM3(), 3) + " kg/m3.");
        page.line(
                report.source() == null
                        ? "No wind, no bunch, no brakes; every stretch at its own steady speed."
                        : "Wind, bunch, surface and stops as they were that day.");
        report.notes().forEach(note -> page.paragraph(note.text()));
        page.heading("WHAT THE RANGE IS MADE OF, each alone at its ends, minutes");
        for (Influence each : answer.influences()) {
            page.row("  " + Page.padRight(input(each), INPUT)
                    + Page.padLeft(signed(each.savedAtLowMinutes()), 8) + " to "
                    + signed(each.savedAtHighMinutes()));
        }
        out.append(page.toString());
    }

    private static List<String> changes(WhatIf.Answer answer) {
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
        if (change.riderKg() != null) {
            changes.add(Figures.decimal(after.massKg(), 1) + " instead of " + Figures.decimal(before.massKg(), 1)
                    + " kg in all");
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

    private static String worth(WhatIf.Answer answer) {
        double minutes = answer.savedMinutes();
        double low = answer.lowMinutes();
        double high = answer.highMinutes();
        if (Math.abs(minutes) < NOTICEABLE_MINUTES) {
            return "Worth nothing that could be told.";
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

    private static String road(WhatIfReport report) {
        WhatIf.Answer answer = report.answer();
        String kilometres = Figures.kilometres(answer.distanceM()) + " km";
        RideSource source = report.source();
        Interval ridden = report.ridden();
        if (source != null && ridden != null) {
            String file = source.file();
            return (file == null ? "a ride" : PlainText.of(file)) + ", " + Figures.clock(ridden.fromSecond()) + " to "
                    + Figures.clock(ridden.toSecond()) + ", " + kilometres + ", ridden again with its recorded power";
        }
        Double ascent = report.ascentM();
        Double watts = answer.asItIs().powerW();
        return kilometres
                + (watts == null ? "" : " at a steady " + Figures.watts(watts))
                + (ascent == null || ascent == 0 ? ", level" : ", " + Figures.decimal(ascent, 0) + " m up and down");
    }

    private static void row(Page page, String label, double seconds, double distanceM) {
        page.row("  " + Page.padRight(label, LABEL) + Page.padLeft(Figures.clock(seconds), 9)
                + Page.padLeft(Figures.decimal(distanceM / seconds * 3.6, 1) + " km/h", 13));
    }

    private static String input(Influence influence) {
        Measure range = influence.range();
        return switch (influence.input()) {
            case RIDER_MASS -> "rider " + ends(range, 0) + " kg";
            case BICYCLE_MASS -> "bicycle " + ends(range, 0) + " kg";
            case DRAG_AREA -> "drag area " + ends(range, 2) + " m2";
            case POSITION_RATIO -> "the other position, drag times " + ends(range, 2);
            case ROLLING_RESISTANCE -> "rolling resistance " + ends(range, 4);
            case AIR_DENSITY -> "air " + ends(range, 2) + " kg/m3";
            case MODEL -> "the model itself, times " + ends(range, 2);
        };
    }

    private static String ends(Measure range, int decimals) {
        return Figures.decimal(range.low(), decimals) + " to " + Figures.decimal(range.high(), decimals);
    }

    private static String signed(double minutes) {
        return Figures.decimal(minutes, 1);
    }
}
