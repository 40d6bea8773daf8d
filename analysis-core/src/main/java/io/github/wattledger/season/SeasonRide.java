package io.github.wattledger.season;

import io.github.wattledger.history.RideTraits;
import io.github.wattledger.pacing.PacingNumbers;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.RidingBest;
import io.github.wattledger.rider.RideNotes;
import java.io.Serializable;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One ride of a season.
 *
 * @param source where it comes from
 * @param day the day on which it began, on the rider's own calendar; the whole ride counts for it
 * @param dateDoubt why the day cannot be believed, or null where it can
 * @param numbers the numbers that need no threshold
 * @param judgement the numbers and findings that depend on the threshold
 * @param bests best mean power over the durations of {@link BestEfforts#DURATIONS} that it reaches, rising
 * @param durability best efforts before and after so much work
 * @param ridingBests best mean power over riding seconds, of the durations of {@link BestEfforts#RIDING_DURATIONS} that it
 *     reaches with little standing, rising
 * @param showsLimit whether it was a race in which the rider faded, ran out of energy or drifted
 * @param traits what it shows of the rider beside power
 * @param notes what the rider wrote down about it, as far as it lies within the recording
 */
public record SeasonRide(
        Source source,
        LocalDate day,
        @Nullable DateDoubt dateDoubt,
        RideNumbers numbers,
        RideJudgement judgement,
        List<Best> bests,
        List<Durability> durability,
        List<RidingBest> ridingBests,
        boolean showsLimit,
        RideTraits traits,
        RideNotes notes)
        implements Serializable {
    /** Copies the lists. */
    public SeasonRide {
        bests = List.copyOf(bests);
        durability = List.copyOf(durability);
        ridingBests = List.copyOf(ridingBests);
    }

    /**
     * Where a ride comes from.
     *
     * @param file the file, by its path below the season's folder, with slashes
     * @param sha256 digest of the file's bytes, lower-case hexadecimal
     * @param sessionIndex position of the session within the file, from 0
     * @param format the file's format
     * @param device the recording device, or null
     * @param start the first second
     * @param utcOffsetSeconds local time minus UTC as the recording knows it, or null
     * @param channelCount how many channels were measured
     */
    public record Source(
            String file,
            String sha256,
            int sessionIndex,
            String format,
            @Nullable String device,
            Instant start,
            @Nullable Integer utcOffsetSeconds,
            int channelCount)
            implements Serializable {}

    /** Whether it was judged as a race. */
    public boolean isRace() {
        return judgement.verdict() != Verdict.NOT_JUDGED;
    }

    /** Normalized power of the opening, watts; null without a target, and where the ride was not judged. */
    public @Nullable Double openingW() {
        return PacingNumbers.openingW(traits.openingOverTarget(), judgement.targetW());
    }

    /** This ride with another judgement. */
    SeasonRide withJudgement(RideJudgement other) {
        return new SeasonRide(
                source, day, dateDoubt, numbers, other, bests, durability, ridingBests, showsLimit, traits, notes);
    }
}
