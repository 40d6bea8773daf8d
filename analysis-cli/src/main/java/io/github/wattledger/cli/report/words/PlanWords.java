package io.github.wattledger.cli.report.words;

import io.github.wattledger.plan.ClimbCap;
import io.github.wattledger.plan.Ground;
import io.github.wattledger.plan.GroundCap;
import io.github.wattledger.plan.Heat;
import io.github.wattledger.plan.OpeningCap;
import io.github.wattledger.plan.PlanAltitude;
import io.github.wattledger.plan.PlanInfluence;
import io.github.wattledger.plan.PlanRider;
import io.github.wattledger.plan.PlanTarget;
import io.github.wattledger.plan.PricedMistake;
import io.github.wattledger.plan.RacePlan;
import io.github.wattledger.plan.TimeRange;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.SustainablePower;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A plan for a race in words. */
public final class PlanWords {
    /** How many inputs of the range a report names. */
    public static final int NAMED_INFLUENCES = 3;

    private static final int HARD_OPENING_PERCENT = 105;

    /** Less than this is hardly felt in the legs. Own choice. */
    private static final double LEAST_TO_PUSH_W = 20;

    private static final int MINUTE = 60;

    private PlanWords() {}

    /** The course: name, length, ascent. */
    public static String course(RacePlan plan, Units units) {
        String name = plan.courseName() == null ? "The course" : PlainText.of(plan.courseName());
        String ascent = plan.hasAltitude()
                ? ", " + units.heightWords(plan.ascentM()) + " of ascent"
                : "; the file has no altitude, so the course is taken as flat";
        return name + ": " + units.distanceWords(plan.lengthM()) + ascent;
    }

    /** The time from start to finish as a range. */
    public static String time(RacePlan plan) {
        return "Finish after " + between(plan.total()) + ", most likely about "
                + clock(plan.total().seconds()) + stops(plan) + ".";
    }

    /** The stops of past races, and what half of them would give; empty where the plan has none of them. */
    public static List<String> habitOfStops(RacePlan plan) {
        Double share = plan.rider().usualStoppedShare();
        if (share == null || plan.options().stoppedSeconds() != null || plan.stoppedSeconds() < MINUTE) {
            return List.of();
        }
        return List.of("You stood for " + Figures.decimal(100 * share, 0) + " % of the time in your last "
                + plan.rider().lastRaces().size() + " races, the median of them, and the plan has as much; half of it"
                + " would save "
                + Figures.minutes(plan.stoppedSeconds() / 2 / MINUTE) + ".");
    }

    private static String stops(RacePlan plan) {
        return plan.stoppedSeconds() >= MINUTE / 2.0
                ? ", with " + Figures.minutes(plan.stoppedSeconds() / MINUTE) + " of stops"
                : ", without stops";
    }

    /** A time as a range on a clock without seconds, for instance {@code 5:51 to 6:37}. */
    public static String between(TimeRange range) {
        String low = clock(range.lowSeconds());
        String high = clock(range.highSeconds());
        return low.equals(high) ? low : low + " to " + high;
    }

    /** A time on a clock without seconds, to the nearest minute. */
    public static String clock(double seconds) {
        return Figures.shortClock(MINUTE * (int) Math.round(seconds / MINUTE));
    }

    /** A length of time in whole minutes. */
    public static String wholeMinutes(double seconds) {
        return Figures.decimal(seconds / MINUTE, 0) + " min";
    }

    /** The time standing; {@code none} where nobody means to stop. */
    public static String stopped(double seconds) {
        return seconds < MINUTE / 2.0 ? "none" : wholeMinutes(seconds);
    }

