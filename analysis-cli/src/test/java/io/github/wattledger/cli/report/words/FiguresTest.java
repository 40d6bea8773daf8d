package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
    @ParameterizedTest
    @CsvSource({"0,0:00:00", "59.6,0:01:00", "3599,0:59:59", "25320,7:02:00", "360000,100:00:00"})
    void clocksShowHoursMinutesAndSeconds(double seconds, String expected) {
        assertThat(Figures.clock(seconds)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"45,45 s", "119,119 s", "120,2 min", "4220,70 min", "7199,120 min", "7200,2 h", "25320,7 h 2 min"})
    void spansUseTheUnitThatSuitsThem(double seconds, String expected) {
        assertThat(Figures.span(seconds)).isEqualTo(expected);
    }

    /** Ends a fifth apart carry no four digits: by hand, to three digits and to whole tens at least, and to 5 g. */
    @ParameterizedTest
    @CsvSource({"18675,18700", "22826,22800", "9996,10000", "1234,1230", "456,460", "4,0", "0,0"})
    void energyOfAModelIsRoundedToWhatItKnows(double kilojoules, String expected) {
        assertThat(Figures.modelledKilojoules(kilojoules)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"161,160", "227,225", "62.6,65", "102,100", "2,0"})
    void gramsOfAModelAreRoundedToFive(double grams, String expected) {
        assertThat(Figures.modelledGrams(grams)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"14.1,14", "3.24,3.2", "3.0,3", "9.96,10", "-2.9,-2.9", "0.04,0", "-0.04,0", "1234.5,1235"})
    void briefNumbersHaveADecimalBelowTen(double value, String expected) {
        assertThat(Figures.brief(value)).isEqualTo(expected);
    }
}
