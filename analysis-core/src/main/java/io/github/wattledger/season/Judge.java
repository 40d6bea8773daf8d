package io.github.wattledger.season;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.history.RideTraits;
import io.github.wattledger.intake.Known;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.intake.RideSetting;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingNumbers;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.RideAbility;
import io.github.wattledger.power.RidingBest;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rider.ZoneScheme;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigEstimate;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/** Reviews the rides of one rider, each against what held on its day. */
final class Judge {
    private final Rider rider;
    private final ReviewOptions options;

    /** A rider's thousands of rides share a handful of days on which something changed. */
    private final Map<Facts, String> keys = new ConcurrentHashMap<>();

    /** The findings that show that a rider had no more to give. */
    private static final Set<FindingKind> SHOWING_LIMIT =
            EnumSet.of(FindingKind.FADE, FindingKind.ENERGY_CRASH, FindingKind.DRIFT);

    Judge(SeasonRequest request) {
        this.rider = request.rider();
        this.options = request.reviewOptions();
    }

    /**
     * What a ride comes to.
     *
     * @param key stands for all that the judgement depends on; {@link #UNJUDGED} where it was only measured
     * @param ridingBests best mean power over riding seconds
     * @param showsLimit whether it was a race in which the rider faded, ran out of energy or drifted
     * @param traits what it shows of the rider beside power
     * @param notes what the rider wrote down about it, by which it was judged
     */
    record Judged(
            RideNumbers numbers,
            RideJudgement judgement,
            String key,
            List<Best> bests,
            List<Durability> durability,
            List<RidingBest> ridingBests,
            boolean showsLimit,
            RideTraits traits,
            RideNotes notes) {
        Judged with(
                RideJudgement other,
                String otherKey,
                boolean otherShowsLimit,
                RideTraits otherTraits,
                RideNotes otherNotes) {
            return new Judged(
                    numbers, other, otherKey, bests, durability, ridingBests, otherShowsLimit, otherTraits, otherNotes);
        }
    }

    /** The key of a ride that was measured and not judged yet: no ride has it once it is judged. */
    static final String UNJUDGED = "";

    /**
     * Measures a ride without judging it: its numbers that need no threshold. It is judged once all rides before it are
     * there.
     */
    static Judged measure(Ride ride) {
        RideLoad load = RideLoad.of(ride, null, null, ZoneScheme.POWER_SEVEN_LEVELS, ZoneScheme.HEART_RATE_FIVE_LEVELS);
        List<RidingBest> ridingBests = new ArrayList<>();
        for (int seconds : BestEfforts.RIDING_DURATIONS) {
            RidingBest.of(ride, seconds).ifPresent(ridingBests::add);
        }
        return new Judged(
                RideNumbers.of(ride, load),
                new RideJudgement(null, null, null, null, Verdict.NOT_JUDGED, null, null, null, null, List.of()),
                UNJUDGED,
                bests(MeanMaximalCurve.of(ride)),
                ride.has(Channel.POWER) ? Durability.of(ride) : List.of(),
                ridingBests,
                false,
                RideTraits.NONE,
                RideNotes.NONE);
    }

    /**
     * Judges a ride as it is stored.
     *
     * @param measured what it came to before
     * @param setting what the ride's file says about where it was ridden
     * @param estimate what the store has of its drag area and rolling resistance, or null
     * @param ownRides the rider's own rides, or null where they say nothing, since the day of the ride is in doubt
     * @param notes what the rider wrote down about the ride
     */
    Judged judge(
            Ride ride,
            Judged measured,
            StoredRide.Device device,
            RideSetting setting,
            @Nullable Integer utcOffsetSeconds,
            @Nullable KeptEstimate estimate,
            @Nullable OwnRides ownRides,
            RideNotes notes) {
        OpenedRide opened = OpenedRide.of(ride, recordingDevice(device), utcOffsetSeconds, setting);
        RiderOnDay onDay = opened.riderOnDay(rider, options.zone(), ownRides);
        Outcome<RigEstimate> rig = estimate == null ? null : estimate.with(totalMassKg(onDay));
        RideReview review =
                Reviewer.review(opened, rider, options.withOwnRides(ownRides).withNotes(notes), rig);
        return measured.with(judgement(review), key(onDay, notes), showsLimit(review), traits(review, rig), notes);
    }

    private static boolean showsLimit(RideReview review) {
        return review.pacing().findings().stream().anyMatch(finding -> SHOWING_LIMIT.contains(finding.kind()));
    }

    private static RideTraits traits(RideReview review, @Nullable Outcome<RigEstimate> rig) {
        PacingNumbers numbers = review.pacing().numbers();
        RigEstimate found = rig == null ? null : rig.found().orElse(null);
        return new RideTraits(
                numbers.heartLine(),
                found == null ? null : (Double) found.dragAreaM2(),
                found == null ? null : (Double) found.rollingResistance(),
                numbers.openingOverTarget(),
                numbers.fadePercent(),
                review.pacing().findings().stream()
                        .filter(finding -> finding.kind() == FindingKind.OVER_HARD_START)
                        .map(finding -> finding.advice().capW())
                        .filter(Objects::nonNull)
                        .findFirst()
                        .orElse(null),
                numbers.descentSpeedMps());
    }

