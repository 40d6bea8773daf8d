package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How a ride is introduced. */
class RideWordsTest {
    /** The public FIT profile spells its makers in small letters with underscores; no reader needs to see that. */
    @ParameterizedTest
    @CsvSource({
        "tide_mark, Tide Mark",
        "tide_mark ONE 2, Tide Mark ONE 2",
        "Tidemark One, Tidemark One",
        "tidemark Product 1508, tidemark Product 1508",
        "development tide_mark ONE, Tide Mark ONE",
    })
    void aDeviceIsNamedInWords(String stored, String shown) {
        assertThat(RideWords.deviceName(stored)).isEqualTo(shown);
    }
}
