package io.github.wattledger.cli.profile;

import io.github.wattledger.history.Spread;
import io.github.wattledger.history.ThresholdMove;
import io.github.wattledger.power.LongRide;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.season.RiderFromRides;
import java.time.LocalDate;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Writes a rider profile from what a season's rides say, for the rider to check and keep. What is only proposed stands in
 * comments, so that nothing comes into force that the rider has not decided.
 */
public final class ProfileFromRides {
    private static final double EASY_SHARE = 0.70;

    private final StringBuilder text = new StringBuilder();

    private ProfileFromRides() {}

    /**
     * The text of a profile.
     *
     * @param rides what the rides say
     * @param folder what to call the season
     */
    public static String write(RiderFromRides rides, String folder) {
        ProfileFromRides profile = new ProfileFromRides();
        profile.line("# A rider profile from the rides of " + oneLine(folder) + " before "
                + rides.history().day() + ".");
        profile.line("# Check each line, keep what is right, and give it with --rider FILE.");
        profile.line("# docs/rider-profile.md explains every line.");
        profile.person(rides.onDay().rider());
        profile.allOut(rides);
        profile.thresholds(rides);
        profile.heartRate(rides);
        profile.road(rides);
        return profile.text.toString();
    }

    private static String oneLine(String name) {
        return name.codePoints()
                .map(each -> Character.isISOControl(each) ? '?' : each)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    private void person(Rider rider) {
        number("mass_kg", rider.massKg());
        number("bike_mass_kg", rider.bikeMassKg());
        number("maximum_heart_rate_bpm", rider.maximumHeartRateBpm());
        days("race_days", rider.raceDays());
    }

    private void number(String key, @Nullable Double value) {
        if (value != null) {
            line(key + " = " + plain(value));
        }
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Decimals.of(value, 0) : String.valueOf(value);
    }

    private void days(String key, Set<LocalDate> days) {
        if (!days.isEmpty()) {
            line(key + " = [" + days.stream().sorted().map(LocalDate::toString).collect(Collectors.joining(", "))
                    + " ]");
        }
    }

    private void allOut(RiderFromRides rides) {
        Rider rider = rides.onDay().rider();
        line("");
        line("# Days on which you gave all in a long ride. Naming them says more about your");
        line("# endurance than any number here.");
        days("all_out", rider.allOutDays());
        OwnEndurance own = rides.history().endurance().found().orElse(null);
        if (own == null) {
            line("# No hard long ride was found: "
                    + rides.history().endurance().refusal().orElse("") + ".");
            return;
        }
        for (LongRide ride : own.top()) {
            if (!rider.allOutDays().contains(ride.day())) {
                line("# " + ride.day() + ": " + Decimals.of(ride.hours(), 1) + " h at " + Decimals.of(ride.watts(), 0)
                        + " W normalized power; all-out?");
            }
        }
    }

    private void thresholds(RiderFromRides rides) {
        TreeMap<LocalDate, ThresholdHistory.Entry> entries = new TreeMap<>();
        rides.onDay().rider().thresholds().entries().forEach(entry -> entries.put(entry.from(), entry));
        TreeMap<LocalDate, String> reasons = new TreeMap<>();
        rides.moves().stream().filter(ThresholdMove::isRise).forEach(move -> reasons.put(move.day(), reason(move)));
        for (ThresholdHistory.Entry entry : rides.thresholds().entries()) {
            ThresholdHistory.Entry known = entries.get(entry.from());
            if (known == null || known.powerW() == null) {
                entries.put(
                        entry.from(),
                        new ThresholdHistory.Entry(
                                entry.from(), entry.powerW(), known == null ? null : known.heartRateBpm()));
                reasons.putIfAbsent(entry.from(), "the best effort of the first six weeks, and 3 % more");
            }
        }
        line("");
        line("# Thresholds by date. A rise shows in your rides; a fall never does.");
        entries.values().forEach(entry -> {
            line("[[thresholds]]");
            line("from = " + entry.from());
            if (entry.powerW() != null) {
                String reason = reasons.get(entry.from());
                line("power_w = " + watts(entry.powerW()) + (reason == null ? "" : "   # " + reason));
            }
            if (entry.heartRateBpm() != null) {
                line("heart_rate_bpm = " + plain(entry.heartRateBpm()));
            }
            line("");
        });
        ThresholdMove fall = rides.proposedFall();
        if (fall != null) {
            line("# Proposed fall: " + Decimals.of(fall.fromW(), 0) + " W to " + Decimals.of(fall.toW(), 0) + " W from "
                    + fall.day() + ", since two efforts");
            line("# that you named as hard stayed below it. Decide yourself.");
        }
    }

    /** A value of the profile keeps its decimals; one from rides is known to a watt at best. */
    private static String watts(double watts) {
        return watts == Math.rint(watts) ? Decimals.of(watts, 0) : Decimals.of(watts, 1);
    }

    private static String reason(ThresholdMove move) {
        return switch (move.reason()) {
            case TWO_EFFORTS -> "by two efforts within six weeks";
            case ONE_FAR_EFFORT -> "by one effort far above it";
            case EFFORT_AND_HEART_RATE -> "by one effort and a lower heart rate";
            case HARD_EFFORTS_BELOW -> throw new AssertionError("a fall is no rise");
        };
    }

    private void heartRate(RiderFromRides rides) {
        Double thresholdW = rides.onDay().thresholdPowerW();
        if (thresholdW == null) {
            return;
        }
        rides.traits().heartRateAt(EASY_SHARE * thresholdW).found().ifPresent(rate -> {
            line("# Heart rate at " + Decimals.of(rate.watts(), 0) + " W: " + Decimals.of(rate.medianBpm(), 0)
                    + " beats/min, within " + Decimals.of(rate.halfWidthBpm(), 0) + " on most days.");
        });
    }

    private void road(RiderFromRides rides) {
        Outcome<Spread> drag = rides.traits().dragAreaM2();
        Outcome<Spread> rolling = rides.traits().rollingResistance();
        Rider rider = rides.onDay().rider();
        boolean isGiven = rider.dragAreaM2() != null || rider.rollingResistance() != null;
        if (!isGiven && drag.found().isEmpty() && rolling.found().isEmpty()) {
            return;
        }
        line("");
        line(isGiven ? "[road]" : "# [road]");
        if (rider.dragAreaM2() != null) {
            number("drag_area_m2", rider.dragAreaM2());
        }
        if (rider.rollingResistance() != null) {
            number("rolling_resistance", rider.rollingResistance());
        }
        drag.found()
                .ifPresent(
                        spread -> line("# drag_area_m2 = " + Decimals.of(spread.high(), 3) + "   # upper quartile of "
                                + spread.rides() + " rides, as when riding alone; their median is "
                                + Decimals.of(spread.median(), 3)));
        rolling.found()
                .ifPresent(spread -> line("# rolling_resistance = " + Decimals.of(spread.median(), 4)
                        + "   # median of " + spread.rides() + " rides"));
    }
}
