package io.github.wattledger.pacing;

import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.road.Replay;
import java.util.Arrays;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.polynomials.PolynomialFunctionLagrangeForm;

/**
 * A race with mistakes mended, for any share by which the seconds that take back are multiplied.
 *
 * <p>The power of a second is its own times a number, or times that number and the share. So the work of a bin of the
 * replay is linear in the share, and the fourth powers of the windows that end in it add up to a polynomial of the fourth
 * degree. Both are worked out once, in one pass over the seconds; a share then asks for one pass over the bins.
 */
final class MendedRace {
    private static final int WINDOW = NormalizedPower.WINDOW_SECONDS;

    private final Replay replay;

    /** For each bin, and last for the seconds outside all bins, which stay as long as they were. */
    private final double[] keptJ;

    private final double[] takingBackJ;
    private final int[] windows;
    private final double[][] fourthPowers = new double[5][];

    private final NavigableMap<Double, State> tried = new TreeMap<>();

    MendedRace(Race race, Replay replay, Mend mend) {
        this.replay = replay;
        int groups = replay.bins() + 1;
        keptJ = new double[groups];
        takingBackJ = new double[groups];
        windows = new int[groups];
        for (int power = 0; power < fourthPowers.length; power++) {
            fourthPowers[power] = new double[groups];
        }
        add(race, mend);
    }

    private void add(Race race, Mend mend) {
        Series watts = race.watts();
        double[] keptWindow = new double[WINDOW];
        double[] takingWindow = new double[WINDOW];
        double kept = 0;
        double taking = 0;
        int place = 0;
        int counted = 0;
        for (int second = 0; second < watts.size(); second++) {
            if (!watts.isMeasured(second) || race.ride().state(second) == SecondState.PAUSED) {
                continue;
            }
            double mendedW = watts.get(second) * mend.factor(second);
            double takingW = mend.takesBack(second) ? mendedW : 0;
            double keptW = mendedW - takingW;
            int bin = replay.binOf(second);
            int group = bin < 0 ? replay.bins() : bin;
            keptJ[group] += keptW;
            takingBackJ[group] += takingW;
            kept += keptW - keptWindow[place];
            taking += takingW - takingWindow[place];
            keptWindow[place] = keptW;
            takingWindow[place] = takingW;
            place = place + 1 == WINDOW ? 0 : place + 1;
            counted++;
            if (counted >= WINDOW) {
                addFourthPower(group, kept / WINDOW, taking / WINDOW);
            }
        }
    }

    /** (a + b share)^4, term by term. */
    private void addFourthPower(int group, double a, double b) {
        double aa = a * a;
        double ab = a * b;
        double bb = b * b;
        windows[group]++;
        fourthPowers[0][group] += aa * aa;
        fourthPowers[1][group] += 4 * aa * ab;
        fourthPowers[2][group] += 6 * aa * bb;
        fourthPowers[3][group] += 4 * ab * bb;
        fourthPowers[4][group] += bb * bb;
    }

    /** The race at a share, replayed; one that was asked for before is not replayed again. */
    State at(double share) {
        return tried.computeIfAbsent(share, this::replayed);
    }

    /** Where a quantity would be zero by the shares tried so far, of which there must be two or more. */
    double shareByInterpolation(ToDoubleFunction<State> rising) {
        double[] values = new double[tried.size()];
        double[] shares = new double[tried.size()];
        int count = 0;
        for (Map.Entry<Double, State> each : tried.entrySet()) {
            double value = rising.applyAsDouble(each.getValue());
            if (count == 0 || value > values[count - 1]) {
                values[count] = value;
                shares[count++] = each.getKey();
            }
        }
        return PolynomialFunctionLagrangeForm.evaluate(Arrays.copyOf(values, count), Arrays.copyOf(shares, count), 0);
    }

    /** Work and normalized power at share 1, each second as long as it was. */
    State unreplayed() {
        double[] seconds = new double[keptJ.length];
        Arrays.fill(seconds, 1);
        return state(1, seconds, 0);
    }

    private State replayed(double share) {
        double[] joules = new double[replay.bins()];
        for (int bin = 0; bin < joules.length; bin++) {
            joules[bin] = keptJ[bin] + share * takingBackJ[bin];
        }
        Replay.Result result = replay.withWork(joules);
        double[] seconds = new double[keptJ.length];
        for (int bin = 0; bin < joules.length; bin++) {
            seconds[bin] = result.secondsForSecondOf(bin);
        }
        seconds[joules.length] = 1;
        return state(share, seconds, result.savedSeconds());
    }

    private State state(double share, double[] seconds, double savedSeconds) {
        double workJ = 0;
        double fourth = 0;
        double time = 0;
        for (int group = 0; group < seconds.length; group++) {
            workJ += seconds[group] * (keptJ[group] + share * takingBackJ[group]);
            fourth += seconds[group] * fourthPower(group, share);
            time += seconds[group] * windows[group];
        }
        return new State(workJ, time == 0 ? Double.NaN : Math.sqrt(Math.sqrt(fourth / time)), savedSeconds);
    }

    private double fourthPower(int group, double share) {
        double sum = 0;
        for (int power = fourthPowers.length - 1; power >= 0; power--) {
            sum = sum * share + fourthPowers[power][group];
        }
        return sum;
    }

    /**
     * A race replayed.
     *
     * @param workJ work, joules
     * @param normalizedPowerW as in {@link NormalizedPower}, each window weighted with the time that its last second then
     *     took, watts; {@code NaN} under 30 seconds
     * @param savedSeconds moving time won against the recording, seconds
     */
    record State(double workJ, double normalizedPowerW, double savedSeconds) {}
}
