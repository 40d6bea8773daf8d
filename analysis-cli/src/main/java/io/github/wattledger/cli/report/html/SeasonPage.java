package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.cli.report.SeasonSentences;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Durability;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.DuplicateRide;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PeriodTotals;
import io.github.wattledger.season.RideJudgement;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import io.github.wattledger.season.SkippedFile;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything the template of a season's page shows, in the order in which it is shown.
 *
 * @param frame what every page has
 * @param title what the season is, a few words
 * @param summary how much was ridden
 * @param isEmpty whether there is no ride at all
 */
public record SeasonPage(
        Frame frame,
        String title,
        String summary,
        boolean isEmpty,
        List<Fact> today,
        List<String> loadNotes,
        @Nullable Markup loadDrawn,
        List<Day> days,
        @Nullable Markup weeksDrawn,
        List<Period> weeks,
        @Nullable Markup bestsDrawn,
        List<Best> bests,
        List<String> threshold,
        List<String> durability,
        @Nullable Markup raceScale,
        List<Race> races,
        List<String> trend,
        List<RideRow> rides,
        List<String> leftOut,
        int leftOutCount) {
    private static final int FILES_LISTED = 50;

    /** A number of the present day. */
    public record Fact(String label, Num number, String explained) {}

    /** A day of the load. */
    public record Day(LocalDate day, Num stress, Num acute, Num chronic, Num balance) {}

    /** A week. */
    public record Period(LocalDate from, Num rides, Num hours, Num work, Num stress, Num chronic, Num ramp) {}

    /** A best effort over a duration, of the season and of its last days. */
    public record Best(
            String over,
            Num watts,
            String day,
            boolean mayBeLow,
            @Nullable Num recent,
            String recentDay) {}

    /** A race or a long ride. */
    public record Race(
            LocalDate day,
            @Nullable String page,
            Num moving,
            String verdict,
            Num intensity,
            Num decoupling,
            String price,
            @Nullable Num low,
            @Nullable Num high,
            @Nullable Markup bar) {}

    /** A ride. */
    public record RideRow(
            LocalDate day,
            @Nullable String page,
            String file,
            Num moving,
            Num distance,
            Num ascent,
            Num work,
            Num power,
            Num heartRate,
            Num intensity,
            Num stress,
            String verdict) {}

    static SeasonPage of(SeasonReview season, PageNames pages) {
        LocalDate asOf = season.asOf();
        boolean isEmpty = asOf == null || season.rides().isEmpty();
        String title = isEmpty ? "A season" : season.load().days().get(0).day() + " to " + asOf;
        List<String> leftOut = leftOut(season);
        return new SeasonPage(
                Frame.still("Season " + title),
                title,
                isEmpty || asOf == null ? "No ride in this season." : afterColon(SeasonSentences.summary(season, asOf)),
                isEmpty,
                today(season.load()),
                isEmpty ? List.of() : SeasonSentences.loadNotes(season),
                isEmpty ? null : SeasonCharts.load(season.load()),
                days(season.load()),
                season.weeks().isEmpty() ? null : SeasonCharts.weeks(season.weeks()),
                weeks(season.weeks()),
                bestsDrawn(season),
                bests(season),
                season.threshold() == null ? List.of() : SeasonSentences.threshold(season.threshold()),
                durability(season.durability()),
                raceScale(season),
                races(season, pages),
                SeasonSentences.trend(season.pacing()),
                rides(season, pages),
                leftOut.subList(0, Math.min(FILES_LISTED, leftOut.size())),
                leftOut.size());
    }

    /** The days are the heading of the page. */
    private static String afterColon(String sentence) {
        return sentence.substring(sentence.indexOf(": ") + 2);
    }

    private static List<Fact> today(LoadHistory load) {
        LoadHistory.Day today = load.last();
        if (today == null) {
            return List.of();
        }
        String path = "load.days[" + (load.days().size() - 1) + "].";
        return List.of(
                new Fact("Acute load", tenths(path + "acuteLoad", today.acute()), "training stress a day, 7 days"),
                new Fact(
                        "Chronic load",
                        tenths(path + "chronicLoad", today.chronic()),
                        "training stress a day, 42 days"),
                new Fact(
                        "Balance",
                        signed(path + "balance", today.balance()),
                        "chronic less acute load at the end of the day before"),
                new Fact("Ramp", signed(path + "ramp", today.ramp()), "chronic load gained in seven days"),
                new Fact(
                        "Acute over chronic",
                        Num.of(path + "ratio", today.ratio(), value -> Figures.decimal(value, 2), "none yet"),
                        "whether it says anything about injury is disputed"));
    }

    private static Num tenths(String path, @Nullable Double value) {
        return Num.of(path, value, number -> Figures.decimal(number, 1));
    }

    private static Num signed(String path, @Nullable Double value) {
        return Num.of(path, value, number -> {
            String text = Figures.decimal(number, 1);
            return number > 0 && !text.equals("0.0") ? "+" + text : text.equals("-0.0") ? "0.0" : text;
        });
    }

    private static Num whole(String path, @Nullable Double value, String unit) {
        return Num.of(path, value, number -> Figures.decimal(number, 0) + unit);
    }

    private static List<Day> days(LoadHistory load) {
        List<Day> days = new ArrayList<>();
        for (int i = 0; i < load.days().size(); i++) {
            LoadHistory.Day day = load.days().get(i);
            String path = "load.days[" + i + "].";
            days.add(new Day(
                    day.day(),
                    whole(path + "trainingStress", day.trainingStress(), ""),
                    tenths(path + "acuteLoad", day.acute()),
                    tenths(path + "chronicLoad", day.chronic()),
                    signed(path + "balance", day.balance())));
        }
        return days;
    }

    private static List<Period> weeks(List<PeriodTotals> weeks) {
        List<Period> rows = new ArrayList<>();
        for (int i = 0; i < weeks.size(); i++) {
            PeriodTotals week = weeks.get(i);
            String path = "weeks[" + i + "].";
            rows.add(new Period(
                    week.from(),
                    Num.whole(path + "rides", week.rideCount()),
                    Num.of(
                            path + "movingSeconds",
                            (double) week.movingSeconds(),
                            seconds -> SeasonSentences.hours((long) seconds) + " h"),
                    whole(path + "workKJ", week.workKJ(), " kJ"),
                    whole(path + "trainingStress", week.trainingStress(), week.ridesWithoutStress() > 0 ? " *" : ""),
                    tenths(path + "chronicLoad", week.chronic()),
                    signed(path + "ramp", week.ramp())));
        }
        return rows;
    }

    private static @Nullable Markup bestsDrawn(SeasonReview season) {
        BestEfforts all = season.bests();
        return all == null || all.efforts().size() < 2
                ? null
                : SeasonCharts.bests(all, season.recentBests(), season.threshold());
    }

    private static List<Best> bests(SeasonReview season) {
        BestEfforts all = season.bests();
        BestEfforts recent = season.recentBests();
        List<Best> rows = new ArrayList<>();
        if (all == null) {
            return rows;
        }
        for (int i = 0; i < all.efforts().size(); i++) {
            BestEfforts.Effort effort = all.efforts().get(i);
            BestEfforts.Effort late = recent == null ? null : recent.over(effort.seconds());
            rows.add(new Best(
                    Efforts.length(effort.seconds()),
                    Num.of("bests[" + i + "].watts", effort.watts(), Figures::watts),
                    effort.day().toString(),
                    effort.mayBeLow(),
                    late == null || recent == null
                            ? null
                            : Num.of(
                                    "recentBests[" + recent.efforts().indexOf(late) + "].watts",
                                    late.watts(),
                                    Figures::watts),
                    late == null ? "" : late.day().toString()));
        }
        return rows;
    }

    private static List<String> durability(List<Durability> all) {
        List<String> lines = new ArrayList<>();
        for (Durability each : all) {
            lines.add("Best " + Figures.span(each.seconds()) + " after " + Figures.decimal(each.afterKJ(), 0) + " kJ: "
                    + Figures.watts(each.tiredW()) + ", before it " + Figures.watts(each.fresherW()) + " ("
                    + signed("", each.changePercent()).text() + " %).");
        }
        return lines;
    }

    private static Scale minutes(SeasonReview season) {
        double most = 1;
        for (SeasonRide ride : season.pacing().rides()) {
            Double high = ride.judgement().costMinutesHigh();
            most = high == null ? most : Math.max(most, high);
        }
        return Scale.fromZero(most);
    }

    private static @Nullable Markup raceScale(SeasonReview season) {
        boolean anyPriced = season.pacing().rides().stream()
                .anyMatch(ride -> ride.judgement().costMinutesHigh() != null);
        return anyPriced ? Account.scale(minutes(season)) : null;
    }

    private static List<Race> races(SeasonReview season, PageNames pages) {
        Scale minutes = minutes(season);
        List<Race> rows = new ArrayList<>();
        for (SeasonRide ride : season.pacing().rides()) {
            RideJudgement judgement = ride.judgement();
            String path = "rides[" + season.rides().indexOf(ride) + "].";
            Double low = judgement.costMinutesLow();
            Double high = judgement.costMinutesHigh();
            boolean isPriced = low != null && high != null;
            rows.add(new Race(
                    ride.day(),
                    pages.of(ride),
                    Num.of(path + "movingSeconds", (double) ride.numbers().movingSeconds(), Figures::clock),
                    verdict(judgement),
                    Num.of(path + "intensityFactor", judgement.intensityFactor(), value -> Figures.decimal(value, 2)),
                    Num.of(
                            path + "decouplingPercent",
                            ride.numbers().decouplingPercent(),
                            value -> Figures.decimal(value, 1) + " %"),
                    price(judgement),
                    isPriced ? Num.of(path + "costMinutesLow", low, value -> Figures.decimal(value, 1)) : null,
                    isPriced ? Num.of(path + "costMinutesHigh", high, value -> Figures.decimal(value, 1)) : null,
                    low == null || high == null ? null : Account.bar(minutes, low, high)));
        }
        return rows;
    }

    private static String price(RideJudgement judgement) {
        Double low = judgement.costMinutesLow();
        Double high = judgement.costMinutesHigh();
        if (low == null || high == null) {
            return judgement.verdict() == Verdict.NOT_JUDGED ? "not judged" : "not priced";
        }
        return Account.range(low, high);
    }

    private static String verdict(RideJudgement judgement) {
        String reason = judgement.verdictReason();
        return Account.capital(judgement.verdict().words()) + (reason == null ? "" : ": " + PlainText.of(reason));
    }

    private static List<RideRow> rides(SeasonReview season, PageNames pages) {
        List<RideRow> rows = new ArrayList<>();
        for (int i = 0; i < season.rides().size(); i++) {
            SeasonRide ride = season.rides().get(i);
            String path = "rides[" + i + "].";
            rows.add(new RideRow(
                    ride.day(),
                    pages.of(ride),
                    PlainText.of(ride.source().file()),
                    Num.of(path + "movingSeconds", (double) ride.numbers().movingSeconds(), Figures::clock),
                    Num.of(
                            path + "distanceM",
                            ride.numbers().distanceM(),
                            metres -> Figures.kilometres(metres) + " km"),
                    whole(path + "ascentM", ride.numbers().ascentM(), " m"),
                    whole(path + "workKJ", ride.numbers().workKJ(), " kJ"),
                    whole(path + "normalizedPowerW", ride.numbers().normalizedPowerW(), " W"),
                    whole(path + "averageHeartRateBpm", ride.numbers().averageHeartRateBpm(), " bpm"),
                    Num.of(
                            path + "intensityFactor",
                            ride.judgement().intensityFactor(),
                            value -> Figures.decimal(value, 2)),
                    whole(path + "trainingStress", ride.judgement().trainingStress(), ""),
                    verdict(ride.judgement())));
        }
        return rows;
    }

    private static List<String> leftOut(SeasonReview season) {
        List<String> lines = new ArrayList<>();
        for (SkippedFile skipped : season.skipped()) {
            lines.add("Skipped: " + PlainText.of(skipped.file()) + ": " + PlainText.of(skipped.reason()));
        }
        for (DuplicateRide duplicate : season.duplicates()) {
            lines.add("There twice, counted once: " + PlainText.of(duplicate.file())
                    + (duplicate.isCopy() ? " is a copy of " : " is the same ride as ")
                    + PlainText.of(duplicate.keptFile()));
        }
        for (String gone : season.goneFiles()) {
            lines.add("No longer there, kept from the store: " + PlainText.of(gone));
        }
        return lines;
    }
}
