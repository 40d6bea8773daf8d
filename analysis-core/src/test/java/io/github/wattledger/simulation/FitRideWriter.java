package io.github.wattledger.simulation;

import com.garmin.fit.Activity;
import com.garmin.fit.ActivityMesg;
import com.garmin.fit.BufferEncoder;
import com.garmin.fit.DateTime;
import com.garmin.fit.DeviceInfoMesg;
import com.garmin.fit.Event;
import com.garmin.fit.EventMesg;
import com.garmin.fit.EventType;
import com.garmin.fit.File;
import com.garmin.fit.FileIdMesg;
import com.garmin.fit.Fit;
import com.garmin.fit.LapMesg;
import com.garmin.fit.LapTrigger;
import com.garmin.fit.Manufacturer;
import com.garmin.fit.Mesg;
import com.garmin.fit.RecordMesg;
import com.garmin.fit.SessionMesg;
import com.garmin.fit.SessionTrigger;
import com.garmin.fit.Sport;
import com.garmin.fit.SubSport;
import com.garmin.fit.TimerTrigger;
import com.garmin.fit.UserProfileMesg;
import com.garmin.fit.ZonesTargetMesg;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleConsumer;

/** Writes a tape as a FIT activity file: the same bytes for the same tape. A missing value is a field not set. */
public final class FitRideWriter {
    /** 1989-12-31T00:00:00Z, the zero of FIT timestamps, in seconds since 1970. */
    private static final long FIT_EPOCH_SECOND = 631_065_600L;
    /** Serial number of the invented recorder. */
    private static final long SERIAL_NUMBER = 16_500L;

    private static final int CHECKSUM_BYTES = 2;
    private static final int BYTES_LEFT_OF_THE_CUT_RECORD = 9;
    /** Local message types: one for each kind that repeats, so that definitions are not written again. */
    private static final int RECORD_TYPE = 1;

    private static final int EVENT_TYPE = 2;
    private static final int LAP_TYPE = 3;

    private final RideTape tape;
    private final List<Mesg> messages = new ArrayList<>();
    private final List<Lap> laps;
    private int eventsWritten;
    private int lapsWritten;

    private FitRideWriter(RideTape tape) {
        this.tape = tape;
        laps = tape.laps();
    }

    /** The file of a tape. */
    public static byte[] write(RideTape tape) {
        FitRideWriter writer = new FitRideWriter(tape);
        writer.addHead();
        tape.samples().forEach(writer::addSample);
        writer.addTail();
        return encode(writer.messages);
    }

    /**
     * The file of a tape as it is left when the recorder dies: it ends within the record of a sample, and its header
     * still promises the rest.
     */
    public static byte[] writeCutShort(RideTape tape, int atSampleIndex) {
        FitRideWriter writer = new FitRideWriter(tape);
        writer.addHead();
        tape.samples().subList(0, atSampleIndex).forEach(writer::addSample);
        int wholeRecords = encode(writer.messages).length - CHECKSUM_BYTES;
        return Arrays.copyOf(write(tape), wholeRecords + BYTES_LEFT_OF_THE_CUT_RECORD);
    }

    private static byte[] encode(List<Mesg> messages) {
        BufferEncoder encoder = new BufferEncoder(Fit.ProtocolVersion.V2_0);
        encoder.open();
        encoder.write(messages);
        return encoder.close();
    }

    private void addHead() {
        FileIdMesg id = new FileIdMesg();
        id.setType(File.ACTIVITY);
        id.setManufacturer(Manufacturer.DEVELOPMENT);
        id.setProduct(1);
        id.setSerialNumber(SERIAL_NUMBER);
        id.setTimeCreated(fitTime(tape.startEpochSecond()));
        DeviceInfoMesg device = new DeviceInfoMesg();
        device.setTimestamp(fitTime(tape.startEpochSecond()));
        device.setDeviceIndex((short) 0);
        device.setManufacturer(Manufacturer.DEVELOPMENT);
        device.setProduct(1);
        device.setProductName(RideTape.DEVICE_NAME);
        device.setSerialNumber(SERIAL_NUMBER);
        device.setSoftwareVersion(1.0f);
        messages.addAll(List.of(id, device));
        addRider();
    }

