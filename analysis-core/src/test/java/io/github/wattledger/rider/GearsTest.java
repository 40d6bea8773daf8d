package io.github.wattledger.rider;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class GearsTest {
    @Test
    void teethAreSorted() {
        Gears gears = new Gears(List.of(46, 30), List.of(36, 11, 13), 2.19);
        assertThat(gears.chainrings()).containsExactly(30, 46);
        assertThat(gears.cogs()).containsExactly(11, 13, 36);
    }

    @Test
    void whatCanNeverBeTrueIsRefused() {
        assertThatThrownBy(() -> new Gears(List.of(), List.of(11), 2.19)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Gears(List.of(46), List.of(11, 11), 2.19)).hasMessageContaining("none twice");
        assertThatThrownBy(() -> new Gears(List.of(4), List.of(11), 2.19)).hasMessageContaining("16 to 70");
        assertThatThrownBy(() -> new Gears(List.of(46), List.of(11), 219)).hasMessageContaining("1 to 2.6");
        assertThatThrownBy(() -> new Gears(List.of(46), List.of(11), Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
