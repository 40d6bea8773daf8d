package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.StartTime;
import java.util.ArrayList;
import java.util.List;

/** What a report says of a ride before it says anything about how it was ridden. */
public final class RideWords {
    private RideWords() {}

    /** The file's name, or other words where the ride came from no file. */
    public static String name(RideSource source, String otherwise) {
        String file = source.file();
        return file == null ? otherwise : PlainText.of(file);
    }

    /** When it was, which sport, with which device it was recorded, and into which format. */
    public static String circumstances(RideSource source) {
        List<String> parts = new ArrayList<>();
        parts.add(start(source));
        String sport = source.sport();
        if (sport != null) {
            parts.add(sport(sport));
        }
        parts.add(device(source));
        if (source.format() != null) {
            parts.add(PlainText.of(source.format()));
        }
        if (source.sessionIndex() > 0) {
            parts.add("session " + (source.sessionIndex() + 1) + " of the file");
        }
        return String.join(", ", parts);
    }

    /** When a session began, which sport, and with which device it was recorded. */
    public static String session(RideSource source) {
        String sport = source.sport();
        return start(source) + ", " + (sport == null ? "sport not known" : sport(sport)) + ", " + device(source);
    }

    /** Which part of the recording was judged, a sentence; empty when that is all of it. */
    public static String judged(RideReview review) {
        Interval judged = review.pacing().judged();
        return judged.seconds() == review.ride().seconds()
                ? ""
                : "Judged: " + judged + " of a recording of "
                        + Figures.clock(review.ride().seconds()) + ".";
    }

    /** When it began. */
    static String start(RideSource source) {
        return StartTime.of(source.startTime(), source.utcOffsetSeconds()).words();
    }

    private static String sport(String sport) {
        return PlainText.of(sport).replace('_', ' ');
    }

    private static String device(RideSource source) {
        return source.device() == null ? "device not known" : PlainText.of(source.device());
    }
}