    private void addRider() {
        SimulatedRider rider = tape.scenario().rider();
        UserProfileMesg profile = new UserProfileMesg();
        profile.setWeight((float) rider.massKg());
        ZonesTargetMesg zones = new ZonesTargetMesg();
        zones.setFunctionalThresholdPower((int) rider.thresholdPowerW());
        zones.setThresholdHeartRate((short) rider.thresholdHeartRateBpm());
        zones.setMaxHeartRate((short) rider.heart().maximumBpm());
        messages.addAll(List.of(profile, zones));
    }

    private void addSample(RecordedSample sample) {
        addLapsUpTo(sample.epochSecond());
        while (eventsWritten < tape.timerEvents().size() - 1
                && tape.timerEvents().get(eventsWritten).epochSecond() <= sample.epochSecond()) {
            addTimerEvent(eventsWritten == 0 ? TimerTrigger.MANUAL : TimerTrigger.AUTO);
        }
        RecordMesg message = new RecordMesg();
        message.setLocalNum(RECORD_TYPE);
        message.setTimestamp(fitTime(sample.epochSecond()));
        ifThere(sample.latitudeDegrees(), value -> message.setPositionLat(semicircles(value)));
        ifThere(sample.longitudeDegrees(), value -> message.setPositionLong(semicircles(value)));
        ifThere(sample.distanceM(), value -> message.setDistance((float) value));
        ifThere(sample.altitudeM(), value -> message.setAltitude((float) value));
        ifThere(sample.speedMps(), value -> message.setSpeed((float) value));
        ifThere(sample.powerW(), value -> message.setPower((int) value));
        ifThere(sample.heartRateBpm(), value -> message.setHeartRate((short) value));
        ifThere(sample.cadenceRpm(), value -> message.setCadence((short) value));
        ifThere(sample.temperatureC(), value -> message.setTemperature((byte) value));
        ifThere(sample.accumulatedWorkJ(), value -> message.setAccumulatedPower((long) value));
        messages.add(message);
    }

    private void addTail() {
        while (eventsWritten < tape.timerEvents().size()) {
            addTimerEvent(TimerTrigger.MANUAL);
        }
        addLapsUpTo(Long.MAX_VALUE);
        addSession();
        ActivityMesg activity = new ActivityMesg();
        activity.setTimestamp(fitTime(tape.endEpochSecond()));
        activity.setLocalTimestamp(
                tape.endEpochSecond() - FIT_EPOCH_SECOND + tape.scenario().utcOffsetSeconds());
        activity.setTotalTimerTime((float) tape.totals().timerSeconds());
        activity.setNumSessions(1);
        activity.setType(Activity.MANUAL);
        activity.setEvent(Event.ACTIVITY);
        activity.setEventType(EventType.STOP);
        messages.add(activity);
    }

    private void addTimerEvent(TimerTrigger trigger) {
        TimerEvent event = tape.timerEvents().get(eventsWritten++);
        EventMesg message = new EventMesg();
        message.setLocalNum(EVENT_TYPE);
        message.setTimestamp(fitTime(event.epochSecond()));
        message.setEvent(Event.TIMER);
        message.setEventType(event.kind() == TimerEvent.Kind.START ? EventType.START : EventType.STOP_ALL);
        message.setTimerTrigger(trigger);
        messages.add(message);
    }

    private void addLapsUpTo(long epochSecond) {
        while (lapsWritten < laps.size() && laps.get(lapsWritten).endEpochSecond() <= epochSecond) {
            boolean last = lapsWritten + 1 == laps.size();
            if (last && epochSecond != Long.MAX_VALUE) {
                return;
            }
            addLap(laps.get(lapsWritten), last);
        }
    }

