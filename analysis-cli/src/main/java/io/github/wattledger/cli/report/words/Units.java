package io.github.wattledger.cli.report.words;

import java.util.Locale;

/**
 * The units in which reports for people show lengths, speeds, masses and temperatures. Nothing else knows them: a number comes
 * in the unit of the library (metres, metres per second, kilograms, degrees Celsius) and leaves in that of the reader.
 *
 * <p>Power and work have one unit everywhere. Watts per kilogram, drag area (m2) and the density of air (kg/m3) are numbers of
 * the trade that nobody converts, and food is weighed in grams; they stay as they are.
 */
public enum Units {
    METRIC(
            "km",
            ReportUnit.KILOMETRE,
            ReportUnit.METRE,
            ReportUnit.METRE_AN_HOUR,
            ReportUnit.KILOMETRE_AN_HOUR,
            ReportUnit.METRE_A_SECOND,
            ReportUnit.KILOGRAM,
            ReportUnit.CELSIUS),

    IMPERIAL(
            "mile",
            ReportUnit.MILE,
            ReportUnit.FOOT,
            ReportUnit.FOOT_AN_HOUR,
            ReportUnit.MILE_AN_HOUR,
            ReportUnit.MILE_AN_HOUR,
            ReportUnit.POUND,
            ReportUnit.FAHRENHEIT);

    private final String place;
    private final ReportUnit distance;
    private final ReportUnit height;
    private final ReportUnit ascentRate;
    private final ReportUnit speed;
    private final ReportUnit wind;
    private final ReportUnit mass;
    private final ReportUnit temperature;

    Units(
            String place,
            ReportUnit distance,
            ReportUnit height,
            ReportUnit ascentRate,
            ReportUnit speed,
            ReportUnit wind,
            ReportUnit mass,
            ReportUnit temperature) {
        this.place = place;
        this.distance = distance;
        this.height = height;
        this.ascentRate = ascentRate;
        this.speed = speed;
        this.wind = wind;
        this.mass = mass;
        this.temperature = temperature;
    }

    /** What stands before a place on a course: {@code km} 12.5 or {@code mile} 7.8. */
    public String place() {
        return place;
    }

    /** Of distances. */
    public ReportUnit distance() {
        return distance;
    }

    /** Of heights, ascents and short lengths. */
    public ReportUnit height() {
        return height;
    }

    /** Of metres of ascent in an hour. */
    public ReportUnit ascentRate() {
        return ascentRate;
    }

    /** Of a rider's speed. */
    public ReportUnit speed() {
        return speed;
    }

    /** Of the speed of wind. */
    public ReportUnit wind() {
        return wind;
    }

    /** Of masses. */
    public ReportUnit mass() {
        return mass;
    }

    /** Of temperatures. */
    public ReportUnit temperature() {
        return temperature;
    }

    /** A distance with one decimal, without its unit, from metres. */
    public String distance(double metres) {
        return distance.number(metres, 1);
    }

    /** A distance with one decimal and its unit, from metres. */
    public String distanceWords(double metres) {
        return distance.words(metres, 1);
    }

    /** From which distance to which, without the unit, from metres. */
    public String distances(double fromM, double toM) {
        return distance(fromM) + " to " + distance(toM);
    }

    /** A place on a course, {@code km 12.5} or {@code mile 7.8}, from metres. */
    public String at(double metres) {
        return place + " " + distance(metres);
    }

    /** A stretch of a course, {@code km 12.5 to 14.0} or {@code miles 7.8 to 8.7}, from metres. */
    public String between(double fromM, double toM) {
        return (this == IMPERIAL ? "miles" : place) + " " + distances(fromM, toM);
    }

    /** A height in whole metres or feet, with its unit, from metres. */
    public String heightWords(double metres) {
        return height.words(metres, 0);
    }

    /** A limit in metres as a round number of the reader's unit, which may lie a few percent beside it. */
    public String roundHeightWords(double metres) {
        double value = height.of(metres);
        double step = Math.pow(10, Math.floor(Math.log10(value)) - 1);
        return Figures.decimal(Math.rint(value / step) * step, 0) + " " + height.symbol();
    }

    /** A speed to a tenth, with its unit, from metres per second. */
    public String speedWords(double metresPerSecond) {
        return speed.words(metresPerSecond, 1);
    }

    /** A temperature in whole degrees, with its unit, from degrees Celsius. */
    public String temperatureWords(double celsius) {
        return temperature.number(celsius, 0) + " deg " + temperature.symbol();
    }

    /** The scale of temperatures in full, for instance {@code degrees Celsius}. */
    public String degrees() {
        return "degrees " + PlainText.capital(temperature.name().toLowerCase(Locale.ROOT));
    }

    /** A difference of temperatures in whole degrees, with sign and unit, from degrees Celsius. */
    public String warmerWords(double celsius) {
        return Figures.signed(temperature.ofDifference(celsius), 0) + " deg " + temperature.symbol();
    }
}
