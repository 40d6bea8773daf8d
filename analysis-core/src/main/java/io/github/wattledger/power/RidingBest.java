package io.github.wattledger.power;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.Optional;

/**
 * The best mean power of a ride over so many seconds of <b>riding</b>: seconds in which the rider stood are taken out, so
 * that a red light does not turn into weakness. Standing lets a rider recover, so a window in which the rider stood
 * for more than one twentieth of its riding time is not taken.
 *
 * @param seconds riding seconds of the window
 * @param watts mean power over them, watts; a riding second without power counts as 0 W
 * @param startSecond the first second of the window on the ride's axis
 * @param standingSeconds seconds within the window in which the rider did not ride
 * @param tooHighPercent by how much the stops may have raised it at most, percent
 */
public record RidingBest(int seconds, double watts, int startSecond, int standingSeconds, double tooHighPercent)
        implements Serializable {
    /** More standing than this share of the riding time, and a window says nothing about a threshold. */
    public static final double MOST_STANDING = 0.05;

    /** W′ over critical power, seconds, as in {@link TrialCriticalPower}. */
    private static final double RATIO_SECONDS = TrialCriticalPower.RATIO_SECONDS;

    /** Time constant with which W′ comes back while standing, seconds: Skiba et al. 2015, Med Sci Sports Exerc 47:2433. */
    private static final double RECOVERY_SECONDS = 330;

    private static final double PERCENT = 100;

    /**
     * The best window with little standing.
     *
     * @param seconds riding seconds, above 0
     * @return empty without power, when the ride has fewer riding seconds, or when the rider stood too much in every window
     * @throws IllegalArgumentException when the duration is not above 0
     */
    public static Optional<RidingBest> of(Ride ride, int seconds) {
        if (seconds < 1) {
            throw new IllegalArgumentException("seconds " + seconds + ", expected above 0");
        }
        if (!ride.has(Channel.POWER)) {
            return Optional.empty();
        }
        int[] riding = ridingSeconds(ride);
        double[] joules = joulesBefore(ride.series(Channel.POWER), riding);
        int best = -1;
        for (int from = 0; from + seconds <= riding.length; from++) {
            int standing = riding[from + seconds - 1] - riding[from] + 1 - seconds;
            boolean isUsable = standing <= MOST_STANDING * seconds;
            if (isUsable && (best < 0 || work(joules, from, seconds) > work(joules, best, seconds))) {
                best = from;
            }
        }
        return best < 0 ? Optional.empty() : Optional.of(window(riding, joules, best, seconds));
    }

    /**
     * {@link #of(Ride, int)} for one-second power of a ride without a stop.
     *
     * @param watts one-second power, watts, 0 or more; {@code NaN} is a missing second
     * @throws IllegalArgumentException when a reading is below 0 or infinite, or the duration is not above 0
     */
    public static Optional<RidingBest> of(double[] watts, int seconds) {
        return of(Ride.ofWatts(watts), seconds);
    }

    /**
     * By how much stops may raise a best at most, percent: while standing, W′ comes back and can be spent again.
     *
     * @param seconds riding seconds of the best, above 0
     * @param stopSeconds length of each stop, seconds, 0 or more
     */
    public static double stopBoundPercent(int seconds, double... stopSeconds) {
        double shares = 0;
        for (double stop : stopSeconds) {
            shares += 1 - Math.exp(-stop / RECOVERY_SECONDS);
        }
        return PERCENT * RATIO_SECONDS / seconds * shares;
    }

    private static RidingBest window(int[] riding, double[] joules, int from, int seconds) {
        double bound = 0;
        for (int i = from + 1; i < from + seconds; i++) {
            int stop = riding[i] - riding[i - 1] - 1;
            bound += stop == 0 ? 0 : stopBoundPercent(seconds, stop);
        }
        int standing = riding[from + seconds - 1] - riding[from] + 1 - seconds;
        return new RidingBest(seconds, work(joules, from, seconds) / seconds, riding[from], standing, bound);
    }

    private static double work(double[] joules, int from, int seconds) {
        return joules[from + seconds] - joules[from];
    }

    private static int[] ridingSeconds(Ride ride) {
        int[] riding = new int[ride.countSeconds(SecondState.RIDING)];
        int count = 0;
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) == SecondState.RIDING) {
                riding[count++] = second;
            }
        }
        return riding;
    }

    private static double[] joulesBefore(Series power, int[] riding) {
        double[] joules = new double[riding.length + 1];
        for (int i = 0; i < riding.length; i++) {
            double watts = power.isMeasured(riding[i]) ? power.get(riding[i]) : 0;
            joules[i + 1] = joules[i] + watts;
        }
        return joules;
    }
}
