package io.github.wattledger.cli.report.words;

/** How a number is worded with its unit. */
public enum Wording {
    /** Elapsed time as on a watch, from seconds. */
    CLOCK,
    /** A stretch of time in its own words, from seconds. */
    SPAN,
    MINUTES,
    KILOMETRES,
    KILOMETRES_PER_HOUR,
    METRES,
    KILOJOULES,
    WATTS,
    WATTS_PER_BEAT,
    BEATS,
    REVOLUTIONS,
    /** Percent, to a tenth where it is small. */
    PERCENT,
    /** Percent, to a tenth. */
    TENTH_OF_PERCENT,
    /** Whole percent, from a fraction. */
    FRACTION_AS_PERCENT,
    /** No unit, to a tenth where it is small. */
    BRIEF,
    /** No unit, a whole number. */
    WHOLE,
    /** No unit, to a hundredth. */
    HUNDREDTHS;

    private static final double KMH_PER_MPS = 3.6;

    /**
     * The number in words.
     *
     * @param value in the unit of the constant's name, but elapsed time in seconds for {@link #CLOCK} and {@link #SPAN},
     *     lengths in metres and speeds in metres per second
     * @throws NumberFormatException when it is not finite
     */
    public String of(double value) {
        return switch (this) {
            case CLOCK -> Figures.clock(value);
            case SPAN -> Figures.span(value);
            case MINUTES -> Figures.minutes(value);
            case KILOMETRES -> Figures.kilometres(value) + " km";
            case KILOMETRES_PER_HOUR -> Figures.decimal(value * KMH_PER_MPS, 1) + " km/h";
            case METRES -> Figures.decimal(value, 0) + " m";
            case KILOJOULES -> Figures.decimal(value, 0) + " kJ";
            case WATTS -> Figures.watts(value);
            case WATTS_PER_BEAT -> Figures.decimal(value, 2) + " W a beat";
            case BEATS -> Figures.beats(value);
            case REVOLUTIONS -> Figures.decimal(value, 0) + " rpm";
            case PERCENT -> Figures.percent(value);
            case TENTH_OF_PERCENT -> Figures.decimal(value, 1) + " %";
            case FRACTION_AS_PERCENT -> Figures.fractionAsPercent(value);
            case BRIEF -> Figures.brief(value);
            case WHOLE -> Figures.decimal(value, 0);
            case HUNDREDTHS -> Figures.decimal(value, 2);
        };
    }
}
