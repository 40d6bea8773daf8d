package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class IntervalTest {
    /** 12 x 60 + 6 = 726; 3600 + 21 x 60 + 2 = 4862. */
    @Test
    void readsAsAWatchShowsIt() {
        assertThat(new Interval(726, 4862)).hasToString("0:12:06 to 1:21:02");
        assertThat(Interval.clock(0)).isEqualTo("0:00:00");
        assertThat(Interval.clock(100 * 3600 + 59)).isEqualTo("100:00:59");
    }

    /** Half-open stretches: [0, 10) and [10, 20) touch and share no second. */
    @Test
    void theCommonSecondsAreThoseOfBoth() {
        assertThat(new Interval(0, 10).common(new Interval(4, 20))).contains(new Interval(4, 10));
        assertThat(new Interval(0, 10).common(new Interval(3, 5))).contains(new Interval(3, 5));
        assertThat(new Interval(0, 10).common(new Interval(10, 20))).isEmpty();
        assertThat(new Interval(3, 3).common(new Interval(0, 10))).isEmpty();
    }
}
