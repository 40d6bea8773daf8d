package io.github.wattledger.cli.report;

import io.github.wattledger.RideReview;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;

/** What a report says of a ride before it says anything about it. */
public final class RideWords {
    private RideWords() {}

    /** When it was, what, recorded with which device into which format. */
    public static String circumstances(RideSource source) {
        List<String> parts = new ArrayList<>();
        parts.add(StartTime.of(source.startTime(), source.utcOffsetSeconds()).words());
        if (source.sport() != null) {
            parts.add(PlainText.of(source.sport()).replace('_', ' '));
        }
        parts.add(source.device() == null ? "device not known" : PlainText.of(source.device()));
        if (source.format() != null) {
            parts.add(PlainText.of(source.format()));
        }
        if (source.sessionIndex() > 0) {
            parts.add("session " + (source.sessionIndex() + 1) + " of the file");
        }
        return String.join(", ", parts);
    }

    /** Which part of the recording was judged, a sentence; empty when that is all of it. */
    public static String judged(RideReview review) {
        Interval judged = review.pacing().judged();
        return judged.seconds() == review.ride().seconds()
                ? ""
                : "Judged: " + Figures.clock(judged.fromSecond()) + " to " + Figures.clock(judged.toSecond())
                        + " of a recording of "
                        + Figures.clock(review.ride().seconds()) + ".";
    }
}
