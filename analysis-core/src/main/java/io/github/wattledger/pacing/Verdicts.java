package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Sums the findings of a race up in one verdict: the first that applies, beginning with the costliest mistake. */
final class Verdicts {
    /** A race is not even when the efforts of its halves on like ground differ by more than this share. */
    private static final double UNEVEN_HALVES = 0.05;

    private Verdicts() {}

    static Verdict of(Race race, List<Finding> findings) {
        Map<FindingKind, Severity> found = new EnumMap<>(FindingKind.class);
        findings.stream()
                .filter(finding ->
                        finding.severity() != Severity.OBSERVATION || finding.kind() == FindingKind.UNDER_PACED)
                .forEach(finding -> found.put(finding.kind(), finding.severity()));
        if (found.containsKey(FindingKind.OVER_HARD_START)) {
            return Verdict.OVER_HARD_START;
        }
        if (found.containsKey(FindingKind.FADE) || found.containsKey(FindingKind.ENERGY_CRASH)) {
            return Verdict.FADED;
        }
        if (found.containsKey(FindingKind.UNDER_PACED)) {
            return Verdict.UNDER_PACED;
        }
        if (found.get(FindingKind.SURGES) == Severity.MAJOR || found.containsKey(FindingKind.THRESHOLD_RIDING_EARLY)) {
            return Verdict.UNEVEN;
        }
        double ratio = secondHalfOverFirst(race);
        if (found.containsKey(FindingKind.LATE_RESERVE) || ratio > 1 + UNEVEN_HALVES) {
            return Verdict.NEGATIVE_SPLIT;
        }
        return ratio < 1 - UNEVEN_HALVES ? Verdict.UNEVEN : Verdict.EVEN;
    }

    /** The effort of the second half of moving time over that of the first on like ground; {@code NaN} when not known. */
    static double secondHalfOverFirst(Race race) {
        Interval first = race.betweenShares(0, 0.5);
        return race.ground().ratio(race.after(first), first);
    }
}
