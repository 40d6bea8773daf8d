package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.power.Ability;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rider.Gears;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How well a ride was paced. From where on something is told is a {@link JudgementLimit} each.
 *
 * @param verdict the pacing in one word or two
 * @param verdictReason why there is no judgement, one clause; null when there is one
 * @param judged the seconds that were judged, counted from the first second of the whole recording
 * @param targetW the power the rider could be expected to hold for the judged moving time, watts, or null
 * @param findings what was found, the weightiest first
 * @param ledger where the time of the reviewed ride went
 * @param leftOut what was not looked at, and why, a sentence each
 * @param ownFindings what detectors of one's own found, the weightiest first
 */
public record PacingReview(
        Verdict verdict,
        @Nullable String verdictReason,
        Interval judged,
        @Nullable Double targetW,
        List<Finding> findings,
        TimeLedger ledger,
        List<String> leftOut,
        List<OwnFinding> ownFindings)
        implements Serializable {
    private static final double SECONDS_PER_MINUTE = 60;

    /** The detectors, in the order in which equally weighty findings are told. */
    private static final List<Detector> DETECTORS = List.of(
            new OverHardStart(),
            new EnergyCrash(),
            new Fade(),
            new ThresholdRidingEarly(),
            new Surges(),
            new Drift(),
            new UnderPaced(),
            new LateReserve(),
            new StoppedTime());

    /** Findings that make no sense of a ride that was not meant to be fast. */
    private static final Set<FindingKind> OF_RACES_ONLY =
            EnumSet.of(FindingKind.FADE, FindingKind.UNDER_PACED, FindingKind.LATE_RESERVE);

    /** Copies the lists. */
    public PacingReview {
        findings = List.copyOf(findings);
        leftOut = List.copyOf(leftOut);
        ownFindings = List.copyOf(ownFindings);
    }

    /** Without detectors of one's own. */
    public PacingReview(
            Verdict verdict,
            @Nullable String verdictReason,
            Interval judged,
            @Nullable Double targetW,
            List<Finding> findings,
            TimeLedger ledger,
            List<String> leftOut) {
        this(verdict, verdictReason, judged, targetW, findings, ledger, leftOut, List.of());
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
     * @param effort whether to judge it as a race
     * @param limits from where on something is told
     * @param rig what the rider rode on, for the prices
     * @param detectors detectors of one's own
     * @throws IllegalArgumentException when one of them tells of seconds outside the part
     */
    public static PacingReview of(
            Ride ride,
            @Nullable Course course,
            RacedPart part,
            int offsetSeconds,
            Thresholds thresholds,
            Ability ability,
            Effort effort,
            JudgementLimits limits,
            RigChoice rig,
            List<FindingDetector> detectors) {
        Interval interval = part.interval();
        Ride raced = ride.part(interval);
        int racedOffset = offsetSeconds + interval.fromSecond();
        Race asked = new Race(raced, racedOffset, thresholds, ability, limits);
        String whyNotJudged = whyNotJudged(asked, effort);
        boolean isRace = whyNotJudged == null;
        Race race = isRace ? asked : asked.unpriced();
        List<Finding> found = findings(race, isRace, rig);
        Pricing.Priced priced = isRace
                ? Pricing.price(
                        race,
                        interval.seconds() == ride.seconds()
                                ? course
                                : Course.of(raced).orElse(null),
                        found,
                        rig,
                        ability)
                : new Pricing.Priced(found, List.of(), List.of());
        List<Finding> findings = priced.findings();
        return new PacingReview(
                isRace ? Verdicts.of(race, findings) : Verdict.NOT_JUDGED,
                whyNotJudged,
                interval.shifted(offsetSeconds),
                ability.sustainablePowerW(),
                findings,
                ledger(ride, priced),
                leftOut(race, isRace),
                ownFindings(
                        new JudgedPart(raced, racedOffset, thresholds, ability.sustainablePowerW(), isRace, limits),
                        detectors));
    }

    private static List<OwnFinding> ownFindings(JudgedPart part, List<FindingDetector> detectors) {
        int from = part.offsetSeconds();
        int to = from + part.ride().seconds();
        List<OwnFinding> found = new ArrayList<>();
        for (FindingDetector detector : detectors) {
            List<OwnFinding> told = Objects.requireNonNull(
                    detector.detect(part), () -> detector + " returned null, expected an empty list for nothing");
            for (OwnFinding each : told) {
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

    private static @Nullable String whyNotJudged(Race race, Effort effort) {
        if (!race.watts().hasAny()) {
            return "no power";
        }
        if (!race.isLongEnough()) {
            return "under 40 minutes of moving time";
        }
        if (Double.isNaN(race.targetW())) {
            return "no threshold power";
        }
        double normalized = race.normalizedPowerW(new Interval(0, race.ride().seconds()));
        boolean easy = !(normalized >= race.limit(JudgementLimit.RACE_EFFORT_FRACTION) * race.targetW());
        return switch (effort) {
            case RACE -> null;
            case TRAINING -> "ridden as training";
            case AUTO -> easy ? "not a race effort" : null;
        };
    }

    private static List<Finding> findings(Race race, boolean isRace, RigChoice rig) {
        List<Finding> found = new ArrayList<>();
        List<Detector> detectors = new ArrayList<>(DETECTORS);
        Gears gears = rig.gears();
        if (gears != null) {
            detectors.add(new GearsThatDidNotReach(FindingKind.SPUN_OUT, gears));
            detectors.add(new GearsThatDidNotReach(FindingKind.OVER_GEARED, gears));
        }
        for (Detector detector : detectors) {
            Optional<Finding> finding = detector.detect(race);
            finding.filter(each -> isRace || !OF_RACES_ONLY.contains(each.kind()))
                    .ifPresent(found::add);
        }
        if (has(found, FindingKind.ENERGY_CRASH)) {
            found.removeIf(each -> each.kind() == FindingKind.FADE);
        }
        if (has(found, FindingKind.FADE) || has(found, FindingKind.ENERGY_CRASH)) {
            found.removeIf(each -> each.kind() == FindingKind.UNDER_PACED);
        }
        of(found, FindingKind.OVER_HARD_START)
                .ifPresent(start -> found.removeIf(
                        each -> each.kind() == FindingKind.THRESHOLD_RIDING_EARLY && liesMostlyWithin(each, start)));
        found.sort(Comparator.comparing(Finding::severity).reversed());
        return found;
    }

    private static boolean liesMostlyWithin(Finding inner, Finding outer) {
        return 2 * inner.when().overlapSeconds(outer.when()) > inner.when().seconds();
    }

    static boolean has(List<Finding> findings, FindingKind kind) {
        return of(findings, kind).isPresent();
    }

    static Optional<Finding> of(List<Finding> findings, FindingKind kind) {
        for (Finding finding : findings) {
            if (finding.kind() == kind) {
                return Optional.of(finding);
            }
        }
        return Optional.empty();
    }

    private static TimeLedger ledger(Ride ride, Pricing.Priced priced) {
        return new TimeLedger(
                ride.seconds() / SECONDS_PER_MINUTE,
                ride.countSeconds(SecondState.RIDING) / SECONDS_PER_MINUTE,
                ride.countSeconds(SecondState.STOPPED) / SECONDS_PER_MINUTE,
                ride.countSeconds(SecondState.PAUSED) / SECONDS_PER_MINUTE,
                ride.countSeconds(SecondState.MISSING) / SECONDS_PER_MINUTE,
                priced.entries(),
                priced.notes());
    }

    private static List<String> leftOut(Race race, boolean isRace) {
        List<String> leftOut = new ArrayList<>();
        Ride ride = race.ride();
        if (!ride.has(Channel.POWER)) {
            leftOut.add("No power: pacing, surges, fade and drift were not looked at.");
            return leftOut;
        }
        if (Double.isNaN(race.thresholdPowerW())) {
            leftOut.add("No threshold power to go by: the start, surges and drift were not looked at.");
        } else if (race.thresholdIsEstimated()) {
            leftOut.add("The threshold is estimated from this ride itself: riding near threshold early, surges and"
                    + " under-pacing were not looked at. Give a threshold to have them judged.");
        }
        if (race.wPrimeIsRefuted()) {
            leftOut.add(
                    "W' balance falls far below empty, so critical power or W' is set too low: surges were weighed by"
                            + " their work above threshold power alone.");
        }
        if (!isRace) {
            leftOut.add("Fade, under-pacing, late reserve and prices are told of race efforts only.");
        }
        if (!ride.has(Channel.HEART_RATE)) {
            leftOut.add("No heart rate: drift was not looked at.");
        } else if (!race.heartRateModel().isUsable()) {
            leftOut.add("Heart rate does not follow power clearly enough, or for long enough, to look for drift.");
        }
        if (!ride.has(Channel.ALTITUDE) || !ride.has(Channel.DISTANCE)) {
            leftOut.add("No altitude or no distance: fade was looked for without regard to climbs.");
        }
        return leftOut;
    }
}
