package io.github.wattledger;

import io.github.wattledger.intake.Origin;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.pacing.KnownThreshold;
import io.github.wattledger.pacing.RacedPart;
import io.github.wattledger.pacing.Thresholds;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import org.jspecify.annotations.Nullable;

/** Holds the thresholds of a rider on a day against the ride of that day. */
final class ThresholdTrust {
    private static final int HOUR_SECONDS = 3600;

    private ThresholdTrust() {}

    static Thresholds of(RiderOnDay rider, RecordingDevice device, Ride ride, RacedPart part, MeanMaximalCurve curve) {
        Double highest = highest(rider.rider().maximumHeartRateBpm(), device.maximumHeartRateBpm());
        return new Thresholds(power(rider, ride, part, curve, highest), rider.thresholdHeartRateBpm(), highest);
    }

    private static KnownThreshold power(
            RiderOnDay rider, Ride ride, RacedPart part, MeanMaximalCurve curve, @Nullable Double highestBpm) {
        Double watts = rider.thresholdPowerW();
        Origin origin = rider.thresholdPowerOrigin();
        if (watts == null || origin == null) {
            return KnownThreshold.none();
        }
        Double bestHourW = curve.longestSeconds() < HOUR_SECONDS ? null : curve.bestWatts(HOUR_SECONDS);
        KnownThreshold.Ridden ridden = new KnownThreshold.Ridden(
                ride, part.interval(), bestHourW, highestBpm, rider.power().endurance());
        return switch (origin) {
            case GIVEN, PROFILE, OWN_RIDES -> KnownThreshold.ofRider(watts, ridden);
            case DEVICE -> KnownThreshold.ofDevice(watts, ridden);
            case ESTIMATED -> KnownThreshold.estimated(watts, ridden);
        };
    }

    /**
     * The rider without own rides where the ride refutes the threshold power that these show: they only bound it from below,
     * and then what the device holds, or an estimate from the ride, is nearer.
     */
    static RiderOnDay withoutRefutedOwnRides(
            RiderOnDay rider, RecordingDevice device, Ride ride, RacedPart part, MeanMaximalCurve curve) {
        if (rider.thresholdPowerOrigin() != Origin.OWN_RIDES) {
            return rider;
        }
        boolean isKnown = of(rider, device, ride, part, curve).power().isKnown();
        return isKnown ? rider : rider.withoutOwnRides(device);
    }

    /** A maximum that is set by age is often passed: the higher of both counts. */
    private static @Nullable Double highest(@Nullable Double one, @Nullable Double other) {
        return one == null ? other : other == null ? one : Double.valueOf(Math.max(one, other));
    }
}
