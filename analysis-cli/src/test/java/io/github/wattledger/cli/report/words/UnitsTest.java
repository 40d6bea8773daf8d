package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Checked against the definitions: yard and pound by the international agreement of 1959 (a yard is 0.9144 m, a pound
 * 0.45359237 kg), three feet and 1/1760 of a mile a yard; water freezes at 32 and boils at 212 degrees Fahrenheit.
 */
class UnitsTest {
    private static final double YARD_M = 0.9144;

    @Test
    void milesFeetAndPoundsAreThoseOfTheirDefinition() {
        assertThat(ReportUnit.MILE.of(1760 * YARD_M)).isEqualTo(1, within(1e-12));
        assertThat(ReportUnit.FOOT.of(YARD_M)).isEqualTo(3, within(1e-12));
        assertThat(ReportUnit.FOOT_AN_HOUR.of(YARD_M)).isEqualTo(3, within(1e-12));
        assertThat(ReportUnit.MILE_AN_HOUR.of(1760 * YARD_M / 3600)).isEqualTo(1, within(1e-12));
        assertThat(ReportUnit.POUND.of(0.45359237)).isEqualTo(1, within(1e-12));
        assertThat(ReportUnit.KILOMETRE_AN_HOUR.of(10)).isEqualTo(36, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0,32 deg F", "100,212 deg F", "-40,-40 deg F", "37,99 deg F"})
    void temperaturesHaveAnotherZero(double celsius, String words) {
        assertThat(Units.IMPERIAL.temperatureWords(celsius)).isEqualTo(words);
    }

    /** From freezing to boiling it is 180 degrees Fahrenheit, and 100 degrees Celsius. */
    @Test
    void aRiseOfTemperatureHasNone() {
        assertThat(Units.IMPERIAL.warmerWords(100)).isEqualTo("+180 deg F");
        assertThat(Units.IMPERIAL.warmerWords(-10)).isEqualTo("-18 deg F");
        assertThat(Units.METRIC.warmerWords(-10)).isEqualTo("-10 deg C");
    }

    @Test
    void aMarathonIsTwentySixPointTwoMiles() {
        assertThat(Units.IMPERIAL.distanceWords(42_195)).isEqualTo("26.2 mi");
        assertThat(Units.IMPERIAL.at(42_195)).isEqualTo("mile 26.2");
        assertThat(Units.METRIC.between(0, 42_195)).isEqualTo("km 0.0 to 42.2");
        assertThat(Units.IMPERIAL.between(0, 42_195)).isEqualTo("miles 0.0 to 26.2");
    }

    /** 500 m are 1640.4 ft, and 30 m are 98.4 ft. */
    @Test
    void aLimitIsARoundNumber() {
        assertThat(Units.METRIC.roundHeightWords(500)).isEqualTo("500 m");
        assertThat(Units.IMPERIAL.roundHeightWords(500)).isEqualTo("1600 ft");
        assertThat(Units.IMPERIAL.roundHeightWords(30)).isEqualTo("98 ft");
        assertThat(ClimbWords.whatCounts(Units.IMPERIAL)).startsWith("at least 1600 ft of ");
    }

    /** Sentences as the library writes them; the numbers by the definitions above. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "The records give 160.9 km, the device itself says 80.5 km; the records are used.|"
                        + "The records give 100.0 mi, the device itself says 50.0 mi; the records are used.",
                "below 0, over 130 km/h, or 8 m/s off within a second|below 0, over 81 mph, or 18 mph off within a second",
                "outside -500 to 9,000 m, or over 8 m in a second|outside -1,640 to 29,528 ft, or over 26 ft in a second",
                "outside -50 to 65 \u00B0C, or over 5 \u00B0C in a second|outside -58 to 149 deg F, or over 9 deg F in a second",
                "rider 74 kg (as given); drag area 0.36 m2, air 1.221 kg/m3|"
                        + "rider 163 lb (as given); drag area 0.36 m2, air 1.221 kg/m3",
                "3.63 W/kg for 20 min in race-160 km.fit after 2 h|3.63 W/kg for 20 min in race-160 km.fit after 2 h",
                "a leap of 1,852 m by 3 W|a leap of 6,076 ft by 3 W"
            })
    void theLibrarysSentencesAreConverted(String metric, String imperial) {
        assertThat(LibraryWords.of(metric, Units.IMPERIAL)).isEqualTo(imperial);
        assertThat(LibraryWords.of(metric, Units.METRIC)).isEqualTo(metric);
    }
}
