package io.github.wattledger.season;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Finds rides that were recorded or exported twice, and keeps the richer recording of each: the one with more measured
 * seconds over all its channels. Power counts as much as {@link #POWER_COUNTS_AS} other channels, since load and pacing
 * rest on it, and the local time as much as one, since a recording that knows it knows the day of its ride. A recording
 * whose date cannot be believed gives way to one whose date can.
 */
final class Duplicates {
    /** Our own choice: an hour with power weighs more than two of a watch without it, some minutes do not. */
    private static final int POWER_COUNTS_AS = 10;

    /** A ride with what decides first which recording is the richer one. */
    private record Ranked(SeasonRide ride, boolean isDoubtful, long richness, int powerSeconds) {
        static Ranked of(SeasonRide ride) {
            int powerSeconds = ride.numbers().powerSeconds();
            int channels = ride.source().channelCount() + (ride.source().utcOffsetSeconds() != null ? 1 : 0);
            long richness = (long) channels * ride.numbers().elapsedSeconds() + (long) POWER_COUNTS_AS * powerSeconds;
            return new Ranked(ride, ride.dateDoubt() != null, richness, powerSeconds);
        }

        int richestFirst(Ranked other) {
            int order = Boolean.compare(isDoubtful, other.isDoubtful);
            order = order != 0 ? order : Long.compare(other.richness, richness);
            order = order != 0 ? order : Integer.compare(other.powerSeconds, powerSeconds);
            order = order != 0
                    ? order
                    : ride.source().sha256().compareTo(other.ride.source().sha256());
            return order != 0
                    ? order
                    : Integer.compare(
                            ride.source().sessionIndex(), other.ride.source().sessionIndex());
        }
    }

    /** The rides that are kept, by their first second. */
    private final TreeMap<Long, List<SeasonRide>> kept = new TreeMap<>();

    /** Those of them whose date cannot be believed: they may be the same ride as any other. */
    private final List<SeasonRide> keptOutsideCalendar = new ArrayList<>();

    private final List<DuplicateRide> left = new ArrayList<>();
    private final long farthestSeconds;

    private Duplicates(Collection<SeasonRide> rides) {
        int longest = rides.stream()
                .mapToInt(ride -> ride.numbers().elapsedSeconds())
                .max()
                .orElse(0);
        farthestSeconds = (long) Math.max(longest, SameRide.MOST_CLOCK_SECONDS) + SameRide.START_WITHIN_SECONDS;
    }

    /** The rides without duplicates, in no particular order, and what was left out. */
    record Result(List<SeasonRide> kept, List<DuplicateRide> left) {}

    static Result remove(List<SeasonRide> rides) {
        Duplicates duplicates = new Duplicates(rides);
        rides.stream().map(Ranked::of).sorted(Ranked::richestFirst).forEach(ranked -> duplicates.add(ranked.ride));
        List<SeasonRide> all = new ArrayList<>(duplicates.keptOutsideCalendar);
        duplicates.kept.values().forEach(all::addAll);
        return new Result(all, duplicates.left);
    }

    private void add(SeasonRide ride) {
        DuplicateRide duplicate = duplicate(ride, keptOutsideCalendar);
        long start = ride.source().start().getEpochSecond();
        Collection<List<SeasonRide>> candidates = ride.dateDoubt() != null
                ? kept.values()
                : kept.subMap(start - farthestSeconds, true, start + farthestSeconds, true)
                        .values();
        for (List<SeasonRide> each : candidates) {
            duplicate = duplicate == null ? duplicate(ride, each) : duplicate;
        }
        if (duplicate != null) {
            left.add(duplicate);
        } else if (ride.dateDoubt() != null) {
            keptOutsideCalendar.add(ride);
        } else {
            kept.computeIfAbsent(start, absent -> new ArrayList<>()).add(ride);
        }
    }

    private static @Nullable DuplicateRide duplicate(SeasonRide ride, List<SeasonRide> richerRides) {
        for (SeasonRide richer : richerRides) {
            DuplicateRide.Reason reason = SameRide.reason(ride, richer);
            if (reason != null) {
                return new DuplicateRide(ride.source().file(), richer.source().file(), reason);
            }
        }
        return null;
    }
}
