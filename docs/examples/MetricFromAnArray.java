package examples;

import io.github.wattledger.load.NormalizedPower;
import java.util.OptionalDouble;

/** One number of the library from an array of one's own. */
public final class MetricFromAnArray {
    private MetricFromAnArray() {}

    /** Normalized power of one-second watts; {@code NaN} is a second without a reading. */
    public static OptionalDouble normalizedPower(double[] watts) {
        // region metric
        // one metric from one-second watts
        return NormalizedPower.of(watts);
        // endregion
    }
}
