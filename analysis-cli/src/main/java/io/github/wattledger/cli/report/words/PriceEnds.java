package io.github.wattledger.cli.report.words;

import io.github.wattledger.pacing.price.LostTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The two ends of a price as they stand in two columns or two lines.
 *
 * @param isHighFirst whether the high end is the first of the two, which is the one for the same energy
 * @param names what the first end is, and the second
 * @param areNamed whether the ends are the same energy and the same effort
 */
public record PriceEnds(boolean isHighFirst, List<String> names, boolean areNamed) {
    private static final List<String> REPLAYED = List.of("same energy", "same effort");
    private static final List<String> STANDING = List.of("standing", "with slowing down and getting going again");
    private static final List<String> NOT_NAMED = List.of("from", "to");

    /** Copies the list. */
    public PriceEnds {
        names = List.copyOf(names);
    }

    /** The ends, by what is known of the low one. */
    public static PriceEnds of(LostTime.@Nullable LowEnd lowEnd) {
        if (lowEnd == null) {
            return new PriceEnds(false, NOT_NAMED, false);
        }
        return switch (lowEnd) {
            case SAME_ENERGY -> new PriceEnds(false, REPLAYED, true);
            case SAME_EFFORT -> new PriceEnds(true, REPLAYED, true);
            case STANDING -> new PriceEnds(false, STANDING, false);
        };
    }

    /** The heads of a table over prices: the names of those that have some, or plain ones. */
    public static List<String> heads(List<PriceEnds> prices) {
        return prices.stream()
                .filter(PriceEnds::areNamed)
                .findFirst()
                .map(PriceEnds::names)
                .orElse(NOT_NAMED);
    }

    /** An end in a few columns. */
    public static String brief(double minutes) {
        return PriceWords.minutes(minutes);
    }
}
