package io.github.wattledger.read.fit;

import com.garmin.fit.CourseMesg;
import com.garmin.fit.CoursePoint;
import com.garmin.fit.CoursePointMesg;
import com.garmin.fit.Decode;
import com.garmin.fit.FileIdMesg;
import com.garmin.fit.Mesg;
import com.garmin.fit.MesgListener;
import com.garmin.fit.MesgNum;
import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.RouteBuilder;
import io.github.wattledger.read.RouteResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Samples;
import java.io.ByteArrayInputStream;
import java.io.Serial;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The way of a FIT course or of a recorded FIT activity, without its times. What comes before a damage is read. */
public final class FitRoutes {
    private static final double DEGREES_PER_SEMICIRCLE = 180.0 / (1L << 31);
    private static final int MOST_NAMED_POINTS = 2000;

    private final int maximumPoints;
    private final Cancellation cancellation;
    private final Samples.Builder samples = Samples.builder();
    private final FitRecordFields fields = new FitRecordFields();
    private final RouteBuilder route = new RouteBuilder();
    private int namedPoints;
    private boolean isCourse;

    private static final class TooManyPointsException extends RuntimeException {
        @Serial
        private static final long serialVersionUID = 1L;
    }

    private FitRoutes(int maximumPoints, Cancellation cancellation) {
        this.maximumPoints = maximumPoints;
        this.cancellation = cancellation;
    }

    /**
     * Reads a file; of several that stand one after the other each is a route.
     *
     * @param content the whole content; not changed
     * @param maximumPoints most points to take
     * @param cancellation when to end early
     * @throws UnreadableRideException when it holds no route; its message is one line without the file's name
     */
    public static RouteResult read(byte[] content, int maximumPoints, Cancellation cancellation)
            throws UnreadableRideException {
        FitFormat.requireDecoder();
        List<RouteLine> lines = new ArrayList<>();
        List<ReadNote> notes = new ArrayList<>();
        boolean damaged = false;
        for (FitPart part : FitPart.of(content)) {
            FitRoutes reading = new FitRoutes(maximumPoints, cancellation);
            boolean partIsDamaged = reading.decode(part.asFile(content)) || part.isCutShort();
            damaged |= partIsDamaged;
            RouteLine line = reading.line();
            if (line != null) {
                lines.add(line);
            }
            if (line != null && partIsDamaged) {
                notes.add(new ReadNote(
                        "damaged",
                        String.format(
                                Locale.ROOT,
                                "The file is damaged or cut short. The %,d points up to there were read; the course may be"
                                        + " longer.",
                                reading.route.size())));
            }
        }
        if (lines.isEmpty()) {
            throw new UnreadableRideException(
                    damaged ? Reason.DAMAGED : Reason.NOT_A_RECORDING,
                    damaged
                            ? "is a damaged FIT file with no course before the damage; export the course again"
                            : "is a FIT file without a course of two points or more; export the course again");
        }
        return new RouteResult("FIT", ContentDigest.sha256(content), lines, notes);
    }

    /** Whether the decoder stopped before the end. */
    private boolean decode(byte[] file) throws UnreadableRideException {
        Decode decoder = new Decode();
        decoder.enableSkipExpandComponents(true);
        try {
            decoder.read(new ByteArrayInputStream(file), (MesgListener) this::accept);
            return false;
        } catch (CancelledException e) {
            throw e;
        } catch (TooManyPointsException e) {
            throw new UnreadableRideException(
                    Reason.TOO_LARGE,
                    String.format(
                            Locale.ROOT,
                            "holds more than %,d points, the most that is read; split it first",
                            maximumPoints),
                    e);
        } catch (RuntimeException e) {
            return true;
        }
    }

    private void accept(Mesg message) {
        cancellation.check();
        switch (message.getNum()) {
            case MesgNum.FILE_ID -> {
                Short type = message.getFieldShortValue(FileIdMesg.TypeFieldNum);
                isCourse |= type != null && type == com.garmin.fit.File.COURSE.getValue();
            }
            case MesgNum.COURSE -> {
                String name = message.getFieldStringValue(CourseMesg.NameFieldNum);
                route.name(name == null ? "" : name);
            }
            case MesgNum.RECORD -> {
                if (samples.size() == maximumPoints) {
                    throw new TooManyPointsException();
                }
                samples.at(samples.size());
                fields.copyInto(message, samples);
            }
            case MesgNum.COURSE_POINT -> acceptCoursePoint(message);
            default -> {}
        }
    }

    private void acceptCoursePoint(Mesg message) {
        if (namedPoints++ >= MOST_NAMED_POINTS) {
            return;
        }
        String name = message.getFieldStringValue(CoursePointMesg.NameFieldNum);
        String words = name == null || name.isBlank() ? kind(message) : name;
        Double distanceM = message.getFieldDoubleValue(CoursePointMesg.DistanceFieldNum);
        Double latitude = message.getFieldDoubleValue(CoursePointMesg.PositionLatFieldNum);
        Double longitude = message.getFieldDoubleValue(CoursePointMesg.PositionLongFieldNum);
        if (distanceM != null) {
            route.addNamedAt(words, distanceM);
        } else if (latitude != null && longitude != null) {
            route.addPlace(words, latitude * DEGREES_PER_SEMICIRCLE, longitude * DEGREES_PER_SEMICIRCLE);
        }
    }

    private static String kind(Mesg message) {
        Short type = message.getFieldShortValue(CoursePointMesg.TypeFieldNum);
        CoursePoint known = type == null ? null : CoursePoint.getByValue(type);
        return known == null ? "" : known.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private @Nullable RouteLine line() {
        Samples read = samples.build();
        for (int i = 0; i < read.size(); i++) {
            route.add(
                    value(read, Channel.LATITUDE, i),
                    value(read, Channel.LONGITUDE, i),
                    value(read, Channel.ALTITUDE, i),
                    value(read, Channel.DISTANCE, i));
        }
        return route.build(!isCourse);
    }

    private static double value(Samples read, Channel channel, int sample) {
        return read.channels().contains(channel) ? read.get(channel, sample) : Double.NaN;
    }
}
