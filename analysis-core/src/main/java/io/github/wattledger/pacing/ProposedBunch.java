package io.github.wattledger.pacing;

import io.github.wattledger.bunch.BunchProposal;
import io.github.wattledger.pacing.price.Pricing;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the balance of forces of a race proposes about a bunch, where the rider says nothing of one. No finding, price or
 * advice rests on it.
 *
 * @param proposal what was found, its stretches in seconds of the whole recording
 * @param decisions what holding on was worth, had there been the bunches that were found; by rising time
 */
public record ProposedBunch(BunchProposal proposal, List<BunchReview.Decision> decisions) implements Serializable {
    /** Copies the list. */
    public ProposedBunch {
        decisions = List.copyOf(decisions);
    }

    /** The proposal with the decisions that follow from it, without any where the race cannot be ridden again. */
    static ProposedBunch of(BunchProposal proposal, Race race, List<Finding> findings, @Nullable Pricing pricing) {
        List<BunchReview.Decision> decisions = new ArrayList<>();
        if (pricing != null) {
            for (BunchProposal.Stretch stretch : proposal.stretches()) {
                BunchDecisions.first(
                                findings,
                                finding -> BunchDecisions.about(
                                        finding,
                                        race,
                                        stretch.when(),
                                        0,
                                        stretch.savingLow(),
                                        stretch.savingHigh(),
                                        pricing))
                        .ifPresent(decisions::add);
            }
        }
        return new ProposedBunch(proposal.shifted(race.offsetSeconds()), decisions);
    }
}
