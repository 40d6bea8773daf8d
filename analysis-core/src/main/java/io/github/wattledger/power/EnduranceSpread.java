package io.github.wattledger.power;

/** How far riders of one threshold power differ in what they can hold for hours. */
final class EnduranceSpread {
    /** Standard deviation of riders' exponents about the guide's: own choice, wide enough for amateurs. */
    static final double EXPONENT = 0.055;

    /** How far riders may bend away from a power law, per squared logarithm of hours. Own choice. */
    static final double BEND = 0.006;

    /** An 80 % range reaches this many standard errors to each side of a normal distribution. */
    static final double ERRORS_OF_80_PERCENT = 1.2816;

    private EnduranceSpread() {}

    /** Variance of the general guide for a duration in hours, in squared natural logarithms. */
    static double varianceOfGuide(ThresholdBasis basis, double hours) {
        double logHours = Math.log(hours);
        double ofThreshold = basis.logError();
        double ofExponent = EXPONENT * logHours;
        double ofBend = BEND * logHours * logHours;
        return ofThreshold * ofThreshold + ofExponent * ofExponent + ofBend * ofBend;
    }
}
