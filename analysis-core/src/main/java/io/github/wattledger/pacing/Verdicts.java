package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.util.List;

/** Puts the findings of a race into one verdict: the first that applies, the costliest mistake first. */
final class Verdicts {
    /** Normalized power of the halves apart by more than this, and the ride is not even. */
    private static final double UNEVEN_HALVES = 0.05;

    private Verdicts() {}

    static Verdict of(Race race, List<Finding> findings) {
        if (PacingReview.has(findings, FindingKind.OVER_HARD_START)) {
            return Verdict.OVER_HARD_START;
        }
        if (PacingReview.has(findings, FindingKind.FADE) || PacingReview.has(findings, FindingKind.ENERGY_CRASH)) {
            return Verdict.FADED;
        }
        if (PacingReview.has(findings, FindingKind.UNDER_PACED)) {
            return Verdict.UNDER_PACED;
        }
        boolean surging = PacingReview.of(findings, FindingKind.SURGES)
                .filter(surges -> surges.severity() == Severity.MAJOR)
                .isPresent();
        if (surging || PacingReview.has(findings, FindingKind.THRESHOLD_RIDING_EARLY)) {
            return Verdict.UNEVEN;
        }
        Interval first = race.betweenShares(0, 0.5);
        double ratio = race.normalizedPowerW(race.after(first)) / race.normalizedPowerW(first);
        if (PacingReview.has(findings, FindingKind.LATE_RESERVE) || ratio > 1 + UNEVEN_HALVES) {
            return Verdict.NEGATIVE_SPLIT;
        }
        return ratio < 1 - UNEVEN_HALVES ? Verdict.UNEVEN : Verdict.EVEN;
    }
}
