package io.github.wattledger.cli.report.words;

import io.github.wattledger.history.Agreement;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Durability;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.DateDoubt;
import io.github.wattledger.season.DuplicateRide;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PacingTrend;
import io.github.wattledger.season.RacePacing;
import io.github.wattledger.season.RideJudgement;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import io.github.wattledger.season.SkippedFile;
import io.github.wattledger.season.ThresholdCheck;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A season in words. */
public final class SeasonWords {
    private static final int MOST_NAMED = 20;

    /** What load of 7 days is called. */
    public static final String LOAD_OF_7_DAYS = "load of 7 days";

    /** What load of 42 days is called. */
    public static final String LOAD_OF_42_DAYS = "load of 42 days";

    private SeasonWords() {}

    /** What is said of a season without rides. */
    private static final String NO_RIDE = "No ride in this season.";

    /** What is said of a season whose rides have no dates to go by. */
    private static final String NO_DATE = "No ride of this season has a date that can be believed.";

    /** Why there is no calendar of a season. */
    public static String withoutCalendar(SeasonReview season) {
        return season.rides().isEmpty() ? NO_RIDE : NO_DATE;
    }

    /** A ride whose date cannot be believed, and why. */
    public static String outsideCalendar(SeasonRide ride) {
        DateDoubt doubt = ride.dateDoubt();
        if (doubt == null) {
            throw new IllegalArgumentException("the date of the ride is not in doubt");
        }
        return PlainText.of(ride.source().file())
                + switch (doubt) {
                    case NO_DATE -> " has no date";
                    case BEFORE_POWER_METERS ->
                        " is dated " + ride.day() + ", before power meters recorded rides: was the clock never set?";
                    case AFTER_TODAY -> " is dated " + ride.day() + ", which is still to come: was the clock wrong?";
                };
    }

    /** The day of a ride, marked where it cannot be believed. */
    public static String day(SeasonRide ride) {
        DateDoubt doubt = ride.dateDoubt();
        return doubt == null ? ride.day().toString() : doubt == DateDoubt.NO_DATE ? "no date" : ride.day() + " ?";
    }

    /** How much was ridden, from when to when. */
    public static String summary(SeasonReview season, LocalDate asOf) {
        return "Season " + season.load().days().get(0).day() + " to " + asOf + ": " + ridden(season);
    }

    /** How much was ridden; rides whose date cannot be believed are not counted. */
    public static String ridden(SeasonReview season) {
        long moving = 0;
        double work = 0;
        boolean anyWork = false;
        for (SeasonRide ride : season.calendarRides()) {
            moving += ride.numbers().movingSeconds();
            Double each = ride.numbers().workKJ();
            if (each != null) {
                work += each;
                anyWork = true;
            }
        }
        return Figures.counted(season.calendarRides().size(), "ride") + ", " + hours(moving) + " h"
                + (anyWork ? ", " + Figures.decimal(work, 0) + " kJ." : ".");
    }

    /** What to know when reading the loads. */
    public static List<String> loadNotes(SeasonReview season) {
        List<String> notes = new ArrayList<>();
        LoadHistory load = season.load();
        if (load.days().size() < LoadHistory.settlingDays()) {
            LocalDate first = load.days().get(0).day();
            notes.add("Both loads start at 0 on " + first + ": before " + first.plusDays(LoadHistory.settlingDays())
                    + " the load of 42 days is lower than it would be with a longer history.");
        }
        int without = season.ridesWithoutStress();
        if (without > 0) {
            notes.add(Figures.counted(without, "ride")
                    + " without training stress, because power or a threshold is missing: the loads"
                    + " leave them out and are too low.");
        }
        return notes;
    }

    /** The threshold in force beside what recent efforts imply. */
    public static List<String> threshold(ThresholdCheck check) {
        List<String> lines = new ArrayList<>();
        Double inForce = check.inForceW();
        Double implied = check.impliedW();
        BestEfforts.Effort effort = check.effort();
        lines.add(
                inForce == null
                        ? "None is known: load is computed from the best efforts of the 90 days up to each ride. Give a"
                                + " threshold, and both load and pacing are judged against it."
                        : "In force: " + Figures.watts(inForce) + " ("
                                + (check.source() == null ? "-" : check.source().id()) + ").");
        if (implied == null || effort == null) {
            lines.add("The last 90 days hold no effort of 20 minutes of riding that would imply one.");
            return lines;
        }
        lines.add("Implied by the last 90 days: at least " + Figures.watts(implied) + ", from "
                + (effort.seconds() == 1200 ? "95 % of the best 20 minutes" : "the best hour") + " on " + effort.day()
                + ", stops taken out." + tooHigh(check) + " A best effort need not have been a limit.");
        if (inForce != null && check.standing() == ThresholdCheck.Standing.LOOKS_LOW) {
            lines.add("Your set threshold looks " + Figures.watts(implied - inForce) + " low since " + check.since()
                    + ".");
        } else if (inForce != null && check.standing() == ThresholdCheck.Standing.UNSUPPORTED) {
            lines.add("No effort of the last 90 days comes near it: either none was hard, or it is set "
                    + Figures.watts(inForce - implied) + " too high.");
        }
        return lines;
    }

