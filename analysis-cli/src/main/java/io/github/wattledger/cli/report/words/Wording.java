package io.github.wattledger.cli.report.words;

/** How a number is worded with its unit. */
public enum Wording {
    /** Elapsed time as on a watch, from seconds. */
    CLOCK,
    /** A stretch of time in its own words, from seconds. */
    SPAN,
    MINUTES,
    /** A distance, from metres. */
    DISTANCE,
    /** A speed, from metres per second. */
    SPEED,
    /** A height, from metres. */
    HEIGHT,
    /** A temperature, from degrees Celsius. */
    TEMPERATURE,
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

    /**
     * The number in words.
     *
     * @param value in the unit of the constant's name, or in the one named beside it
     * @param units in which lengths and speeds are shown
     * @throws NumberFormatException when it is not finite
     */
    public String of(double value, Units units) {
        return switch (this) {
            case CLOCK -> Figures.clock(value);
            case SPAN -> Figures.span(value);
            case MINUTES -> Figures.minutes(value);
            case DISTANCE -> units.distanceWords(value);
            case SPEED -> units.speedWords(value);
            case HEIGHT -> units.heightWords(value);
            case TEMPERATURE -> units.temperatureWords(value);
            case KILOJOULES -> Figures.decimal(value, 0) + " kJ";
            case WATTS -> Figures.watts(value);
            case WATTS_PER_BEAT -> Figures.wattsABeat(value);
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
