package io.github.wattledger.season;

import io.github.wattledger.season.DuplicateRide.Reason;
import org.jspecify.annotations.Nullable;

/**
 * Decides whether two recordings are of the same ride.
 *
 * <p>The limits are our own choice. They rest on pairs of real exports: one race as FIT and as CSV or GPX differs by at
 * most a second in length, 0.2 % in distance and 0.6 % in work.
 */
final class SameRide {
    /** Two devices that are started together start within this time. */
    static final int START_WITHIN_SECONDS = 60;

    /** How much of the shorter recording lies within the longer one where both are of the same ride. */
    static final double SHARED_FRACTION = 0.9;

    /** Time zones lie whole quarters of an hour apart (IANA time zone database). */
    static final int CLOCK_STEP_SECONDS = 900;

    /** Local time is at most 14 hours ahead of UTC (IANA time zone database, Pacific/Kiritimati). */
    static final int MOST_CLOCK_SECONDS = 14 * 3600;

    /** Two exports of one recording begin in the same second, apart from rounding, and are as long. */
    static final int EXPORT_WITHIN_SECONDS = 2;

    /** How far distance, work and heart rate of two exports of one recording may differ. */
    static final double EXPORT_WITHIN = 0.01;

    /** How far they may differ where two devices recorded the same ride. */
    private static final double DEVICES_WITHIN = 0.05;

    private SameRide() {}

    /** Gives why two recordings are of the same ride; null when they are not, as far as is known. */
    static @Nullable Reason reason(SeasonRide one, SeasonRide other) {
        if (one.dateDoubt() != null || other.dateDoubt() != null) {
            return areExportsOfOneRecording(one, other) ? Reason.NO_DATE : null;
        }
        if (areAtTheSameTime(one, other)) {
            return Reason.SAME_TIME;
        }
        return mayHaveLocalTimes(one, other) && differByAZone(one, other) && areExportsOfOneRecording(one, other)
                ? Reason.OTHER_CLOCK
                : null;
    }

    private static boolean areAtTheSameTime(SeasonRide one, SeasonRide other) {
        int oneSeconds = one.numbers().elapsedSeconds();
        int otherSeconds = other.numbers().elapsedSeconds();
        int shorterSeconds = Math.min(oneSeconds, otherSeconds);
        SeasonRide longer = oneSeconds >= otherSeconds ? one : other;
        long from = Math.max(start(one), start(other));
        long to = Math.min(start(one) + oneSeconds, start(other) + otherSeconds);
        if (to - from < SHARED_FRACTION * shorterSeconds) {
            return false;
        }
        boolean beginTogether = Math.abs(start(one) - start(other)) <= START_WITHIN_SECONDS;
        if (mayHaveLocalTimes(one, other)) {
            // Two clocks that show different times make rides seem to overlap that do not: the numbers decide, where
            // both recordings are whole.
            boolean areWhole =
                    shorterSeconds >= SHARED_FRACTION * longer.numbers().elapsedSeconds();
            return beginTogether
                    ? !areWhole || !contradict(one, other, DEVICES_WITHIN)
                    : areWhole && agree(one, other, DEVICES_WITHIN);
        }
        if (beginTogether) {
            return true;
        }
        // A recording that was only paused from one ride to the next may hold another ride in its pause.
        return longer.numbers().elapsedSeconds() - longer.numbers().timerSeconds() < shorterSeconds;
    }

    /** FIT has its times in UTC (FIT protocol). Tables may have local ones, and so have some GPX files, against GPX 1.1. */
    private static boolean mayHaveLocalTimes(SeasonRide one, SeasonRide other) {
        return !isFit(one) || !isFit(other);
    }

    private static boolean isFit(SeasonRide ride) {
        return ride.source().format().equals("FIT");
    }

    private static boolean differByAZone(SeasonRide one, SeasonRide other) {
        long apart = Math.abs(start(one) - start(other));
        long beyondStep = apart % CLOCK_STEP_SECONDS;
        return apart <= MOST_CLOCK_SECONDS + EXPORT_WITHIN_SECONDS
                && Math.min(beyondStep, CLOCK_STEP_SECONDS - beyondStep) <= EXPORT_WITHIN_SECONDS;
    }

    private static boolean areExportsOfOneRecording(SeasonRide one, SeasonRide other) {
        return Math.abs(one.numbers().elapsedSeconds() - other.numbers().elapsedSeconds()) <= EXPORT_WITHIN_SECONDS
                && agree(one, other, EXPORT_WITHIN);
    }

    /** Whether distance or work is known of both, and neither of them nor the heart rates contradict each other. */
    private static boolean agree(SeasonRide one, SeasonRide other, double within) {
        RideNumbers first = one.numbers();
        RideNumbers second = other.numbers();
        boolean canBeCompared =
                areKnown(first.distanceM(), second.distanceM()) || areKnown(first.workKJ(), second.workKJ());
        return canBeCompared && !contradict(one, other, within);
    }

    private static boolean contradict(SeasonRide one, SeasonRide other, double within) {
        RideNumbers first = one.numbers();
        RideNumbers second = other.numbers();
        return !(isNear(first.distanceM(), second.distanceM(), within)
                && isNear(first.workKJ(), second.workKJ(), within)
                && isNear(first.averageHeartRateBpm(), second.averageHeartRateBpm(), within));
    }

    private static boolean areKnown(@Nullable Double one, @Nullable Double other) {
        return one != null && other != null && one > 0 && other > 0;
    }

    /** Whether two numbers do not contradict each other; one that is missing contradicts nothing. */
    private static boolean isNear(@Nullable Double one, @Nullable Double other, double within) {
        return one == null || other == null || Math.abs(one - other) <= within * Math.max(one, other);
    }

    private static long start(SeasonRide ride) {
        return ride.source().start().getEpochSecond();
    }
}
