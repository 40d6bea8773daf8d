package io.github.wattledger.season;

import io.github.wattledger.pacing.Verdict;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How one race was paced, as a coach of several riders looks at it.
 *
 * @param day the day of the race
 * @param verdict how it was paced
 * @param costMinutesLow what the mistakes cost when all are repaired at once, lower end, minutes, or null
 * @param costMinutesHigh the upper end of that cost, minutes, or null
 * @param isWithoutMistake whether all was looked at and no mistake was found, which is why there is no cost
 * @param openingOverTarget normalized power of the opening over the target, or null
 * @param fadePercent effort lost from early to late on like ground, percent, below 0 where it rose; or null
 * @param lastCapW the power that the advice of the last earlier race of like length set for the opening, watts; null
 *     where none did
 * @param keptLastCap whether the opening stayed within that power; null where there is nothing to compare
 */
public record RacePacing(
        LocalDate day,
        Verdict verdict,
        @Nullable Double costMinutesLow,
        @Nullable Double costMinutesHigh,
        boolean isWithoutMistake,
        @Nullable Double openingOverTarget,
        @Nullable Double fadePercent,
        @Nullable Double lastCapW,
        @Nullable Boolean keptLastCap)
        implements Serializable {
    /** A cap is kept up to this share above it: within the accuracy of a meter. */
    static final double KEPT_UP_TO = 1.02;

    /** Races are of like length when their riding times differ by no more than this factor. Own choice. */
    static final double LIKE_LENGTH = 1.5;

    /**
     * The races among rides.
     *
     * @param rides rides in time order
     * @return the races in time order, possibly none
     */
    static List<RacePacing> of(List<SeasonRide> rides) {
        List<RacePacing> races = new ArrayList<>();
        List<SeasonRide> withCap = new ArrayList<>();
        for (SeasonRide ride : rides) {
            if (ride.isRace()) {
                races.add(of(ride, capBefore(ride, withCap)));
                if (ride.traits().openingCapW() != null) {
                    withCap.add(ride);
                }
            }
        }
        return List.copyOf(races);
    }

    /** The cap of the last earlier race of like length, watts: what is right for two hours is too hard for seven. */
    private static @Nullable Double capBefore(SeasonRide race, List<SeasonRide> withCap) {
        for (int i = withCap.size() - 1; i >= 0; i--) {
            if (isAlike(withCap.get(i), race)) {
                return withCap.get(i).traits().openingCapW();
            }
        }
        return null;
    }

    private static boolean isAlike(SeasonRide one, SeasonRide other) {
        double seconds = one.numbers().movingSeconds();
        double otherSeconds = other.numbers().movingSeconds();
        return Math.max(seconds, otherSeconds) <= LIKE_LENGTH * Math.min(seconds, otherSeconds);
    }

    /** The last of races in time order, no more than so many. */
    static List<RacePacing> last(List<RacePacing> races, int most) {
        return races.subList(Math.max(0, races.size() - most), races.size());
    }

    private static RacePacing of(SeasonRide race, @Nullable Double capW) {
        RideJudgement judgement = race.judgement();
        Double overTarget = race.traits().openingOverTarget();
        return new RacePacing(
                race.day(),
                judgement.verdict(),
                judgement.costMinutesLow(),
                judgement.costMinutesHigh(),
                judgement.isWithoutMistake(),
                overTarget,
                race.traits().fadePercent(),
                capW,
                kept(race.openingW(), capW));
    }

    private static @Nullable Boolean kept(@Nullable Double openingW, @Nullable Double capW) {
        return (openingW == null || capW == null) ? null : (Boolean) (openingW <= KEPT_UP_TO * capW);
    }
}
