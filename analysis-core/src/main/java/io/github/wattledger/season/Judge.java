package io.github.wattledger.season;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.intake.Known;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.intake.RideSetting;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rig.Position;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/** Reviews the rides of one rider, each against what held on its day. */
final class Judge {
    private final Rider rider;
    private final ReviewOptions options;

    /** A rider's thousands of rides share a handful of days on which something changed. */
    private final Map<Facts, String> keys = new ConcurrentHashMap<>();

    Judge(SeasonRequest request) {
        this.rider = request.rider();
        this.options = request.reviewOptions();
    }

    /** What a ride comes to. */
    record Judged(
            RideNumbers numbers, RideJudgement judgement, String key, List<Best> bests, List<Durability> durability) {}

    /**
     * Judges a ride as it is stored.
     *
     * @param setting what the ride's file says about where it was ridden
     * @param estimate what the store has of its drag area and rolling resistance, or null
     */
    Judged judge(
            Ride ride,
            StoredRide.Device device,
            RideSetting setting,
            @Nullable Integer utcOffsetSeconds,
            @Nullable KeptEstimate estimate) {
        OpenedRide opened = OpenedRide.of(ride, recordingDevice(device), utcOffsetSeconds, setting);
        RiderOnDay onDay = opened.riderOnDay(rider, options.zone());
        RideReview review =
                Reviewer.review(opened, rider, options, estimate == null ? null : estimate.with(totalMassKg(onDay)));
        return new Judged(
                RideNumbers.of(ride, review.load()),
                judgement(review),
                key(onDay),
                bests(review.curve()),
                review.ability().evidence() == null
                        ? List.of()
                        : review.ability().evidence().durability());
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
        return totalMassKg(onDay(device, start, utcOffsetSeconds));
    }

    /** Rider and bicycle together on a day, kg. */
    static double totalMassKg(RiderOnDay onDay) {
        return onDay.rig(Position.HOODS).totalKg();
    }

    /** What holds of the rider on the day of a ride. */
    RiderOnDay onDay(OpenedRide opened) {
        return opened.riderOnDay(rider, options.zone());
    }

    private RiderOnDay onDay(StoredRide.Device device, Instant start, @Nullable Integer utcOffsetSeconds) {
        return RiderOnDay.of(rider, recordingDevice(device), day(start, utcOffsetSeconds));
    }

    /** Stands for everything about the rider that a judgement depends on: another key, another judgement. */
    String key(StoredRide.Device device, Instant start, @Nullable Integer utcOffsetSeconds) {
        return key(onDay(device, start, utcOffsetSeconds));
    }

    /** The day of a ride on the rider's own calendar. */
    LocalDate day(Instant start, @Nullable Integer utcOffsetSeconds) {
        return RiderOnDay.localDay(start, utcOffsetSeconds, options.zone());
    }

    /** Threshold power in force on a day, without regard to devices; null when none is known. */
    @Nullable Known thresholdPower(LocalDate day) {
        return RiderOnDay.of(rider, RecordingDevice.UNKNOWN, day).thresholdPower();
    }

    /** What differs from day to day; the rest of the rider and the limits are the same for all rides. */
    private record Facts(
            @Nullable Known thresholdPower,
            @Nullable Known thresholdHeartRate,
            @Nullable Known mass,
            List<LongBest> longBests,
            boolean isRaceDay) {}

    private String key(RiderOnDay onDay) {
        Facts today = new Facts(
                onDay.thresholdPower(),
                onDay.thresholdHeartRate(),
                onDay.mass(),
                onDay.earlierLongBests(),
                onDay.isRaceDay());
        return keys.computeIfAbsent(today, facts -> {
            Rider anyDay = rider.withThresholds(ThresholdHistory.NONE)
                    .withLongBests(List.of())
                    .withRaceDays(Set.of());
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
