package io.github.wattledger.read.fit;

import com.garmin.fit.ActivityMesg;
import com.garmin.fit.DeviceInfoMesg;
import com.garmin.fit.Event;
import com.garmin.fit.EventMesg;
import com.garmin.fit.EventType;
import com.garmin.fit.FileIdMesg;
import com.garmin.fit.Fit;
import com.garmin.fit.GarminProduct;
import com.garmin.fit.LapMesg;
import com.garmin.fit.Manufacturer;
import com.garmin.fit.Mesg;
import com.garmin.fit.MesgNum;
import com.garmin.fit.SportMesg;
import com.garmin.fit.TimeInZoneMesg;
import com.garmin.fit.UserProfileMesg;
import com.garmin.fit.ZonesTargetMesg;
import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.TimerEvent;
import java.io.Serial;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Collects what matters of a FIT file's messages, in the file's order. */
final class FitMessages {
    private static final int TIMESTAMP_FIELD = Fit.FIELD_NUM_TIMESTAMP;
    private static final int QUARTER_HOUR = 900;
    private static final long MOST_OFFSET_SECONDS = 15 * 3600;

    private final int maximumSamples;
    private final Cancellation cancellation;
    private final Samples.Builder samples = Samples.builder();
    private final FitRecordFields recordFields = new FitRecordFields();
    private final FitGears gears = new FitGears();
    private final FitDeveloperFields developerFields = new FitDeveloperFields();
    private final List<TimerEvent> timerEvents = new ArrayList<>();
    private final List<Lap> laps = new ArrayList<>();
    private final List<FitSession> sessions = new ArrayList<>();

    private @Nullable String fileType;
    private @Nullable String maker;
    private @Nullable String product;
    private @Nullable String sport;
    private @Nullable String subSport;
    private @Nullable Double thresholdPowerW;
    private @Nullable Double thresholdHeartRateBpm;
    private @Nullable Double maximumHeartRateBpm;
    private @Nullable Double riderMassKg;
    private @Nullable Integer utcOffsetSeconds;
    private int recordsWithoutTime;
    private int messageCount;

    /**
     * @param maximumSamples most samples to take
     * @param cancellation when to end early
     */
    FitMessages(int maximumSamples, Cancellation cancellation) {
        this.maximumSamples = maximumSamples;
        this.cancellation = cancellation;
    }

    /** The file holds more samples than may be read. */
    static final class TooManySamplesException extends RuntimeException {
        @Serial
        private static final long serialVersionUID = 1L;
    }

    /** Takes one message; those that do not matter are passed over. */
    void accept(Mesg message) {
        cancellation.check();
        messageCount++;
        switch (message.getNum()) {
            case MesgNum.RECORD -> acceptRecord(message);
            case MesgNum.EVENT -> acceptEvent(message);
            case MesgNum.LAP -> acceptLap(message);
            case MesgNum.SESSION -> acceptSession(message);
            case MesgNum.FILE_ID -> acceptFileId(message);
            case MesgNum.DEVICE_INFO -> acceptDeviceInfo(message);
            case MesgNum.SPORT -> {
                sport = FitSession.sportName(message, SportMesg.SportFieldNum);
                subSport = FitSession.subSportName(message, SportMesg.SubSportFieldNum);
            }
            case MesgNum.ZONES_TARGET ->
                acceptSettings(
                        message,
                        ZonesTargetMesg.MaxHeartRateFieldNum,
                        ZonesTargetMesg.ThresholdHeartRateFieldNum,
                        ZonesTargetMesg.FunctionalThresholdPowerFieldNum);
            case MesgNum.TIME_IN_ZONE ->
                acceptSettings(
                        message,
                        TimeInZoneMesg.MaxHeartRateFieldNum,
                        TimeInZoneMesg.ThresholdHeartRateFieldNum,
                        TimeInZoneMesg.FunctionalThresholdPowerFieldNum);
            case MesgNum.USER_PROFILE ->
                riderMassKg = FitValues.positive(message.getFieldDoubleValue(UserProfileMesg.WeightFieldNum));
            case MesgNum.ACTIVITY -> acceptActivity(message);
            default -> {}
        }
    }

    private void acceptRecord(Mesg message) {
        Long time = message.getFieldLongValue(TIMESTAMP_FIELD);
        if (time == null) {
            recordsWithoutTime++;
            return;
        }
        if (samples.size() >= maximumSamples) {
            throw new TooManySamplesException();
        }
        samples.at(time + FitValues.EPOCH_SECOND);
        recordFields.copyInto(message, samples);
        developerFields.accept(message, samples.size() - 1);
    }

    private void acceptEvent(Mesg message) {
        Long time = message.getFieldLongValue(TIMESTAMP_FIELD);
        Short event = message.getFieldShortValue(EventMesg.EventFieldNum);
        Short type = message.getFieldShortValue(EventMesg.EventTypeFieldNum);
        if (time != null && event != null && FitGears.isChange(event)) {
            gears.accept(message, time + FitValues.EPOCH_SECOND);
            return;
        }
        if (time == null || event == null || type == null || event != Event.TIMER.getValue()) {
            return;
        }
        TimerEvent.Kind kind = timerKind(EventType.getByValue(type));
        if (kind != null) {
            timerEvents.add(new TimerEvent(time + FitValues.EPOCH_SECOND, kind));
        }
    }

    private static TimerEvent.@Nullable Kind timerKind(@Nullable EventType type) {
        if (type == null) {
            return null;
        }
        return switch (type) {
            case START -> TimerEvent.Kind.START;
            case STOP, STOP_ALL, STOP_DISABLE, STOP_DISABLE_ALL -> TimerEvent.Kind.STOP;
            default -> null;
        };
    }