    /** The target, where it comes from, and how it stands to what the rider can hold. */
    public static String target(RacePlan plan) {
        PlanTarget target = plan.target();
        SustainablePower can = target.sustainable();
        String basis = switch (can.source()) {
            case OWN_BESTS -> "your own long bests";
            case OWN_RIDES -> "your own long rides";
            case GUIDE ->
                "the guide from threshold power " + Figures.watts(plan.rider().thresholdPowerW());
        };
        String range = Figures.decimal(can.lowW(), 0) + " to " + Figures.watts(can.highW());
        String watts = "Normalized power " + Figures.watts(target.watts());
        if (target.isLimited()) {
            return mostAllowed(plan) + " By " + basis + " you can hold " + range + ", so this is " + standing(target)
                    + ".";
        }
        return switch (target.origin()) {
            case SUSTAINABLE -> watts + " for the whole way: what " + basis + " " + allow(can) + ", " + range + ".";
            case GIVEN ->
                watts + ", as you ask; " + basis + " " + allow(can) + " " + range + ", so this is " + standing(target)
                        + ".";
            case GOAL_TIME ->
                watts + " is what your time asks for; " + basis + " " + allow(can) + " " + range + ", so this is "
                        + standing(target) + ".";
        };
    }

    /** What is said where no plan gives what was asked for. */
    private static String mostAllowed(RacePlan plan) {
        Double askedW = plan.options().targetW();
        String most = Figures.watts(plan.target().watts());
        String limit = "no cap may lie above 95 % of threshold power nor above a known critical power.";
        return askedW == null
                ? "Your time asks for more than normalized power " + most + ", and that is the most: " + limit
                : "You asked for " + Figures.watts(askedW) + "; " + most + " is the most: " + limit;
    }

    private static String allow(SustainablePower can) {
        return can.source() == SustainablePower.Source.GUIDE ? "allows" : "allow";
    }

    private static String standing(PlanTarget target) {
        return switch (target.standing()) {
            case BELOW -> "below what you can hold";
            case WITHIN -> "within it";
            case ABOVE -> "more than can be expected";
        };
    }

    /** What the height of the course does to the power; empty where it is not high. */
    public static List<String> altitude(RacePlan plan, Units units) {
        PlanAltitude altitude = plan.altitude();
        if (altitude == null) {
            return List.of();
        }
        double watts = plan.target().watts();
        return List.of("The course lies at " + units.heightWords(altitude.meanM())
                + " on average. A rider who lives near the sea holds " + Figures.decimal(100 * altitude.lowShare(), 0)
                + " to " + Figures.decimal(100 * altitude.highShare(), 0) + " % of the power there, "
                + Figures.decimal(altitude.lowShare() * watts, 0) + " to "
                + Figures.watts(altitude.highShare() * watts)
                + " in place of the target, the higher the longer he has been at that height. The caps are those of"
                + " your home: lower them by as much.");
    }

    /** What the plan uses of carbohydrate, and what is published of intake; empty for a rider who may be under 18. */
    public static List<String> fuel(RacePlan plan) {
        return plan.fuel() == null ? List.of() : EnergyWords.planned(plan.fuel());
    }

    /** The ground of a cap, for instance {@code climb, 4 to 7 %}. */
    public static String ground(Ground ground) {
        return switch (ground) {
            case STEEP_DESCENT -> "down, 4 % and more";
            case DESCENT -> "down, 1.5 to 4 %";
            case LEVEL -> "flat";
            case RISE -> "up, 1.5 to 4 %";
            case CLIMB -> "up, 4 to 7 %";
            case STEEP_CLIMB -> "up, 7 % and more";
        };
    }

    /**
     * Where a section ends: what the file of the course calls it, or how far it is from the start where the file has no names.
     *
     * @param name the name in the plan
     * @param atM how far it is, metres
     */
    public static String sectionEnd(String name, double atM, Units units) {
        boolean isDistance = name.equals("km " + Math.round(atM / 1000));
        return isDistance ? units.place() + " " + units.distance().number(atM, 0) : PlainText.of(name);
    }

    /** The power of a cap; nothing is pushed where the road does it all. */
    public static String cap(GroundCap cap) {
        return cap.capW() < LEAST_TO_PUSH_W ? "roll" : Figures.watts(cap.capW());
    }

    /** The heart rate beside a cap, or a dash. */
    public static String beats(@Nullable Double bpm) {
        return bpm == null ? "-" : Figures.beats(bpm);
    }

