package io.github.wattledger.season;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Acute and chronic load, day by day: exponentially weighted averages of daily training stress with time constants of 7
 * and 42 days. Each calendar day counts, a day without a ride as 0; today's average is yesterday's plus (1 − e^(−1/tau))
 * of what today lies above it.
 *
 * <p>Source of the two averages: E. W. Banister et al. 1975 (A systems model of training for athletic performance); time
 * constants of 7 and 42 days are common practice.
 *
 * @param startAcute acute load before the first day
 * @param startChronic chronic load before the first day
 * @param days every calendar day from the first to the last, rising
 */
public record LoadHistory(double startAcute, double startChronic, List<Day> days) implements Serializable {
    /** Time constant of acute load, days. */
    public static final int ACUTE_DAYS = 7;
    /** Time constant of chronic load, days. */
    public static final int CHRONIC_DAYS = 42;

    /** How far back a ramp looks, days. */
    static final int RAMP_DAYS = 7;

    /**
     * One calendar day.
     *
     * @param day the day
     * @param trainingStress training stress of its rides
     * @param acute acute load at its end
     * @param chronic chronic load at its end
     * @param balance chronic less acute load at the end of the day before
     * @param ratio acute over chronic load at its end, or null while there is no chronic load; it describes, and whether
     *     it says anything about injury is disputed
     * @param ramp what chronic load has gained in seven days, or null where the history does not reach back so far
     */
    public record Day(
            LocalDate day,
            double trainingStress,
            double acute,
            double chronic,
            double balance,
            @Nullable Double ratio,
            @Nullable Double ramp)
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
     * @param startAcute acute load before the first day
     * @param startChronic chronic load before the first day
     * @throws IllegalArgumentException when the last day lies before the first
     */
    static LoadHistory of(
            LocalDate first,
            LocalDate last,
            Map<LocalDate, Double> stressByDay,
            double startAcute,
            double startChronic) {
        if (last.isBefore(first)) {
            throw new IllegalArgumentException("the last day " + last + " lies before the first, " + first);
        }
        double acuteShare = -Math.expm1(-1.0 / ACUTE_DAYS);
        double chronicShare = -Math.expm1(-1.0 / CHRONIC_DAYS);
        double acute = startAcute;
        double chronic = startChronic;
        int count = Math.toIntExact(ChronoUnit.DAYS.between(first, last)) + 1;
        List<Day> days = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            LocalDate day = first.plusDays(i);
            double stress = stressByDay.getOrDefault(day, 0.0);
            double balance = chronic - acute;
            acute += (stress - acute) * acuteShare;
            chronic += (stress - chronic) * chronicShare;
            Double before = i < RAMP_DAYS - 1
                    ? null
                    : (Double)
                            (i == RAMP_DAYS - 1
                                    ? startChronic
                                    : days.get(i - RAMP_DAYS).chronic());
            days.add(new Day(
                    day,
                    stress,
                    acute,
                    chronic,
                    balance,
                    chronic > 0 ? (Double) (acute / chronic) : null,
                    before == null ? null : (Double) (chronic - before)));
        }
        return new LoadHistory(startAcute, startChronic, days);
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
     * Whether acute over chronic load says anything: the history is as long as chronic load looks back, or begins with a
     * chronic load from before it.
     */
    public boolean isLongEnoughForRatio() {
        return startChronic > 0 || days.size() >= CHRONIC_DAYS;
    }

    /** How many days it takes until the start values weigh under 5 percent of chronic load: three time constants. */
    public static int settlingDays() {
        return 3 * CHRONIC_DAYS;
    }
}
