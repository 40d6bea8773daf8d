package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.pacing.TimeLedger.Entry;
import java.util.List;
import org.junit.jupiter.api.Test;

class TimeLedgerTest {
    private static final Entry FADE = new Entry("fade", 1, 12);
    private static final Entry STOPS = new Entry("stopped-time", 6, 6);
    private static final Entry ALL = new Entry(TimeLedger.ALL_AT_ONCE, 7, 15);
    private static final Entry ABILITY = new Entry("against your ability (a guide)", 3, 9);

    private static TimeLedger ledger(Entry... entries) {
        return new TimeLedger(100, 90, 10, 0, 0, List.of(entries), List.of());
    }

    @Test
    void theMistakesTogetherAreNotTheirSum() {
        assertThat(ledger(FADE, STOPS, ALL, ABILITY).allAtOnce()).contains(ALL);
    }

    @Test
    void oneMistakeIsAllOfThem() {
        assertThat(ledger(STOPS, ABILITY).allAtOnce()).contains(STOPS);
    }

    @Test
    void theLineAgainstTheAbilityIsNoMistake() {
        assertThat(ledger(ABILITY).allAtOnce()).isEmpty();
        assertThat(ledger().allAtOnce()).isEmpty();
    }
}
