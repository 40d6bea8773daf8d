package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.compare.Ground;
import io.github.wattledger.load.StretchLoad;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The parts of a ride in words: hours, laps, climbs and sections of the course. */
public final class SplitWords {
    private static final int MOST_SECTIONS_NAMED = 3;

    /** A section is named where it cost at least so many minutes. */
    private static final double LEAST_MINUTES = 0.1;

    /** From so many metres climbed on a kilometre a road that is level on average is rolling, or hilly. Own choice. */
    private static final double ROLLING_M_PER_KM = 5;

    private static final double HILLY_M_PER_KM = 10;
    private static final double METRES_PER_KM = 1000;

    private final PacingReview pacing;
    private final Ride ride;
    private final Units units;

    private SplitWords(RideReview review, Units units) {
        this.pacing = review.pacing();
        this.ride = review.ride();
        this.units = units;
    }

    /** The words for a review. */
    public static SplitWords of(RideReview review, Units units) {
        return new SplitWords(review, units);
    }

    /** Whether the hours are worth a table: there are several, and there is something to say of them. */
    public static boolean anyHours(RideSplits splits) {
        boolean isKnown = splits.hours().stream()
                .anyMatch(hour -> hour.load().averagePowerW() != null
                        || hour.load().averageHeartRateBpm() != null
                        || hour.load().distanceM() != null);
        return splits.hours().size() > 1 && isKnown;
    }

    /** The names of the numbers of {@link #numbers}, in a few columns. */
    public List<String> heads() {
        return List.of(
                "W",
                "norm.",
                "target",
                "bpm",
                units.speed().symbol(),
                units.temperature().symbol(),
                "stood");
    }

    /** The numbers of a part in the order of {@link #heads}; null where there is none, and for no standing. */
    public List<@Nullable String> numbers(StretchLoad load) {
        Double normalized = load.normalizedPowerW();
        Double target = pacing.targetW();
        return Arrays.asList(
                whole(load.averagePowerW()),
                whole(normalized),
                normalized == null || target == null ? null : Figures.fractionAsPercent(normalized / target),
                whole(load.averageHeartRateBpm()),
                load.averageSpeedMps() == null ? null : units.speed().number(load.averageSpeedMps(), 1),
                load.averageTemperatureC() == null ? null : units.temperature().number(load.averageTemperatureC(), 0),
                load.standingSeconds() == 0 ? null : Figures.clock(load.standingSeconds()));
    }

    /** What the names of the columns mean, a sentence; empty where none of them stands there. */
    public String legend() {
        List<String> parts = new ArrayList<>();
        if (ride.has(Channel.POWER)) {
            parts.add("norm.: normalized power, watts");
            if (ride.countSeconds(SecondState.STOPPED) > 0) {
                parts.add(
                        "W and norm. count standing with the timer running, as recorders do; the power while riding of"
                                + " a climb or under energy does not");
            }
            Double target = pacing.targetW();
            if (target != null) {
                parts.add("target: its share of " + Figures.watts(target));
            }
        }
        if (ride.has(Channel.TEMPERATURE)) {
            parts.add(units.temperature().symbol() + ": " + units.degrees()
                    + " at the recorder, which reads too high in the sun");
        }
        if (ride.countSeconds(SecondState.STOPPED) + ride.countSeconds(SecondState.PAUSED) > 0) {
            parts.add("stood: with or without the timer");
        }
        return parts.isEmpty() ? "" : String.join("; ", parts) + ".";
    }

    /**
     * Minutes lost in a part, the same energy first, for instance {@code 1.3 / 3.0}; null where nothing was lost or
     * priced.
     */
    public @Nullable String lost(RideSplits.Split split) {
        LostTime lost = pacing.lost();
        Double low = split.lostLowMinutes();
        Double high = split.lostHighMinutes();
        if (lost == null || low == null || high == null) {
            return null;
        }
        String from = Figures.decimal(low, 1);
        String to = Figures.decimal(high, 1);
        if (from.equals("0.0") && to.equals("0.0")) {
            return null;
        }
        return lost.lowEnd() == LostTime.LowEnd.SAME_EFFORT ? to + " / " + from : from + " / " + to;
    }

    /** What the minutes lost in a part are; empty where nothing was priced. */
    public List<String> lostMeans() {
        LostTime lost = pacing.lost();
        if (lost == null) {
            return List.of();
        }
        return List.of("lost: minutes that all mistakes together cost in this part, "
                + (lost.lowEnd() == LostTime.LowEnd.STANDING
                        ? "standing / with slowing down and getting going again."
                        : "for the same energy / for the same effort. They add up to the whole. Less than 0: faster"
                                + " there than in the repaired race, and paid for elsewhere."));
    }

    /** Where on the course most was lost, a sentence; empty where nothing was priced. */
    public String mostLost(RideSplits splits) {
        List<RideSplits.Section> most = splits.sections().stream()
                .filter(section -> high(section) >= LEAST_MINUTES)
                .sorted(Comparator.comparingDouble(SplitWords::high).reversed())
                .limit(MOST_SECTIONS_NAMED)
                .toList();
        return most.isEmpty()
                ? ""
                : "Most was lost on "
                        + most.stream()
                                .map(section -> units.between(section.startM(), section.endM()) + " (" + ground(section)
                                        + ", " + lost(section.split()) + " min)")
                                .collect(Collectors.joining(", "))
                        + ".";
    }

    private static double high(RideSplits.Section section) {
        Double high = section.split().lostHighMinutes();
        return high == null ? 0 : high;
    }

    /** What kind of road it is, with its grade where that is known. */
    public static String ground(RideSplits.Section section) {
        Double grade = section.meanGrade();
        return grade == null ? road(section) : road(section) + " " + Figures.decimal(grade * 100, 1) + "%";
    }

    /** What kind of road it is. One that neither rises nor falls on average is called by the climbs in it. */
    public static String road(RideSplits.Section section) {
        return switch (section.ground()) {
            case UNKNOWN -> "road";
            case CLIMB, DESCENT -> section.ground().id();
            case FLAT -> level(section);
        };
    }

    private static String level(RideSplits.Section section) {
        Double climbedM = section.climbedM();
        double perKm = climbedM == null ? 0 : climbedM / ((section.endM() - section.startM()) / METRES_PER_KM);
        return perKm >= HILLY_M_PER_KM ? "hilly" : perKm >= ROLLING_M_PER_KM ? "rolling" : Ground.FLAT.id();
    }

    private static @Nullable String whole(@Nullable Double value) {
        return value == null ? null : Figures.decimal(value, 0);
    }
}
