package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Sums the findings of a race up in one verdict: the first that applies, beginning with the costliest mistake. */
final class Verdicts {
    /** A race is not even when the efforts of its halves on like ground differ by more than this share. */
    private static final double UNEVEN_HALVES = 0.05;

    /** The findings that give a verdict of their own, the one that causes others first. */
    private static final Map<FindingKind, Verdict> BY_FINDING = byFinding();

    private static Map<FindingKind, Verdict> byFinding() {
        Map<FindingKind, Verdict> verdicts = new LinkedHashMap<>();
        verdicts.put(FindingKind.OVER_HARD_START, Verdict.OVER_HARD_START);
        verdicts.put(FindingKind.ENERGY_CRASH, Verdict.FADED);
        verdicts.put(FindingKind.FADE, Verdict.FADED);
        verdicts.put(FindingKind.UNDER_PACED, Verdict.UNDER_PACED);
        verdicts.put(FindingKind.THRESHOLD_RIDING_EARLY, Verdict.UNEVEN);
        return verdicts;
    }

    private Verdicts() {}

    /**
     * A verdict and what it rests on.
     *
     * @param verdict the verdict
     * @param restsOn the kind of the finding behind it, or null where it rests on the halves of the race
     */
    record Reached(Verdict verdict, @Nullable FindingKind restsOn) {}

    static Reached of(double secondHalfOverFirst, List<Finding> findings) {
        Map<FindingKind, Severity> found = new EnumMap<>(FindingKind.class);
        findings.stream()
                .filter(finding ->
                        finding.severity() != Severity.OBSERVATION || finding.kind() == FindingKind.UNDER_PACED)
                .forEach(finding -> found.put(finding.kind(), finding.severity()));
        for (Map.Entry<FindingKind, Verdict> each : BY_FINDING.entrySet()) {
            if (found.containsKey(each.getKey())) {
                return new Reached(each.getValue(), each.getKey());
            }
        }
        if (found.get(FindingKind.SURGES) == Severity.MAJOR) {
            return new Reached(Verdict.UNEVEN, FindingKind.SURGES);
        }
        if (found.containsKey(FindingKind.LATE_RESERVE)) {
            return new Reached(Verdict.NEGATIVE_SPLIT, FindingKind.LATE_RESERVE);
        }
        if (secondHalfOverFirst > 1 + UNEVEN_HALVES) {
            return new Reached(Verdict.NEGATIVE_SPLIT, null);
        }
        return new Reached(secondHalfOverFirst < 1 - UNEVEN_HALVES ? Verdict.UNEVEN : Verdict.EVEN, null);
    }

    /** The effort of the second half of moving time over that of the first on like ground; {@code NaN} when not known. */
    static double secondHalfOverFirst(Race race) {
        Interval first = race.betweenShares(0, 0.5);
        return race.ground().ratio(race.after(first), first);
    }
}
