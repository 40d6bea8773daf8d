package io.github.wattledger.bunch;

import io.github.wattledger.bunch.RoadPieces.Span;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The search for the stretch that explains a ride best when a bunch is supposed over it. The gain of every stretch follows
 * from one fit, but only as far as the ride is a line about that fit: a bunch that is not in the model has bent wind and
 * drag area towards itself. So the likeliest stretch is fitted, the gains are reckoned again about that fit, and so on
 * until the same stretch comes out.
 */
final class StretchSearch {
    private static final int MOST_ROUNDS = 5;

    /** A bunch that saves less is none, whatever it explains. */
    private static final double LEAST_SAVING = 0.08;

    private final Scatter scatter;
    private final List<DragFit> without;
    private final List<StretchGains> gains;

    /** @param without the ride without the bunch that is looked for, for each patchiness of the wind */
    StretchSearch(Scatter scatter, List<DragFit> without) {
        this.scatter = scatter;
        this.without = List.copyOf(without);
        this.gains = without.stream().map(StretchGains::new).toList();
    }

    /**
     * A stretch that was found.
     *
     * @param fit the ride with a bunch over it, the last of its bunches
     * @param gain twice the logarithm of how much likelier the ride is with it than without
     * @param gainInMean the same where the ride without it is taken to scatter as with it
     */
    record Found(DragFit fit, double gain, double gainInMean) {
        /**
         * What speaks for a bunch, as a number of standard errors. A ride scatters more in a bunch than alone, but also
         * where ground or wind is restless, so scatter alone must not speak for one: the less of both counts.
         */
        double standardErrors() {
            return Math.sqrt(Math.max(0, Math.min(gain, gainInMean)));
        }

        /** The same where an even ride does not speak against it. */
        double standardErrorsInMean() {
            return Math.sqrt(Math.max(0, gainInMean));
        }
    }

    /** The ride without it, in air as patchy as is likeliest. */
    DragFit without() {
        return DragFit.likeliest(without);
    }

    /**
     * The likeliest further bunch.
     *
     * @param candidates where it can have been; none may overlap a bunch of the ride
     */
    Optional<Found> likeliest(List<Span> candidates) {
        DragModel model = without.get(0).model();
        int kept = model.bunches().size();
        Span next = first(candidates);
        Set<Span> seen = new HashSet<>();
        DragFit best = null;
        while (next != null && seen.size() < MOST_ROUNDS && seen.add(next)) {
            DragFit fit = DragFit.likeliest(DragFit.each(model.with(next), scatter));
            if (fit.number(DragModel.FIRST_SAVING + kept) > LEAST_SAVING
                    && (best == null || likelihood(fit) > likelihood(best))) {
                best = fit;
            }
            next = best(new StretchGains(fit, kept), candidates);
        }
        return Optional.ofNullable(best)
                .map(fit -> new Found(
                        fit,
                        likelihood(fit) - 2 * without().logLikelihood(),
                        likelihood(fit) - 2 * fit.withoutLast().logLikelihood()));
    }

    /** The stretch that gains most in air of any patchiness. */
    private @Nullable Span first(List<Span> candidates) {
        Span first = null;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < without.size(); i++) {
            Span span = best(gains.get(i), candidates);
            if (span != null) {
                double errors = gains.get(i).standardErrors(span);
                double likelihood = 2 * without.get(i).logLikelihood() + errors * errors;
                if (likelihood > most) {
                    most = likelihood;
                    first = span;
                }
            }
        }
        return first;
    }

    private static @Nullable Span best(StretchGains gains, List<Span> candidates) {
        Span best = null;
        double most = 0;
        for (Span span : candidates) {
            double errors = gains.standardErrors(span);
            if (errors > most && gains.saving(span) > LEAST_SAVING) {
                most = errors;
                best = span;
            }
        }
        return best;
    }

    /** Twice the logarithm of the likelihood, without the price of the last saving as a number that is not known. */
    private static double likelihood(DragFit fit) {
        int last = fit.model().numbers() - 1;
        return 2 * (fit.logLikelihood() - Math.log(fit.error(last)));
    }
}
