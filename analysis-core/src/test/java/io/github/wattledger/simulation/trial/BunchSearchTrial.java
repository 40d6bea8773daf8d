package io.github.wattledger.simulation.trial;

import io.github.wattledger.bunch.BunchProposal;
import io.github.wattledger.bunch.BunchSearch;
import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.RigChoice;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Looks for bunches in many races whose truth is known and prints how often they are found, as Markdown:
 *
 * <pre>mvn -q -Pbunches -pl analysis-core test-compile exec:java -Draces=100 -Dseed=1</pre>
 */
public final class BunchSearchTrial {
    private static final int NEAR_SECONDS = 300;

    private BunchSearchTrial() {}

    /**
     * What came of one race.
     *
     * @param told how many stretches were proposed
     * @param hit whether one of them overlaps the bunch by more than half of what both cover together
     * @param nearEnds whether both ends of that one are within five minutes
     * @param inRange whether the mean saving lies in its range
     * @param off by how much its best guess is too high
     * @param mostOfRide whether the level of the ride says that most of it was in a bunch
     * @param whyNot why stretches cannot be told, or null
     */
    record Result(
            int told,
            boolean hit,
            boolean nearEnds,
            boolean inRange,
            double off,
            boolean mostOfRide,
            @Nullable String whyNot) {
        static Result of(BunchDay day, long seed, Function<BunchDayRace, RigChoice> rig) {
            BunchDayRace race = new BunchDayRace(day, seed);
            BunchProposal proposal =
                    BunchSearch.of(race.recorded(), Course.of(race.recorded()).orElse(null), rig.apply(race));
            boolean hit = false;
            boolean near = false;
            boolean inRange = false;
            double off = Double.NaN;
            Interval bunch = race.bunch();
            for (BunchProposal.Stretch stretch : proposal.stretches()) {
                if (bunch != null && overlap(bunch, stretch.when()) > 0.5) {
                    hit = true;
                    near = Math.abs(bunch.fromSecond() - stretch.when().fromSecond()) <= NEAR_SECONDS
                            && Math.abs(bunch.toSecond() - stretch.when().toSecond()) <= NEAR_SECONDS;
                    inRange = stretch.savingLow() <= day.saving() && day.saving() <= stretch.savingHigh();
                    off = stretch.saving() - day.saving();
                }
            }
            BunchProposal.Level level = proposal.mostOfRide();
            return new Result(
                    proposal.stretches().size(),
                    hit,
                    near,
                    inRange,
                    off,
                    level != null && level.isSheltered(),
                    proposal.whyNoStretches());
        }

        boolean isDeclined() {
            return whyNot != null;
        }

        private static double overlap(Interval one, Interval other) {
            int common = Math.max(
                    0, Math.min(one.toSecond(), other.toSecond()) - Math.max(one.fromSecond(), other.fromSecond()));
            return common / (double) (one.seconds() + other.seconds() - common);
        }
    }

    private static Map<String, BunchDay> days() {
        Map<String, BunchDay> days = new LinkedHashMap<>();
        for (boolean loop : List.of(true, false)) {
            String course = loop ? "loop" : "one way";
            for (double wind : new double[] {0, 2, 3.5}) {
                days.put(String.format(Locale.ROOT, "%s, %.1f m/s", course, wind), BunchDay.alone(wind, loop));
            }
            days.put(course + ", builds to 3.4 m/s", BunchDay.alone(2, loop).building());
            days.put(course + ", builds to 6 m/s", BunchDay.alone(3.5, loop).building());
            days.put(course + ", 2 m/s twice as patchy", BunchDay.alone(2, loop).twiceAsPatchy());
            days.put(
                    course + ", 2 m/s, one smooth stretch",
                    BunchDay.alone(2, loop).on(BunchDay.Road.ONE_SMOOTH_STRETCH));
            days.put(course + ", 2 m/s, mixed road", BunchDay.alone(2, loop).on(BunchDay.Road.MIXED));
        }
        return days;
    }

    /**
     * Prints the table.
     *
     * @param args how many races of each kind, and the first seed
     */
    public static void main(String... args) {
        int races = Integer.parseInt(args[0]);
        long first = Long.parseLong(args[1]);
        List<UnaryOperator<BunchDay>> bunches = List.of(
                day -> day,
                day -> day.with(0.45, 20),
                day -> day.with(0.35, 30),
                day -> day.with(0.35, 75),
                day -> day.with(0.25, 45),
                day -> day.wholly(0.35),
                day -> day.wholly(0.45));
        Map<String, Integer> reasons = new TreeMap<>();
        System.out.println(
                "| told or hit / ends / in range | alone | 45 %, 20 min | 35 %, 30 min | 35 %, 75 min | 25 %, 45 min | 35 %, all | 45 %, all |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- |");
        days().forEach((name, day) -> {
            for (boolean known : new boolean[] {true, false}) {
                List<String> cells = new ArrayList<>();
                for (UnaryOperator<BunchDay> bunch : bunches) {
                    BunchDay raced = bunch.apply(day);
                    List<Result> results = LongStream.range(first, first + races)
                            .mapToObj(seed ->
                                    Result.of(raced, seed, known ? BunchDayRace::knownRig : BunchDayRace::unknownRig))
                            .toList();
                    results.stream()
                            .flatMap(each -> Stream.ofNullable(each.whyNot()))
                            .forEach(reason -> reasons.merge(reason, 1, Integer::sum));
                    boolean isPart = raced.saving() > 0 && Double.isFinite(raced.bunchMinutes());
                    cells.add(cell(results, isPart));
                }
                System.out.println("| " + name + (known ? ", one kind told" : ", nothing told") + " | "
                        + String.join(" | ", cells) + " |");
            }
        });
        reasons.forEach((reason, count) -> System.out.println("\n" + count + " times: " + reason));
    }

    private static String cell(List<Result> results, boolean isPart) {
        double all = results.size();
        long declined = results.stream().filter(Result::isDeclined).count();
        if (!isPart) {
            return String.format(
                    Locale.ROOT,
                    "%.2f, level %.2f, cannot tell %.2f",
                    results.stream().filter(each -> each.told() > 0).count() / all,
                    results.stream().filter(Result::mostOfRide).count() / all,
                    declined / all);
        }
        double hits = results.stream().filter(Result::hit).count();
        return String.format(
                Locale.ROOT,
                "%.2f / %.2f / %.2f, off %+.2f, cannot tell %.2f",
                hits / all,
                results.stream().filter(Result::nearEnds).count() / all,
                results.stream().filter(Result::inRange).count() / hits,
                results.stream()
                        .mapToDouble(Result::off)
                        .filter(off -> !Double.isNaN(off))
                        .average()
                        .orElse(Double.NaN),
                declined / all);
    }
}
