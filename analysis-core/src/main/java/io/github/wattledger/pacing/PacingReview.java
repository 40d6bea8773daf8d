package io.github.wattledger.pacing;

import io.github.wattledger.bunch.BunchSearch;
import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.course.Course;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.power.Ability;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How well a ride was paced. The limits from which on something is reported are the constants of {@link JudgementLimit}.
 *
 * @param verdict the pacing in one word or two
 * @param verdictReason why there is no judgement, one clause; null when there is one
 * @param judged the seconds that were judged, counted from the first second of the whole recording
 * @param targetW the power the rider could be expected to hold for the judged moving time, watts, or null
 * @param findings what was found, the weightiest first
 * @param ledger where the time of the reviewed ride went
 * @param leftOut what was not looked at, and why, a sentence each
 * @param ownFindings what the user's own detectors found, the weightiest first
 * @param detectorFailures which of the user's own detectors failed and why, a sentence each; none of their findings is kept
 * @param occasion what the ride was: only a race is judged
 * @param secondHalfOverFirst effort of the second half of the moving time over that of the first on like ground, 1 where both
 *     were equally hard; null where the halves share too little ground, or the ride has no power
 * @param verdictRestsOn the kind of the finding behind the verdict, or null where it rests on the halves or there is none
 * @param numbers what the ride shows of its rider whether or not anything was found
 * @param remarks what stands out when parts of a ride that was no race are compared; none of a race
 * @param lost where the time was lost that all priced mistakes cost together ({@link TimeLedger#allAtOnce}), or null where
 *     nothing was priced
 * @param bunch whether it was worth staying with the bunch, or null where the rider says nothing of one, or the ride is not
 *     judged
 * @param proposedBunch what the ride itself proposes about a bunch, or null where the rider says something of one, the ride
 *     is not judged, or it leads nowhere
 */
public record PacingReview(
        Verdict verdict,
        @Nullable String verdictReason,
        Interval judged,
        @Nullable Double targetW,
        List<Finding> findings,
        TimeLedger ledger,
        List<String> leftOut,
        List<OwnFinding> ownFindings,
        List<String> detectorFailures,
        Occasion occasion,
        List<Remark> remarks,
        @Nullable Double secondHalfOverFirst,
        @Nullable FindingKind verdictRestsOn,
        @Nullable LostTime lost,
        PacingNumbers numbers,
        @Nullable BunchReview bunch,
        @Nullable ProposedBunch proposedBunch)
        implements Serializable {
    /** What is among the things left out where the rider says something of a bunch, or of none, and the ride is no race. */
    static final String BUNCH_CHANGES_NOTHING =
            "What you say of a bunch changes nothing here: the ride is not judged as a race.";

    private static final int SECONDS_PER_MINUTE = 60;

    /** Copies the lists. */
    public PacingReview {
        findings = List.copyOf(findings);
        leftOut = List.copyOf(leftOut);
        ownFindings = List.copyOf(ownFindings);
        detectorFailures = List.copyOf(detectorFailures);
        remarks = List.copyOf(remarks);
    }

    /** The same review without where the time was lost second by second. */
    public PacingReview withoutSeconds() {
        return new PacingReview(
                verdict,
                verdictReason,
                judged,
                targetW,
                findings,
                ledger,
                leftOut,
                ownFindings,
                detectorFailures,
                occasion,
                remarks,
                secondHalfOverFirst,
                verdictRestsOn,
                null,
                numbers,
                bunch,
                proposedBunch);
    }

    /** Normalized power of the opening, watts; null without a target, and where the ride was not judged as a race. */
    public @Nullable Double openingW() {
        return PacingNumbers.openingW(numbers.openingOverTarget(), targetW);
    }

    /**
     * Judges the raced part of a ride.
     *
     * @param ride the reviewed ride
     * @param course its course, or null where it leads nowhere
     * @param part the part of it to judge
     * @param offsetSeconds what to add to this ride's seconds to get seconds of the whole recording
     * @param thresholds what to judge against
     * @param ability what could be expected over the part's moving time
     * @param occasion what the ride was
     * @param opening the opening of the race
     * @param limits the limits from which on something is reported
     * @param rig what the rider rode on, for the prices and the gears
     * @param rigOfOtherRides the same without what the ride itself shows: a bunch would be in it
     * @param notes what the rider wrote down about the ride, in seconds of the whole recording
     * @param company what the rider says of bunches, in seconds of the whole recording
     * @param detectors the user's own detectors
     * @param cancellation when to end early
     * @throws CancelledException when it ends early
     */
    public static PacingReview of(
            Ride ride,
            @Nullable Course course,
            RacedPart part,
            int offsetSeconds,
            Thresholds thresholds,
            Ability ability,
            Opening opening,
            Occasion occasion,
            JudgementLimits limits,
            RigChoice rig,
            RigChoice rigOfOtherRides,
            RideNotes notes,
            Company company,
            List<FindingDetector> detectors,
            Cancellation cancellation) {
        Interval interval = part.interval();
        Ride raced = ride.part(interval);
        int racedOffset = offsetSeconds + interval.fromSecond();
        boolean isWhole = interval.seconds() == ride.seconds();
        Course racedCourse = isWhole ? course : Course.of(raced).orElse(null);
        Race race = new Race(raced, racedOffset, thresholds, ability, limits, rig.gears(), racedCourse, opening, notes);
        String whyNotJudged = whyNotJudged(race, occasion);
        boolean isRace = whyNotJudged == null;
        PricedFindings priced = isRace
                ? PricedFindings.of(
                        race,
                        racedCourse,
                        Detection.all(race, each -> true, cancellation),
                        rig,
                        ability,
                        company,
                        company.isSaid() || racedCourse == null
                                ? null
                                : BunchSearch.of(raced, racedCourse, rigOfOtherRides),
                        cancellation)
                : PricedFindings.NONE;
        List<Remark> remarks = isRace || !occasion.kind().allowsRemarks()
                ? List.of()
                : Detection.all(race, Detector::comparesParts, cancellation).stream()
                        .filter(each -> hasItsGround(each, race, occasion))
                        .map(each -> Remark.of(race, each))
                        .toList();
        double halves = Verdicts.secondHalfOverFirst(race);
        Verdicts.Reached reached =
                isRace ? Verdicts.of(halves, priced.ownFindings()) : new Verdicts.Reached(Verdict.NOT_JUDGED, null);
        JudgedPart judged = new JudgedPart(raced, racedOffset, thresholds, ability.sustainablePowerW(), isRace, limits);
        OwnSearch own = OwnSearch.of(judged, detectors, cancellation);
        return new PacingReview(
                reached.verdict(),
                whyNotJudged,
                interval.shifted(offsetSeconds),
                ability.sustainablePowerW(),
                priced.findings(),
                ledger(ride, priced),
                LeftOut.of(race, isRace, company),
                own.found(),
                own.failures(),
                occasion,
                remarks,
                Double.isNaN(halves) ? null : halves,
                reached.restsOn(),
                priced.lost(),
                PacingNumbers.of(race, isRace),
                priced.bunch(),
                priced.proposed());
    }

    /** The sentence that what the rider says of a bunch changes nothing here; null where it does, or nothing is said. */
    public @Nullable String bunchChangesNothing() {
        return leftOut.contains(BUNCH_CHANGES_NOTHING) ? BUNCH_CHANGES_NOTHING : null;
    }

    /** The finding of a kind, or empty where there is none. */
    public Optional<Finding> finding(FindingKind kind) {
        return findings.stream().filter(each -> each.kind() == kind).findFirst();
    }

    /** Indoors, on no road at all, less power late in a session says how the session was set, and not that the rider faded. */
    private static boolean hasItsGround(Detection detection, Race race, Occasion occasion) {
        return detection.kind() != FindingKind.FADE
                || occasion.kind() != Occasion.Kind.INDOOR
                || race.ride().has(Channel.DISTANCE);
    }

    private static @Nullable String whyNotJudged(Race race, Occasion occasion) {
        if (!race.watts().hasAny()) {
            return Occasion.Reason.NO_POWER.words();
        }
        if (!race.isLongEnough()) {
            return Occasion.Reason.UNDER_FORTY_MINUTES.words();
        }
        return occasion.isRace() ? null : occasion.reason().words();
    }

    private static TimeLedger ledger(Ride ride, PricedFindings priced) {
        return new TimeLedger(
                minutes(ride.seconds()),
                minutes(ride.countSeconds(SecondState.RIDING)),
                minutes(ride.countSeconds(SecondState.STOPPED)),
                minutes(ride.countSeconds(SecondState.PAUSED)),
                minutes(ride.countSeconds(SecondState.MISSING)),
                priced.entries(),
                priced.notes());
    }

    private static double minutes(int seconds) {
        return seconds / (double) SECONDS_PER_MINUTE;
    }
}
