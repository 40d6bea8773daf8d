package io.github.wattledger.testing;

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
import com.garmin.fit.SubSport;
import com.garmin.fit.UserProfileMesg;
import com.garmin.fit.ZonesTargetMesg;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.IntUnaryOperator;
import org.jspecify.annotations.Nullable;

/** Writes small recordings for tests of seasons. */
public final class RideFolders {
    /** 1989-12-31T00:00:00Z, the zero of FIT timestamps. */
    private static final long FIT_EPOCH_SECOND = 631_065_600L;

    private RideFolders() {}

    /**
     * What a device holds of its rider, as fields of the FIT profile; null where it was not set.
     *
     * @param thresholdPowerW {@code zones_target.functional_threshold_power}, watts
     * @param thresholdHeartRateBpm {@code zones_target.threshold_heart_rate}, beats per minute
     * @param riderMassKg {@code user_profile.weight}, kg
     */
    public record Settings(
            @Nullable Integer thresholdPowerW,
            @Nullable Integer thresholdHeartRateBpm,
            @Nullable Double riderMassKg) {
        /** A device that knows nothing of its rider. */
        public static final Settings NONE = new Settings(null, null, null);
    }

    /** A FIT file of power and heart rate, one record a second, that knows no local time and no threshold. */
    public static void writeRide(Path file, Instant start, int seconds, IntUnaryOperator wattsAt) {
        writeRide(file, start, seconds, wattsAt, Settings.NONE, false, SubSport.GENERIC);
    }

    /** The same file by a device that was set by its rider; the road rises and falls by 20 m every ten minutes. */
    public static void writeRide(Path file, Instant start, int seconds, IntUnaryOperator wattsAt, Settings settings) {
        writeRide(file, start, seconds, wattsAt, settings, true, SubSport.GENERIC);
    }

    /** A FIT file of a ride on a trainer, which its sub-sport tells. */
    public static void writeIndoorRide(Path file, Instant start, int seconds, IntUnaryOperator wattsAt) {
        writeRide(file, start, seconds, wattsAt, Settings.NONE, true, SubSport.INDOOR_CYCLING);
    }

    private static void writeRide(
            Path file,
            Instant start,
            int seconds,
            IntUnaryOperator wattsAt,
            Settings settings,
            boolean isHilly,
            SubSport subSport) {
        long first = start.getEpochSecond() - FIT_EPOCH_SECOND;
        FileEncoder encoder = new FileEncoder(file.toFile(), Fit.ProtocolVersion.V2_0);
        FileIdMesg id = new FileIdMesg();
        id.setType(File.ACTIVITY);
        id.setManufacturer(Manufacturer.DEVELOPMENT);
        id.setTimeCreated(new DateTime(first));
        encoder.write(id);
        UserProfileMesg user = new UserProfileMesg();
        ZonesTargetMesg zones = new ZonesTargetMesg();
        if (settings.riderMassKg() != null) {
            user.setWeight(settings.riderMassKg().floatValue());
            encoder.write(user);
        }
        if (settings.thresholdPowerW() != null || settings.thresholdHeartRateBpm() != null) {
            zones.setFunctionalThresholdPower(settings.thresholdPowerW());
            zones.setThresholdHeartRate(
                    settings.thresholdHeartRateBpm() == null
                            ? null
                            : settings.thresholdHeartRateBpm().shortValue());
            encoder.write(zones);
        }
        for (int second = 0; second < seconds; second++) {
            RecordMesg record = new RecordMesg();
            record.setTimestamp(new DateTime(first + second));
            record.setPower(wattsAt.applyAsInt(second));
            record.setHeartRate((short) (120 + second % 20));
            record.setSpeed(8f);
            record.setDistance(8f * second);
            if (isHilly) {
                record.setAltitude((float) (100 + 20 * Math.sin(2 * Math.PI * second / 600)));
            }
            encoder.write(record);
        }
        SessionMesg session = new SessionMesg();
        session.setTimestamp(new DateTime(first + seconds - 1));
        session.setStartTime(new DateTime(first));
        session.setSport(Sport.CYCLING);
        session.setSubSport(subSport);
        session.setEvent(Event.SESSION);
        session.setEventType(EventType.STOP);
        session.setTotalElapsedTime((float) seconds);
        session.setTotalTimerTime((float) seconds);
        encoder.write(session);
        encoder.close();
    }
}
