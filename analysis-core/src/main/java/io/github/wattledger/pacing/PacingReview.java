package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.power.Ability;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
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
 * @param occasion what the ride was: only a race is judged
 * @param secondHalfOverFirst effort of the second half of the moving time over that of the first on like ground, 1 where both
 *     were equally hard; null where the halves share too little ground, or the ride has no power
 * @param verdictRestsOn the kind of the finding behind the verdict, or null where it rests on the halves or there is none
 * @param numbers what the ride shows of its rider whether or not anything was found
 * @param remarks what stands out when parts of a ride that was no race are compared; none of a race
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
        Occasion occasion,
        List<Remark> remarks,
        @Nullable Double secondHalfOverFirst,
        @Nullable FindingKind verdictRestsOn,
        PacingNumbers numbers)
        implements Serializable {
    private static final int SECONDS_PER_MINUTE = 60;

    /** Copies the lists. */
    public PacingReview {
        findings = List.copyOf(findings);
        leftOut = List.copyOf(leftOut);
        ownFindings = List.copyOf(ownFindings);
        remarks = List.copyOf(remarks);
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
     * @param openingSeconds moving seconds of the part that belong to the opening of the race; 0 where the part begins later
     * @param limits the limits from which on something is reported
     * @param rig what the rider rode on, for the prices and the gears
     * @param detectors the user's own detectors
     * @throws IllegalArgumentException when one of the detectors returns a finding outside the part
     */
    public static PacingReview of(
            Ride ride,
            @Nullable Course course,
            RacedPart part,
            int offsetSeconds,
            Thresholds thresholds,
            Ability ability,
            int openingSeconds,
            Occasion occasion,
            JudgementLimits limits,
            RigChoice rig,
            List<FindingDetector> detectors) {
        Interval interval = part.interval();
        Ride raced = ride.part(interval);
        int racedOffset = offsetSeconds + interval.fromSecond();
        boolean isWhole = interval.seconds() == ride.seconds();
        Course racedCourse = isWhole ? course : Course.of(raced).orElse(null);
        Race race = new Race(raced, racedOffset, thresholds, ability, limits, rig.gears(), racedCourse, openingSeconds);
        String whyNotJudged = whyNotJudged(race, occasion);
        boolean isRace = whyNotJudged == null;
        PricedFindings priced = isRace
                ? PricedFindings.of(race, racedCourse, Detection.all(race, each -> true), rig, ability)
                : PricedFindings.NONE;
        List<Remark> remarks = isRace || !occasion.kind().allowsRemarks()
                ? List.of()
                : Detection.all(race, Detector::comparesParts).stream()
                        .map(each -> Remark.of(race, each))
                        .toList();
        double halves = Verdicts.secondHalfOverFirst(race);
        Verdicts.Reached reached =
                isRace ? Verdicts.of(halves, priced.findings()) : new Verdicts.Reached(Verdict.NOT_JUDGED, null);
        JudgedPart judged = new JudgedPart(raced, racedOffset, thresholds, ability.sustainablePowerW(), isRace, limits);
        return new PacingReview(
                reached.verdict(),
                whyNotJudged,
                interval.shifted(offsetSeconds),
                ability.sustainablePowerW(),
                priced.findings(),
                ledger(ride, priced),
                LeftOut.of(race, isRace),
                ownFindings(judged, detectors),
                occasion,
                remarks,
                Double.isNaN(halves) ? null : halves,
                reached.restsOn(),
                PacingNumbers.of(race, isRace));
    }

    /** The finding of a kind, or empty where there is none. */
    public Optional<Finding> finding(FindingKind kind) {
        return findings.stream().filter(each -> each.kind() == kind).findFirst();
    }

    private static List<OwnFinding> ownFindings(JudgedPart part, List<FindingDetector> detectors) {
        int from = part.offsetSeconds();
        int to = from + part.ride().seconds();
        List<OwnFinding> found = new ArrayList<>();
        for (FindingDetector detector : detectors) {
            List<OwnFinding> returned = Objects.requireNonNull(
                    detector.detect(part), () -> detector + " returned null, expected an empty list for nothing");
            for (OwnFinding each : returned) {
                if (each.when().fromSecond() < from || each.when().toSecond() > to) {
                    throw new IllegalArgumentException("the finding '" + each.kind() + "' lies outside the judged part,"
                            + " from second " + from + " to " + to + "; make it with JudgedPart.finding");
                }
                found.add(each);
            }
        }
        found.sort(Comparator.comparing(OwnFinding::severity).reversed());
        return found;
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
