package io.github.wattledger.cli.report.words;

import io.github.wattledger.load.RideTemperature;
import io.github.wattledger.ride.Ride;
import java.util.List;

/**
 * A number of a ride's temperature in words.
 *
 * @param label what it is, in lower case
 * @param value the number with its unit
 */
public record TemperatureWords(String label, String value) {
    /** What is said beside each temperature. */
    public static final String CAVEAT = "The sensor of a recorder in the sun reads too high.";

    /** Mean, highest and rise; nothing where no temperature was recorded. */
    public static List<TemperatureWords> of(Ride ride) {
        return RideTemperature.of(ride)
                .map(temperature -> List.of(
                        new TemperatureWords("average temperature", degrees(temperature.meanC())),
                        new TemperatureWords("highest temperature", degrees(temperature.highestC())),
                        new TemperatureWords(
                                "rise, first to last sixth", Figures.signed(temperature.riseC(), 0) + " deg C")))
                .orElse(List.of());
    }

    private static String degrees(double celsius) {
        return Figures.decimal(celsius, 0) + " deg C";
    }
}