    /** How much stops within the effort may have raised it, where that is over one percent. */
    private static String tooHigh(ThresholdCheck check) {
        Double percent = check.tooHighPercent();
        return percent == null || percent <= 1
                ? ""
                : " Stops within it may have raised it by up to " + Figures.decimal(percent, 1) + " %.";
    }

    /** Whether pacing improved. */
    public static List<String> trend(PacingTrend pacing) {
        PacingTrend.Half earlier = pacing.earlier();
        PacingTrend.Half later = pacing.later();
        List<String> lines = new ArrayList<>();
        if (earlier == null || later == null) {
            lines.add("Fewer than " + PacingTrend.LEAST_RACES + " judged races: no trend is reported.");
            return lines;
        }
        List<Boolean> kept = pacing.races().stream()
                .map(RacePacing::keptLastCap)
                .filter(Objects::nonNull)
                .toList();
        if (!kept.isEmpty()) {
            lines.add("The opening kept to the cap that an earlier race of like length had named in "
                    + kept.stream().filter(each -> each).count() + " of " + Figures.counted(kept.size(), "race") + ".");
        }
        lines.add("Over-hard starts: " + earlier.overHardStarts() + " of the first " + earlier.raceCount() + " races, "
                + later.overHardStarts() + " of the last " + later.raceCount() + ". Even or negative split: "
                + earlier.evenOrNegative() + ", then " + later.evenOrNegative() + ".");
        if (earlier.costMinutes() != null && later.costMinutes() != null) {
            lines.add(
                    "Mistakes cost " + Figures.minutes(earlier.costMinutes(), earlier.costMinutes()) + " a race, then "
                            + Figures.minutes(later.costMinutes(), later.costMinutes()) + " (middle of the range).");
        }
        if (earlier.decouplingPercent() != null && later.decouplingPercent() != null) {
            lines.add("Decoupling " + Figures.decimal(earlier.decouplingPercent(), 1) + " %, then "
                    + Figures.decimal(later.decouplingPercent(), 1) + " %.");
        }
        return lines;
    }

    /** The last races and long rides that have a name, and what had been agreed before a race. */
    public static List<String> named(PacingTrend pacing) {
        Map<SeasonRide.Source, Agreement> agreed = new HashMap<>();
        pacing.recalls().forEach(recall -> agreed.put(recall.race().source(), recall.agreed()));
        Iterator<RacePacing> races = pacing.races().iterator();
        List<String> lines = new ArrayList<>();
        for (SeasonRide ride : pacing.rides()) {
            String event = ride.notes().event();
            String name = ride.day() + (event == null ? "" : ", " + PlainText.of(event));
            Agreement before = agreed.get(ride.source());
            String line = before != null
                    ? name + ": " + NotesWords.recalled(before, ride.openingW())
                    : event != null ? PlainText.sentence(name) : "";
            String cap = ride.isRace() ? capBefore(races.next(), ride.openingW()) : "";
            if (!line.isEmpty() || !cap.isEmpty()) {
                lines.add(cap.isEmpty() ? line : (line.isEmpty() ? name + ":" : line) + " " + cap);
            }
        }
        return last(lines);
    }

    /** Nobody reads the races of ten years one by one. */
    static List<String> last(List<String> named) {
        if (named.size() <= MOST_NAMED) {
            return named;
        }
        List<String> last = new ArrayList<>(named.subList(named.size() - MOST_NAMED, named.size()));
        last.add(0, "The last " + MOST_NAMED + " of " + named.size() + "; --format json has all of them.");
        return last;
    }

    /** The cap that the advice of an earlier race named for the opening, and whether this race kept to it; possibly empty. */
    private static String capBefore(RacePacing race, @Nullable Double openingW) {
        Double capW = race.lastCapW();
        if (capW == null || openingW == null) {
            return "";
        }
        return "The advice of an earlier race of like length: open at " + Figures.watts(capW) + " at most; "
                + (Boolean.TRUE.equals(race.keptLastCap()) ? "kept, at " : "not kept, at ") + Figures.watts(openingW)
                + ".";
    }

    /**
     * What is said where no ride was a race or long.
     */
    public static final String NO_RACES = "None: no ride was judged as a race or took three hours.";

