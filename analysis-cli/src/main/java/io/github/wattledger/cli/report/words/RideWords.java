package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.StartTime;
import io.github.wattledger.rider.RideNotes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a report says of a ride before it says anything about how it was ridden. */
public final class RideWords {
    /** The code of the note on a recording whose times say no zone. */
    private static final String TIME_WITHOUT_ZONE = "time-without-zone";

    private static final String UNDER_DEVELOPMENT = "development ";
    private static final Pattern CONSTANTS = Pattern.compile("[a-z0-9_ ]+");
    private static final Pattern CONSTANT = Pattern.compile("\\b[a-z0-9]+(?:_[a-z0-9]+)+\\b");

    private RideWords() {}

    /** The file's name, or other words where the ride came from no file. */
    public static String name(RideSource source, String otherwise) {
        String file = source.file();
        return file == null ? otherwise : PlainText.of(file);
    }

    /** The event and the rider where the rider's notes name them, with the file's name; otherwise that alone. */
    public static String title(RideReview review) {
        return title(review, Integer.MAX_VALUE);
    }

    /** {@link #title(RideReview)} with an event and a rider that are cut after so many letters. */
    static String title(RideReview review, int mostLetters) {
        String file = name(review.source(), "A ride");
        RideNotes notes = review.notes();
        String known = Stream.of(notes.event(), notes.rider())
                .filter(Objects::nonNull)
                .map(PlainText::of)
                .map(words -> PlainText.cut(words, mostLetters))
                .collect(Collectors.joining(", "));
        return known.isEmpty() ? file : known + " (" + file + ")";
    }

    /** When it was, which sport, with which device it was recorded, and into which format. */
    public static String circumstances(RideSource source, QualityReport quality) {
        List<String> parts = new ArrayList<>();
        parts.add(start(source, quality));
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
        return String.join("; ", parts);
    }

    /** When a session began, which sport, and with which device it was recorded. */
    public static String session(RideSource source, QualityReport quality) {
        String sport = source.sport();
        return start(source, quality) + "; " + (sport == null ? "sport not known" : sport(sport)) + "; "
                + device(source);
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

    /** When it began, without a zone where the recording names none. */
    static String start(RideSource source, QualityReport quality) {
        StartTime start = StartTime.of(source.startTime(), source.utcOffsetSeconds());
        return quality.notes().stream().anyMatch(note -> note.code().equals(TIME_WITHOUT_ZONE))
                ? start.wordsOfClock()
                : start.words();
    }

    private static String sport(String sport) {
        return PlainText.of(sport).replace('_', ' ');
    }

    private static String device(RideSource source) {
        String device = source.device();
        return device == null ? "device not known" : deviceName(PlainText.of(device));
    }

    /**
     * A device's name as people write it: without the public profile's word for a device under development, and where the name
     * or a word of it is spelled as the profile spells its constants, without underscores and with capitals.
     */
    static String deviceName(String name) {
        String known = name.startsWith(UNDER_DEVELOPMENT) ? name.substring(UNDER_DEVELOPMENT.length()) : name;
        return CONSTANTS.matcher(known).matches()
                ? inCapitals(known)
                : CONSTANT.matcher(known).replaceAll(word -> inCapitals(word.group()));
    }

    private static String inCapitals(String constant) {
        return Arrays.stream(constant.replace('_', ' ').split(" ", -1))
                .map(PlainText::capital)
                .collect(Collectors.joining(" "));
    }
}
