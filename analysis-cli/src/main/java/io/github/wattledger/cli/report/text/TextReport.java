package io.github.wattledger.cli.report.text;

import io.github.wattledger.ClimbReview;
import io.github.wattledger.RideReview;
import io.github.wattledger.RideSource;
import io.github.wattledger.RiderContext;
import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.cli.report.AbilityText;
import io.github.wattledger.cli.report.EvidenceSentences;
import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.RideWords;
import io.github.wattledger.cli.report.VerdictSentence;
import io.github.wattledger.course.Climb;
import io.github.wattledger.load.ZoneTime;
import io.github.wattledger.pacing.AnyFinding;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.OwnFinding;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * For people: at most 80 columns, no colour, the judgement first and the small print last. What is missing is said in
 * words, never left blank and never 0.
 */
public final class TextReport implements Report {
    private static final int BAR_COLUMNS = 24;

    private static final int[] EFFORT_SECONDS = {
        5, 60, 300, 600, 1200, 3600, 2 * 3600, 4 * 3600, 6 * 3600, 8 * 3600, 10 * 3600, 12 * 3600, 15 * 3600
    };

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        Page page = new Page();
        head(page, review.source());
        page.blank();
        page.paragraph(VerdictSentence.of(review));
        time(page, review);
        findings(page, review);
        ownFindings(page, review);
        new LoadTable(
                        review.load(),
                        review.ride(),
                        review.deviceTotals(),
                        review.rider().thresholdPowerW() != null)
                .write(page);
        climbs(page, review.climbs());
        powerZones(page, review);
        heartRateZones(page, review);
        bestEfforts(page, review);
        new AbilityText(review).write(page);
        thresholds(page, review);
        quality(page, review.quality());
        leftOut(page, review.pacing().leftOut());
        page.blank();
        page.paragraph(
                "These are numbers about effort and heart rate, not medical advice: anything unusual belongs to a"
                        + " physician. The rules of your event come first.");
        out.append(page.toString());
    }

    private static void head(Page page, RideSource source) {
        String file = source.file();
        page.paragraph("Review of " + (file == null ? "a ride" : PlainText.of(file)));
        page.paragraph(RideWords.circumstances(source));
    }

    private static void time(Page page, RideReview review) {
        TimeLedger ledger = review.pacing().ledger();
        page.heading("WHERE THE TIME WENT");
        minutesRow(page, "riding", ledger.movingMinutes());
        minutesRow(page, "stopped, timer running", ledger.stoppedMinutes());
        minutesRow(page, "paused, timer stopped", ledger.pausedMinutes());
        minutesRow(page, "missing, nothing recorded", ledger.missingMinutes());
        minutesRow(page, "elapsed", ledger.elapsedMinutes());
        String judged = RideWords.judged(review);
        if (!judged.isEmpty()) {
            page.line(judged);
        }
        for (TimeLedger.Entry entry : ledger.entries()) {
            page.line("Lost: " + PlainText.of(inWords(entry.label())) + ", "
                    + minutesRange(entry.minutesLow(), entry.minutesHigh()) + ".");
        }
        for (String note : ledger.notes()) {
            page.line(PlainText.sentence(note));
        }
        notPriced(page, review.pacing());
    }

    /** A line of the ledger that carries a finding's fixed word is shown with its name. */
    private static String inWords(String label) {
        for (FindingKind kind : FindingKind.values()) {
            if (kind.id().equals(label)) {
                return EvidenceSentences.title(kind).toLowerCase(Locale.ROOT);
            }
        }
        return label;
    }

    private static void minutesRow(Page page, String label, double minutes) {
        page.row("  " + Page.padRight(label, 28) + Page.padLeft(Figures.clock(minutes * 60), 9));
    }

    /** Says once which prices are missing and why. */
    private static void notPriced(Page page, PacingReview pacing) {
        List<String> titles = new ArrayList<>();
        List<String> reasons = new ArrayList<>();
        for (Finding finding : pacing.findings()) {
            if (finding.cost() instanceof Cost.NotPriced notPriced) {
                titles.add(EvidenceSentences.title(finding.kind()).toLowerCase(Locale.ROOT));
                reasons.add(PlainText.of(notPriced.reason()));
            }
        }
        if (reasons.isEmpty()) {
            return;
        }
        boolean sameReason = Collections.frequency(reasons, reasons.get(0)) == reasons.size();
        if (sameReason) {
            boolean all = titles.size() == pacing.findings().size();
            String whose = all ? "" : " (" + String.join(", ", titles) + ")";
            page.line("Prices in minutes" + whose + ": " + PlainText.sentence(reasons.get(0)));
            return;
        }
        List<String> each = new ArrayList<>();
        for (int i = 0; i < titles.size(); i++) {
            each.add(titles.get(i) + " (" + reasons.get(i) + ")");
        }
        page.line("Without a price in minutes: " + String.join("; ", each) + ".");
    }

    private static void findings(Page page, RideReview review) {
        PacingReview pacing = review.pacing();
        page.heading("WHAT STANDS OUT, the weightiest first; times and km of the whole recording");
        if (pacing.findings().isEmpty()) {
            page.line(
                    pacing.verdict() == Verdict.NOT_JUDGED
                            ? "Nothing: the pacing was not judged."
                            : "Nothing in the pacing.");
        }
        findings(page, pacing.findings(), review);
    }

    private static void findings(Page page, List<? extends AnyFinding> findings, RideReview review) {
        int number = 0;
        for (AnyFinding finding : findings) {
            number++;
            page.wrapped(
                    Page.padLeft(number + ". ", 5),
                    "     ",
                    EvidenceSentences.title(finding) + " (" + finding.severity().id() + "), " + where(finding, review));
            part(page, EvidenceSentences.of(finding));
            if (finding instanceof Finding ours && ours.cost() instanceof Cost.Priced priced) {
                part(
                        page,
                        "Cost: " + minutesRange(priced.lowMinutes(), priced.highMinutes()) + " ("
                                + PlainText.of(priced.how()) + ").");
            }
            part(page, "Next time: " + PlainText.sentence(finding.advice().text()));
        }
    }

    private static void ownFindings(Page page, RideReview review) {
        List<OwnFinding> findings = review.pacing().ownFindings();
        if (findings.isEmpty()) {
            return;
        }
        page.heading("WHAT OWN DETECTORS FOUND");
        findings(page, findings, review);
    }

    private static void part(Page page, String words) {
        if (!words.isEmpty()) {
            page.wrapped("     ", "     ", words);
        }
    }

    private static String where(AnyFinding finding, RideReview review) {
        Interval when = finding.when();
        boolean isShort = when.seconds() < 600;
        String from = isShort ? Figures.clock(when.fromSecond()) : Figures.shortClock(when.fromSecond());
        String to = isShort ? Figures.clock(when.toSecond()) : Figures.shortClock(when.toSecond());
        return from + "-" + to + kilometres(finding.startM(), finding.endM(), review);
    }

    private static String kilometres(@Nullable Double startM, @Nullable Double endM, RideReview review) {
        if (startM != null && endM != null) {
            return ", km " + Figures.kilometres(startM) + "-" + Figures.kilometres(endM);
        }
        return review.ride().has(Channel.DISTANCE) ? ", km not known" : ", no distance in this file";
    }

    private static String minutesRange(double low, double high) {
        if (low == 0 && high == 0) {
            return "nothing";
        }
        String from = Figures.decimal(low, 1);
        String to = Figures.decimal(high, 1);
        return from.equals(to) ? to + " min" : from + " to " + to + " min";
    }

    private static void climbs(Page page, @Nullable List<ClimbReview> climbs) {
        if (climbs == null || climbs.isEmpty()) {
            return;
        }
        page.heading("CLIMBS, at least 500 m of 3 % or more");
        int number = 0;
        for (ClimbReview review : climbs) {
            number++;
            Climb climb = review.climb();
            List<String> parts = new ArrayList<>();
            parts.add("km " + Figures.kilometres(climb.startM()) + "-" + Figures.kilometres(climb.endM()));
            parts.add(Figures.decimal(climb.gainM(), 0) + " m at " + Figures.decimal(climb.meanGrade() * 100, 1)
                    + " % (steepest " + Figures.decimal(climb.steepestGrade() * 100, 1) + " %)");
            parts.add(Figures.clock(climb.movingSeconds()));
            addFigure(parts, climb.averagePowerW(), 0, " W");
            addFigure(parts, review.normalizedPowerW(), 0, " W normalized");
            addFigure(parts, review.wattsPerKg(), 2, " W/kg");
            addFigure(parts, climb.averageHeartRateBpm(), 0, " bpm");
            parts.add(Figures.decimal(climb.verticalSpeedMPerHour(), 0) + " m/h");
            Integer first = review.sameAs();
            Integer over = review.secondsOverFirst();
            if (first != null && over != null) {
                parts.add("the same as climb " + (first + 1) + ", " + Figures.clock(Math.abs(over))
                        + (over < 0 ? " faster" : " slower"));
            }
            page.wrapped(Page.padLeft(number + ". ", 5), "     ", String.join(", ", parts));
        }
    }

    private static void addFigure(List<String> parts, @Nullable Double value, int decimals, String unit) {
        if (value != null) {
            parts.add(Figures.decimal(value, decimals) + unit);
        }
    }

    private static void powerZones(Page page, RideReview review) {
        page.heading("POWER ZONES");
        if (!review.ride().has(Channel.POWER)) {
            page.line("No power in this file.");
        } else if (review.load().powerZones().isEmpty()) {
            page.line(
                    review.rider().thresholdPowerW() == null
                            ? "Not computed: threshold power is not known."
                            : "Not computed.");
        } else {
            zones(page, review.load().powerZones(), "W");
        }
    }

    private static void heartRateZones(Page page, RideReview review) {
        page.heading("HEART-RATE ZONES");
        if (!review.ride().has(Channel.HEART_RATE)) {
            page.line("No heart rate in this file.");
        } else if (review.load().heartRateZones().isEmpty()) {
            page.line(
                    review.rider().thresholdHeartRateBpm() == null
                            ? "Not computed: threshold heart rate is not known; see --threshold-heart-rate."
                            : "Not computed.");
        } else {
            zones(page, review.load().heartRateZones(), "bpm");
        }
    }

    private static void zones(Page page, List<ZoneTime> zones, String unit) {
        long total = 0;
        int nameColumns = 0;
        for (ZoneTime zone : zones) {
            total += zone.seconds();
            nameColumns = Math.max(nameColumns, Page.columns(PlainText.of(zone.name())));
        }
        for (ZoneTime zone : zones) {
            Double to = zone.to();
            String bounds = to == null
                    ? Figures.decimal(zone.from(), 0) + "+ " + unit
                    : Figures.decimal(zone.from(), 0) + "-" + Figures.decimal(to, 0) + " " + unit;
            double share = total == 0 ? 0 : (double) zone.seconds() / total;
            page.row("  " + Page.padRight(PlainText.of(zone.name()), nameColumns) + Page.padLeft(bounds, 13)
                    + Page.padLeft(Figures.clock(zone.seconds()), 10)
                    + Page.padLeft(Figures.fractionAsPercent(share), 7) + "  "
                    + "#".repeat((int) Math.round(share * BAR_COLUMNS)));
        }
    }

    private static void bestEfforts(Page page, RideReview review) {
        page.heading("BEST EFFORTS, highest mean power");
        MeanMaximalCurve curve = review.curve();
        if (!review.ride().has(Channel.POWER)) {
            page.line("No power in this file.");
            return;
        }
        StringBuilder row = new StringBuilder();
        int inRow = 0;
        boolean any = false;
        for (int seconds : EFFORT_SECONDS) {
            if (seconds > curve.longestSeconds() || !Double.isFinite(curve.watts(seconds))) {
                continue;
            }
            any = true;
            row.append(Page.padLeft(effortLength(seconds), 8))
                    .append(Page.padLeft(Figures.watts(curve.watts(seconds)), 8));
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

    private static String effortLength(int seconds) {
        if (seconds < 60) {
            return seconds + " s";
        }
        return seconds <= 3600 ? seconds / 60 + " min" : seconds / 3600 + " h";
    }

    private static void thresholds(Page page, RideReview review) {
        RiderContext rider = review.rider();
        page.heading("JUDGED BY");
        Double power = rider.thresholdPowerW();
        if (power == null) {
            page.line("Threshold power: not known; give it with --threshold-power.");
        } else {
            page.line(thresholdPower(power, rider.thresholdPowerSource()));
        }
        Double heartRate = rider.thresholdHeartRateBpm();
        page.line(
                heartRate == null
                        ? "Threshold heart rate: not known."
                        : "Threshold heart rate: " + Figures.beats(heartRate) + ".");
        Double mass = rider.massKg();
        page.line(mass == null ? "Mass: not known." : "Mass: " + Figures.decimal(mass, 1) + " kg.");
    }

    static String thresholdPower(double watts, RiderContext.@Nullable ThresholdSource source) {
        String value = Figures.watts(watts);
        if (source == null) {
            return "Threshold power: " + value + ".";
        }
        return switch (source) {
            case GIVEN -> "Threshold power: " + value + ", as given.";
            case PROFILE -> "Threshold power: " + value + ", from the rider profile.";
            case DEVICE -> "Threshold power: " + value + ", as set on the device. Check that it is up to date.";
            case ESTIMATED ->
                "Threshold power: at least " + value + ", estimated from the efforts in this ride. Give your own with"
                        + " --threshold-power.";
        };
    }

    private static void quality(Page page, QualityReport quality) {
        page.heading("THE RECORDING");
        page.line("Recorded seconds: " + quality.recordedSeconds() + "; seconds without power: "
                + (quality.powerSource() == PowerSource.NONE
                        ? "all (no power in this file)"
                        : Integer.toString(quality.missingPowerSeconds()))
                + "; samples repaired: " + quality.repairedSamples() + ".");
        switch (quality.powerSource()) {
            case WORK_COUNTER -> page.line("Power is taken from the work counter of the power meter.");
            case SAMPLES -> page.line("Power is taken from the one-second samples.");
            case NONE -> {
                // Said in the line above.
            }
        }
        for (QualityNote note : quality.notes()) {
            page.item(PlainText.sentence(note.text()));
        }
    }

    private static void leftOut(Page page, List<String> leftOut) {
        page.heading("LEFT OUT");
        if (leftOut.isEmpty()) {
            page.line("Nothing.");
        }
        for (String what : leftOut) {
            page.item(PlainText.sentence(what));
        }
    }
}
