package io.github.wattledger.pacing.price;

import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.replay.Shelter;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.Arrays;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.polynomials.PolynomialFunctionLagrangeForm;
import org.jspecify.annotations.Nullable;

/**
 * A race with mistakes repaired, for any share by which the power of the seconds that make up for the repairs is multiplied.
 *
 * <p>The power of a second is its own times a factor, or times that factor and the share. So the work of a bin of the
 * replay is linear in the share, and the fourth powers of the windows that end in it add up to a polynomial of the fourth
 * degree. Both are worked out once, in one pass over the seconds, or over those that a further change reaches; a share
 * then asks for one pass over the bins.
 */
final class RepairedRace {
    private static final int WINDOW = NormalizedPower.WINDOW_SECONDS;

    private final Replay replay;
    private final PoweredSeconds powered;

    /** For each bin, and last for the seconds outside all bins, which stay as long as they were. */
    private final Sums[] sums;

    /** Of all groups together. */
    private final Sums total = new Sums();

    private final NavigableMap<Double, State> tried = new TreeMap<>();

    /** The shelter it is ridden in; null for the recorded air, whatever it held. */
    private final @Nullable Shelter shelter;

    private RepairedRace(Replay replay, PoweredSeconds powered, Sums[] sums, @Nullable Shelter shelter) {
        this.replay = replay;
        this.powered = powered;
        this.sums = sums;
        this.shelter = shelter;
    }

    /** The race as repairs leave it. */
    static RepairedRace of(Ride race, Replay replay, RepairedPower power) {
        RepairedRace repaired = new RepairedRace(
                replay, PoweredSeconds.of(race, replay), new Sums[PoweredSeconds.groups(replay)], null);
        boolean[] all = new boolean[repaired.sums.length];
        Arrays.fill(all, true);
        repaired.addUp(power, all);
        return repaired;
    }

    /**
     * The race as further repairs leave it.
     *
     * @param further a copy of this race's power, changed further; only groups with a changed second in one of their
     *     windows are added up again
     */
    RepairedRace with(RepairedPower further) {
        RepairedRace repaired = new RepairedRace(replay, powered, sums.clone(), shelter);
        boolean[] touched = new boolean[sums.length];
        for (Interval changed : further.changed()) {
            powered.markGroups(changed, WINDOW - 1, touched);
        }
        repaired.addUp(further, touched);
        return repaired;
    }

    /** The same race in a shelter. */
    RepairedRace in(Shelter other) {
        RepairedRace sheltered = new RepairedRace(replay, powered, sums, other);
        sheltered.total.add(total);
        return sheltered;
    }

    /** What the seconds of a bin add up to, and the windows of normalized power that end in them. */
    private static final class Sums {
        double keptJ;
        double makingUpJ;
        int windows;

        /** The fourth powers of the windows, a polynomial of the share: factors of its powers 0 to 4. */
        double power0;

        double power1;
        double power2;
        double power3;
        double power4;

        /** Adds (a + b share)^4, term by term. */
        void addWindow(double a, double b) {
            double aa = a * a;
            double ab = a * b;
            double bb = b * b;
            windows++;
            power0 += aa * aa;
            power1 += 4 * aa * ab;
            power2 += 6 * aa * bb;
            power3 += 4 * ab * bb;
            power4 += bb * bb;
        }

        void add(Sums other) {
            keptJ += other.keptJ;
            makingUpJ += other.makingUpJ;
            windows += other.windows;
            power0 += other.power0;
            power1 += other.power1;
            power2 += other.power2;
            power3 += other.power3;
            power4 += other.power4;
        }

        double joules(double share) {
            return keptJ + share * makingUpJ;
        }

        double fourthPowers(double share) {
            return (((power4 * share + power3) * share + power2) * share + power1) * share + power0;
        }
    }

    private void addUp(RepairedPower power, boolean[] groups) {
        for (int group = 0; group < groups.length; group++) {
            if (groups[group]) {
                sums[group] = new Sums();
            }
        }
        Window window = new Window(power);
        int to = 0;
        for (int from = 0; from < powered.count(); from = to) {
            int group = powered.group(from);
            to = powered.endOfGroup(from);
            if (groups[group]) {
                window.add(from, to, sums[group]);
            }
        }
        for (Sums group : sums) {
            total.add(group);
        }
    }

