package io.github.wattledger.cli.report.words;

import io.github.wattledger.history.HeartRateOnPower;
import io.github.wattledger.history.OwnThreshold;
import io.github.wattledger.history.RiderHistory;
import io.github.wattledger.history.RiderTraits;
import io.github.wattledger.history.Spread;
import io.github.wattledger.history.ThresholdMove;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.power.LongRide;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.TrialCriticalPower;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.season.RiderFromRides;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What a rider's own earlier rides say, and what that rests on. */
public final class OwnRidesWords {
    private static final int SECONDS_PER_HOUR = 3600;
    private static final double PERCENT = 100;

    private OwnRidesWords() {}

    /** What a ride was judged by where own rides say it, and the guide beside it. */
    static List<String> judgedBy(RiderOnDay rider, SustainablePower power, int seconds) {
        RiderHistory history = rider.history();
        OwnEndurance own = history == null ? null : history.endurance().found().orElse(null);
        Double thresholdW = rider.thresholdPowerW();
        if (own == null || thresholdW == null) {
            return List.of();
        }
        String guide = Figures.watts(SustainablePower.guideW(thresholdW, seconds));
        return List.of("For " + Figures.span(seconds) + ": about " + range(power) + ", from " + origin(own)
                + "; the guide alone says " + guide + "." + reservation(own, seconds));
    }

    /** Why own rides that were looked at say nothing about power for hours; empty where none were looked at. */
    static List<String> whyNot(RiderOnDay rider) {
        RiderHistory history = rider.history();
        return history != null && history.endurance() instanceof Outcome.Refused<OwnEndurance> refused
                ? List.of("Your own rides say nothing about it: " + refused.reason() + ".")
                : List.of();
    }

    private static String range(SustainablePower power) {
        return Figures.watts(power.watts()) + " (" + Figures.decimal(power.lowW(), 0) + " to "
                + Figures.decimal(power.highW(), 0) + ")";
    }

    /** The rides that an endurance rests on. */
    private static String origin(OwnEndurance own) {
        String rides = own.top().stream().map(OwnRidesWords::ride).collect(Collectors.joining(", "));
        String count = own.top().size() + " ";
        String plural = own.top().size() == 1 ? "" : "s";
        return (own.isNamed()
                        ? count + "long ride" + plural + " that you named as all-out: "
                        : count + "hard long ride" + plural + " of the year before: ")
                + rides;
    }

    /** The rides that an endurance rests on, with what has to be kept in mind; ends the sentence. */
    static String restsOn(OwnEndurance own, double seconds) {
        return origin(own) + "." + reservation(own, seconds);
    }

    /** Why an estimate lies below one of the rides that it rests on; empty where none was as long and harder. */
    static String whyLower(OwnEndurance own, double seconds, double watts) {
        boolean isBelowOne = own.top().stream()
                .anyMatch(ride ->
                        SECONDS_PER_HOUR * ride.hours() >= seconds && Math.round(ride.watts()) > Math.round(watts));
        return isBelowOne
                ? " One of them was as long and harder: the estimate is lower because they count together and are drawn"
                        + " towards the guide."
                : "";
    }

    private static String ride(LongRide ride) {
        return Figures.span(SECONDS_PER_HOUR * ride.hours()) + " at " + Figures.watts(ride.watts()) + " on "
                + ride.day();
    }

    private static String reservation(OwnEndurance own, double seconds) {
        String few = own.top().size() < 3 && !own.isNamed() ? " Few rides carry it, so the range is wide." : "";
        return own.isExtrapolated(seconds) ? few + " It reaches beyond twice the longest of them." : few;
    }

    /** The section of a season, a sentence or two for each number, with its origin and its range. */
    public static List<String> section(RiderFromRides rider, Units units) {
        List<String> lines = new ArrayList<>();
        lines.add(RiderWords.thresholdPower(rider.onDay()));
        rider.onDay().notes().forEach(note -> lines.add(note.text()));
        threshold(lines, rider);
        sustainable(lines, rider);
        criticalPower(lines, rider);
        traits(lines, rider, units);
        return lines;
    }

    private static void threshold(List<String> lines, RiderFromRides rider) {
        OwnThreshold own = rider.history().threshold();
        lines.add(
                own == null
                        ? "No ride of the last 90 days has 20 minutes of riding that would imply a threshold."
                        : "Implied by rides of the last 90 days: at least " + Figures.watts(own.impliedW()) + ", by an"
                                + " effort of " + own.day() + ".");
        for (ThresholdMove move : rider.moves()) {
            if (move.isRise()) {
                lines.add("Rise: " + Figures.watts(move.fromW()) + " to " + Figures.watts(move.toW()) + " on "
                        + move.day() + ", " + reason(move) + ".");
            }
        }
        ThresholdMove fall = rider.proposedFall();
        if (fall != null) {
            lines.add("Proposed fall, not put in force: " + Figures.watts(fall.fromW()) + " to "
                    + Figures.watts(fall.toW()) + ", " + reason(fall)
                    + ". Own rides only show what you could do at least;"
                    + " decide yourself.");
        }
    }

