package io.github.wattledger.season;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.RiderContext.ThresholdSource;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.rig.RigEstimate;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/** Reviews the rides of one rider, each against what held on its day. */
final class Judge {
    private static final int MOST_OFFSET_SECONDS = 18 * 3600; // the range of java.time.ZoneOffset

    private final Rider rider;
    private final ReviewOptions options;
    private final ZoneId zone;

    /** A rider's thousands of rides share a handful of days on which something changed. */
    private final Map<OnDay, String> keys = new ConcurrentHashMap<>();

    Judge(Rider rider, JudgementLimits limits, ZoneId zone) {
        this.rider = rider;
        this.options = ReviewOptions.WHOLE_RIDE.withLimits(limits);
        this.zone = zone;
    }

    /** What a ride comes to. */
    record Judged(
            RideNumbers numbers, RideJudgement judgement, String key, List<Best> bests, List<Durability> durability) {}

    /**
     * Judges a ride as it is stored.
     *
     * @param estimate what the store has of its drag area and rolling resistance, or null
     */
    Judged judge(
            Ride ride, StoredRide.Device device, @Nullable Integer utcOffsetSeconds, @Nullable KeptEstimate estimate) {
        OnDay onDay = onDay(device, ride.start(), utcOffsetSeconds);
        Outcome<RigEstimate> known = estimate == null ? null : estimate.with(totalMassKg(onDay.rider()));
        RideReview review = Reviewer.review(ride, onDay.rider(), options, known);
        return new Judged(
                RideNumbers.of(ride, review.load()),
                judgement(review, onDay.source()),
                key(onDay),
                bests(review.curve()),
                review.ability().evidence() == null
                        ? List.of()
                        : review.ability().evidence().durability());
    }

    /** Rider and bicycle together on the day of a ride, kg. */
    double totalMassKg(StoredRide.Device device, Instant start, @Nullable Integer utcOffsetSeconds) {
        return totalMassKg(onDay(device, start, utcOffsetSeconds).rider());
    }

    private static double totalMassKg(Rider rider) {
        return RigChoice.ofNoRide(rider.massKg(), rider.bikeMassKg(), null, null, Position.HOODS)
                .totalKg();
    }

    /** Stands for everything about the rider that a judgement depends on: another key, another judgement. */
    String key(StoredRide.Device device, Instant start, @Nullable Integer utcOffsetSeconds) {
        return key(onDay(device, start, utcOffsetSeconds));
    }

    /** The day of a ride on the rider's own calendar: by the recording's clock where it knows it. */
    LocalDate day(Instant start, @Nullable Integer utcOffsetSeconds) {
        boolean known = utcOffsetSeconds != null && Math.abs((long) utcOffsetSeconds) <= MOST_OFFSET_SECONDS;
        ZoneId clock = utcOffsetSeconds == null || !known ? zone : ZoneOffset.ofTotalSeconds(utcOffsetSeconds);
        return LocalDate.ofInstant(start, clock);
    }

    /** Threshold power in force on a day, watts, without regard to devices; null when none is known. */
    @Nullable Double thresholdPowerW(LocalDate day) {
        return rider.thresholdPowerW() != null
                ? rider.thresholdPowerW()
                : rider.thresholds().powerW(day);
    }

    /** Whether one threshold was given for all days. */
    boolean isGiven() {
        return rider.thresholdPowerW() != null;
    }

    private record OnDay(Rider rider, @Nullable ThresholdSource source) {}

    private OnDay onDay(StoredRide.Device device, Instant start, @Nullable Integer utcOffsetSeconds) {
        LocalDate day = day(start, utcOffsetSeconds);
        Double powerW = rider.thresholdPowerW();
        ThresholdSource source = ThresholdSource.GIVEN;
        if (powerW == null) {
            powerW = rider.thresholds().powerW(day);
            source = ThresholdSource.PROFILE;
        }
        if (powerW == null) {
            powerW = within(Bounds.THRESHOLD_POWER_W, device.thresholdPowerW());
            source = ThresholdSource.DEVICE;
        }
        Rider now = rider.withThresholds(ThresholdHistory.NONE);
        if (powerW != null) {
            now = now.withThresholdPowerW(powerW);
        }
        Double heartRateBpm = rider.thresholdHeartRateBpm();
        if (heartRateBpm == null) {
            heartRateBpm = rider.thresholds().heartRateBpm(day);
        }
        if (heartRateBpm == null) {
            heartRateBpm = within(Bounds.THRESHOLD_HEART_RATE_BPM, device.thresholdHeartRateBpm());
        }
        if (heartRateBpm != null) {
            now = now.withThresholdHeartRateBpm(heartRateBpm);
        }
        Double massKg = within(Bounds.RIDER_MASS_KG, device.riderMassKg());
        if (rider.massKg() == null && massKg != null) {
            now = now.withMassKg(massKg);
        }
        return new OnDay(now, powerW == null ? null : source);
    }

    /** A device's setting, or null when nobody can have it: then it was never set. */
    private static @Nullable Double within(Bounds bounds, @Nullable Double setting) {
        return setting != null && bounds.contains(setting) ? setting : null;
    }

    private String key(OnDay onDay) {
        return keys.computeIfAbsent(onDay, facts -> {
            String words = facts.rider() + "\n" + facts.source() + "\n" + options.limits();
            return ContentDigest.sha256(words.getBytes(StandardCharsets.UTF_8)).substring(0, 16);
        });
    }

    private static RideJudgement judgement(RideReview review, @Nullable ThresholdSource source) {
        List<RideJudgement.Found> found = review.pacing().findings().stream()
                .map(finding -> new RideJudgement.Found(finding.kind(), finding.severity()))
                .toList();
        TimeLedger.Entry lost = review.pacing().ledger().allAtOnce().orElse(null);
        return new RideJudgement(
                review.rider().thresholdPowerW(),
                source != null ? source : review.rider().thresholdPowerSource(),
                review.load().intensityFactor(),
                review.load().trainingStress(),
                review.pacing().verdict(),
                review.pacing().verdictReason(),
                review.pacing().targetW(),
                lost == null ? null : (Double) lost.minutesLow(),
                lost == null ? null : (Double) lost.minutesHigh(),
                found);
    }

    private static List<Best> bests(MeanMaximalCurve curve) {
        List<Best> bests = new ArrayList<>();
        for (int seconds : BestEfforts.DURATIONS) {
            if (seconds <= curve.longestSeconds()) {
                bests.add(new Best(seconds, curve.watts(seconds), curve.mayBeLow(seconds)));
            }
        }
        return bests;
    }
}
