package io.github.wattledger.cli;

import com.garmin.fit.DateTime;
import com.garmin.fit.Event;
import com.garmin.fit.EventType;
import com.garmin.fit.File;
import com.garmin.fit.FileEncoder;
import com.garmin.fit.FileIdMesg;
import com.garmin.fit.Fit;
import com.garmin.fit.Manufacturer;
import com.garmin.fit.RecordMesg;
import com.garmin.fit.SessionMesg;
import com.garmin.fit.Sport;
import com.garmin.fit.UserProfileMesg;
import com.garmin.fit.ZonesTargetMesg;
import java.nio.file.Path;
import java.time.Instant;

/** A FIT file of an hour and a half over rolling ground, by a device with settings of its rider. */
final class DeviceRide {
    /** 1989-12-31T00:00:00Z, the zero of FIT timestamps. */
    private static final long FIT_EPOCH_SECOND = 631_065_600L;

    private static final int SECONDS = 5400;

    private DeviceRide() {}

    /**
     * Writes the file.
     *
     * @param thresholdPowerW {@code zones_target.functional_threshold_power} of the FIT profile, watts
     * @param riderMassKg {@code user_profile.weight} of the FIT profile, kg
     */
    static Path write(Path file, Instant start, int thresholdPowerW, double riderMassKg) {
        long first = start.getEpochSecond() - FIT_EPOCH_SECOND;
        FileEncoder encoder = new FileEncoder(file.toFile(), Fit.ProtocolVersion.V2_0);
        FileIdMesg id = new FileIdMesg();
        id.setType(File.ACTIVITY);
        id.setManufacturer(Manufacturer.DEVELOPMENT);
        id.setTimeCreated(new DateTime(first));
        encoder.write(id);
        UserProfileMesg user = new UserProfileMesg();
        user.setWeight((float) riderMassKg);
        encoder.write(user);
        ZonesTargetMesg zones = new ZonesTargetMesg();
        zones.setFunctionalThresholdPower(thresholdPowerW);
        encoder.write(zones);
        for (int second = 0; second < SECONDS; second++) {
            RecordMesg record = new RecordMesg();
            record.setTimestamp(new DateTime(first + second));
            record.setPower(second < 1800 ? 260 : 190);
            record.setSpeed(8f);
            record.setDistance(8f * second);
            record.setAltitude((float) (100 + 20 * Math.sin(2 * Math.PI * second / 600)));
            encoder.write(record);
        }
        SessionMesg session = new SessionMesg();
        session.setTimestamp(new DateTime(first + SECONDS - 1));
        session.setStartTime(new DateTime(first));
        session.setSport(Sport.CYCLING);
        session.setEvent(Event.SESSION);
        session.setEventType(EventType.STOP);
        session.setTotalElapsedTime((float) SECONDS);
        session.setTotalTimerTime((float) SECONDS);
        encoder.write(session);
        encoder.close();
        return file;
    }
}
