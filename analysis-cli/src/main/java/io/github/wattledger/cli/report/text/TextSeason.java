package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.cli.report.SeasonSentences;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Durability;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.DuplicateRide;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PacingTrend;
import io.github.wattledger.season.PeriodTotals;
import io.github.wattledger.season.RideJudgement;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import io.github.wattledger.season.SkippedFile;
import io.github.wattledger.season.ThresholdCheck;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** A season as plain text of at most 80 columns. */
public final class TextSeason {
    private static final int WEEKS_SHOWN = 12;
    private static final int FILES_LISTED = 20;
    private static final Set<Integer> DURATIONS_SHOWN =
            Set.of(5, 30, 60, 300, 600, 1200, 3600, 7200, 14_400, 21_600, 28_800, 36_000, 43_200, 54_000);
    private static final String NONE = "-";

    /**
     * Writes a season.
     *
     * @param season what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(SeasonReview season, Appendable out) throws IOException {
        Page page = new Page();
        LocalDate asOf = season.asOf();
        if (asOf == null || season.rides().isEmpty()) {
            page.paragraph("No ride in this season.");
        } else {
            page.paragraph(SeasonSentences.summary(season, asOf));
            load(page, season);
            periods(page, "MONTHS", season.months());
            periods(page, "WEEKS from Monday, the last " + WEEKS_SHOWN, lastOf(season.weeks()));
            bests(page, season);
            threshold(page, season.threshold());
            durability(page, season.durability());
            pacing(page, season.pacing());
        }
        leftOut(page, season);
        page.blank();
        page.paragraph("Numbers about effort and heart rate, not medical advice. Unusual tiredness, or anything unusual"
                + " about the heart, belongs to a physician.");
        out.append(page.toString());
    }

    private static List<PeriodTotals> lastOf(List<PeriodTotals> weeks) {
        return weeks.subList(Math.max(0, weeks.size() - WEEKS_SHOWN), weeks.size());
    }

    private static void load(Page page, SeasonReview season) {
        LoadHistory load = season.load();
        LoadHistory.Day today = load.last();
        if (today == null) {
            return;
        }
        page.heading("LOAD on " + today.day());
        page.labelled("acute load", 16, Figures.decimal(today.acute(), 1) + " training stress a day, 7 days");
        page.labelled("chronic load", 16, Figures.decimal(today.chronic(), 1) + " training stress a day, 42 days");
        page.labelled(
                "balance", 16, signed(today.balance()) + ", chronic less acute load at the end of the day before");
        page.labelled("ramp", 16, signed(today.ramp()) + " chronic load in seven days");
        Double ratio = today.ratio();
        page.labelled(
                "acute : chronic",
                16,
                ratio == null
                        ? "none yet"
                        : Figures.decimal(ratio, 2) + "; whether it says anything about injury is disputed");
        SeasonSentences.loadNotes(season).forEach(page::line);
    }

    private static void periods(Page page, String title, List<PeriodTotals> periods) {
        page.heading(title);
        page.row("  from        rides   hours       kJ   stress  chronic     ramp");
        for (PeriodTotals period : periods) {
            String mark = period.ridesWithoutStress() > 0 ? " *" : "";
            page.row("  " + period.from() + Page.padLeft(String.valueOf(period.rideCount()), 7)
                    + Page.padLeft(SeasonSentences.hours(period.movingSeconds()), 8)
                    + Page.padLeft(whole(period.workKJ()), 9)
                    + Page.padLeft(whole(period.trainingStress()) + mark, 9)
                    + Page.padLeft(period.chronic() == null ? NONE : Figures.decimal(period.chronic(), 1), 9)
                    + Page.padLeft(signed(period.ramp()), 9));
        }
        if (periods.stream().anyMatch(period -> period.ridesWithoutStress() > 0)) {
            page.line("* without some rides that have no training stress");
        }
    }

    private static void bests(Page page, SeasonReview season) {
        BestEfforts all = season.bests();
        BestEfforts recent = season.recentBests();
        if (all == null || recent == null || all.efforts().isEmpty()) {
            return;
        }
        page.heading("BEST EFFORTS");
        page.row("  over        season                last 90 days");
        boolean anyLow = false;
        for (BestEfforts.Effort effort : all.efforts()) {
            if (!DURATIONS_SHOWN.contains(effort.seconds())) {
                continue;
            }
            BestEfforts.Effort late = recent.over(effort.seconds());
            anyLow |= effort.mayBeLow() || (late != null && late.mayBeLow());
            page.row("  " + Page.padRight(Figures.span(effort.seconds()), 10)
                    + Page.padRight(effort(effort), 22)
                    + (late == null ? NONE : effort(late)));
        }
        if (anyLow) {
            page.line("~ seconds without power may have lowered it");
        }
    }

    private static String effort(BestEfforts.Effort effort) {
        return Page.padLeft(Figures.watts(effort.watts()), 6) + (effort.mayBeLow() ? "~ " : "  ") + effort.day();
    }

    private static void threshold(Page page, @Nullable ThresholdCheck check) {
        if (check == null) {
            return;
        }
        page.heading("THRESHOLD POWER");
        SeasonSentences.threshold(check).forEach(page::line);
    }

    private static void durability(Page page, List<Durability> durability) {
        if (durability.isEmpty()) {
            return;
        }
        page.heading("DURABILITY: best efforts of the last 90 days, fresh and tired");
        for (Durability each : durability) {
            page.row("  " + Page.padRight(Figures.span(each.seconds()), 8) + "after "
                    + Page.padLeft(Figures.decimal(each.afterKJ(), 0), 5) + " kJ: "
                    + Page.padLeft(Figures.watts(each.tiredW()), 6) + ", before it "
                    + Page.padLeft(Figures.watts(each.fresherW()), 6) + " (" + signed(each.changePercent()) + " %)");
        }
        page.line("It tells of tiredness only when both efforts were all-out.");
    }

    private static void pacing(Page page, PacingTrend pacing) {
        page.heading("RACES AND LONG RIDES");
        if (pacing.rides().isEmpty()) {
            page.line("None: no ride was judged as a race or took three hours.");
            return;
        }
        page.row("  day         moving   verdict          intensity  decoupling        mistakes");
        for (SeasonRide ride : pacing.rides()) {
            RideJudgement judgement = ride.judgement();
            page.row("  " + ride.day() + "  "
                    + Page.padLeft(Figures.clock(ride.numbers().movingSeconds()), 8) + " "
                    + Page.padRight(judgement.verdict().words(), 16)
                    + Page.padLeft(
                            judgement.intensityFactor() == null
                                    ? NONE
                                    : Figures.decimal(judgement.intensityFactor(), 2),
                            9)
                    + Page.padLeft(
                            ride.numbers().decouplingPercent() == null
                                    ? NONE
                                    : Figures.decimal(ride.numbers().decouplingPercent(), 1) + " %",
                            12)
                    + Page.padLeft(cost(judgement), 16));
        }
        SeasonSentences.trend(pacing).forEach(page::line);
    }

    private static String cost(RideJudgement judgement) {
        Double low = judgement.costMinutesLow();
        Double high = judgement.costMinutesHigh();
        if (low == null || high == null) {
            return judgement.verdict() == Verdict.NOT_JUDGED ? NONE : "not priced";
        }
        return Figures.decimal(low, 1) + " to " + Figures.decimal(high, 1) + " min";
    }

    private static void leftOut(Page page, SeasonReview season) {
        if (!season.duplicates().isEmpty()) {
            page.heading("THERE TWICE, counted once");
            for (DuplicateRide each :
                    season.duplicates().stream().limit(FILES_LISTED).toList()) {
                page.item(PlainText.of(each.file())
                        + (each.isCopy() ? " is a copy of " : " is the same ride as ")
                        + PlainText.of(each.keptFile()));
            }
            more(page, season.duplicates().size());
        }
        if (!season.goneFiles().isEmpty()) {
            page.heading("GONE: files no longer there, their rides kept from the store");
            new TreeSet<>(season.goneFiles())
                    .stream().limit(FILES_LISTED).forEach(file -> page.item(PlainText.of(file)));
            more(page, season.goneFiles().size());
        }
        if (!season.skipped().isEmpty()) {
            page.heading("SKIPPED: " + SeasonSentences.count(season.skipped().size(), "file"));
            for (SkippedFile each :
                    season.skipped().stream().limit(FILES_LISTED).toList()) {
                page.item(PlainText.of(each.file()) + ": " + PlainText.of(each.reason()));
            }
            more(page, season.skipped().size());
        }
    }

    private static void more(Page page, int count) {
        if (count > FILES_LISTED) {
            page.line("and " + (count - FILES_LISTED) + " more; --format json lists all");
        }
    }

    static String signed(@Nullable Double value) {
        if (value == null) {
            return NONE;
        }
        String text = Figures.decimal(value, 1);
        return value > 0 && !text.equals("0.0") ? "+" + text : text.equals("-0.0") ? "0.0" : text;
    }

    private static String whole(@Nullable Double value) {
        return value == null ? NONE : Figures.decimal(value, 0);
    }
}
