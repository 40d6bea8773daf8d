package io.github.wattledger.load;

import io.github.wattledger.ride.Series;
import java.util.OptionalDouble;

/**
 * A sum of many numbers that loses little more to rounding than the sum of one block does: short blocks are summed
 * plainly, and their sums with the rounding error carried along (W. Kahan, Further remarks on reducing truncation
 * errors, Communications of the ACM 8, 1965). Whole numbers are summed exactly up to 2^53.
 */
final class CompensatedSum {
    /** Short enough that a block loses nothing of note, long enough that carrying the error costs nothing of note. */
    private static final int BLOCK = 64;

    private double blockSum;
    private int blockCount;
    private double sum;
    private double lost;

    void add(double value) {
        blockSum += value;
        blockCount++;
        if (blockCount == BLOCK) {
            closeBlock();
        }
    }

    double value() {
        closeBlock();
        return sum;
    }

    private void closeBlock() {
        double corrected = blockSum - lost;
        double next = sum + corrected;
        lost = (next - sum) - corrected;
        sum = next;
        blockSum = 0;
        blockCount = 0;
    }

    /** The sum of what was measured in a series; 0 when nothing was. */
    static double ofMeasured(Series series) {
        return ofMeasured(series, 0, series.size());
    }

    private static double ofMeasured(Series series, int from, int to) {
        CompensatedSum sum = new CompensatedSum();
        for (int i = from; i < to; i++) {
            double value = series.get(i);
            if (!Double.isNaN(value)) {
                sum.add(value);
            }
        }
        return sum.value();
    }

    /** The mean of what was measured in a series; empty when nothing was. */
    static OptionalDouble meanOfMeasured(Series series) {
        return meanOfMeasured(series, 0, series.size());
    }

    /** The mean of what was measured in a part of a series; empty when nothing was. */
    static OptionalDouble meanOfMeasured(Series series, int from, int to) {
        int count = series.measuredCount(from, to);
        return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(ofMeasured(series, from, to) / count);
    }
}
