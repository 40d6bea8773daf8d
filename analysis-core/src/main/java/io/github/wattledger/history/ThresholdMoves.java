package io.github.wattledger.history;

import io.github.wattledger.power.HeartLine;
import io.github.wattledger.ride.Median;
import io.github.wattledger.ride.Outcome;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * How a threshold power moved over time, by the efforts of a rider's own rides. Rises are put in force one after the other; a
 * fall is only proposed.
 *
 * <p>The limits come from simulated years of three rides a week ({@code docs/methods.md}): a rise of 5 % is seen by the second
 * maximal effort within six weeks, rides up to 0.95 of threshold move nothing, and a false rise of 3 % or more comes in about one
 * year of twenty.
 */
public final class ThresholdMoves {
    /** What counts for a rise lies within so many days. */
    static final int RISE_DAYS = 42;

    /** What counts for a fall lies within so many days. */
    static final int FALL_DAYS = 63;

    private static final double TWO_EFFORTS_LOG = 0.02;
    private static final double ONE_EFFORT_LOG = 0.06;
    private static final double FALL_LOG = 0.05;

    /** What a lone effort may owe to a good day, in natural logarithms. */
    private static final double ALONE_LESS = 0.03;

    private static final double WITH_HEART_RATE_LESS = 0.01;

    /** What hard efforts still fall short of a maximal one, in natural logarithms. */
    private static final double FALL_MORE = 0.005;

    private static final double HEART_RATE_FALL_BPM = 2;
    private static final int LATE_RIDES = 12;
    private static final int EARLY_RIDES = 24;

    /** Heart rates are compared at this share of the first threshold. */
    private static final double HEART_RATE_POWER = 0.70;

    private final List<ThresholdMove> moves = new ArrayList<>();
    private final List<Seen> seen = new ArrayList<>();
    private final double heartRateW;
    private double inForceW;
    private LocalDate changed = LocalDate.MIN;

    private ThresholdMoves(double inForceW) {
        this.inForceW = inForceW;
        this.heartRateW = HEART_RATE_POWER * inForceW;
    }

    private record Seen(LocalDate day, @Nullable Double impliedW, boolean isKnownHard, OptionalDouble bpm) {}

    /**
     * The moves after a day.
     *
     * @param inForceW threshold power in force before the first ride, watts, above 0
     * @param rides the rides from then on, in any order
     * @param named the days whose rides the rider named as hard: all-out days, trials, races
     * @return rises, each from the value before it, and proposed falls, in the order of days
     */
    public static Outcome<List<ThresholdMove>> of(double inForceW, List<PastRide> rides, NamedDays named) {
        if (!(inForceW > 0)) {
            return Outcome.refused("no threshold to begin with");
        }
        ThresholdMoves all = new ThresholdMoves(inForceW);
        rides.stream()
                .sorted(Comparator.comparing(PastRide::day).thenComparing(PastRide::name))
                .forEach(ride -> all.take(ride, named.isHard(ride.day())));
        return Outcome.of(List.copyOf(all.moves));
    }

    private void take(PastRide ride, boolean isKnownHard) {
        HeartLine line = ride.traits().heartLine();
        OptionalDouble bpm = line == null ? OptionalDouble.empty() : line.bpmAt(heartRateW);
        Seen now = new Seen(ride.day(), ride.impliedThresholdW(), isKnownHard, bpm);
        seen.add(now);
        if (now.impliedW == null) {
            return;
        }
        double one = Math.log(now.impliedW / inForceW);
        Highest efforts = highestSince(now.day.minusDays(RISE_DAYS), false);
        if (efforts.two >= TWO_EFFORTS_LOG) {
            rise(now.day, (efforts.one + efforts.two) / 2, ThresholdMove.Reason.TWO_EFFORTS);
        } else if (one >= ONE_EFFORT_LOG) {
            rise(now.day, one - ALONE_LESS, ThresholdMove.Reason.ONE_FAR_EFFORT);
        } else if (efforts.one >= TWO_EFFORTS_LOG && heartRateShift() <= -HEART_RATE_FALL_BPM) {
            rise(now.day, efforts.one - WITH_HEART_RATE_LESS, ThresholdMove.Reason.EFFORT_AND_HEART_RATE);
        } else if (isKnownHard) {
            proposeFall(now.day);
        }
    }

    /**
     * The two highest implied thresholds over the one in force, in natural logarithms.
     *
     * @param one the highest, NaN where there is none
     * @param two the second highest, NaN where there is none
     */
    private record Highest(double one, double two) {}

    /** The highest since a day, and since the last change. */
    private Highest highestSince(LocalDate first, boolean onlyHard) {
        double oneW = Double.NaN;
        double twoW = Double.NaN;
        // From the last one back, as far as they count: a decade of rides is asked once for each of them.
        for (int i = seen.size() - 1; i >= 0; i--) {
            Seen each = seen.get(i);
            if (each.day.isBefore(first) || each.day.isBefore(changed)) {
                break;
            }
            Double watts = each.isKnownHard || !onlyHard ? each.impliedW : null;
            if (watts == null || !(watts > 0)) {
                continue;
            }
            if (!(watts <= oneW)) {
                twoW = oneW;
                oneW = watts;
            } else if (!(watts <= twoW)) {
                twoW = watts;
            }
        }
        return new Highest(Math.log(oneW / inForceW), Math.log(twoW / inForceW));
    }

    private void rise(LocalDate day, double log, ThresholdMove.Reason reason) {
        double toW = inForceW * Math.exp(log);
        moves.add(new ThresholdMove(day, inForceW, toW, reason));
        inForceW = toW;
        changed = day;
    }

    private void proposeFall(LocalDate day) {
        Highest hard = highestSince(day.minusDays(FALL_DAYS), true);
        if (!Double.isNaN(hard.two) && hard.one <= -FALL_LOG) {
            moves.add(new ThresholdMove(
                    day, inForceW, inForceW * Math.exp(hard.one + FALL_MORE), ThresholdMove.Reason.HARD_EFFORTS_BELOW));
        }
    }

    /** Median heart rate of the last twelve rides less that of the 24 before, beats per minute; 0 where there are fewer. */
    private double heartRateShift() {
        double[] bpm = seen.stream()
                .map(Seen::bpm)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .toArray();
        int late = bpm.length - LATE_RIDES;
        if (late < LATE_RIDES) {
            return 0;
        }
        int early = Math.max(0, late - EARLY_RIDES);
        return Median.of(Arrays.copyOfRange(bpm, late, bpm.length)) - Median.of(Arrays.copyOfRange(bpm, early, late));
    }
}
