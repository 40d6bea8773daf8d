package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SeasonWordsTest {
    private static List<String> named(int count) {
        return IntStream.rangeClosed(1, count).mapToObj(each -> "race " + each).toList();
    }

    /** Twenty stand one by one; of a decade the last twenty do, and a line says how many there are. */
    @Test
    void theLastRacesAreNamed() {
        assertThat(SeasonWords.last(named(20))).isEqualTo(named(20));
        assertThat(SeasonWords.last(named(800)))
                .hasSize(21)
                .startsWith("The last 20 of 800; --format json has all of them.", "race 781")
                .endsWith("race 800");
    }
}
