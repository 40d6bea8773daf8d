package io.github.wattledger.cli.report.words;

/**
 * A unit in which a report shows a number of the library. Miles, feet and pounds are those of the international agreement of
 * 1959.
 */
public enum ReportUnit {
    KILOMETRE("km", 1000),
    METRE("m", 1),
    METRE_AN_HOUR("m/h", 1),
    KILOMETRE_AN_HOUR("km/h", 1 / 3.6),
    METRE_A_SECOND("m/s", 1),
    KILOGRAM("kg", 1),
    CELSIUS("C", 1),

    MILE("mi", 1609.344),
    FOOT("ft", 0.3048),
    FOOT_AN_HOUR("ft/h", 0.3048),
    MILE_AN_HOUR("mph", 1609.344 / 3600),
    POUND("lb", 0.45359237),
    FAHRENHEIT("F", 5 / 9.0, 32);

    private final String symbol;
    private final double size;
    private final double zero;

    ReportUnit(String symbol, double size) {
        this(symbol, size, 0);
    }

    ReportUnit(String symbol, double size, double zero) {
        this.symbol = symbol;
        this.size = size;
        this.zero = zero;
    }

    /** As it stands behind a number. */
    public String symbol() {
        return symbol;
    }

    /** How much of the library's unit it is: of a metre, a metre per second, a kilogram, a degree Celsius. */
    public double size() {
        return size;
    }

    /** What this unit shows where the library's number is 0; a scale of temperature need not begin there. */
    public double zero() {
        return zero;
    }

    /** A number of the library in this unit. */
    public double of(double value) {
        return value / size + zero;
    }

    /** A difference between two numbers of the library in this unit. */
    public double ofDifference(double difference) {
        return difference / size;
    }

    /** A number of the library in this unit, without its symbol. */
    public String number(double value, int decimals) {
        return Figures.decimal(of(value), decimals);
    }

    /** A number of the library in this unit, with its symbol. */
    public String words(double value, int decimals) {
        return number(value, decimals) + " " + symbol;
    }
}
