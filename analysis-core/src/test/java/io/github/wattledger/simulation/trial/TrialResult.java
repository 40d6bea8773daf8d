package io.github.wattledger.simulation.trial;

import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The truth of one race beside what was said of it.
 *
 * @param seed its seed
 * @param family its kind of course
 * @param hours its moving time
 * @param thresholdGiven whether the review knew the threshold
 * @param truth what is in it
 * @param putIn the seconds of the mistakes that were put in
 * @param judged what is said of it as a race
 * @param calledRace whether it is called a race when nobody says so; null where that was not asked
 * @param prices true prices of its clear mistakes
 * @param wholePrice true price of all that has one; null where nothing has
 * @param whatIfs answers beside their truth
 */
record TrialResult(
        long seed,
        CourseFamily family,
        double hours,
        boolean thresholdGiven,
        TrialTruth truth,
        Map<MistakeKind, Interval> putIn,
        LibraryReview.Judged judged,
        @Nullable Boolean calledRace,
        Map<MistakeKind, RiddenAgain.Price> prices,
        RiddenAgain.@Nullable Price wholePrice,
        List<WhatIfCheck> whatIfs) {
    private static final int WHAT_IF_EVERY = 3;

    /** An answer beside its truth, minutes saved. */
    record WhatIfCheck(String change, double truthMinutes, LibraryReview.Saved said) {
        boolean isWithinRange() {
            return said.lowMinutes() <= truthMinutes && truthMinutes <= said.highMinutes();
        }
    }

    /** Draws the race of a seed, has it reviewed, and rides it again where it holds mistakes. */
    static TrialResult of(long seed) {
        TrialRace race = TrialRace.of(seed);
        TrialTruth truth = TrialTruth.of(race);
        LibraryReview review = new LibraryReview(race);
        RiddenAgain again = new RiddenAgain(race);
        Map<MistakeKind, RiddenAgain.Price> prices = again.prices(truth.kinds(Dose.CLEAR));
        Set<MistakeKind> priced = EnumSet.noneOf(MistakeKind.class);
        race.mistakes().stream()
                .map(Mistake::kind)
                .filter(MistakeKind::hasPrice)
                .forEach(priced::add);
        RiddenAgain.Price whole = null;
        if (!prices.isEmpty()) {
            whole = priced.size() == 1 ? new ArrayList<>(prices.values()).get(0) : again.without(priced);
        }
        Map<MistakeKind, Interval> putIn = new EnumMap<>(MistakeKind.class);
        race.mistakes().forEach(mistake -> putIn.put(mistake.kind(), TrialTruth.seconds(race, mistake)));
        Boolean calledRace = null;
        if (truth.isClean() && race.thresholdGiven()) {
            calledRace = review.unasked().isRace();
        }
        return new TrialResult(
                seed,
                race.course().family(),
                race.ridden().movingSeconds() / 3600.0,
                race.thresholdGiven(),
                truth,
                putIn,
                review.asRace(),
                calledRace,
                prices,
                whole,
                Math.floorMod(seed, WHAT_IF_EVERY) == 0 ? whatIfs(again, review) : List.of());
    }

    private static List<WhatIfCheck> whatIfs(RiddenAgain again, LibraryReview review) {
        return List.of(
                new WhatIfCheck("drag area -20 %", again.savedMinutes(0.8, 0), review.saved(0.8, 0)),
                new WhatIfCheck("rider -5 kg", again.savedMinutes(1, -5), review.saved(1, -5)));
    }

    boolean isSaid(MistakeKind kind) {
        return judged.of(kind).isPresent();
    }

    /** A mistake that is found although there is none. */
    boolean isFalse(MistakeKind kind) {
        return isSaid(kind) && truth.dose(kind) == Dose.NEGLIGIBLE;
    }

    /** A mistake that is there and not found. */
    boolean isMissed(MistakeKind kind) {
        return !isSaid(kind) && truth.dose(kind) == Dose.CLEAR;
    }

    boolean isHeadlineRight() {
        return truth.defensibleHeadlines().contains(judged.headline());
    }

    /** Whether only one verdict fits: that it was even. */
    boolean isEvenWithoutDoubt() {
        return truth.defensibleHeadlines().equals(Set.of("EVEN"));
    }

    /** What is wrong about it, empty when nothing is. */
    String faults() {
        StringBuilder faults = new StringBuilder();
        for (MistakeKind kind : MistakeKind.values()) {
            if (isFalse(kind)) {
                faults.append(" false ").append(kind.words()).append(';');
            } else if (isMissed(kind)) {
                faults.append(" missed ").append(kind.words()).append(';');
            }
        }
        if (!isHeadlineRight()) {
            faults.append(" headline ")
                    .append(judged.headline())
                    .append(" for ")
                    .append(truth.defensibleHeadlines())
                    .append(';');
        }
        if (Boolean.FALSE.equals(calledRace)) {
            faults.append(" not called a race;");
        }
        return faults.toString().strip();
    }

    /** What is in it, for people. */
    String truthWords() {
        String sizes = truth.sizes().entrySet().stream()
                .filter(entry -> entry.getValue() >= 0.5)
                .map(entry -> String.format(
                        java.util.Locale.ROOT, "%s %.1f", entry.getKey().words(), entry.getValue()))
                .collect(Collectors.joining(", "));
        return sizes.isEmpty() ? "clean" : sizes;
    }
}
