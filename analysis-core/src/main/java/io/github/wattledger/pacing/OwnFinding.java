package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.util.Arrays;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Something that a {@link FindingDetector} found. It has no price: minutes come from riding the course again, and the
 * library knows only for its own kinds how they are repaired.
 *
 * @param kind what it is, a word of one's own for programs and reports: lower case with hyphens, and none of the library's words
 * @param severity how much it weighs
 * @param when the seconds it concerns, counted from the first second of the whole recording
 * @param startM the distance at its start, metres from the start of the recording, or null without distance
 * @param endM the distance at its end, or null without distance
 * @param evidence the numbers it rests on
 * @param advice what to do next time
 */
public record OwnFinding(
        String kind,
        Severity severity,
        Interval when,
        @Nullable Double startM,
        @Nullable Double endM,
        Evidence evidence,
        Advice advice)
        implements AnyFinding {
    private static final Pattern WORD = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");

    /** @throws IllegalArgumentException when the kind is not such a word, or one of {@link FindingKind} */
    public OwnFinding {
        if (!WORD.matcher(kind).matches()) {
            throw new IllegalArgumentException(
                    "kind '" + kind + "', expected a word in lower case, with hyphens between its parts");
        }
        String word = kind;
        if (Arrays.stream(FindingKind.values()).anyMatch(each -> each.id().equals(word))) {
            throw new IllegalArgumentException("kind '" + kind + "' is the library's own, expected another");
        }
    }

    @Override
    public String kindId() {
        return kind;
    }
}