    /** What the two ends of a price in a table are. */
    public static final String PRICES =
            "Mistakes cost: as a rule from the price for the same energy to that for the same"
                    + " effort; the review of the ride names both.";

    /** What stands in place of a cost where there was no mistake. */
    static final String NO_MISTAKE = "no mistake";

    /** What stands in place of a cost that is not known. */
    static final String NOT_PRICED = "not priced";

    /** What a mark beside a sum of training stress means. */
    public static final String WITHOUT_SOME = "* without some rides that have no training stress";

    /** What a comparison of fresh and tired efforts can show. */
    public static final String ONLY_ALL_OUT = "It shows tiredness only when both efforts were all-out.";

    /** A best effort after much work beside one before it. */
    public static String durability(Durability each) {
        return "Best " + Figures.span(each.seconds()) + " after " + Figures.decimal(each.afterKJ(), 0) + " kJ: "
                + Figures.watts(each.tiredW()) + ", before it " + Figures.watts(each.fresherW()) + " ("
                + Figures.signed(each.changePercent(), 1) + " %).";
    }

    /** What the mistakes of a ride cost, or why that is not known. */
    public static String price(RideJudgement judgement) {
        Double low = judgement.costMinutesLow();
        Double high = judgement.costMinutesHigh();
        if (low == null || high == null) {
            return judgement.verdict() == Verdict.NOT_JUDGED
                    ? "not judged"
                    : judgement.isWithoutMistake() ? NO_MISTAKE : NOT_PRICED;
        }
        return Figures.minutes(low, high);
    }

    /** The verdict on a ride, with its reason where it was not judged. */
    public static String verdict(RideJudgement judgement) {
        String reason = judgement.verdictReason();
        return PlainText.capital(judgement.verdict().words()) + (reason == null ? "" : ": " + PlainText.of(reason));
    }

    /** A file that holds a ride which another file holds too, and how that is known. */
    public static String duplicate(DuplicateRide duplicate) {
        return PlainText.of(duplicate.file())
                + (duplicate.isCopy() ? " is a copy of " : " is the same ride as ")
                + PlainText.of(duplicate.keptFile())
                + switch (duplicate.reason()) {
                    case COPY -> "";
                    case SAME_TIME -> ": recorded at the same time";
                    case OTHER_CLOCK -> ": length, distance and work agree, one clock shows another time zone";
                    case NO_DATE -> ": length, distance and work agree, one of the two has no date to go by";
                };
    }

    /** A file that gave no ride, and why. */
    public static String skipped(SkippedFile skipped) {
        return PlainText.of(skipped.file()) + ": " + PlainText.of(skipped.reason());
    }

    /**
     * A number of the season's last day.
     *
     * @param name its name in the JSON report
     * @param label what it is called
     * @param value the number, or null where there is none yet
     * @param words the number in words
     * @param explained what it means
     */
    public record Today(String name, String label, @Nullable Double value, String words, String explained) {}

    /** The loads of a history's last day and what follows from them; nothing without a day. */
    public static List<Today> today(LoadHistory load) {
        LoadHistory.Day day = load.last();
        if (day == null) {
            return List.of();
        }
        List<Today> today = new ArrayList<>(List.of(
                new Today(
                        "load7Days",
                        LOAD_OF_7_DAYS,
                        day.load7Days(),
                        Figures.decimal(day.load7Days(), 1),
                        "training stress a day, weighted over about 7 days"),
                new Today(
                        "load42Days",
                        LOAD_OF_42_DAYS,
                        day.load42Days(),
                        Figures.decimal(day.load42Days(), 1),
                        "training stress a day, weighted over about 42 days"),
                new Today(
                        "loadDifference",
                        "difference",
                        day.loadDifference(),
                        signed(day.loadDifference()),
                        "load of 42 days less load of 7 days, at the end of the day before"),
                new Today(
                        "loadChangeInWeek",
                        "change in a week",
                        day.loadChange(),
                        signed(day.loadChange()),
                        "what the load of 42 days gained in a week")));
        Double ratio = day.loadRatio();
        if (ratio != null && load.isLongEnoughForRatio()) {
            today.add(new Today(
                    "loadRatio",
                    "7 days over 42 days",
                    ratio,
                    Figures.decimal(ratio, 2),
                    "one load divided by the other; whether it says anything about injury is disputed"));
        }
        return today;
    }

    private static String signed(@Nullable Double value) {
        return value == null ? "not known" : Figures.signed(value, 1);
    }

    /** Hours from seconds, one decimal. */
    public static String hours(long seconds) {
        return Figures.decimal(seconds / 3600.0, 1);
    }
}
