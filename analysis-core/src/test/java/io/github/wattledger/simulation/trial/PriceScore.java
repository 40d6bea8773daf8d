package io.github.wattledger.simulation.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/** How far the prices of found mistakes are from those of the race ridden again without them. */
final class PriceScore {
    /** An error is a share of the truth, but of no less than this: a few seconds of many are no error, minutes. */
    private static final double LEAST_TRUTH_MINUTES = 0.5;

    private static final double NOTHING_MINUTES = 0.05;
    private static final double WORTH_TELLING_MINUTES = 1;
    private static final double ROUNDING_MINUTES = 0.01;

    private final List<TrialResult> results;
    private final List<Pair> pairs = new ArrayList<>();
    private final List<Pair> wholes = new ArrayList<>();
    private final StringBuilder text = new StringBuilder();

    /** A price as said beside the true one. */
    private record Pair(MistakeKind kind, boolean climbing, double saidLow, double saidHigh, RiddenAgain.Price truth) {
        double lowError() {
            return error(saidLow, truth.lowMinutes());
        }

        double highError() {
            return error(saidHigh, truth.highMinutes());
        }

        private static double error(double said, double truth) {
            double saidOrNothing = Double.isNaN(said) ? 0 : said;
            return Math.abs(saidOrNothing - truth) / Math.max(truth, LEAST_TRUTH_MINUTES);
        }

        boolean isNothing() {
            return !(saidHigh >= NOTHING_MINUTES);
        }
    }

    PriceScore(List<TrialResult> results) {
        this.results = results;
        for (TrialResult result : results) {
            boolean climbing = result.family().isClimbing();
            result.prices()
                    .forEach((kind, truth) -> result.judged()
                            .of(kind)
                            .ifPresent(said ->
                                    pairs.add(new Pair(kind, climbing, said.lowMinutes(), said.highMinutes(), truth))));
            RiddenAgain.Price whole = result.wholePrice();
            boolean allFound = result.prices().keySet().stream().allMatch(result::isSaid);
            if (whole != null && allFound && result.prices().size() > 1) {
                wholes.add(new Pair(
                        MistakeKind.OVER_HARD_START,
                        climbing,
                        result.judged().wholeLowMinutes(),
                        result.judged().wholeHighMinutes(),
                        whole));
            }
        }
    }

    String markdown() {
        line("");
        line("| price of what was found | races | low end: median error | 9 in 10 within | high end: median error"
                + " | 9 in 10 within | \"nothing\" where the truth is over a minute |");
        line("| --- | --- | --- | --- | --- | --- | --- |");
        row("all", pairs, pair -> true);
        row("rolling courses", pairs, pair -> !pair.climbing());
        row("climbing courses", pairs, Pair::climbing);
        for (MistakeKind kind : MistakeKind.values()) {
            if (kind.hasPrice()) {
                row(kind.words(), pairs, pair -> pair.kind() == kind);
                row(kind.words() + ", climbing", pairs, pair -> pair.kind() == kind && pair.climbing());
            }
        }
        row("several mistakes, all at once", wholes, pair -> true);
        long belowPart = results.stream().filter(PriceScore::isWholeBelowPart).count();
        long withWhole = results.stream()
                .filter(result -> !Double.isNaN(result.judged().wholeHighMinutes()))
                .count();
        line("");
        line("The whole is below its largest part in %d of %d races.", belowPart, withWhole);
        return text.toString();
    }

    /** Whether all at once is said to cost less than a part of it. */
    static boolean isWholeBelowPart(TrialResult result) {
        LibraryReview.Judged judged = result.judged();
        return judged.accusations().stream()
                .anyMatch(part -> part.highMinutes() > judged.wholeHighMinutes() + ROUNDING_MINUTES
                        || part.lowMinutes() > judged.wholeLowMinutes() + ROUNDING_MINUTES);
    }

    private void row(String what, List<Pair> of, Predicate<Pair> among) {
        List<Pair> chosen = of.stream().filter(among).toList();
        if (chosen.isEmpty()) {
            return;
        }
        Quantiles low = Quantiles.of(chosen.stream().mapToDouble(Pair::lowError).toArray());
        Quantiles high =
                Quantiles.of(chosen.stream().mapToDouble(Pair::highError).toArray());
        List<Pair> worth = chosen.stream()
                .filter(pair -> pair.truth().highMinutes() > WORTH_TELLING_MINUTES)
                .toList();
        long nothing = worth.stream().filter(Pair::isNothing).count();
        line(
                "| %s | %d | %.0f %% | %.0f %% | %.0f %% | %.0f %% | %d of %d |",
                what,
                chosen.size(),
                100 * low.at(0.5),
                100 * low.at(0.9),
                100 * high.at(0.5),
                100 * high.at(0.9),
                nothing,
                worth.size());
    }

    private void line(String format, Object... values) {
        String line = values.length == 0 ? format : String.format(Locale.ROOT, format, values);
        text.append(line).append('\n');
    }
}
