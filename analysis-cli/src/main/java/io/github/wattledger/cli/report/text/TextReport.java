package io.github.wattledger.cli.report.text;

import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.words.AbilityWords;
import io.github.wattledger.cli.report.words.Cautions;
import io.github.wattledger.cli.report.words.ClimbWords;
import io.github.wattledger.cli.report.words.EnergyWords;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.FindingWords;
import io.github.wattledger.cli.report.words.GearWords;
import io.github.wattledger.cli.report.words.HeadlineWords;
import io.github.wattledger.cli.report.words.LedgerWords;
import io.github.wattledger.cli.report.words.LoadWords;
import io.github.wattledger.cli.report.words.NotesWords;
import io.github.wattledger.cli.report.words.OccasionWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.RecordingWords;
import io.github.wattledger.cli.report.words.RemarkWords;
import io.github.wattledger.cli.report.words.RideWords;
import io.github.wattledger.cli.report.words.RiderWords;
import io.github.wattledger.cli.report.words.SplitWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.cli.report.words.ZoneWords;
import io.github.wattledger.course.Climb;
import io.github.wattledger.course.ClimbReview;
import io.github.wattledger.course.GearUse;
import io.github.wattledger.energy.EnergyHour;
import io.github.wattledger.energy.FuelReview;
import io.github.wattledger.load.ZoneTime;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.Channel;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A review for people: at most 80 columns, no colour, the judgement first and the small print last. What is missing is
 * said in words, never left blank and never 0.
 */
public final class TextReport implements Report {
    private static final int BAR_COLUMNS = 24;

    private static final int[] EFFORT_SECONDS = {
        5, 60, 300, 600, 1200, 3600, 2 * 3600, 4 * 3600, 6 * 3600, 8 * 3600, 10 * 3600, 12 * 3600, 15 * 3600
    };

    private final Units units;
    private final @Nullable PlanReview plan;

    /** A report in these units. */
    public TextReport(Units units) {
        this(units, null);
    }

