package io.github.wattledger.power;

/**
 * How well a threshold power is known, which decides how far sustainable power that rests on it can be trusted. The three
 * numbers of each basis were set on 1,000 simulated seasons and checked on 1,000 others ({@code docs/methods.md}).
 */
public enum ThresholdBasis {
    /** It was measured or set within the last {@link #RECENT_DAYS} days. */
    RECENT(0.03, 0.02, 0.02),
    /** It is older, or nobody knows how old it is. */
    OLD(0.07, 0.05, 0.00),
    /** It was taken from efforts in the rider's own rides, none of which need have been maximal. */
    OWN_EFFORTS(0.06, 0.045, 0.01);

    /** Days for which a threshold counts as recent; common practice, no source. */
    public static final int RECENT_DAYS = 90;

    private final double logError;
    private final double extraLogError;
    private final double shortfall;

    ThresholdBasis(double logError, double extraLogError, double shortfall) {
        this.logError = logError;
        this.extraLogError = extraLogError;
        this.shortfall = shortfall;
    }

    /** Standard error of the threshold, in natural logarithms: 0.03 is about 3 %. */
    public double logError() {
        return logError;
    }

    /** What else may be wrong with a power that rests on own long rides, in natural logarithms. */
    double extraLogError() {
        return extraLogError;
    }

    /** How far the best few long rides still fall short of what the rider could have held, in natural logarithms. */
    double shortfall() {
        return shortfall;
    }
}
