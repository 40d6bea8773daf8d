package io.github.wattledger.load;

import io.github.wattledger.ride.Series;
import java.util.OptionalDouble;

/**
 * A sum that carries its own rounding error along, so that adding tens of thousands of numbers loses no more than adding
 * two. Whole numbers are summed exactly up to 2^53. W. Kahan, Further remarks on reducing truncation errors,
 * Communications of the ACM 8 (1965).
 */
final class CompensatedSum {
    private double sum;
    private double lost;

    void add(double value) {
        double corrected = value - lost;
        double next = sum + corrected;
        lost = (next - sum) - corrected;
        sum = next;
    }

    double value() {
        return sum;
    }

    /** The sum of what was measured; 0 when nothing was. */
    static double ofMeasured(Series series) {
        CompensatedSum sum = new CompensatedSum();
        for (int i = 0; i < series.size(); i++) {
            double value = series.get(i);
            if (!Double.isNaN(value)) {
                sum.add(value);
            }
        }
        return sum.value();
    }

    /** The mean of what was measured; empty when nothing was. */
    static OptionalDouble meanOfMeasured(Series series) {
        int count = series.measuredCount();
        return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(ofMeasured(series) / count);
    }
}