    /** The last seconds that were added, as many as a window of normalized power holds. */
    private final class Window {
        private final RepairedPower power;
        private final double[] keptW = new double[WINDOW];
        private final double[] makingUpW = new double[WINDOW];
        private double keptSum;
        private double makingUpSum;
        private int end;

        Window(RepairedPower power) {
            this.power = power;
        }

        void add(int from, int to, Sums group) {
            if (from != end) {
                Arrays.fill(keptW, 0);
                Arrays.fill(makingUpW, 0);
                keptSum = 0;
                makingUpSum = 0;
                // These seconds belong to other groups: they count here as a part of the first windows only.
                moveOver(Math.max(0, from - WINDOW + 1), from, new Sums());
            }
            moveOver(from, to, group);
        }

        /** Adds a stretch at a time, so that the sums need not be looked up every second. */
        private void moveOver(int from, int to, Sums group) {
            double kept = keptSum;
            double madeUp = makingUpSum;
            for (int k = from; k < to; k++) {
                int second = powered.second(k);
                double repairedW = powered.watts(k) * power.factor(second);
                double makingUp = power.makesUp(second) ? repairedW : 0;
                int place = k % WINDOW;
                kept += repairedW - makingUp - keptW[place];
                madeUp += makingUp - makingUpW[place];
                keptW[place] = repairedW - makingUp;
                makingUpW[place] = makingUp;
                group.keptJ += repairedW - makingUp;
                group.makingUpJ += makingUp;
                if (k >= WINDOW - 1) {
                    group.addWindow(kept / WINDOW, madeUp / WINDOW);
                }
            }
            keptSum = kept;
            makingUpSum = madeUp;
            end = to;
        }
    }

    /** The race replayed at a share; a share that was asked for before is not replayed again. */
    State at(double share) {
        return tried.computeIfAbsent(share, this::replayed);
    }

    /** Where a quantity would be zero by the shares tried so far; {@code NaN} where fewer than two have rising values. */
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
        if (count < 2) {
            return Double.NaN;
        }
        return PolynomialFunctionLagrangeForm.evaluate(Arrays.copyOf(values, count), Arrays.copyOf(shares, count), 0);
    }

    /** Work and normalized power at a share, each second as long as it was. */
    State unreplayed(double share) {
        return new State(total.joules(share), root4(total.fourthPowers(share), total.windows), 0);
    }

    /** How long what was done in a recorded second of each bin takes at a share, seconds. */
    double[] secondsOfBins(double share) {
        return secondsOfBins(replay(share));
    }

    private double[] secondsOfBins(Replay.Result result) {
        double[] seconds = new double[replay.bins()];
        for (int bin = 0; bin < seconds.length; bin++) {
            seconds[bin] = result.secondsForSecondOf(bin);
        }
        return seconds;
    }

    private Replay.Result replay(double share) {
        double[] joules = new double[replay.bins()];
        for (int bin = 0; bin < joules.length; bin++) {
            joules[bin] = sums[bin].joules(share);
        }
        return shelter == null ? replay.withWork(joules) : replay.withWork(joules, shelter);
    }

    private State replayed(double share) {
        Replay.Result result = replay(share);
        double[] seconds = Arrays.copyOf(secondsOfBins(result), sums.length);
        seconds[replay.bins()] = 1;
        return state(share, seconds, result.savedSeconds());
    }

    private State state(double share, double[] seconds, double savedSeconds) {
        double workJ = 0;
        double fourth = 0;
        double time = 0;
        for (int group = 0; group < seconds.length; group++) {
            workJ += seconds[group] * sums[group].joules(share);
            fourth += seconds[group] * sums[group].fourthPowers(share);
            time += seconds[group] * sums[group].windows;
        }
        return new State(workJ, root4(fourth, time), savedSeconds);
    }

    private static double root4(double fourthPowers, double seconds) {
        return seconds == 0 ? Double.NaN : Math.sqrt(Math.sqrt(fourthPowers / seconds));
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
