package io.github.wattledger.simulation;

/**
 * One record of a recorder; {@code NaN} for a field it does not write.
 *
 * @param epochSecond its timestamp, seconds since 1970-01-01T00:00:00Z
 * @param powerW power, watts
 * @param heartRateBpm heart rate
 * @param cadenceRpm cadence
 * @param speedMps speed, m/s
 * @param distanceM distance since the start of the recording
 * @param altitudeM barometric altitude
 * @param latitudeDegrees latitude
 * @param longitudeDegrees longitude
 * @param temperatureC temperature
 * @param accumulatedWorkJ the power meter's counter of work
 */
public record RecordedSample(
        long epochSecond,
        double powerW,
        double heartRateBpm,
        double cadenceRpm,
        double speedMps,
        double distanceM,
        double altitudeM,
        double latitudeDegrees,
        double longitudeDegrees,
        double temperatureC,
        double accumulatedWorkJ) {
    /** The same record with another timestamp. */
    RecordedSample at(long otherEpochSecond) {
        return new RecordedSample(
                otherEpochSecond,
                powerW,
                heartRateBpm,
                cadenceRpm,
                speedMps,
                distanceM,
                altitudeM,
                latitudeDegrees,
                longitudeDegrees,
                temperatureC,
                accumulatedWorkJ);
    }

    /** The same record with another heart rate. */
    RecordedSample withHeartRate(double otherBpm) {
        return new RecordedSample(
                epochSecond,
                powerW,
                otherBpm,
                cadenceRpm,
                speedMps,
                distanceM,
                altitudeM,
                latitudeDegrees,
                longitudeDegrees,
                temperatureC,
                accumulatedWorkJ);
    }

    /** The same record with other readings of the power meter. */
    RecordedSample withMeter(double otherPowerW, double otherCadenceRpm) {
        return new RecordedSample(
                epochSecond,
                otherPowerW,
                heartRateBpm,
                otherCadenceRpm,
                speedMps,
                distanceM,
                altitudeM,
                latitudeDegrees,
                longitudeDegrees,
                temperatureC,
                accumulatedWorkJ);
    }

    /** Whether power is there. */
    boolean hasPower() {
        return !Double.isNaN(powerW);
    }
}
