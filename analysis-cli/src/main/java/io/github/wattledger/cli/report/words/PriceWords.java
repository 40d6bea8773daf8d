package io.github.wattledger.cli.report.words;

import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.pacing.price.PriceSteps;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The two ends of a price, each with its name. */
final class PriceWords {
    /** What the names of the two ends mean. */
    static final String ENDS =
            "A price has two ends, each from riding the race again without the mistake: for the same energy"
                    + " (as many kilojoules as were ridden) and for the same effort (the same normalized power).";

    /** A price that rounds to no time at all. */
    static final String NOTHING = "nothing";

    private PriceWords() {}

    /**
     * A price with both ends.
     *
     * @param lowEnd which end the low one is, or null where that is not known
     */
    static String of(double low, double high, LostTime.@Nullable LowEnd lowEnd) {
        return String.join(", ", ends(low, high, lowEnd));
    }

    /** The ends of a finding's price, each with its name; one where both are the same or have no names. */
    static List<String> ends(Finding finding, Cost.Priced price) {
        return ends(price.lowMinutes(), price.highMinutes(), lowEnd(finding));
    }

    private static List<String> ends(double low, double high, LostTime.@Nullable LowEnd lowEnd) {
        String from = minutes(low);
        String to = minutes(high);
        if (from.equals(to) || lowEnd == null) {
            return List.of(Figures.minutes(low, high));
        }
        return switch (lowEnd) {
            case SAME_ENERGY -> List.of(from + " for the same energy", to + " for the same effort");
            case SAME_EFFORT -> List.of(to + " for the same energy", from + " for the same effort");
            case STANDING -> List.of(from + " standing", to + " with slowing down and getting going again");
        };
    }

    /** Both ends in a few columns, the same energy first, for instance {@code 7.4 / 17.4 min}. */
    static String brief(double low, double high, LostTime.@Nullable LowEnd lowEnd) {
        String from = Figures.decimal(low, 1);
        String to = Figures.decimal(high, 1);
        if (from.equals(to)) {
            return to + " min";
        }
        boolean isEffortFirst = lowEnd == LostTime.LowEnd.SAME_EFFORT;
        return (isEffortFirst ? to + " / " + from : from + " / " + to) + " min";
    }

    /** Which end of a finding's price the low one is; null where that was not kept. */
    static LostTime.@Nullable LowEnd lowEnd(Finding finding) {
        PriceSteps steps = finding.priceSteps();
        if (steps instanceof PriceSteps.Stops) {
            return LostTime.LowEnd.STANDING;
        }
        if (!(steps instanceof PriceSteps.Replayed replayed)) {
            return null;
        }
        PriceSteps.End work = replayed.equalWork();
        PriceSteps.End normalized = replayed.equalNormalizedPower();
        if (work == null || normalized == null) {
            return null;
        }
        return work.savedSeconds() <= normalized.savedSeconds()
                ? LostTime.LowEnd.SAME_ENERGY
                : LostTime.LowEnd.SAME_EFFORT;
    }

    /** Whether a finding was ridden again, so that the ends of its price have names. */
    static boolean hasNamedEnds(Finding finding) {
        return finding.priceSteps() instanceof PriceSteps.Replayed;
    }

    static String minutes(double minutes) {
        String text = Figures.decimal(minutes, 1);
        return text.equals("0.0") ? NOTHING : text + " min";
    }
}
