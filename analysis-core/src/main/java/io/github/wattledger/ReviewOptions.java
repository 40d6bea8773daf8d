package io.github.wattledger;

import io.github.wattledger.energy.Intake;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.Company;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingDetector;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.plan.KeptPlan;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.rider.RideNotes;
import java.io.Serializable;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * What to review and how.
 *
 * @param selection which session of the file is reviewed, and which part of it; of a recording or a ride that is in memory
 *     only the part counts
 * @param effort whether to judge the ride as a race
 * @param limits the limits from which on something is reported
 * @param zone the rider's time zone, which settles the day of a ride that does not know its local time
 * @param detectors detectors of one's own, beside the library's
 * @param reading how a file, bytes or a stream are read
 * @param intake the carbohydrate that the rider says was eaten, counted from the first second of the recording on; null
 *     where nothing is said
 * @param timeLimit how long a review may take, its reading included, above 0; null for no limit
 * @param ownRides the rider's own rides, of which those of earlier days say what the rider can do; null where the ride is
 *     to be judged without them
 * @param notes what the rider wrote down about the ride; where they say what was eaten and {@code intake} is null, the
 *     notes hold; so they do where they say when there was a bunch and {@code company} says nothing
 * @param company what the rider says of bunches, in seconds of the whole recording
 * @param plan the plan for this ride, by whose opening an over-hard start is judged; null without one. The judged part is
 *     taken to begin where the planned course does
 */
public record ReviewOptions(
        Selection selection,
        Effort effort,
        JudgementLimits limits,
        ZoneId zone,
        List<FindingDetector> detectors,
        ReadOptions reading,
        @Nullable Intake intake,
        @Nullable Duration timeLimit,
        @Nullable OwnRides ownRides,
        RideNotes notes,
        Company company,
        @Nullable KeptPlan plan)
        implements Serializable {
    /** The whole ride, judged as a race when it looks like one, by the usual limits, in UTC, however long it takes. */
    public static final ReviewOptions WHOLE_RIDE = new ReviewOptions(
            Selection.WHOLE_RIDE,
            Effort.AUTO,
            JudgementLimits.USUAL,
            ZoneOffset.UTC,
            List.of(),
            ReadOptions.DEFAULT,
            null,
            null,
            null,
            RideNotes.NONE,
            Company.NOT_SAID,
            null);

    /** @throws IllegalArgumentException when the time limit is 0 or below */
    public ReviewOptions {
        detectors = List.copyOf(detectors);
        if (timeLimit != null && (timeLimit.isZero() || timeLimit.isNegative())) {
            throw new IllegalArgumentException("timeLimit " + timeLimit + ", expected more than 0");
        }
    }

    /** The same options for another session, counted from 0; null for the first of cycling. */
    public ReviewOptions withSession(@Nullable Integer sessionIndex) {
        return withSelection(selection.withSessionIndex(sessionIndex));
    }

    /**
     * The same options for a part of the session by elapsed time, in place of any part before.
     *
     * @param from its first second, or null for the start
     * @param to the second at which it ends (not included), or null for the end
     * @throws IllegalArgumentException when the two are out of order
     */
    public ReviewOptions withSeconds(@Nullable Integer from, @Nullable Integer to) {
        return withSelection(selection.withSeconds(from, to));
    }

    /**
     * The same options for laps of the session, in place of any part before.
     *
     * @param first the first lap, counted from 1, or null for the whole session
     * @param last the last lap, included, or null for {@code first}
     * @throws IllegalArgumentException when the two are out of order
     */
    public ReviewOptions withLaps(@Nullable Integer first, @Nullable Integer last) {
        return withSelection(selection.withLaps(first, last));
    }

    /** The same options for another session, or another part of it. */
    public ReviewOptions withSelection(Selection other) {
        return changed(copy -> copy.selection = other);
    }

    /** The same options with another answer to whether the ride is judged as a race. */
    public ReviewOptions withEffort(Effort other) {
        return changed(copy -> copy.effort = other);
    }

    /** The same options with other limits. */
    public ReviewOptions withLimits(JudgementLimits other) {
        return changed(copy -> copy.limits = other);
    }

    /** The same options with another time zone. */
    public ReviewOptions withZone(ZoneId other) {
        return changed(copy -> copy.zone = other);
    }

    /** The same options with these detectors of one's own in place of any before. */
    public ReviewOptions withDetectors(List<FindingDetector> own) {
        return changed(copy -> copy.detectors = own);
    }

    /** The same options with another way of reading. */
    public ReviewOptions withReading(ReadOptions other) {
        return changed(copy -> copy.reading = other);
    }

    /** The same options with what the rider says was eaten, or null where nothing is said. */
    public ReviewOptions withIntake(@Nullable Intake other) {
        return changed(copy -> copy.intake = other);
    }

    /**
     * The same options with another time limit, or null for none.
     *
     * @throws IllegalArgumentException when it is 0 or below
     */
    public ReviewOptions withTimeLimit(@Nullable Duration other) {
        return changed(copy -> copy.timeLimit = other);
    }

    /** The same options with the rider's own rides, or without any where it is null. */
    public ReviewOptions withOwnRides(@Nullable OwnRides other) {
        return changed(copy -> copy.ownRides = other);
    }

    /** The same options with what the rider wrote down about the ride. */
    public ReviewOptions withNotes(RideNotes other) {
        return changed(copy -> copy.notes = other);
    }

    /** The same options with what the rider says of bunches, in place of what was said before. */
    public ReviewOptions withCompany(Company other) {
        return changed(copy -> copy.company = other);
    }

    /** The same options with the plan for this ride, or without any where it is null. */
    public ReviewOptions withPlan(@Nullable KeptPlan other) {
        return changed(copy -> copy.plan = other);
    }

    /** What the rider says of bunches: {@link #company()}, and where nothing is said there what the notes say. */
    public Company companyOrNoted() {
        return company.isSaid() ? company : Company.noted(notes);
    }

    /**
     * What the rider says was eaten: {@link #intake()}, and where nothing is said there what the notes say; null where
     * neither says anything.
     */
    public @Nullable Intake intakeOrNoted() {
        List<Double> noted = notes.eatenGPerHour();
        return intake != null || noted.isEmpty() ? intake : new Intake(noted, true);
    }

    private ReviewOptions changed(Consumer<Copy> change) {
        Copy copy = new Copy(this);
        change.accept(copy);
        return copy.options();
    }

    /** These options taken apart, so that one of them can be replaced by its name. */
    private static final class Copy {
        Selection selection;
        Effort effort;
        JudgementLimits limits;
        ZoneId zone;
        List<FindingDetector> detectors;
        ReadOptions reading;

        @Nullable Intake intake;

        @Nullable Duration timeLimit;

        @Nullable OwnRides ownRides;

        RideNotes notes;
        Company company;

        @Nullable KeptPlan plan;

        Copy(ReviewOptions from) {
            this.selection = from.selection;
            this.effort = from.effort;
            this.limits = from.limits;
            this.zone = from.zone;
            this.detectors = from.detectors;
            this.reading = from.reading;
            this.intake = from.intake;
            this.timeLimit = from.timeLimit;
            this.ownRides = from.ownRides;
            this.notes = from.notes;
            this.company = from.company;
            this.plan = from.plan;
        }

        ReviewOptions options() {
            return new ReviewOptions(
                    selection, effort, limits, zone, detectors, reading, intake, timeLimit, ownRides, notes, company,
                    plan);
        }
    }
}
