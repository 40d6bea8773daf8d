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
    public static List<TemperatureWords> of(Ride ride, Units units) {
        return RideTemperature.of(ride)
                .map(temperature -> List.of(
                        new TemperatureWords("average temperature", units.temperatureWords(temperature.meanC())),
                        new TemperatureWords("highest temperature", units.temperatureWords(temperature.highestC())),
                        new TemperatureWords("rise, first to last sixth", units.warmerWords(temperature.riseC()))))
                .orElse(List.of());
    }
}
