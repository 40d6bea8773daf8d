package io.github.wattledger.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/**
 * Finds rides that were recorded or exported twice: their starts lie within a minute, and their durations differ by a
 * hundredth at most. The richer recording is kept: one with power before one without, then the one with more channels,
 * with more power seconds, with more seconds.
 */
final class Duplicates {
    static final int START_WITHIN_SECONDS = 60;
    static final double DURATION_WITHIN = 0.01;

    private static final Comparator<SeasonRide> RICHEST_FIRST = Comparator.<SeasonRide>comparingInt(
                    ride -> ride.numbers().powerSeconds() > 0 ? 0 : 1)
            .thenComparing(ride -> ride.source().channelCount(), Comparator.reverseOrder())
            .thenComparing(ride -> ride.numbers().powerSeconds(), Comparator.reverseOrder())
            .thenComparing(ride -> ride.numbers().elapsedSeconds(), Comparator.reverseOrder())
            .thenComparing(ride -> ride.source().sha256())
            .thenComparing(ride -> ride.source().sessionIndex());

    private final TreeMap<Long, List<SeasonRide>> kept = new TreeMap<>();
    private final List<DuplicateRide> left = new ArrayList<>();

    private Duplicates() {}

    /** The rides without duplicates, in no particular order, and what was left out. */
    record Result(List<SeasonRide> kept, List<DuplicateRide> left) {}

    static Result remove(List<SeasonRide> rides) {
        Duplicates duplicates = new Duplicates();
        rides.stream().sorted(RICHEST_FIRST).forEach(duplicates::add);
        List<SeasonRide> all = new ArrayList<>();
        duplicates.kept.values().forEach(all::addAll);
        return new Result(all, duplicates.left);
    }

    private void add(SeasonRide ride) {
        long start = ride.source().start().getEpochSecond();
        for (List<SeasonRide> near : kept.subMap(start - START_WITHIN_SECONDS, true, start + START_WITHIN_SECONDS, true)
                .values()) {
            for (SeasonRide richer : near) {
                if (isSame(ride, richer)) {
                    left.add(new DuplicateRide(
                            ride.source().file(), richer.source().file(), false));
                    return;
                }
            }
        }
        kept.computeIfAbsent(start, absent -> new ArrayList<>()).add(ride);
    }

    private static boolean isSame(SeasonRide ride, SeasonRide richer) {
        int longer = Math.max(ride.numbers().elapsedSeconds(), richer.numbers().elapsedSeconds());
        int apart = Math.abs(ride.numbers().elapsedSeconds() - richer.numbers().elapsedSeconds());
        return apart <= DURATION_WITHIN * longer;
    }
}
