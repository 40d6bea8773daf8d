package io.github.wattledger.power;

import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serial;
import java.io.Serializable;

/** The highest mean power for every duration. */
public final class MeanMaximalCurve implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    private final Series bestWatts;

    private MeanMaximalCurve(Series bestWatts) {
        this.bestWatts = bestWatts;
    }

    /** The curve of a ride's power over elapsed time. */
    public static MeanMaximalCurve of(Ride ride) {
        Series power = ride.series(io.github.wattledger.ride.Channel.POWER);
        return new MeanMaximalCurve(Series.generate(power.size(), d -> {
            double best = 0;
            for (int from = 0; from + d < power.size(); from++) {
                double sum = 0;
                for (int i = from; i <= from + d; i++) {
                    sum += power.isMeasured(i) ? power.get(i) : 0;
                }
                best = Math.max(best, sum / (d + 1));
            }
            return best;
        }));
    }

    /** The curve of one-second power. */
    public static MeanMaximalCurve of(double[] watts) {
        return of(Ride.ofWatts(watts));
    }

    /** The longest duration, seconds; 0 without power. */
    public int longestSeconds() {
        return bestWatts.size();
    }

    /** Best mean power over this many seconds, watts. */
    public double watts(int seconds) {
        return bestWatts.get(seconds - 1);
    }
}
