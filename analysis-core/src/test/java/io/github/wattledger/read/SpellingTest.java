package io.github.wattledger.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Distances by hand: one letter left out, two swapped (two replacements), one shared. */
class SpellingTest {
    @ParameterizedTest
    @CsvSource({"mas_kg, mass_kg, 1", "chianrings, chainrings, 2", "cogs, cogs, 0", "'', cogs, 4", "road, gears, 4"})
    void lettersAreCounted(String from, String to, int changes) {
        assertThat(Spelling.changes(from, to)).isEqualTo(changes);
    }

    @Test
    void theNearestIsGuessed() {
        assertThat(Spelling.nearest("--formt", List.of("--from", "--format"))).isEqualTo("--format");
    }

    @Test
    void whatIsNotAlikeIsNotGuessed() {
        assertThat(Spelling.nearest("colour", List.of("cogs", "gears"))).isNull();
    }
}