    private void acceptLap(Mesg message) {
        Long end = message.getFieldLongValue(TIMESTAMP_FIELD);
        Long start = message.getFieldLongValue(LapMesg.StartTimeFieldNum);
        Double elapsed = message.getFieldDoubleValue(LapMesg.TotalElapsedTimeFieldNum);
        if (start == null || (end == null && elapsed == null)) {
            return;
        }
        long startSecond = start + FitValues.EPOCH_SECOND;
        long endSecond = elapsed != null ? startSecond + Math.round(elapsed) : end + FitValues.EPOCH_SECOND;
        if (endSecond >= startSecond) {
            Double normalized = message.getFieldDoubleValue(LapMesg.NormalizedPowerFieldNum);
            laps.add(new Lap(startSecond, endSecond, FitValues.positive(normalized)));
        }
    }

    private void acceptSession(Mesg message) {
        FitSession session = FitSession.of(message);
        if (session != null) {
            sessions.add(session);
        }
    }

    private void acceptFileId(Mesg message) {
        Short type = message.getFieldShortValue(FileIdMesg.TypeFieldNum);
        if (type != null && fileType == null) {
            com.garmin.fit.File known = com.garmin.fit.File.getByValue(type);
            fileType = known == null ? String.valueOf(type) : known.name().toLowerCase(Locale.ROOT);
        }
        nameDevice(
                message.getFieldIntegerValue(FileIdMesg.ManufacturerFieldNum),
                message.getFieldIntegerValue(FileIdMesg.ProductFieldNum),
                message.getFieldStringValue(FileIdMesg.ProductNameFieldNum));
    }

    private void acceptDeviceInfo(Mesg message) {
        Short index = message.getFieldShortValue(DeviceInfoMesg.DeviceIndexFieldNum);
        if (index != null && index == 0) {
            nameDevice(
                    message.getFieldIntegerValue(DeviceInfoMesg.ManufacturerFieldNum),
                    message.getFieldIntegerValue(DeviceInfoMesg.ProductFieldNum),
                    message.getFieldStringValue(DeviceInfoMesg.ProductNameFieldNum));
        }
    }

    /** Keeps the first maker and the best product name: words of the device's own are better than a number. */
    private void nameDevice(@Nullable Integer makerId, @Nullable Integer productId, @Nullable String ownName) {
        if (maker == null && makerId != null) {
            String known = Manufacturer.getStringFromValue(makerId);
            maker = known.isEmpty() ? "maker " + makerId : known.toLowerCase(Locale.ROOT);
        }
        if (ownName != null && !ownName.isBlank()) {
            product = ownName.strip();
        } else if (product == null && productId != null) {
            boolean listed = makerId != null && makerId == Manufacturer.GARMIN;
            String known = listed ? GarminProduct.getStringFromValue(productId) : "";
            product = known.isEmpty() ? "product " + productId : known.toLowerCase(Locale.ROOT);
        }
    }

    /** Takes settings of the rider from the fields of a message; what an earlier message said stays. */
    private void acceptSettings(Mesg message, int maximumHeartRate, int thresholdHeartRate, int thresholdPower) {
        maximumHeartRateBpm = firstOf(maximumHeartRateBpm, message.getFieldDoubleValue(maximumHeartRate));
        thresholdHeartRateBpm = firstOf(thresholdHeartRateBpm, message.getFieldDoubleValue(thresholdHeartRate));
        thresholdPowerW = firstOf(thresholdPowerW, message.getFieldDoubleValue(thresholdPower));
    }

    private void acceptActivity(Mesg message) {
        Long utc = message.getFieldLongValue(TIMESTAMP_FIELD);
        Long local = message.getFieldLongValue(ActivityMesg.LocalTimestampFieldNum);
        if (utc != null && local != null && Math.abs(local - utc) <= MOST_OFFSET_SECONDS) {
            utcOffsetSeconds = Math.round((local - utc) / (float) QUARTER_HOUR) * QUARTER_HOUR;
        }
    }

    /** The number that is known already; otherwise the one that was found, where it is above 0. */
    private static @Nullable Double firstOf(@Nullable Double known, @Nullable Double found) {
        return known != null ? known : FitValues.positive(found);
    }

    /** How many messages of any kind the decoder came through. */
    int messageCount() {
        return messageCount;
    }

    /** The samples as the records have them. */
    Samples samples() {
        return samples.build();
    }

    /** The samples with what other messages and the fields of add-ons say about them. */
    Samples completedSamples(List<ReadNote> notes) {
        return gears.complete(developerFields.complete(samples.build(), notes));
    }

    int recordsWithoutTime() {
        return recordsWithoutTime;
    }

    List<TimerEvent> timerEvents() {
        return timerEvents;
    }

    List<Lap> laps() {
        return laps;
    }

    List<FitSession> sessions() {
        return sessions;
    }

    boolean hasSessions() {
        return !sessions.isEmpty();
    }

    @Nullable String fileType() {
        return fileType;
    }

    @Nullable String sport() {
        return sport;
    }

    /** The sub-sport of the file, or null when no message names one. */
    @Nullable String subSport() {
        return subSport;
    }

    @Nullable Integer utcOffsetSeconds() {
        return utcOffsetSeconds;
    }

    /** The device, with the threshold that a session was judged by where the session names one. */
    RecordingDevice device(@Nullable Double sessionThresholdPowerW) {
        String name = maker == null ? product : product == null ? maker : maker + " " + product;
        return new RecordingDevice(
                name,
                firstOf(sessionThresholdPowerW, thresholdPowerW),
                thresholdHeartRateBpm,
                maximumHeartRateBpm,
                riderMassKg);
    }
}
