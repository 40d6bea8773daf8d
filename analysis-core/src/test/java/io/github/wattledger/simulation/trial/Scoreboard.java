package io.github.wattledger.simulation.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/** Counts what a review got right over many races, and writes it as Markdown. */
final class Scoreboard {
    private final List<TrialResult> all;
    private final List<TrialResult> known;
    private final StringBuilder text = new StringBuilder();

    Scoreboard(List<TrialResult> results) {
        all = List.copyOf(results);
        known = all.stream().filter(TrialResult::thresholdGiven).toList();
    }

    /** The whole table. */
    String markdown() {
        line(
                "%d races, %d of them with their threshold given; the rest are only in the last line of the first table.",
                all.size(), known.size());
        accusations();
        kinds();
        text.append(new PriceScore(known).markdown());
        whatIfs();
        wrongRaces();
        return text.toString();
    }

    private void accusations() {
        line("");
        line("| | | |");
        line("| --- | --- | --- |");
        share("clean races accused", known, result -> result.truth().isClean(), Scoreboard::isAccused);
        share(
                "on hard courses",
                known,
                result -> result.truth().isClean() && result.family().isHard(),
                Scoreboard::isAccused);
        share("headline right", known, result -> true, TrialResult::isHeadlineRight);
        share("even races blamed", known, TrialResult::isEvenWithoutDoubt, result -> !result.isHeadlineRight());
        share(
                "clean races called a race",
                known,
                result -> result.calledRace() != null,
                result -> Boolean.TRUE.equals(result.calledRace()));
        share(
                "clean races without a threshold accused",
                all,
                result -> !result.thresholdGiven() && result.truth().isClean(),
                Scoreboard::isAccused);
    }

    private static boolean isAccused(TrialResult result) {
        return !result.judged().accusations().isEmpty();
    }

    private void share(
            String what, List<TrialResult> of, Predicate<TrialResult> among, Predicate<TrialResult> counted) {
        long total = of.stream().filter(among).count();
        long count = of.stream().filter(among).filter(counted).count();
        line("| %s | %d of %d | %s |", what, count, total, percent(count, total));
    }

    private static String percent(long count, long total) {
        return total == 0 ? "-" : String.format(Locale.ROOT, "%.1f %%", 100.0 * count / total);
    }

    private void kinds() {
        line("");
        line("| finding | right | false | missed | doubtful, said | precision | recall | in its place |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- |");
        long allRight = 0;
        long allFalse = 0;
        long allMissed = 0;
        for (MistakeKind kind : MistakeKind.values()) {
            List<TrialResult> right = known.stream()
                    .filter(result -> result.isSaid(kind) && result.truth().dose(kind) == Dose.CLEAR)
                    .toList();
            long wrong = known.stream().filter(result -> result.isFalse(kind)).count();
            long missed = known.stream().filter(result -> result.isMissed(kind)).count();
            List<TrialResult> doubtful = known.stream()
                    .filter(result -> result.truth().dose(kind) == Dose.DOUBTFUL)
                    .toList();
            long said = doubtful.stream().filter(result -> result.isSaid(kind)).count();
            long placed =
                    right.stream().filter(result -> isInPlace(result, kind)).count();
            line(
                    "| %s | %d | %d | %d | %d of %d | %s | %s | %s |",
                    kind.words(),
                    right.size(),
                    wrong,
                    missed,
                    said,
                    doubtful.size(),
                    ratio(right.size(), right.size() + wrong),
                    ratio(right.size(), right.size() + missed),
                    ratio(placed, right.size()));
            allRight += right.size();
            allFalse += wrong;
            allMissed += missed;
        }
        line(
                "| all | %d | %d | %d | | %s | %s | |",
                allRight,
                allFalse,
                allMissed,
                ratio(allRight, allRight + allFalse),
                ratio(allRight, allRight + allMissed));
    }

    private static String ratio(long count, long total) {
        return total == 0 ? "-" : String.format(Locale.ROOT, "%.2f", (double) count / total);
    }

    /** Whether the seconds of a finding overlap those of the mistake by half of the shorter of both. */
    private static boolean isInPlace(TrialResult result, MistakeKind kind) {
        if (!result.putIn().containsKey(kind)) {
            return true;
        }
        return result.judged()
                .of(kind)
                .map(LibraryReview.Accusation::when)
                .filter(when -> {
                    var truth = result.putIn().getOrDefault(kind, when);
                    int shorter = Math.min(truth.seconds(), when.seconds());
                    return 2 * truth.overlapSeconds(when) >= shorter;
                })
                .isPresent();
    }

    private void whatIfs() {
        line("");
        line("| what if | truth within its range | median of said over truth |");
        line("| --- | --- | --- |");
        for (boolean climbing : new boolean[] {false, true}) {
            for (String change : List.of("drag area -20 %", "rider -5 kg")) {
                List<TrialResult.WhatIfCheck> checks = new ArrayList<>();
                all.stream()
                        .filter(result -> result.family().isClimbing() == climbing)
                        .flatMap(result -> result.whatIfs().stream())
                        .filter(check -> check.change().equals(change))
                        .forEach(checks::add);
                long within = checks.stream()
                        .filter(TrialResult.WhatIfCheck::isWithinRange)
                        .count();
                double median = Quantiles.of(checks.stream()
                                .mapToDouble(check -> check.said().minutes() / check.truthMinutes())
                                .toArray())
                        .at(0.5);
                line(
                        "| %s, %s | %d of %d (%s) | %.2f |",
                        change,
                        climbing ? "climbing" : "rolling",
                        within,
                        checks.size(),
                        percent(within, checks.size()),
                        median);
            }
        }
    }

    private void wrongRaces() {
        line("");
        line("Races judged wrongly (`-Drace=SEED` shows one):");
        line("");
        for (TrialResult result : all) {
            String faults = result.faults();
            if (!faults.isEmpty()) {
                line(
                        "- %d, %s, %.1f h%s: %s (in it: %s)",
                        result.seed(),
                        result.family().words(),
                        result.hours(),
                        result.thresholdGiven() ? "" : ", threshold not given",
                        faults,
                        result.truthWords());
            }
        }
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
