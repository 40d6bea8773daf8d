package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** A ride stretch by stretch. One pass over the ride prepares it for any number of stretches. Immutable. */
public final class StretchLoads {
    private static final int HOUR_SECONDS = 3600;

    private final Ride ride;
    private final Series power;
    private final Series heartRate;
    private final Series temperature;
    private final StretchNormalizedPower normalizedPower;

    /** For each second and for the end: metres covered before it; null without distance and speed. */
    private final double @Nullable [] coveredM;

    private StretchLoads(Ride ride) {
        this.ride = ride;
        this.power = ride.timerSeries(Channel.POWER);
        this.heartRate = ride.timerSeries(Channel.HEART_RATE);
        this.temperature = ride.timerSeries(Channel.TEMPERATURE);
        this.normalizedPower = StretchNormalizedPower.of(ride);
        this.coveredM = coveredM(ride);
    }

    /** Prepares a ride. */
    public static StretchLoads of(Ride ride) {
        return new StretchLoads(ride);
    }

    /** The hours of a ride, pauses counted, the last of them shorter; none of a ride without a second. */
    public static List<Interval> hours(Ride ride) {
        List<Interval> hours = new ArrayList<>();
        for (int from = 0; from < ride.seconds(); from += HOUR_SECONDS) {
            hours.add(new Interval(from, Math.min(ride.seconds(), from + HOUR_SECONDS)));
        }
        return List.copyOf(hours);
    }

    /** A ride hour by hour. */
    public static List<StretchLoad> byHour(Ride ride) {
        return of(ride).ofAll(hours(ride));
    }

    /**
     * A ride hour by hour of which there is power alone.
     *
     * @param watts one-second power, watts; {@code NaN} is "not measured"
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static List<StretchLoad> byHour(double... watts) {
        return byHour(Ride.ofWatts(watts));
    }

    /** The laps of a ride as the recorder marked them; none where it marked none. */
    public static List<StretchLoad> byLap(Ride ride) {
        return of(ride).ofAll(ride.laps());
    }

    private List<StretchLoad> ofAll(List<Interval> stretches) {
        return stretches.stream().map(this::of).toList();
    }

    /**
     * A stretch of the ride.
     *
     * @throws IndexOutOfBoundsException when it does not lie within the ride
     */
    public StretchLoad of(Interval when) {
        Objects.checkFromToIndex(when.fromSecond(), when.toSecond(), ride.seconds());
        int moving = ride.countSeconds(SecondState.RIDING, when);
        int missing = ride.countSeconds(SecondState.MISSING, when);
        Double distanceM = distanceM(when);
        Series watts = power.slice(when.fromSecond(), when.toSecond());
        return new StretchLoad(
                when,
                moving,
                when.seconds() - moving - missing,
                missing,
                distanceM,
                watts.hasAny() ? CompensatedSum.ofMeasured(watts) / Work.JOULES_PER_KILOJOULE : null,
                boxed(CompensatedSum.meanOfMeasured(watts)),
                boxed(normalizedPower.of(when)),
                mean(heartRate, when),
                distanceM == null || moving == 0 ? null : distanceM / moving,
                mean(temperature, when));
    }

    private @Nullable Double distanceM(Interval when) {
        if (coveredM == null) {
            return null;
        }
        double metres = coveredM[when.toSecond()] - coveredM[when.fromSecond()];
        return metres >= 0 ? metres : null;
    }

    private static double @Nullable [] coveredM(Ride ride) {
        Series distance = ride.series(Channel.DISTANCE);
        Series speed = ride.timerSeries(Channel.SPEED);
        boolean hasDistance = distance.hasAny();
        if (!hasDistance && !speed.hasAny()) {
            return null;
        }
        double[] covered = new double[ride.seconds() + 1];
        double first = Double.NaN;
        for (int second = 0; second < ride.seconds(); second++) {
            double before = covered[second];
            if (!hasDistance) {
                covered[second + 1] = before + (speed.isMeasured(second) ? speed.get(second) : 0);
            } else if (distance.isMeasured(second)) {
                first = Double.isNaN(first) ? distance.get(second) : first;
                covered[second + 1] = distance.get(second) - first;
            } else {
                covered[second + 1] = before;
            }
        }
        return covered;
    }

    private static @Nullable Double mean(Series series, Interval when) {
        return boxed(CompensatedSum.meanOfMeasured(series.slice(when.fromSecond(), when.toSecond())));
    }

    private static @Nullable Double boxed(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }
}
