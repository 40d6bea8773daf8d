package io.github.wattledger;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.intake.RiderOnDay.Origin;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.RacedPart;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a review adds to the notes on the quality of a recording: which part was judged, and against what. */
final class ReviewNotes {
    /**
     * A threshold is doubted when the intensity factor was above this for longer than {@link #DOUBTFUL_SECONDS}: by the
     * definition of a threshold nobody can ride so.
     */
    private static final double DOUBTFUL_INTENSITY = 1.05;

    private static final int DOUBTFUL_SECONDS = 45 * 60;

    private ReviewNotes() {}

    /** Whether the ride was harder, for longer, than anyone can ride by the definition of its threshold. */
    static boolean contradictsThreshold(RideLoad load) {
        Double intensity = load.intensityFactor();
        return intensity != null && intensity > DOUBTFUL_INTENSITY && load.timerSeconds() > DOUBTFUL_SECONDS;
    }

    /**
     * The notes, in the order in which a report shows them.
     *
     * @param selected the reviewed seconds of the recording
     * @param seconds length of the recording, seconds
     * @param part the raced part of the reviewed seconds
     */
    static List<QualityNote> of(Interval selected, int seconds, RacedPart part, RiderOnDay rider, RideLoad load) {
        List<QualityNote> notes = new ArrayList<>();
        if (selected.seconds() != seconds) {
            notes.add(new QualityNote(
                    "part-selected",
                    selected.seconds(),
                    "Only " + Interval.clock(selected.fromSecond()) + " to " + Interval.clock(selected.toSecond())
                            + " of "
                            + Interval.clock(seconds)
                            + " was reviewed, as asked for. The device's totals are of the"
                            + " whole session."));
        }
        addSetApart(notes, "lead-in-set-apart", "first", part.leadInSeconds());
        addSetApart(notes, "tail-set-apart", "last", part.tailSeconds());
        notes.addAll(rider.notes());
        if (contradictsThreshold(load)) {
            notes.add(thresholdDoubt(rider, load));
        }
        return notes;
    }

    private static void addSetApart(List<QualityNote> notes, String code, String where, int seconds) {
        if (seconds > 0) {
            notes.add(new QualityNote(
                    code,
                    seconds,
                    "The " + where + " " + Interval.clock(seconds)
                            + " was easy riding or waiting: set apart as not raced. Load and curve include it."));
        }
    }

    private static QualityNote thresholdDoubt(RiderOnDay rider, RideLoad load) {
        String consequence = rider.thresholdPowerOrigin() == Origin.ESTIMATED
                ? "The estimate is too low, and pacing is not judged by it; give the threshold."
                : "It looks too low, perhaps a factory setting; give the true one.";
        return new QualityNote(
                "threshold-doubtful",
                null,
                String.format(
                        Locale.ROOT,
                        "An intensity factor of %.2f over %s contradicts a threshold of %.0f W. %s",
                        load.intensityFactor(),
                        Interval.clock(load.timerSeconds()),
                        rider.thresholdPowerW(),
                        consequence));
    }
}
