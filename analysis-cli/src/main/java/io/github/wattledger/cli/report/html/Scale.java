package io.github.wattledger.cli.report.html;

import java.util.ArrayList;
import java.util.List;

/** From a value to a share of an axis, 0 at its low end and 1 at its high one. */
final class Scale {
    private static final double[] ROUND = {1, 2, 2.5, 5, 10};

    private final double low;
    private final double high;
    private final boolean logarithmic;

    private Scale(double low, double high, boolean logarithmic) {
        this.low = low;
        this.high = high > low ? high : low + 1;
        this.logarithmic = logarithmic;
    }

    static Scale linear(double low, double high) {
        return new Scale(low, high, false);
    }

    /** Both ends above 0. */
    static Scale logarithmic(double low, double high) {
        return new Scale(low, high, true);
    }

    /** From 0 to a round number above the value. */
    static Scale fromZero(double highest) {
        double step = roundStep(highest, 6);
        return linear(0, Math.max(step, Math.ceil(highest / step) * step));
    }

    /** Around the values, with round ends. */
    static Scale around(double lowest, double highest) {
        double step = roundStep(Math.max(highest - lowest, 1), 4);
        double low = Math.floor(lowest / step) * step;
        return linear(low, Math.max(low + step, Math.ceil(highest / step) * step));
    }

    double high() {
        return high;
    }

    double low() {
        return low;
    }

    double share(double value) {
        return logarithmic ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
    }

    /** Round values along a linear scale, about so many. */
    List<Double> ticks(int about) {
        double step = roundStep(high - low, about);
        List<Double> ticks = new ArrayList<>();
        for (double tick = Math.ceil(low / step - 1e-9) * step; tick <= high + step * 1e-6; tick += step) {
            ticks.add(tick);
        }
        return ticks;
    }

    /** Whole hours, or parts of one, along a scale in seconds, about so many. */
    List<Double> clockTicks(int about) {
        double[] steps = {60, 300, 600, 900, 1800, 3600, 7200, 10_800, 14_400, 21_600, 43_200, 86_400};
        double step = steps[steps.length - 1];
        for (double each : steps) {
            if ((high - low) / each <= about) {
                step = each;
                break;
            }
        }
        List<Double> ticks = new ArrayList<>();
        for (double tick = Math.ceil(low / step) * step; tick <= high; tick += step) {
            ticks.add(tick);
        }
        return ticks;
    }

    private static double roundStep(double span, int about) {
        double rough = span / about;
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        for (double round : ROUND) {
            if (round * power >= rough * 0.999) {
                return round * power;
            }
        }
        return 10 * power;
    }
}
