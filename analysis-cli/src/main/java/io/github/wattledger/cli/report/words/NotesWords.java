package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.history.Agreement;
import io.github.wattledger.history.RiderHistory;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.StopNotChosen;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The rider's notes as a report shows them. Event and rider stand in the title of the ride. */
public final class NotesWords {
    /** What stands over the notes. */
    public static final String HEADING = "The rider's notes";

    private NotesWords() {}

    /** A sentence for each note, and what had been agreed before; empty where there is nothing besides event and rider. */
    public static List<String> of(RideReview review) {
        List<String> lines = of(review.notes(), review.ride());
        String recalled = recalled(review);
        if (recalled != null) {
            lines.add(recalled);
        }
        return lines;
    }

    /** What had been agreed before a race, beside how it was opened; null where nothing was, or it was no race. */
    static @Nullable String recalled(RideReview review) {
        RiderHistory history = review.rider().history();
        Agreement agreed = history == null ? null : history.agreed();
        return agreed == null || review.pacing().verdict() == Verdict.NOT_JUDGED
                ? null
                : PlainText.capital(recalled(agreed, review.pacing().openingW()));
    }

    /**
     * What had been agreed before a race, beside how it was opened.
     *
     * @param openingW normalized power of the opening, or null
     */
    static String recalled(Agreement agreed, @Nullable Double openingW) {
        String words = PlainText.of(agreed.words()).replaceFirst("[.;]+$", "");
        return "agreed on " + agreed.day() + ": " + words
                + (openingW == null ? "." : "; opened at " + Figures.watts(openingW) + ".");
    }

    private static List<String> of(RideNotes notes, Ride ride) {
        List<String> lines = new ArrayList<>();
        add(lines, "Felt: ", notes.feel());
        add(lines, "Heat: ", notes.heat());
        List<Double> eaten = notes.eatenGPerHour();
        if (eaten.size() == 1) {
            lines.add("Eaten: " + Figures.brief(eaten.get(0)) + " g of carbohydrate an hour.");
        } else if (!eaten.isEmpty()) {
            lines.add("Eaten, hour by hour: "
                    + eaten.stream().map(Figures::brief).collect(Collectors.joining(", ")) + " g of carbohydrate.");
        }
        if (!notes.stopsNotChosen().isEmpty()) {
            lines.add("Stops that were not the rider's choice: "
                    + notes.stopsNotChosen().stream()
                            .map(stop -> stop(stop, ride))
                            .collect(Collectors.joining("; ")) + ".");
        }
        if (!notes.inBunch().isEmpty()) {
            lines.add("In a bunch: "
                    + notes.inBunch().stream().map(Interval::toString).collect(Collectors.joining("; ")) + ".");
        }
        add(lines, "Agreed for next time: ", notes.agreed());
        return lines;
    }

    private static void add(List<String> lines, String before, @Nullable String words) {
        if (words != null) {
            lines.add(before + PlainText.sentence(words));
        }
    }

    private static String stop(StopNotChosen stop, Ride ride) {
        Integer to = stop.toSecond();
        String when =
                to == null ? " at " + Interval.clock(stop.fromSecond()) : ", " + new Interval(stop.fromSecond(), to);
        return PlainText.of(stop.what())
                + when
                + (stop.liesAtAStopOf(ride) ? "" : " (the recording shows no stop there)");
    }
}