    /** How to begin. */
    public static String opening(RacePlan plan) {
        OpeningCap opening = plan.opening();
        String bpm =
                opening.capBpm() == null ? "" : " or " + Figures.beats(opening.capBpm()) + ", whichever comes first";
        String rule = "The first " + wholeMinutes(opening.seconds())
                + ": stay under " + Figures.watts(opening.capW()) + " normalized" + bpm
                + "; on each climb the caps hold from the first one on. By the caps it is about "
                + Figures.watts(opening.byCapsW()) + ".";
        Double past = opening.pastRatio();
        if (past == null) {
            return rule;
        }
        String habit = "You opened your last " + plan.rider().lastRaces().size() + " races at a median of "
                + Figures.decimal(past, 2) + " times the target of the day";
        return Math.round(100 * past) > HARD_OPENING_PERCENT
                ? habit + ". " + rule
                : habit + ", which is not too hard. " + rule;
    }

    /** A climb: where, how long, how steep. */
    public static String climb(ClimbCap each, Units units) {
        String name = each.name() == null ? "" : PlainText.of(each.name()) + ", ";
        return name + units.between(each.climb().fromM(), each.climb().toM());
    }

    /** The steepness of a climb. */
    public static String grade(ClimbCap each) {
        return Figures.decimal(100 * each.climb().meanGrade(), 1) + " %";
    }

    /** What the plan is worth. */
    public static String worth(RacePlan plan) {
        if (plan.gainMinutes() < 0.5) {
            return "Against one steady power of the same effort this course gives next to nothing: hold the target.";
        }
        return "Against one steady power of the same effort the table saves about "
                + Figures.minutes(plan.lowGainMinutes(), plan.highGainMinutes()) + ".";
    }

    /** What the usual mistakes would cost, a line each. */
    public static List<String> mistakes(RacePlan plan) {
        List<String> lines = new ArrayList<>();
        for (PricedMistake each : plan.mistakes()) {
            lines.add(mistake(each) + ": " + cost(each));
        }
        return lines;
    }

    private static String mistake(PricedMistake each) {
        return switch (each.kind()) {
            case OVER_HARD_OPENING ->
                "the first sixth " + Figures.decimal(100 * (each.amount() - 1), 0) + " % above the plan";
            case CLIMBS_AT_THRESHOLD -> "every climb of 4 % and more at threshold, " + Figures.watts(each.amount());
            case LONGER_STOPS -> Figures.minutes(each.amount() / MINUTE) + " more of stops";
        };
    }

    private static String cost(PricedMistake each) {
        Double low = each.lowMinutes();
        Double high = each.highMinutes();
        if (low == null) {
            return "more than the rest can make up for";
        }
        if (high == null) {
            return Figures.minutes(Math.max(0, low)) + " or far more: the rest might have to be ridden at under "
                    + Figures.fractionAsPercent(PricedMistake.LEAST_REST) + " of the plan";
        }
        return each.kind() == PricedMistake.Kind.LONGER_STOPS
                ? Figures.minutes(high)
                : Figures.minutes(Math.max(0, low), Math.max(0, high));
    }

    /** The inputs that widen the range most, a line each. */
    public static List<String> influences(RacePlan plan, Units units) {
        List<String> lines = new ArrayList<>();
        for (PlanInfluence each : plan.influences()
                .subList(0, Math.min(NAMED_INFLUENCES, plan.influences().size()))) {
            lines.add(input(each, units) + ": " + minutesEitherWay(each));
        }
        return lines;
    }

    private static String minutesEitherWay(PlanInfluence each) {
        return Figures.decimal(each.fasterSeconds() / MINUTE, 0) + " min faster to "
                + Figures.decimal(each.slowerSeconds() / MINUTE, 0) + " min slower";
    }

    private static String input(PlanInfluence each, Units units) {
        return switch (each.input()) {
            case SUSTAINABLE_POWER -> "what you can hold, " + range(each, 0, " W");
            case MASS -> "rider and bicycle, " + range(each, 0, units.mass());
            case DRAG_AREA -> "drag area, " + range(each, 2, " m2");
            case ROLLING_RESISTANCE -> "rolling resistance, " + range(each, 4, "");
            case AIR_DENSITY -> "air, " + range(each, 2, " kg/m3");
            case WIND -> "wind, " + range(each, 0, units.wind());
            case ASCENT -> "ascent by the file and by the organiser, " + range(each, 0, units.height());
        };
    }

