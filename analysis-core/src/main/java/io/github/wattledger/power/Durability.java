package io.github.wattledger.power;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * Durability: the best effort of a duration after a level of work, against the best before it (Maunder et al. 2021, Sports
 * Med 51:1523; the split before and after 2,000 kJ in Spragg et al. 2022, Eur J Sport Sci). In one ride it shows
 * tiredness only when both efforts were all-out.
 *
 * <p>For comparison: well-trained amateurs lost 10.1 ± 6.5 % of 20-minute and 10.8 ± 7.8 % of 5-minute power after 1,000
 * kJ at 80 % of 20-minute power (Barsumyan et al. 2025, BMC Sports Sci Med Rehabil 17:192); professionals 3.2 % and 1.7 %
 * after work above critical power, and nothing after the same work below it.
 *
 * @param seconds the duration, seconds
 * @param afterKJ the work, kilojoules
 * @param fresherW best mean power over the duration before the work was done, watts
 * @param tiredW best mean power over the duration after it, watts
 */
public record Durability(int seconds, double afterKJ, double fresherW, double tiredW) implements Serializable {
    /** The durations looked at, seconds: five and twenty minutes. */
    static final int[] DURATIONS = {300, 1200};

    /** Work levels looked at, kilojoules; 2,000 is the split of Spragg et al. 2022. */
    static final double[] LEVELS_KJ = {1000, 2000, 3000};

    /** Each side must be this many times as long as the duration: a shorter one leaves no choice of a best. */
    private static final int LEAST_SIDE = 3;

    /** Change of the later best against the earlier one, percent; below 0 when power was lost. */
    public double changePercent() {
        return (tiredW / fresherW - 1) * 100;
    }

    /** The best 5 and 20 minutes before and after 1,000, 2,000 and 3,000 kJ, as far as the ride holds them. */
    public static List<Durability> of(Ride ride) {
        return search(ride.timerSeries(Channel.POWER), DURATIONS, LEVELS_KJ);
    }

    /**
     * {@link #of(Ride)} for one-second power.
     *
     * @param watts one-second power, watts; {@code NaN} counts as 0 W in a best and adds no work
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static List<Durability> of(Series watts) {
        return of(watts, DURATIONS, LEVELS_KJ);
    }

    /**
     * {@link #of(Series)} with durations and levels that the caller chooses.
     *
     * @param watts one-second power, watts; {@code NaN} counts as 0 W in a best and adds no work
     * @param seconds durations, seconds, each above 0
     * @param levelsKJ levels of work, kilojoules, each above 0
     * @throws IllegalArgumentException when a number is out of range
     */
    public static List<Durability> of(Series watts, int[] seconds, double[] levelsKJ) {
        for (int duration : seconds) {
            Bounds.requireAboveZero("seconds", duration);
        }
        for (double level : levelsKJ) {
            Bounds.requireAboveZero("levelsKJ", level);
        }
        return search(watts.requireReadings("watts"), seconds, levelsKJ);
    }

    /** {@link #of(Series, int[], double[])} for an array, which is copied. */
    public static List<Durability> of(double[] watts, int[] seconds, double[] levelsKJ) {
        return of(Series.of(watts), seconds, levelsKJ);
    }

    private static List<Durability> search(Series watts, int[] durations, double[] levelsKJ) {
        double[] workJ = new double[watts.size() + 1];
        for (int second = 0; second < watts.size(); second++) {
            workJ[second + 1] = workJ[second] + (watts.isMeasured(second) ? watts.get(second) : 0);
        }
        List<Durability> found = new ArrayList<>();
        for (double levelKJ : levelsKJ) {
            // The second in which the level is reached belongs to the time before it.
            int split = 0;
            while (split < workJ.length && workJ[split] < levelKJ * 1000) {
                split++;
            }
            for (int seconds : durations) {
                int after = watts.size() - split;
                if (split < LEAST_SIDE * seconds || after < LEAST_SIDE * seconds) {
                    continue;
                }
                double fresherW = bestW(workJ, 0, split, seconds);
                if (fresherW > 0) {
                    found.add(new Durability(seconds, levelKJ, fresherW, bestW(workJ, split, watts.size(), seconds)));
                }
            }
        }
        return List.copyOf(found);
    }

    private static double bestW(double[] workJ, int from, int to, int seconds) {
        double best = 0;
        for (int start = from; start + seconds <= to; start++) {
            double work = workJ[start + seconds] - workJ[start];
            if (work > best) {
                best = work;
            }
        }
        return best / seconds;
    }
}