    private void addLap(Lap lap, boolean last) {
        RecorderTotals totals = RecorderTotals.of(tape, lap.startEpochSecond(), lap.endEpochSecond() + (last ? 1 : 0));
        LapMesg message = new LapMesg();
        message.setLocalNum(LAP_TYPE);
        message.setMessageIndex(lapsWritten++);
        message.setTimestamp(fitTime(lap.endEpochSecond()));
        message.setStartTime(fitTime(lap.startEpochSecond()));
        message.setEvent(Event.LAP);
        message.setEventType(EventType.STOP);
        message.setLapTrigger(last ? LapTrigger.SESSION_END : LapTrigger.MANUAL);
        message.setSport(Sport.CYCLING);
        message.setTotalElapsedTime((float) totals.elapsedSeconds());
        message.setTotalTimerTime((float) totals.timerSeconds());
        message.setTotalDistance((float) totals.distanceM());
        message.setTotalAscent((int) StrictMath.round(totals.ascentM()));
        message.setTotalDescent((int) StrictMath.round(totals.descentM()));
        message.setTotalWork(StrictMath.round(totals.workJ()));
        message.setAvgPower((int) StrictMath.round(totals.averagePowerW()));
        message.setMaxPower((int) totals.maximumPowerW());
        ifThere(totals.normalizedPowerW(), value -> message.setNormalizedPower((int) StrictMath.round(value)));
        message.setAvgHeartRate((short) StrictMath.round(totals.averageHeartRateBpm()));
        message.setMaxHeartRate((short) totals.maximumHeartRateBpm());
        message.setAvgSpeed((float) totals.averageSpeedMps());
        message.setMaxSpeed((float) totals.maximumSpeedMps());
        messages.add(message);
    }

    private void addSession() {
        RecorderTotals totals = tape.totals();
        SessionMesg message = new SessionMesg();
        message.setMessageIndex(0);
        message.setTimestamp(fitTime(tape.endEpochSecond()));
        message.setStartTime(fitTime(tape.startEpochSecond()));
        message.setEvent(Event.SESSION);
        message.setEventType(EventType.STOP);
        message.setTrigger(SessionTrigger.ACTIVITY_END);
        message.setSport(Sport.CYCLING);
        message.setSubSport(SubSport.GRAVEL_CYCLING);
        message.setFirstLapIndex(0);
        message.setNumLaps(laps.size());
        message.setTotalElapsedTime((float) totals.elapsedSeconds());
        message.setTotalTimerTime((float) totals.timerSeconds());
        message.setTotalMovingTime((float) (totals.timerSeconds() - totals.stoppedSeconds()));
        message.setTotalDistance((float) totals.distanceM());
        message.setTotalAscent((int) StrictMath.round(totals.ascentM()));
        message.setTotalDescent((int) StrictMath.round(totals.descentM()));
        message.setAvgSpeed((float) totals.averageSpeedMps());
        message.setMaxSpeed((float) totals.maximumSpeedMps());
        addEffort(message, totals);
        messages.add(message);
    }

    private void addEffort(SessionMesg message, RecorderTotals totals) {
        message.setTotalWork(StrictMath.round(totals.workJ()));
        message.setAvgPower((int) StrictMath.round(totals.averagePowerW()));
        message.setMaxPower((int) totals.maximumPowerW());
        message.setNormalizedPower((int) StrictMath.round(totals.normalizedPowerW()));
        message.setThresholdPower((int) tape.scenario().rider().thresholdPowerW());
        message.setIntensityFactor((float) totals.intensityFactor());
        message.setTrainingStressScore((float) totals.trainingStress());
        message.setAvgHeartRate((short) StrictMath.round(totals.averageHeartRateBpm()));
        message.setMaxHeartRate((short) totals.maximumHeartRateBpm());
        message.setAvgCadence((short) StrictMath.round(totals.averageCadenceRpm()));
    }

    private static void ifThere(double value, DoubleConsumer field) {
        if (!Double.isNaN(value)) {
            field.accept(value);
        }
    }

    private static DateTime fitTime(long epochSecond) {
        return new DateTime(epochSecond - FIT_EPOCH_SECOND);
    }

    private static int semicircles(double degrees) {
        return (int) StrictMath.round(degrees / 180 * StrictMath.pow(2, 31));
    }
}
