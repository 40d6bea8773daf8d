package io.github.wattledger.read.fit;

import com.garmin.fit.Mesg;
import com.garmin.fit.SessionMesg;
import com.garmin.fit.Sport;
import com.garmin.fit.SubSport;
import io.github.wattledger.ride.DeviceTotals;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A session message.
 *
 * @param startEpochSecond when the session began
 * @param sport its sport, or null
 * @param subSport its sub-sport, or null when the message names none
 * @param thresholdPowerW the threshold the device judged it by, watts, or null
 * @param totals what the device computed for it
 */
record FitSession(
        long startEpochSecond,
        @Nullable String sport,
        @Nullable String subSport,
        @Nullable Double thresholdPowerW,
        DeviceTotals totals) {
    private static final double JOULES_PER_KJ = 1000;

    /** When the session ended, or {@code Long.MAX_VALUE} when its message does not say. */
    long endEpochSecond() {
        Double elapsed = totals.elapsedSeconds();
        return elapsed == null ? Long.MAX_VALUE : startEpochSecond + (long) Math.ceil(elapsed);
    }

    /** The session a message describes, or null when the message does not say when it began. */
    static @Nullable FitSession of(Mesg message) {
        Long start = message.getFieldLongValue(SessionMesg.StartTimeFieldNum);
        if (start == null) {
            return null;
        }
        return new FitSession(
                start + FitValues.EPOCH_SECOND,
                sportName(message, SessionMesg.SportFieldNum),
                subSportName(message, SessionMesg.SubSportFieldNum),
                FitValues.positive(message.getFieldDoubleValue(SessionMesg.ThresholdPowerFieldNum)),
                totals(message));
    }

    private static DeviceTotals totals(Mesg message) {
        Double workJ = FitValues.positive(message.getFieldDoubleValue(SessionMesg.TotalWorkFieldNum));
        return new DeviceTotals(
                message.getFieldDoubleValue(SessionMesg.TotalElapsedTimeFieldNum),
                message.getFieldDoubleValue(SessionMesg.TotalTimerTimeFieldNum),
                message.getFieldDoubleValue(SessionMesg.TotalMovingTimeFieldNum),
                message.getFieldDoubleValue(SessionMesg.TotalDistanceFieldNum),
                ascentM(message),
                workJ == null ? null : workJ / JOULES_PER_KJ,
                FitValues.positive(message.getFieldDoubleValue(SessionMesg.AvgPowerFieldNum)),
                FitValues.positive(message.getFieldDoubleValue(SessionMesg.NormalizedPowerFieldNum)),
                FitValues.positive(message.getFieldDoubleValue(SessionMesg.IntensityFactorFieldNum)),
                FitValues.positive(message.getFieldDoubleValue(SessionMesg.TrainingStressScoreFieldNum)),
                FitValues.positive(message.getFieldDoubleValue(SessionMesg.AvgHeartRateFieldNum)),
                FitValues.positive(message.getFieldDoubleValue(SessionMesg.MaxHeartRateFieldNum)),
                FitValues.positive(message.getFieldDoubleValue(SessionMesg.AvgCadenceFieldNum)),
                averageSpeedMps(message));
    }

    private static @Nullable Double ascentM(Mesg message) {
        Double whole = message.getFieldDoubleValue(SessionMesg.TotalAscentFieldNum);
        Double fraction = message.getFieldDoubleValue(SessionMesg.TotalFractionalAscentFieldNum);
        return whole == null || fraction == null ? whole : Double.valueOf(whole + fraction);
    }

    private static @Nullable Double averageSpeedMps(Mesg message) {
        Double enhanced = FitValues.positive(message.getFieldDoubleValue(SessionMesg.EnhancedAvgSpeedFieldNum));
        return enhanced != null
                ? enhanced
                : FitValues.positive(message.getFieldDoubleValue(SessionMesg.AvgSpeedFieldNum));
    }

    /** The sport in a field of a message, lower case as in the public FIT profile, or null. */
    static @Nullable String sportName(Mesg message, int fieldNumber) {
        Short value = message.getFieldShortValue(fieldNumber);
        Sport sport = value == null ? null : Sport.getByValue(value);
        return sport == null || sport == Sport.INVALID ? null : sport.name().toLowerCase(Locale.ROOT);
    }

    /** The sub-sport in a field of a message, lower case as in the public FIT profile; null when it names none. */
    static @Nullable String subSportName(Mesg message, int fieldNumber) {
        Short value = message.getFieldShortValue(fieldNumber);
        SubSport subSport = value == null ? null : SubSport.getByValue(value);
        return subSport == null || subSport == SubSport.INVALID || subSport == SubSport.GENERIC
                ? null
                : subSport.name().toLowerCase(Locale.ROOT);
    }
}
