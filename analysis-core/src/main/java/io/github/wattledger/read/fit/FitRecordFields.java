package io.github.wattledger.read.fit;

import com.garmin.fit.Mesg;
import com.garmin.fit.RecordMesg;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import org.jspecify.annotations.Nullable;

/**
 * Reads the fields of record messages. The SDK's own expansion of one field into another is switched off, so that the
 * alternatives are resolved here, in one place: the enhanced field first, then the plain one, then the compressed one.
 * Compressed counters need the messages before, so one instance reads one file in order.
 */
final class FitRecordFields {
    private static final double DEGREES_PER_SEMICIRCLE = 180.0 / (1L << 31);
    private static final int BALANCE_RIGHT_FLAG = 0x80;
    private static final int BALANCE_MASK = 0x7F;
    private static final int PERCENT = 100;

    private final RollingCounter compressedDistance = new RollingCounter(12);
    private final RollingCounter compressedWork = new RollingCounter(16);

    /** Copies every field that matters into the sample begun last. */
    void copyInto(Mesg record, Samples.Builder samples) {
        samples.set(Channel.POWER, number(record, RecordMesg.PowerFieldNum));
        samples.set(Channel.HEART_RATE, number(record, RecordMesg.HeartRateFieldNum));
        samples.set(Channel.CADENCE, cadenceRpm(record));
        samples.set(Channel.ALTITUDE, first(record, RecordMesg.EnhancedAltitudeFieldNum, RecordMesg.AltitudeFieldNum));
        samples.set(Channel.LATITUDE, number(record, RecordMesg.PositionLatFieldNum) * DEGREES_PER_SEMICIRCLE);
        samples.set(Channel.LONGITUDE, number(record, RecordMesg.PositionLongFieldNum) * DEGREES_PER_SEMICIRCLE);
        samples.set(Channel.TEMPERATURE, number(record, RecordMesg.TemperatureFieldNum));
        samples.set(Channel.LEFT_SHARE, leftShare(record));
        samples.set(Channel.ACCUMULATED_WORK, accumulatedWorkJ(record));
        samples.set(
                Channel.RESPIRATION,
                first(record, RecordMesg.EnhancedRespirationRateFieldNum, RecordMesg.RespirationRateFieldNum));
        double speedMps = first(record, RecordMesg.EnhancedSpeedFieldNum, RecordMesg.SpeedFieldNum);
        double distanceM = number(record, RecordMesg.DistanceFieldNum);
        long packed = compressedSpeedDistance(record);
        if (packed >= 0) {
            // Twelve bits of speed in 1/100 m/s, then twelve bits of rolling distance in 1/16 m (public FIT profile).
            double ownDistanceM = compressedDistance.advanceTo((int) (packed >> 12)) / 16.0;
            speedMps = Double.isNaN(speedMps) ? (packed & 0xFFF) / 100.0 : speedMps;
            distanceM = Double.isNaN(distanceM) ? ownDistanceM : distanceM;
        }
        samples.set(Channel.SPEED, speedMps);
        samples.set(Channel.DISTANCE, distanceM);
    }

    private static double cadenceRpm(Mesg record) {
        double fine = number(record, RecordMesg.Cadence256FieldNum);
        if (!Double.isNaN(fine)) {
            return fine;
        }
        double whole = number(record, RecordMesg.CadenceFieldNum);
        double fraction = number(record, RecordMesg.FractionalCadenceFieldNum);
        return Double.isNaN(fraction) ? whole : whole + fraction;
    }

    private double accumulatedWorkJ(Mesg record) {
        double whole = number(record, RecordMesg.AccumulatedPowerFieldNum);
        if (!Double.isNaN(whole)) {
            return whole;
        }
        double compressed = number(record, RecordMesg.CompressedAccumulatedPowerFieldNum);
        return Double.isNaN(compressed) ? Double.NaN : compressedWork.advanceTo((int) compressed);
    }

    /** The public FIT profile: the low seven bits hold a percentage, the high bit says that it is the right leg's. */
    private static double leftShare(Mesg record) {
        double raw = number(record, RecordMesg.LeftRightBalanceFieldNum);
        if (Double.isNaN(raw) || ((int) raw & BALANCE_RIGHT_FLAG) == 0) {
            return Double.NaN;
        }
        int rightPercent = (int) raw & BALANCE_MASK;
        return rightPercent <= PERCENT ? (PERCENT - rightPercent) / (double) PERCENT : Double.NaN;
    }

    private static long compressedSpeedDistance(Mesg record) {
        Byte[] bytes = record.getFieldByteValues(RecordMesg.CompressedSpeedDistanceFieldNum);
        if (bytes == null || bytes.length != 3 || bytes[0] == null || bytes[1] == null || bytes[2] == null) {
            return -1;
        }
        long packed = (bytes[0] & 0xFFL) | (bytes[1] & 0xFFL) << 8 | (bytes[2] & 0xFFL) << 16;
        return packed == 0xFFFFFF ? -1 : packed;
    }

    private static double first(Mesg record, int fieldNumber, int alternative) {
        double value = number(record, fieldNumber);
        return Double.isNaN(value) ? number(record, alternative) : value;
    }

    private static double number(Mesg record, int fieldNumber) {
        @Nullable Double value = record.getFieldDoubleValue(fieldNumber);
        return value == null ? Double.NaN : value;
    }

    /** Undoes the wrap-around of a counter that has only a few bits. */
    private static final class RollingCounter {
        private final int modulus;
        private int last = -1;
        private long total;

        RollingCounter(int bits) {
            modulus = 1 << bits;
        }

        long advanceTo(int reading) {
            total = last < 0 ? reading : total + Math.floorMod(reading - last, modulus);
            last = reading;
            return total;
        }
    }
}
