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
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.IntUnaryOperator;

/** Writes small recordings for tests of seasons. */
public final class RideFolders {
    /** 1989-12-31T00:00:00Z, the zero of FIT timestamps. */
    private static final long FIT_EPOCH_SECOND = 631_065_600L;

    private RideFolders() {}

    /** A FIT file of power and heart rate, one record a second, that knows no local time and no threshold. */
    public static void writeRide(Path file, Instant start, int seconds, IntUnaryOperator wattsAt) {
        long first = start.getEpochSecond() - FIT_EPOCH_SECOND;
        FileEncoder encoder = new FileEncoder(file.toFile(), Fit.ProtocolVersion.V2_0);
        FileIdMesg id = new FileIdMesg();
        id.setType(File.ACTIVITY);
        id.setManufacturer(Manufacturer.DEVELOPMENT);
        id.setTimeCreated(new DateTime(first));
        encoder.write(id);
        for (int second = 0; second < seconds; second++) {
            RecordMesg record = new RecordMesg();
            record.setTimestamp(new DateTime(first + second));
            record.setPower(wattsAt.applyAsInt(second));
            record.setHeartRate((short) (120 + second % 20));
            record.setSpeed(8f);
            record.setDistance(8f * second);
            encoder.write(record);
        }
        SessionMesg session = new SessionMesg();
        session.setTimestamp(new DateTime(first + seconds - 1));
        session.setStartTime(new DateTime(first));
        session.setSport(Sport.CYCLING);
        session.setEvent(Event.SESSION);
        session.setEventType(EventType.STOP);
        session.setTotalElapsedTime((float) seconds);
        session.setTotalTimerTime((float) seconds);
        encoder.write(session);
        encoder.close();
    }
}
