package io.github.wattledger.pacing;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.pacing.price.Repair;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/**
 * One thing that was found in a race, not priced yet.
 *
 * @param kind what it is
 * @param found where it is, how strong it is, and what it rests on
 */
record Detection(FindingKind kind, Found found) {
    /**
     * Looks for kinds of findings.
     *
     * @param isAsked which of them to look for
     * @param cancellation when to end early
     * @return what was found and does not give way to something else, the weightiest first
     */
    static List<Detection> all(Race race, Predicate<Detector> isAsked, Cancellation cancellation) {
        List<Detection> detections = new ArrayList<>();
        for (FindingKind kind : FindingKind.values()) {
            cancellation.check();
            if (isAsked.test(kind.detector())) {
                kind.detector().detect(race).ifPresent(found -> detections.add(new Detection(kind, found)));
            }
        }
        return detections.stream()
                .filter(own -> detections.stream().noneMatch(own::givesWayTo))
                .sorted(Comparator.comparing((Detection each) -> each.found.severity())
                        .reversed())
                .toList();
    }

    /** The same with another way to repair it. */
    Detection repairedBy(Repair repair) {
        return new Detection(kind, new Found(found.severity(), found.when(), found.evidence(), found.advice(), repair));
    }

    private boolean givesWayTo(Detection other) {
        return kind.detector().givesWayTo(other.kind.detector(), found, other.found);
    }
}