    private static RecordingDevice recordingDevice(StoredRide.Device device) {
        return new RecordingDevice(
                device.name(),
                device.thresholdPowerW(),
                device.thresholdHeartRateBpm(),
                device.maximumHeartRateBpm(),
                device.riderMassKg());
    }

    /** Rider and bicycle together on the day of a ride, kg. */
    double totalMassKg(StoredRide.Device device, Instant start, @Nullable Integer utcOffsetSeconds) {
        return totalMassKg(onDay(device, start, utcOffsetSeconds, null));
    }

    /** Rider and bicycle together on a day, kg. */
    static double totalMassKg(RiderOnDay onDay) {
        return onDay.rig(Position.HOODS).totalKg();
    }

    /** What holds of the rider on the day of a ride. */
    RiderOnDay onDay(OpenedRide opened) {
        return opened.riderOnDay(rider, options.zone());
    }

    private RiderOnDay onDay(
            StoredRide.Device device, Instant start, @Nullable Integer utcOffsetSeconds, @Nullable OwnRides ownRides) {
        return RiderOnDay.of(rider, recordingDevice(device), day(start, utcOffsetSeconds), ownRides);
    }

    /** The rider whose rides these are. */
    Rider rider() {
        return rider;
    }

    /** Stands for everything beside the seconds that a judgement depends on: another key, another judgement. */
    String key(
            StoredRide.Device device,
            Instant start,
            @Nullable Integer utcOffsetSeconds,
            @Nullable OwnRides ownRides,
            RideNotes notes) {
        return key(onDay(device, start, utcOffsetSeconds, ownRides), notes);
    }

    /** The day of a ride on the rider's own calendar. */
    LocalDate day(Instant start, @Nullable Integer utcOffsetSeconds) {
        return RiderOnDay.localDay(start, utcOffsetSeconds, options.zone());
    }

    /** Threshold power in force on a day, without regard to devices; null when none is known. */
    @Nullable Known thresholdPower(LocalDate day) {
        return RiderOnDay.of(rider, RecordingDevice.UNKNOWN, day).thresholdPower();
    }

    /**
     * All that judgements depend on beside the rides and their notes, as text: the same for the same rider and limits. Sets
     * are put in order, since theirs differs from run to run.
     */
    String basis() {
        Rider withoutSets = rider.withRaceDays(Set.of()).withAllOutDays(Set.of());
        return String.join(
                "\n",
                String.valueOf(StoreDatabase.ANALYSIS_VERSION),
                withoutSets.toString(),
                new TreeSet<>(rider.raceDays()).toString(),
                new TreeSet<>(rider.allOutDays()).toString(),
                options.limits().toString());
    }

    /** What differs from ride to ride; the rest of the rider and the limits are the same for all rides. */
    private record Facts(
            @Nullable Known thresholdPower,
            @Nullable Known thresholdHeartRate,
            @Nullable Known mass,
            RideAbility.Elsewhere power,
            boolean isRaceDay,
            RideNotes notes) {}

    private String key(RiderOnDay onDay, RideNotes notes) {
        Facts today = new Facts(
                onDay.thresholdPower(),
                onDay.thresholdHeartRate(),
                onDay.mass(),
                onDay.power(),
                onDay.isRaceDay(),
                notes);
        return keys.computeIfAbsent(today, facts -> {
            Rider anyDay = rider.withThresholds(ThresholdHistory.NONE)
                    .withLongBests(List.of())
                    .withRaceDays(Set.of())
                    .withAllOutDays(Set.of())
                    .withTrials(List.of());
            String words = facts + "\n" + anyDay + "\n" + options.limits();
            return ContentDigest.sha256(words.getBytes(StandardCharsets.UTF_8)).substring(0, 16);
        });
    }

    private static RideJudgement judgement(RideReview review) {
        List<RideJudgement.Found> found = review.pacing().findings().stream()
                .map(finding -> new RideJudgement.Found(finding.kind(), finding.severity()))
                .toList();
        TimeLedger.Entry lost = review.pacing().ledger().allAtOnce().orElse(null);
        return new RideJudgement(
                review.rider().thresholdPowerW(),
                review.rider().thresholdPowerOrigin(),
                review.load().intensityFactor(),
                review.load().trainingStress(),
                review.pacing().verdict(),
                review.pacing().verdictReason(),
                review.pacing().targetW(),
                lost == null ? null : Double.valueOf(lost.minutesLow()),
                lost == null ? null : Double.valueOf(lost.minutesHigh()),
                found);
    }

    private static List<Best> bests(MeanMaximalCurve curve) {
        List<Best> bests = new ArrayList<>();
        for (int seconds : BestEfforts.DURATIONS) {
            if (seconds <= curve.longestSeconds()) {
                MeanMaximalCurve.Window best = curve.bestWindow(seconds);
                bests.add(new Best(seconds, best.watts(), best.mayBeLow()));
            }
        }
        return bests;
    }
}