    /** A report in these units that holds the ride against a plan, if any. */
    public TextReport(Units units, @Nullable PlanReview plan) {
        this.units = units;
        this.plan = plan;
    }

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        new TextBrief(units).write(review, out);
        Page page = new Page();
        page.heading("THE RIDE");
        page.line(PlainText.sentence(RideWords.circumstances(review.source(), review.quality())));
        if (review.pacing().verdict() != Verdict.NOT_JUDGED) {
            page.line(OccasionWords.of(review)); // Otherwise it stands in the lines above.
        }
        notes(page, NotesWords.of(review));
        time(page, review);
        if (review.pacing().verdict() == Verdict.NOT_JUDGED) {
            remarks(page, RemarkWords.of(review, units));
        } else {
            page.heading("WHAT STANDS OUT, " + FindingWords.ORDER);
            if (review.pacing().findings().isEmpty()) {
                page.line(FindingWords.none(review));
            }
            findings(page, FindingWords.of(review, units));
            String caps = HeadlineWords.whyCapsDiffer(review);
            if (!caps.isEmpty()) {
                page.line(caps);
            }
        }
        TextBunch.write(page, review.pacing());
        if (plan != null) {
            TextPlanReview.write(page, plan, units);
        }
        List<FindingWords> ofOthers = FindingWords.ofOthers(review, units);
        if (!ofOthers.isEmpty()) {
            page.heading("WHAT OWN DETECTORS FOUND");
            findings(page, ofOthers);
        }
        boolean isThresholdKnown = review.rider().thresholdPowerW() != null;
        LoadTable.write(
                page,
                review.load(),
                review.ride().part(review.reviewed()),
                review.ride(),
                review.deviceTotals(),
                isThresholdKnown,
                units);
        String doubt = LoadWords.doubt(review);
        if (doubt != null) {
            page.line(doubt);
        }
        RideSplits splits = RideSplits.of(review);
        TextSplits.write(page, review, splits, units);
        climbs(page, review, splits);
        page.heading("POWER ZONES");
        zones(page, review.load().powerZones(), "W", ZoneWords.noPowerZones(review));
        page.heading("HEART-RATE ZONES");
        zones(page, review.load().heartRateZones(), "bpm", ZoneWords.noHeartRateZones(review));
        bestEfforts(page, review);
        gears(page, review);
        energy(page, review);
        page.heading("WHAT COULD BE EXPECTED");
        AbilityWords.of(review).forEach(page::line);
        page.heading("JUDGED BY");
        RiderWords.judgedBy(review, units).forEach(page::line);
        recording(page, review.quality());
        leftOut(page, review.pacing().leftOut());
        page.blank();
        page.paragraph(Cautions.RIDE);
        out.append(page.toString());
    }

    private static void notes(Page page, List<String> notes) {
        if (!notes.isEmpty()) {
            page.heading(NotesWords.HEADING.toUpperCase(Locale.ROOT));
            notes.forEach(page::line);
        }
    }

    private void time(Page page, RideReview review) {
        PacingReview pacing = review.pacing();
        TimeLedger ledger = pacing.ledger();
        page.heading("WHERE THE TIME WENT");
        for (LedgerWords.Part part : LedgerWords.parts(ledger)) {
            minutesRow(page, part.label(), part.minutes());
        }
        minutesRow(page, "elapsed", ledger.elapsedMinutes());
        String judged = RideWords.judged(review);
        if (!judged.isEmpty()) {
            page.line(judged);
        }
        for (LedgerWords.Loss loss : LedgerWords.losses(pacing)) {
            page.line("Lost: " + loss.label() + ", " + loss.minutes() + ".");
        }
        LedgerWords.notes(pacing, units).forEach(page::line);
        String nothingPriced = LedgerWords.nothingPriced(pacing);
        if (nothingPriced != null) {
            page.line(nothingPriced);
        }
    }

    private static void minutesRow(Page page, String label, double minutes) {
        page.row("  " + Page.padRight(label, 28) + Page.padLeft(Figures.clock(minutes * 60), 9));
    }

    private static void remarks(Page page, List<RemarkWords> remarks) {
        if (!remarks.isEmpty()) {
            page.heading(RemarkWords.HEADING);
            remarks.forEach(remark -> page.wrapped("  ", "  ", remark.heading() + ". " + remark.evidence()));
        }
    }

    private static void findings(Page page, List<FindingWords> findings) {
        int number = 0;
        for (FindingWords finding : findings) {
            number++;
            page.wrapped(Page.padLeft(number + ". ", 5), "     ", finding.heading());
            part(page, finding.evidence());
            if (!finding.cost().isEmpty()) {
                part(page, "Cost: " + String.join(", ", finding.cost()) + " (" + finding.how() + ").");
            }
            part(page, FindingWords.NEXT_TIME + finding.nextTime());
        }
    }

    private static void part(Page page, String words) {
        if (!words.isEmpty()) {
            page.wrapped("     ", "     ", words);
        }
    }

    private void climbs(Page page, RideReview review, RideSplits splits) {
        List<ClimbReview> climbs = review.climbs();
        if (climbs == null || climbs.isEmpty()) {
            return;
        }
        page.heading("CLIMBS, " + ClimbWords.whatCounts(units));
        int number = 0;
        for (ClimbReview each : climbs) {
            String lost = SplitWords.of(review, units).lost(splits.climbs().get(number));
            number++;
            Climb climb = each.climb();
            List<String> parts = new ArrayList<>();
            parts.add(units.between(climb.startM(), climb.endM()));
            parts.add(units.heightWords(climb.gainM()) + " at " + Figures.decimal(climb.meanGrade() * 100, 1)
                    + " % (steepest " + Figures.decimal(climb.steepestGrade() * 100, 1) + " %)");
            parts.add(Figures.clock(climb.movingSeconds()));
            addFigure(parts, climb.averagePowerW(), 0, " W while riding");
            addFigure(parts, each.normalizedPowerW(), 0, " W normalized");
            addFigure(parts, each.wattsPerKg(), 2, " W/kg");
            addFigure(parts, climb.averageHeartRateBpm(), 0, " bpm");
            parts.add(units.ascentRate().words(climb.verticalSpeedMPerHour(), 0));
            String again = ClimbWords.again(each);
            if (!again.isEmpty()) {
                parts.add(again);
            }
            if (lost != null) {
                parts.add("lost " + lost + " min");
            }
            page.wrapped(Page.padLeft(number + ". ", 5), "     ", String.join(", ", parts));
        }
    }

    private static void addFigure(List<String> parts, @Nullable Double value, int decimals, String unit) {
        if (value != null) {
            parts.add(Figures.decimal(value, decimals) + unit);
        }
    }

    private static void zones(Page page, List<ZoneTime> zones, String unit, String otherwise) {
        if (zones.isEmpty()) {
            page.line(otherwise);
            return;
        }
        long total = 0;
        int nameColumns = 0;
        int boundsColumns = 0;
        for (ZoneTime zone : zones) {
            total += zone.seconds();
            nameColumns = Math.max(nameColumns, Page.columns(PlainText.of(zone.name())));
            boundsColumns = Math.max(boundsColumns, ZoneWords.bounds(zone, unit).length());
        }
        for (ZoneTime zone : zones) {
            double share = total == 0 ? 0 : (double) zone.seconds() / total;
            page.row("  " + Page.padRight(PlainText.of(zone.name()), nameColumns) + "  "
                    + Page.padLeft(ZoneWords.bounds(zone, unit), boundsColumns)
                    + Page.padLeft(Figures.clock(zone.seconds()), 10)
                    + Page.padLeft(Figures.fractionAsPercent(share), 7) + "  "
                    + "#".repeat((int) Math.round(share * BAR_COLUMNS)));
        }
    }

    private static void bestEfforts(Page page, RideReview review) {
        boolean hasPower = review.ride().has(Channel.POWER);
        page.heading("BEST EFFORTS, highest mean power" + (hasPower ? "; stops count as 0 W" : ""));
        MeanMaximalCurve curve = review.curve();
        if (!hasPower) {
            page.line("There is no power in this file.");
            return;
        }
        StringBuilder row = new StringBuilder();
        int inRow = 0;
        boolean any = false;
        for (int seconds : EFFORT_SECONDS) {
            if (seconds > curve.longestSeconds()) {
                continue;
            }
            any = true;
            row.append(Page.padLeft(Figures.duration(seconds), 8))
                    .append(Page.padLeft(Figures.watts(curve.bestWatts(seconds)), 8));
            inRow++;
            if (inRow == 4) {
                page.row(row.toString());
                row.setLength(0);
                inRow = 0;
            }
        }
        if (inRow > 0) {
            page.row(row.toString());
        }
        if (!any) {
            page.line("None: the ride is too short.");
        }
    }

    /** Left out where no gears are known: most profiles name none. */
    private void gears(Page page, RideReview review) {
        GearUse use = review.gearUse();
        if (use == null) {
            return;
        }
        page.heading("GEARS");
        Table table = new Table(1, List.of("gear", "time", units.distance().symbol(), "share"));
        for (GearWords.InGear each : GearWords.gears(use, units)) {
            table.row(List.of(each.gear(), each.time(), each.distance(), each.share()));
        }
        if (use.gears().isEmpty()) {
            page.line(GearWords.NONE_FITS);
        } else {
            table.write(page);
        }
        GearWords.notes(use).forEach(page::line);
    }

    private static void energy(Page page, RideReview review) {
        FuelReview fuel = review.fuel();
        page.heading("ENERGY, as ranges, since riders differ");
        if (fuel == null) {
            page.line(EnergyWords.notEstimated(review));
            return;
        }
        EnergyWords.totals(fuel).forEach(page::line);
        Table table = new Table(1, List.of("hour", "power while riding", "carbohydrate, g an hour"));
        for (EnergyHour hour : fuel.use().hours()) {
            table.row(List.of(EnergyWords.when(hour), EnergyWords.power(hour), EnergyWords.carbohydrate(hour)));
        }
        table.write(page);
        EnergyWords.notes(fuel).forEach(page::line);
    }

    private void recording(Page page, QualityReport quality) {
        page.heading("THE RECORDING");
        RecordingWords.summary(quality).forEach(page::line);
        RecordingWords.notes(quality.notes(), units).forEach(page::item);
    }

    private static void leftOut(Page page, List<String> leftOut) {
        if (leftOut.isEmpty()) {
            return;
        }
        page.heading("LEFT OUT");
        leftOut.forEach(what -> page.item(PlainText.sentence(what)));
    }
}
