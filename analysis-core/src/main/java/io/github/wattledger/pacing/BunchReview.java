package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.LettingGo;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether it was worth staying with the bunch, where the rider says when there was one.
 *
 * @param told what the rider says
 * @param savingLow the least that a bunch is taken to save on such ground, a share of the lone drag
 * @param savingHigh the most that it is taken to save, a share of the lone drag
 * @param isUnpaved whether the rolling resistance is that of gravel, for which nobody has measured what a bunch saves
 * @param decisions the decisions to hold a bunch above the target, by rising time
 * @param surgesInBunch how many surges began in a bunch; null without a threshold
 * @param surgesAlone how many began outside; null without a threshold
 */
public record BunchReview(
        Company told,
        double savingLow,
        double savingHigh,
        boolean isUnpaved,
        List<Decision> decisions,
        @Nullable Integer surgesInBunch,
        @Nullable Integer surgesAlone)
        implements Serializable {
    /** Copies the list. */
    public BunchReview {
        decisions = List.copyOf(decisions);
    }

    /** Whether at least half of a finding lay in bunches of which it is not known that holding them cost something. */
    boolean excusesMostOf(Finding finding) {
        int seconds = decisions.stream()
                .filter(each -> each.kind() == finding.kind() && each.outcome() != Outcome.LETTING_GO_WAS_FASTER)
                .mapToInt(each -> each.lettingGo().hard().seconds())
                .sum();
        return 2 * seconds >= finding.when().seconds();
    }

    /** What came of a decision to hold a bunch. */
    public enum Outcome {
        /** Letting it go would have been slower at every saving of the range. */
        STAYING_PAID("staying paid"),
        /** Letting it go would have been faster at every saving of the range. */
        LETTING_GO_WAS_FASTER("letting go was faster"),
        /** It turns on what the bunch saved, or on what the effort cost later. */
        OPEN("open");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        /** Its fixed words, lower case. */
        public String words() {
            return words;
        }
    }

    /**
     * One decision.
     *
     * @param kind the finding whose stretch it is
     * @param lettingGo what the other decision was worth
     * @param outcome what came of it
     */
    public record Decision(FindingKind kind, LettingGo lettingGo, Outcome outcome) implements Serializable {}
}
