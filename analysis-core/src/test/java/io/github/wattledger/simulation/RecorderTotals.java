package io.github.wattledger.simulation;

import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.TimerEvent;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What a recorder computes for a session or a lap from what it wrote. Independent of the library: it is compared with
 * it. {@code NaN} where there is nothing to compute from.
 *
 * @param elapsedSeconds from the first to the last timestamp
 * @param timerSeconds elapsed seconds less the pauses
 * @param stoppedSeconds recorded seconds at a standstill
 * @param distanceM distance covered
 * @param ascentM sum of ascents of at least {@value #ASCENT_STEP_M} m
 * @param descentM sum of descents of at least {@value #ASCENT_STEP_M} m
 * @param workJ sum of the watts, or the increase of the work counter where it is written
 * @param averagePowerW work over the seconds with power
 * @param maximumPowerW highest power
 * @param normalizedPowerW normalized power
 * @param intensityFactor normalized over threshold power
 * @param trainingStress training stress of the seconds with power
 * @param averageHeartRateBpm average heart rate
 * @param maximumHeartRateBpm highest heart rate
 * @param averageCadenceRpm average cadence while pedalling
 * @param averageSpeedMps distance over timer time
 * @param maximumSpeedMps highest speed
 */
record RecorderTotals(
        int elapsedSeconds,
        int timerSeconds,
        int stoppedSeconds,
        double distanceM,
        double ascentM,
        double descentM,
        double workJ,
        double averagePowerW,
        double maximumPowerW,
        double normalizedPowerW,
        double intensityFactor,
        double trainingStress,
        double averageHeartRateBpm,
        double maximumHeartRateBpm,
        double averageCadenceRpm,
        double averageSpeedMps,
        double maximumSpeedMps) {
    /** A recorder counts a rise once it is this high, metres: less is the barometer's noise. */
    private static final double ASCENT_STEP_M = 2;

    /** Totals of the samples with timestamps within {@code [fromEpochSecond, toEpochSecond)}. */
    static RecorderTotals of(RideTape tape, long fromEpochSecond, long toEpochSecond) {
        List<RecordedSample> part = tape.samples().stream()
                .filter(sample -> sample.epochSecond() >= fromEpochSecond && sample.epochSecond() < toEpochSecond)
                .toList();
        RecordedSample last = part.get(part.size() - 1);
        boolean toTheEnd = last.epochSecond() == tape.endEpochSecond();
        int elapsed = (int) ((toTheEnd ? last.epochSecond() : toEpochSecond) - fromEpochSecond);
        int timer = elapsed - pausedSeconds(tape, fromEpochSecond, toEpochSecond);
        double distance = last.distanceM() - part.get(0).distanceM();
        double work = workJ(part);
        long withPower = part.stream().filter(RecordedSample::hasPower).count();
        double normalized = FourthPowerMean.normalizedPowerW(part);
        double intensity = normalized / tape.scenario().rider().thresholdPowerW();
        return new RecorderTotals(
                elapsed,
                timer,
                Standstill.count(part),
                distance,
                climbed(part, 1),
                climbed(part, -1),
                work,
                work / withPower,
                maximum(part, RecordedSample::powerW),
                normalized,
                intensity,
                withPower * intensity * intensity / 36,
                average(part, RecordedSample::heartRateBpm),
                maximum(part, RecordedSample::heartRateBpm),
                average(part, sample -> sample.cadenceRpm() > 0 ? sample.cadenceRpm() : Double.NaN),
                distance / timer,
                maximum(part, RecordedSample::speedMps));
    }

    /** As a reader should find it, rounded as the file's fields are. */
    DeviceTotals toDeviceTotals() {
        return new DeviceTotals(
                (double) elapsedSeconds,
                (double) timerSeconds,
                (double) timerSeconds - stoppedSeconds,
                distanceM,
                (double) StrictMath.round(ascentM),
                StrictMath.round(workJ) / 1000.0,
                (double) StrictMath.round(averagePowerW),
                (double) StrictMath.round(normalizedPowerW),
                StrictMath.round(intensityFactor * 1000) / 1000.0,
                StrictMath.round(trainingStress * 10) / 10.0,
                (double) StrictMath.round(averageHeartRateBpm),
                maximumHeartRateBpm,
                (double) StrictMath.round(averageCadenceRpm),
                averageSpeedMps);
    }

    private static int pausedSeconds(RideTape tape, long fromEpochSecond, long toEpochSecond) {
        long paused = 0;
        long stoppedAt = Long.MAX_VALUE;
        for (TimerEvent event : tape.timerEvents()) {
            if (event.kind() == TimerEvent.Kind.STOP) {
                stoppedAt = event.epochSecond();
            } else if (stoppedAt != Long.MAX_VALUE) {
                long from = StrictMath.max(fromEpochSecond, stoppedAt);
                long to = StrictMath.min(toEpochSecond, event.epochSecond());
                paused += StrictMath.max(0, to - from);
            }
        }
        return (int) paused;
    }

    private static double workJ(List<RecordedSample> part) {
        double first = part.get(0).accumulatedWorkJ();
        if (!Double.isNaN(first)) {
            return part.get(part.size() - 1).accumulatedWorkJ() - first;
        }
        return part.stream()
                .filter(RecordedSample::hasPower)
                .mapToDouble(RecordedSample::powerW)
                .sum();
    }

    private static double climbed(List<RecordedSample> part, int direction) {
        double sum = 0;
        double counted = part.get(0).altitudeM() * direction;
        for (RecordedSample sample : part) {
            double height = sample.altitudeM() * direction;
            if (height >= counted + ASCENT_STEP_M) {
                sum += height - counted;
                counted = height;
            } else if (height <= counted - ASCENT_STEP_M) {
                counted = height;
            }
        }
        return sum;
    }

    private static double average(List<RecordedSample> part, ToDoubleFunction<RecordedSample> field) {
        return part.stream()
                .mapToDouble(field)
                .filter(value -> !Double.isNaN(value))
                .average()
                .orElse(Double.NaN);
    }

    private static double maximum(List<RecordedSample> part, ToDoubleFunction<RecordedSample> field) {
        return part.stream()
                .mapToDouble(field)
                .filter(value -> !Double.isNaN(value))
                .max()
                .orElse(Double.NaN);
    }
}