    private static String reason(ThresholdMove move) {
        return switch (move.reason()) {
            case TWO_EFFORTS -> "by two efforts within six weeks";
            case ONE_FAR_EFFORT -> "by one effort far above it";
            case EFFORT_AND_HEART_RATE -> "by one effort and a lower heart rate at the same power";
            case HARD_EFFORTS_BELOW -> "since two efforts that you named as hard stayed below it";
        };
    }

    private static void sustainable(List<String> lines, RiderFromRides rider) {
        OwnEndurance own = rider.history().endurance().found().orElse(null);
        for (RiderFromRides.OverHours over : rider.sustainable()) {
            SustainablePower power = over.power();
            boolean isOwn = power.source() == SustainablePower.Source.OWN_RIDES;
            lines.add("For " + over.hours() + " h: about " + range(power)
                    + (isOwn ? ", from your own rides." : ", by the general guide."));
        }
        if (own != null) {
            lines.add("It rests on " + origin(own) + "." + reservation(own, 0));
        } else {
            rider.history()
                    .endurance()
                    .refusal()
                    .ifPresent(reason -> lines.add("Own rides say nothing about power for hours: " + reason
                            + ". The guide flatters most riders who show no hard long ride. Name your all-out days in the"
                            + " rider profile."));
        }
    }

    private static void criticalPower(List<String> lines, RiderFromRides rider) {
        TrialCriticalPower trials = rider.history().criticalPower().found().orElse(null);
        Double atLeastW = rider.traits().criticalPowerAtLeastW();
        if (trials != null) {
            lines.add("Critical power " + Figures.watts(trials.criticalPowerW()) + " (standard error "
                    + Figures.brief(trials.criticalPowerErrorW()) + " W), W' "
                    + Figures.decimal(trials.wPrimeJ() / 1000, 1) + " kJ (standard error "
                    + Figures.decimal(trials.wPrimeErrorJ() / 1000, 1) + " kJ), from "
                    + Figures.counted(trials.used().size(), "named trial")
                    + (trials.setAside().isEmpty()
                            ? ""
                            : "; " + trials.setAside().size() + " set aside as not maximal")
                    + (trials.isWithoutReservation() ? "." : ". Eight trials would carry it better."));
        } else if (atLeastW != null) {
            lines.add("Critical power: at least " + Figures.watts(atLeastW) + ", within 5 %. W' is not known from these"
                    + " rides: only efforts that you name as trials show it.");
        }
    }

    private static void traits(List<String> lines, RiderFromRides rider, Units units) {
        RiderTraits traits = rider.traits();
        rider.easyHeartRate().found().ifPresent(rate -> lines.add(heartRate(rate)));
        traits.dragAreaM2()
                .found()
                .ifPresent(spread -> lines.add(
                        "Drag area: " + spread(spread, 1, 3, "m2") + ". Riding alone the upper end is nearer."));
        traits.rollingResistance()
                .found()
                .ifPresent(spread -> lines.add("Rolling resistance: " + spread(spread, 1, 4, "") + "."));
        traits.stoppedShare()
                .found()
                .ifPresent(spread ->
                        lines.add("Standing, of the time of long rides: " + spread(spread, PERCENT, 0, "%") + "."));
        traits.openingOverTarget()
                .found()
                .ifPresent(spread ->
                        lines.add("Opening of races, of the target: " + spread(spread, PERCENT, 0, "%") + "."));
        traits.fadePercent()
                .found()
                .ifPresent(spread ->
                        lines.add("Effort lost from early to late in races: " + spread(spread, 1, 0, "%") + "."));
        traits.descentSpeedMps()
                .found()
                .ifPresent(spread -> lines.add("Speed seldom exceeded on descents: "
                        + spread(
                                spread,
                                1 / units.speed().size(),
                                0,
                                units.speed().symbol()) + "."));
    }

    private static String heartRate(HeartRateOnPower rate) {
        return "Heart rate at " + Figures.watts(rate.watts()) + ": " + Figures.beats(rate.medianBpm()) + ", "
                + Figures.decimal(rate.medianBpm() - rate.halfWidthBpm(), 0) + " to "
                + Figures.decimal(rate.medianBpm() + rate.halfWidthBpm(), 0) + " on most days, from "
                + Figures.counted(rate.rides(), "ride") + " of the last 60 days"
                + (rate.isFromFew() ? ", which are few" : "")
                + ".";
    }

    private static String spread(Spread spread, double scale, int decimals, String unit) {
        String end = unit.isEmpty() ? "" : " " + unit;
        return Figures.decimal(scale * spread.median(), decimals) + end + " (middle half "
                + Figures.decimal(scale * spread.low(), decimals) + " to "
                + Figures.decimal(scale * spread.high(), decimals) + end + ", "
                + Figures.counted(spread.rides(), "ride") + (spread.isFromFew() ? ", which are few" : "") + ")";
    }
}
