package io.github.wattledger.read.fit;

import com.garmin.fit.Field;
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
    private static final long NOTHING_PACKED = -1;

    private final RollingCounter compressedDistance = new RollingCounter(12);
    private final RollingCounter compressedWork = new RollingCounter(16);

    private double enhancedSpeedMps;
    private double speedMps;
    private double distanceM;
    private double enhancedAltitudeM;
    private double altitudeM;
    private double cadenceRpm;
    private double cadenceFraction;
    private double fineCadenceRpm;
    private double workJ;
    private double compressedWorkJ;
    private double enhancedRespiration;
    private double respiration;
    private long packedSpeedDistance;

    /** Copies every field that matters into the sample begun last. */
    void copyInto(Mesg record, Samples.Builder samples) {
        forgetAlternatives();
        for (Field field : record.getFields()) {
            take(field, samples);
        }
        resolveAlternatives(samples);
    }

    private void forgetAlternatives() {
        enhancedSpeedMps = Double.NaN;
        speedMps = Double.NaN;
        distanceM = Double.NaN;
        enhancedAltitudeM = Double.NaN;
        altitudeM = Double.NaN;
        cadenceRpm = Double.NaN;
        cadenceFraction = Double.NaN;
        fineCadenceRpm = Double.NaN;
        workJ = Double.NaN;
        compressedWorkJ = Double.NaN;
        enhancedRespiration = Double.NaN;
        respiration = Double.NaN;
        packedSpeedDistance = NOTHING_PACKED;
    }

    /** One walk over the fields that are there: asking for each field that could be there costs far more. */
    private void take(Field field, Samples.Builder samples) {
        switch (field.getNum()) {
            case RecordMesg.PowerFieldNum -> samples.set(Channel.POWER, number(field));
            case RecordMesg.HeartRateFieldNum -> samples.set(Channel.HEART_RATE, number(field));
            case RecordMesg.PositionLatFieldNum ->
                samples.set(Channel.LATITUDE, number(field) * DEGREES_PER_SEMICIRCLE);
            case RecordMesg.PositionLongFieldNum ->
                samples.set(Channel.LONGITUDE, number(field) * DEGREES_PER_SEMICIRCLE);
            case RecordMesg.TemperatureFieldNum -> samples.set(Channel.TEMPERATURE, number(field));
            case RecordMesg.LeftRightBalanceFieldNum -> samples.set(Channel.LEFT_SHARE, leftShare(number(field)));
            case RecordMesg.EnhancedSpeedFieldNum -> enhancedSpeedMps = number(field);
            case RecordMesg.SpeedFieldNum -> speedMps = number(field);
            case RecordMesg.DistanceFieldNum -> distanceM = number(field);
            case RecordMesg.EnhancedAltitudeFieldNum -> enhancedAltitudeM = number(field);
            case RecordMesg.AltitudeFieldNum -> altitudeM = number(field);
            case RecordMesg.CadenceFieldNum -> cadenceRpm = number(field);
            case RecordMesg.FractionalCadenceFieldNum -> cadenceFraction = number(field);
            case RecordMesg.Cadence256FieldNum -> fineCadenceRpm = number(field);
            case RecordMesg.AccumulatedPowerFieldNum -> workJ = number(field);
            case RecordMesg.CompressedAccumulatedPowerFieldNum -> compressedWorkJ = number(field);
            case RecordMesg.EnhancedRespirationRateFieldNum -> enhancedRespiration = number(field);
            case RecordMesg.RespirationRateFieldNum -> respiration = number(field);
            case RecordMesg.CompressedSpeedDistanceFieldNum -> packedSpeedDistance = packed(field);
            default -> {}
        }
    }

    private void resolveAlternatives(Samples.Builder samples) {
        if (packedSpeedDistance != NOTHING_PACKED) {
            // Twelve bits of speed in 1/100 m/s, then twelve bits of rolling distance in 1/16 m (public FIT profile).
            double rolledM = compressedDistance.advanceTo((int) (packedSpeedDistance >> 12)) / 16.0;
            speedMps = firstOf(speedMps, (packedSpeedDistance & 0xFFF) / 100.0);
            distanceM = firstOf(distanceM, rolledM);
        }
        double rolledJ = Double.isNaN(compressedWorkJ) ? Double.NaN : compressedWork.advanceTo((int) compressedWorkJ);
        double wholeAndFraction = Double.isNaN(cadenceFraction) ? cadenceRpm : cadenceRpm + cadenceFraction;
        samples.set(Channel.SPEED, firstOf(enhancedSpeedMps, speedMps));
        samples.set(Channel.DISTANCE, distanceM);
        samples.set(Channel.ALTITUDE, firstOf(enhancedAltitudeM, altitudeM));
        samples.set(Channel.CADENCE, firstOf(fineCadenceRpm, wholeAndFraction));
        samples.set(Channel.ACCUMULATED_WORK, firstOf(workJ, rolledJ));
        samples.set(Channel.RESPIRATION, firstOf(enhancedRespiration, respiration));
    }

    /** The public FIT profile: the low seven bits hold a percentage, the high bit says that it is the right leg's. */
    private static double leftShare(double raw) {
        if (Double.isNaN(raw) || ((int) raw & BALANCE_RIGHT_FLAG) == 0) {
            return Double.NaN;
        }
        int rightPercent = (int) raw & BALANCE_MASK;
        return rightPercent <= PERCENT ? (PERCENT - rightPercent) / (double) PERCENT : Double.NaN;
    }

    private static long packed(Field field) {
        Byte[] bytes = field.getByteValues();
        if (bytes == null || bytes.length != 3 || bytes[0] == null || bytes[1] == null || bytes[2] == null) {
            return NOTHING_PACKED;
        }
        long packed = (bytes[0] & 0xFFL) | (bytes[1] & 0xFFL) << 8 | (bytes[2] & 0xFFL) << 16;
        return packed == 0xFFFFFF ? NOTHING_PACKED : packed;
    }

    private static double firstOf(double value, double alternative) {
        return Double.isNaN(value) ? alternative : value;
    }

    private static double number(Field field) {
        @Nullable Double value = field.getDoubleValue();
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