    private static String range(PlanInfluence each, int decimals, ReportUnit unit) {
        return unit.number(each.low(), decimals) + " to " + unit.words(each.high(), decimals);
    }

    private static String range(PlanInfluence each, int decimals, String unit) {
        return Figures.decimal(each.low(), decimals) + " to " + Figures.decimal(each.high(), decimals) + unit;
    }

    /** What the rider's own rides say that the plan took; empty where none were looked at. */
    private static List<String> ownRides(RacePlan plan) {
        PlanRider rider = plan.rider();
        if (rider.traits() == null) {
            return List.of();
        }
        List<String> said = new ArrayList<>();
        OwnEndurance own = rider.power().endurance();
        SustainablePower.Source source = plan.target().sustainable().source();
        if (own != null && source == SustainablePower.Source.OWN_RIDES) {
            said.add("What you can hold rests on "
                    + OwnRidesWords.restsOn(own, plan.moving().seconds())
                    + OwnRidesWords.whyLower(
                            own,
                            plan.moving().seconds(),
                            plan.target().sustainable().watts()));
        } else if (source == SustainablePower.Source.GUIDE) {
            said.add("Your own rides of the year before say no more than the guide about power for hours;"
                    + " 'wattledger season' says why.");
        }
        if (plan.opening().capBpm() != null) {
            said.add("Heart rates are the upper end of what goes with the power in your rides of the 60 days before.");
        } else {
            said.add("Your rides of the 60 days before show no heart rate for the cap of the opening.");
        }
        return said;
    }

    /** What everything rests on, and what it does not know. */
    public static List<String> basis(RacePlan plan, Units units) {
        List<String> basis = new ArrayList<>();
        basis.add("It rests on " + LibraryWords.of(plan.rider().rig().numbers(), units) + "; speed to "
                + units.speed().words(plan.options().fastestDescentMps(), 0) + " on descents.");
        basis.addAll(ownRides(plan));
        basis.add(wind(plan, units) + " It is for riding alone: in a group the caps hold and the time does not.");
        Double organiser = plan.options().organiserAscentM();
        if (organiser != null && organiser > 0 && plan.hasAltitude()) {
            basis.add("The file's ascent is " + units.heightWords(plan.ascentM()) + ", the organiser's "
                    + units.heightWords(organiser) + ": "
                    + Figures.signed(100 * (plan.ascentM() / organiser - 1), 0) + " %.");
        }
        basis.add("No study has tried such plans over 5 to 15 hours; the caps are a good guide, no more.");
        return basis;
    }

    private static String wind(RacePlan plan, Units units) {
        Double wind = plan.options().windMps();
        Double from = plan.options().windFromDegrees();
        return wind == null || from == null
                ? "No wind is planned; the range allows for " + units.wind().words(3, 0) + " from anywhere."
                : "Wind " + units.wind().words(wind, 1) + " at the height of the rider, from "
                        + Figures.decimal(from, 0) + " degrees.";
    }

    private static boolean hasBeats(RacePlan plan) {
        return plan.opening().capBpm() != null
                || plan.caps().stream().anyMatch(cap -> cap.capBpm() != null)
                || plan.climbs().stream().anyMatch(climb -> climb.capBpm() != null);
    }

    /** What has to be said before anybody rides by it; above 25 degrees the words on heat come first. */
    public static List<String> cautions(RacePlan plan) {
        List<String> cautions = new ArrayList<>();
        if (Heat.isExpected(plan.options().temperatureC())) {
            cautions.add(
                    "Heat is expected. These caps are from cooler days: the heart rate governs, and the range allows"
                            + " for less power. " + Cautions.HEAT);
        }
        if (hasBeats(plan)) {
            cautions.add("Heart rates are for the first half; later they drift. " + Cautions.HEART_RATE_CAP);
        }
        cautions.add(Cautions.RIDE);
        return cautions;
    }
}
