package io.github.wattledger.season;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A ride without its seconds.
 *
 * @param id its place in the table
 * @param isCurrent whether its numbers are of this version of the analysis
 * @param estimateMassKg the mass of rider and bicycle with which its drag area and rolling resistance were estimated, kg; null
 *     where they were not
 * @param checkSum the sum of all that the store has of it but for its seconds; null where another process has taken it out
 */
record RideRow(
        long id,
        StoredRide.Key key,
        boolean isCurrent,
        StoredRide.Device device,
        Instant start,
        @Nullable Integer utcOffsetSeconds,
        String format,
        int channelCount,
        Judge.Judged judged,
        @Nullable Double estimateMassKg,
        @Nullable Long checkSum) {
    /**
     * A ride as it was written.
     *
     * @param checkSum the sum of all that the store has of it but for its seconds, or null where the ride was gone
     */
    record Written(long id, @Nullable Long checkSum) {}

    /**
     * The ride as a season shows it.
     *
     * @param file the file's name below the season's folder
     * @param day the local day on which it began
     * @param today the day of the review, or null
     */
    SeasonRide seasonRide(String file, LocalDate day, @Nullable LocalDate today) {
        SeasonRide.Source source = new SeasonRide.Source(
                file, key.sha256(), key.sessionIndex(), format, device.name(), start, utcOffsetSeconds, channelCount);
        return new SeasonRide(
                source,
                day,
                DateDoubt.of(start, day, today),
                judged.numbers(),
                judged.judgement(),
                judged.bests(),
                judged.durability(),
                judged.ridingBests(),
                judged.showsLimit(),
                judged.traits(),
                judged.notes().within(judged.numbers().elapsedSeconds()));
    }

    /** The ride with another judgement by this version of the analysis. */
    RideRow judgedAs(Written written, Judge.Judged other) {
        return new RideRow(
                written.id(),
                key,
                true,
                device,
                start,
                utcOffsetSeconds,
                format,
                channelCount,
                other,
                estimateMassKg,
                written.checkSum());
    }
}
