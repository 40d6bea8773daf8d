package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class OutcomeTest {
    @Test
    void isEitherAResultOrAReason() {
        Outcome<Integer> found = Outcome.of(7);
        assertThat(found.found()).contains(7);
        assertThat(found.refusal()).isEmpty();
        assertThat(found.orElseThrow(IllegalStateException::new)).isEqualTo(7);
        Outcome<Integer> refused = Outcome.refused("no power in this file");
        assertThat(refused.found()).isEmpty();
        assertThat(refused.refusal()).contains("no power in this file");
        assertThatThrownBy(() -> refused.orElseThrow(IllegalStateException::new))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no power in this file");
    }
}
