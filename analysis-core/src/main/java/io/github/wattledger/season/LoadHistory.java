package io.github.wattledger.season;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The loads of 7 and of 42 days, day by day: exponentially weighted averages of daily training stress with time constants of 7
 * and 42 days. Each calendar day counts, a day without a ride as 0; today's average is yesterday's plus (1 − e^(−1/tau))
 * of what today lies above it.
 *
 * <p>Source of the two averages: E. W. Banister et al. 1975 (A systems model of training for athletic performance); time
 * constants of 7 and 42 days are common practice.
 *
 * @param startLoad7Days load of 7 days before the first day
 * @param startLoad42Days load of 42 days before the first day
 * @param days every calendar day from the first to the last, rising
 */
public record LoadHistory(double startLoad7Days, double startLoad42Days, List<Day> days) implements Serializable {
    /** Time constant of the load of 7 days, days. */
    public static final int SHORT_DAYS = 7;
    /** Time constant of the load of 42 days, days. */
    public static final int LONG_DAYS = 42;

    /** How far back a change of the load looks, days. */
    static final int CHANGE_DAYS = 7;

    /**
     * One calendar day.
     *
     * @param day the day
     * @param trainingStress training stress of its rides
     * @param load7Days load of 7 days at its end
     * @param load42Days load of 42 days at its end
     * @param loadDifference load of 42 days less load of 7 days at the end of the day before
     * @param loadRatio load of 7 days over load of 42 days at its end, or null while that is 0; it describes, and whether
     *     it says anything about injury is disputed
     * @param loadChange what the load of 42 days has gained in seven days, or null where the history does not reach back so far
     */
    public record Day(
            LocalDate day,
            double trainingStress,
            double load7Days,
            double load42Days,
            double loadDifference,
            @Nullable Double loadRatio,
            @Nullable Double loadChange)
            implements Serializable {}

    /** Copies the list. */
    public LoadHistory {
        days = List.copyOf(days);
    }

    /**
     * The history from a day to a day, both included, from loads of 0.
     *
     * @param stressByDay training stress by day; a day that is not in it counts as 0, one outside the range is left out
     * @throws IllegalArgumentException when the last day lies before the first
     */
    static LoadHistory of(LocalDate first, LocalDate last, Map<LocalDate, Double> stressByDay) {
        return of(first, last, stressByDay, 0, 0);
    }

    /**
     * The history from a day to a day, both included.
     *
     * @param stressByDay training stress by day; a day that is not in it counts as 0, one outside the range is left out
     * @param startLoad7Days load of 7 days before the first day
     * @param startLoad42Days load of 42 days before the first day
     * @throws IllegalArgumentException when the last day lies before the first
     */
    static LoadHistory of(
            LocalDate first,
            LocalDate last,
            Map<LocalDate, Double> stressByDay,
            double startLoad7Days,
            double startLoad42Days) {
        if (last.isBefore(first)) {
            throw new IllegalArgumentException("the last day " + last + " lies before the first, " + first);
        }
        double shareOf7Days = -Math.expm1(-1.0 / SHORT_DAYS);
        double shareOf42Days = -Math.expm1(-1.0 / LONG_DAYS);
        double load7Days = startLoad7Days;
        double load42Days = startLoad42Days;
        int count = Math.toIntExact(ChronoUnit.DAYS.between(first, last)) + 1;
        List<Day> days = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            LocalDate day = first.plusDays(i);
            double stress = stressByDay.getOrDefault(day, 0.0);
            double loadDifference = load42Days - load7Days;
            load7Days += (stress - load7Days) * shareOf7Days;
            load42Days += (stress - load42Days) * shareOf42Days;
            Double before = i < CHANGE_DAYS - 1
                    ? null
                    : (Double)
                            (i == CHANGE_DAYS - 1
                                    ? startLoad42Days
                                    : days.get(i - CHANGE_DAYS).load42Days());
            days.add(new Day(
                    day,
                    stress,
                    load7Days,
                    load42Days,
                    loadDifference,
                    load42Days > 0 ? (Double) (load7Days / load42Days) : null,
                    before == null ? null : (Double) (load42Days - before)));
        }
        return new LoadHistory(startLoad7Days, startLoad42Days, days);
    }

    /** The last day, or null when there is none. */
    public @Nullable Day last() {
        return days.isEmpty() ? null : days.get(days.size() - 1);
    }

    /** A day, or null when it is not in the history. */
    @Nullable Day on(LocalDate day) {
        if (days.isEmpty()) {
            return null;
        }
        long index = ChronoUnit.DAYS.between(days.get(0).day(), day);
        return index < 0 || index >= days.size() ? null : days.get((int) index);
    }

    /**
     * Whether the load of 7 days over that of 42 days says anything: the history is as long as the load of 42 days looks back, or begins with a
     * load of 42 days from before it.
     */
    public boolean isLongEnoughForRatio() {
        return startLoad42Days > 0 || days.size() >= LONG_DAYS;
    }

    /** How many days it takes until the start values weigh under 5 percent of the load of 42 days: three time constants. */
    public static int settlingDays() {
        return 3 * LONG_DAYS;
    }
}
