package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.LettingGo;
import io.github.wattledger.pacing.price.Pricing;
import io.github.wattledger.ride.Interval;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** The decision to hold a bunch above the target: the race is ridden again as if it had been let go. */
final class BunchDecisions {
    /** Savings for which the minutes are shown. */
    private static final double[] SHOWN_SAVINGS = {0.20, 0.35, 0.50};

    /** A shorter stretch is no decision about a race, seconds. Own choice. */
    static final int SHORTEST_HARD_SECONDS = 300;

    private BunchDecisions() {}

    /** The decision about the first finding that can be one: an over-hard start, otherwise threshold riding early. */
    static Optional<BunchReview.Decision> first(
            List<Finding> findings, Function<Finding, Optional<BunchReview.Decision>> decision) {
        return Stream.of(FindingKind.OVER_HARD_START, FindingKind.THRESHOLD_RIDING_EARLY)
                .flatMap(kind -> findings.stream().filter(finding -> finding.kind() == kind))
                .flatMap(finding -> decision.apply(finding).stream())
                .findFirst();
    }

    /**
     * The decision behind a finding; empty where it shares under five minutes above the target with the bunch.
     *
     * @param bunch the seconds of the race in the bunch
     * @param nextGroupShare for which share of the way a next group would have sheltered as much
     * @param savingLow the least that the bunch saved, a share of the lone drag
     * @param savingHigh the most that it saved
     */
    static Optional<BunchReview.Decision> about(
            Finding finding,
            Race race,
            Interval bunch,
            double nextGroupShare,
            double savingLow,
            double savingHigh,
            Pricing pricing) {
        Interval found = finding.when().shifted(-race.offsetSeconds());
        Interval hard = found.common(bunch).orElse(null);
        if (hard == null || hard.seconds() < SHORTEST_HARD_SECONDS) {
            return Optional.empty();
        }
        double hardW = race.normalizedPowerW(hard);
        if (!(hardW > race.targetW())) {
            return Optional.empty();
        }
        Interval sheltered = new Interval(hard.fromSecond(), bunch.toSecond());
        double[] savings = Stream.concat(
                        Stream.of(savingLow), Arrays.stream(SHOWN_SAVINGS).boxed())
                .mapToDouble(Double::doubleValue)
                .distinct()
                .sorted()
                .toArray();
        LettingGo lettingGo = pricing.lettingGo(hard, sheltered, hardW, nextGroupShare, savings);
        return Optional.of(
                new BunchReview.Decision(finding.kind(), lettingGo, outcome(lettingGo, savingLow, savingHigh)));
    }

    private static BunchReview.Outcome outcome(LettingGo lettingGo, double savingLow, double savingHigh) {
        LettingGo.BreakEven breakEven = lettingGo.breakEven();
        if (breakEven != null) {
            if (savingLow > breakEven.high()) {
                return BunchReview.Outcome.STAYING_PAID;
            }
            return savingHigh < breakEven.low() ? BunchReview.Outcome.LETTING_GO_WAS_FASTER : BunchReview.Outcome.OPEN;
        }
        List<Double> seconds = lettingGo.savings().stream()
                .map(LettingGo.AtSaving::letGoEqualNormalizedPowerSeconds)
                .flatMap(Stream::ofNullable)
                .toList();
        if (seconds.size() < lettingGo.savings().size()) {
            return BunchReview.Outcome.OPEN;
        }
        if (seconds.stream().allMatch(saved -> saved > 0)) {
            return BunchReview.Outcome.LETTING_GO_WAS_FASTER;
        }
        return seconds.stream().allMatch(saved -> saved < 0)
                ? BunchReview.Outcome.STAYING_PAID
                : BunchReview.Outcome.OPEN;
    }
}
