package io.github.wattledger.cli.report.words;

import io.github.wattledger.compare.CourseComparison;
import io.github.wattledger.compare.CourseComparison.Apart;
import io.github.wattledger.compare.Ground;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;

/** A comparison in words. Rides are numbered from 1; the others are compared with the first. */
public final class ComparisonWords {
    private static final double NOTICEABLE_SECONDS = 0.5;

    private ComparisonWords() {}

    /** A part of the gap. */
    public record Part(String id, String label, double seconds) {}

    /** A difference of time with its sign, {@code +1:02:03}, {@code -0:45} or {@code 0:00}. */
    public static String signed(double seconds) {
        long whole = Math.round(Math.abs(seconds));
        String clock = Figures.clock((double) whole);
        String brief = whole < 3600 ? clock.substring(clock.indexOf(':') + 1) : clock;
        String trimmed = brief.startsWith("0") ? brief.substring(1) : brief;
        return whole == 0 ? trimmed : (seconds < 0 ? "-" : "+") + trimmed;
    }

    /** A difference of time without its sign. */
    public static String unsigned(double seconds) {
        String signed = signed(Math.abs(seconds));
        return signed.startsWith("+") ? signed.substring(1) : signed;
    }

    /** A ride with its number, its file and its start. */
    public static String ride(int number, RideSource source) {
        return "Ride " + number + ": " + RideWords.name(source, "a ride") + ", " + RideWords.start(source);
    }

    /** The outcome in a sentence. */
    public static String outcome(int number, CourseComparison comparison, Units units) {
        double gap = comparison.finalGapSeconds();
        String place = "at " + units.at(comparison.distanceM(comparison.toPoint()));
        if (Math.abs(gap) < NOTICEABLE_SECONDS) {
            return "Ride " + number + " is level with ride 1 " + place + ".";
        }
        return "Ride " + number + " is " + unsigned(gap) + (gap > 0 ? " behind" : " ahead of") + " ride 1 " + place
                + ".";
    }

    /** How it was compared. */
    public static String basis(CourseComparison comparison, Units units) {
        return "Compared " + comparison.method().words() + " from "
                + units.at(comparison.distanceM(comparison.fromPoint())) + " to "
                + units.at(comparison.distanceM(comparison.toPoint()))
                + " of ride 1, in elapsed time: stops count. They are apart as standing in the list by ground, and part of what"
                + " each stretch below lost.";
    }

    /** What the gap is made of, in time under way by ground and in standing. */
    public static List<Part> parts(CourseComparison comparison) {
        List<Part> parts = new ArrayList<>();
        for (Ground ground : Ground.values()) {
            if (comparison.stretches().stream().anyMatch(stretch -> stretch.ground() == ground)) {
                String label = switch (ground) {
                    case CLIMB -> "climbs";
                    case DESCENT -> "descents";
                    case FLAT -> "flat or rolling";
                    case UNKNOWN -> "under way";
                };
                parts.add(new Part(ground.id() + "Seconds", label, comparison.lostMovingSecondsOn(ground)));
            }
        }
        parts.add(new Part("standingSeconds", "standing", comparison.lostStandingSeconds()));
        return parts;
    }

    /** A stretch that was not ridden by both, and where it lies. */
    public static String apart(int number, Apart apart, Units units) {
        return units.between(apart.startM(), apart.endM()) + ": " + reason(number, apart);
    }

    /** Why a stretch was not ridden by both. */
    public static String reason(int number, Apart apart) {
        return switch (apart.reason()) {
            case ELSEWHERE -> "ride " + number + " went another way; no gap is reported there.";
            case NO_POSITION -> "one of the two has no position there; no gap is reported.";
            case BEYOND -> "ridden by ride 1 alone.";
        };
    }

    /** Which of two rides has no power, or no heart rate, a sentence; empty when both have it. */
    public static String missing(RideComparison comparison, int number, Channel channel) {
        boolean first = comparison.reference().ride().has(channel);
        boolean other = comparison.others().get(number - 2).compared().ride().has(channel);
        String name = channel.label();
        if (first && other) {
            return "";
        }
        return "There is no " + name + " in " + (first ? "ride " + number : other ? "ride 1" : "either ride") + ".";
    }
}
