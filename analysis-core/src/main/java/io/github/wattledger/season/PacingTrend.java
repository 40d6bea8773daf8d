package io.github.wattledger.season;

import io.github.wattledger.history.Agreement;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.pacing.Verdict;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether pacing improves: the races and long rides of a season in time order, and the earlier half of the races beside
 * the later one.
 *
 * @param rides rides that were judged as races, and others of {@link #LONG_RIDE_SECONDS} or more
 * @param earlier the first half of the judged races, or null with fewer than {@link #LEAST_RACES}
 * @param later the second half, the longer one when their number is odd, or null
 * @param races how each race was paced, and whether its opening kept to the cap that the advice of an earlier race named, in
 *     time order
 * @param recalls what had been agreed before the races that came after an agreement, in time order
 */
public record PacingTrend(
        List<SeasonRide> rides,
        @Nullable Half earlier,
        @Nullable Half later,
        List<RacePacing> races,
        List<Recall> recalls)
        implements Serializable {
    /** A ride is long from this moving time on, seconds: three hours, where pacing begins to decide. Our own choice. */
    public static final int LONG_RIDE_SECONDS = 3 * 3600;

    /** Fewer races than this are no trend. */
    public static final int LEAST_RACES = 4;

    /**
     * Some races together.
     *
     * @param raceCount how many
     * @param overHardStarts how many were begun much too hard
     * @param evenOrNegative how many were paced evenly or with the harder half last
     * @param decouplingPercent mean decoupling of those that have it, percent, or null
     * @param costMinutes mean cost of the mistakes, minutes, from the middle of each range, of the races that have a price or
     *     no mistake, which cost 0; or null
     */
    public record Half(
            int raceCount,
            int overHardStarts,
            int evenOrNegative,
            @Nullable Double decouplingPercent,
            @Nullable Double costMinutes)
            implements Serializable {}

    /**
     * What had been agreed before a race.
     *
     * @param race the race
     * @param agreed what was agreed last before its day
     */
    public record Recall(SeasonRide race, Agreement agreed) implements Serializable {}

    /** Copies the lists. */
    public PacingTrend {
        rides = List.copyOf(rides);
        races = List.copyOf(races);
        recalls = List.copyOf(recalls);
    }

    static boolean isLong(SeasonRide ride) {
        return ride.numbers().movingSeconds() >= LONG_RIDE_SECONDS;
    }

    static PacingTrend of(List<SeasonRide> season, OwnRides own) {
        List<SeasonRide> shown =
                season.stream().filter(ride -> ride.isRace() || isLong(ride)).toList();
        List<SeasonRide> races = shown.stream().filter(SeasonRide::isRace).toList();
        List<Recall> recalls = recalls(races, own);
        List<RacePacing> pacing = RacePacing.of(races);
        if (races.size() < LEAST_RACES) {
            return new PacingTrend(shown, null, null, pacing, recalls);
        }
        int middle = races.size() / 2;
        return new PacingTrend(
                shown, half(races.subList(0, middle)), half(races.subList(middle, races.size())), pacing, recalls);
    }

    private static List<Recall> recalls(List<SeasonRide> races, OwnRides own) {
        List<Recall> recalls = new ArrayList<>();
        for (SeasonRide race : races) {
            Agreement agreed = own.agreedBefore(race.day());
            if (agreed != null) {
                recalls.add(new Recall(race, agreed));
            }
        }
        return recalls;
    }

    private static Half half(List<SeasonRide> races) {
        int overHard = 0;
        int even = 0;
        double decouplingSum = 0;
        int decouplingCount = 0;
        double costSum = 0;
        int costCount = 0;
        for (SeasonRide race : races) {
            Verdict verdict = race.judgement().verdict();
            overHard += verdict == Verdict.OVER_HARD_START ? 1 : 0;
            even += verdict == Verdict.EVEN || verdict == Verdict.NEGATIVE_SPLIT ? 1 : 0;
            Double decoupling = race.numbers().decouplingPercent();
            if (decoupling != null) {
                decouplingSum += decoupling;
                decouplingCount++;
            }
            Double low = race.judgement().costMinutesLow();
            Double high = race.judgement().costMinutesHigh();
            if (low != null && high != null) {
                costSum += (low + high) / 2;
                costCount++;
            } else if (race.judgement().isWithoutMistake()) {
                costCount++;
            }
        }
        return new Half(
                races.size(),
                overHard,
                even,
                decouplingCount == 0 ? null : (Double) (decouplingSum / decouplingCount),
                costCount == 0 ? null : (Double) (costSum / costCount));
    }
}
