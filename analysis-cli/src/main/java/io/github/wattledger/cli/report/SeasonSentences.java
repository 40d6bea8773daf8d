package io.github.wattledger.cli.report;

import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PacingTrend;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import io.github.wattledger.season.ThresholdCheck;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What a season shows, in sentences. */
public final class SeasonSentences {
    private SeasonSentences() {}

    /** How much was ridden, from when to when. */
    public static String summary(SeasonReview season, LocalDate asOf) {
        long moving = 0;
        double work = 0;
        boolean anyWork = false;
        for (SeasonRide ride : season.rides()) {
            moving += ride.numbers().movingSeconds();
            Double each = ride.numbers().workKJ();
            if (each != null) {
                work += each;
                anyWork = true;
            }
        }
        return "Season " + season.load().days().get(0).day() + " to " + asOf + ": "
                + count(season.rides().size(), "ride") + ", " + hours(moving) + " h"
                + (anyWork ? ", " + Figures.decimal(work, 0) + " kJ." : ".");
    }

    /** What to know when reading the loads. */
    public static List<String> loadNotes(SeasonReview season) {
        List<String> notes = new ArrayList<>();
        LoadHistory load = season.load();
        if (load.days().size() < LoadHistory.settlingDays()) {
            LocalDate first = load.days().get(0).day();
            notes.add("Both loads start at 0 on " + first + ": before " + first.plusDays(LoadHistory.settlingDays())
                    + " chronic load is lower than it would be with a longer history.");
        }
        int without = season.ridesWithoutStress();
        if (without > 0) {
            notes.add(count(without, "ride") + " without training stress, for want of power or threshold: the loads"
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
                        ? "None is known: load is reckoned against the best efforts of the 90 days up to each ride. Give"
                                + " a threshold to have it reckoned and the pacing judged against that."
                        : "In force: " + Figures.watts(inForce) + " ("
                                + (check.source() == null ? "-" : check.source().id()) + ").");
        if (implied == null || effort == null) {
            lines.add("The last 90 days hold no effort of 20 minutes that would imply one.");
            return lines;
        }
        lines.add("Implied by the last 90 days: at least " + Figures.watts(implied) + ", from "
                + (effort.seconds() == 1200 ? "95 % of the best 20 minutes" : "the best hour") + " on " + effort.day()
                + ". A best effort need not have been a limit.");
        if (inForce != null && check.standing() == ThresholdCheck.Standing.LOOKS_LOW) {
            lines.add("Your set threshold looks " + Figures.watts(implied - inForce) + " low since " + check.since()
                    + ".");
        } else if (inForce != null && check.standing() == ThresholdCheck.Standing.UNSUPPORTED) {
            lines.add("No effort of the last 90 days comes near it: either none was hard, or it is set "
                    + Figures.watts(inForce - implied) + " too high.");
        }
        return lines;
    }

    /** Whether pacing improved. */
    public static List<String> trend(PacingTrend pacing) {
        PacingTrend.Half earlier = pacing.earlier();
        PacingTrend.Half later = pacing.later();
        if (earlier == null || later == null) {
            return List.of("Fewer than " + PacingTrend.LEAST_RACES + " judged races: no trend is told.");
        }
        List<String> lines = new ArrayList<>();
        lines.add("Over-hard starts: " + earlier.overHardStarts() + " of the first " + earlier.raceCount() + " races, "
                + later.overHardStarts() + " of the last " + later.raceCount() + ". Even or negative split: "
                + earlier.evenOrNegative() + ", then " + later.evenOrNegative() + ".");
        if (earlier.costMinutes() != null && later.costMinutes() != null) {
            lines.add("Mistakes cost " + Figures.decimal(earlier.costMinutes(), 1) + " min a priced race, then "
                    + Figures.decimal(later.costMinutes(), 1) + " min (middle of the range).");
        }
        if (earlier.decouplingPercent() != null && later.decouplingPercent() != null) {
            lines.add("Decoupling " + Figures.decimal(earlier.decouplingPercent(), 1) + " %, then "
                    + Figures.decimal(later.decouplingPercent(), 1) + " %.");
        }
        return lines;
    }

    /** A number of things. */
    public static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    /** Hours from seconds, one decimal. */
    public static String hours(long seconds) {
        return Figures.decimal(seconds / 3600.0, 1);
    }
}
