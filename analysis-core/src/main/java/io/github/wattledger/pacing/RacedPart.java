package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * The part of a ride that was raced: the file of a race often holds the warm-up, the wait for the start and the way back as well.
 *
 * @param interval the raced seconds
 * @param leadInSeconds seconds before it that were set apart
 * @param tailSeconds seconds after it that were set apart
 */
public record RacedPart(Interval interval, int leadInSeconds, int tailSeconds) implements Serializable {
    /** A lead-in or tail is at least this long, and power is averaged over as much to find its end. */
    static final int LEAST_SECONDS = 300;

    /** Five-minute power that a lead-in or tail never reaches, as a fraction of threshold power. */
    static final double EASY_FRACTION = 0.4;

    /** The whole ride, with nothing set apart. */
    public static RacedPart whole(Ride ride) {
        return new RacedPart(new Interval(0, ride.seconds()), 0, 0);
    }

    /**
     * Sets apart a lead-in and a tail of five minutes or more in which five-minute mean power never reaches 0.4 times
     * threshold power; a ride that is as easy as that throughout is left whole.
     *
     * @param thresholdPowerW threshold power, watts, or null, which leaves the ride whole
     */
    public static RacedPart find(Ride ride, @Nullable Double thresholdPowerW) {
        Series watts = ride.series(Channel.POWER);
        if (thresholdPowerW == null || ride.seconds() <= LEAST_SECONDS || !watts.hasAny()) {
            return whole(ride);
        }
        double easyW = EASY_FRACTION * thresholdPowerW;
        int last = ride.seconds() - 1;
        int leadIn = easySeconds(second -> orZero(watts.get(second)), ride.seconds(), easyW);
        int tail = easySeconds(second -> orZero(watts.get(last - second)), ride.seconds(), easyW);
        if (leadIn + tail >= ride.seconds()) {
            return whole(ride);
        }
        return new RacedPart(new Interval(leadIn, ride.seconds() - tail), leadIn, tail);
    }

    /** The moving seconds within the part. */
    int movingSeconds(Ride ride) {
        return ride.countSeconds(SecondState.RIDING, interval);
    }

    private static double orZero(double watts) {
        return Double.isNaN(watts) ? 0 : watts;
    }

    private interface WattsAt {
        double at(int second);
    }

    /**
     * How many seconds from the start are easy: up to the first five-minute window that is not. Within that window the
     * hard riding begins at the second from which the work above the easy level, up to the window's end, is largest.
     */
    private static int easySeconds(WattsAt watts, int seconds, double easyW) {
        double sum = 0;
        int end = 0;
        for (; end < seconds; end++) {
            sum += watts.at(end) - (end >= LEAST_SECONDS ? watts.at(end - LEAST_SECONDS) : 0);
            if (end >= LEAST_SECONDS - 1 && sum >= easyW * LEAST_SECONDS) {
                break;
            }
        }
        if (end == seconds) {
            return seconds;
        }
        double above = 0;
        double most = Double.NEGATIVE_INFINITY;
        int begins = end;
        for (int second = end; second > end - LEAST_SECONDS; second--) {
            above += watts.at(second) - easyW;
            if (above > most) {
                most = above;
                begins = second;
            }
        }
        return begins >= LEAST_SECONDS ? begins : 0;
    }
}
