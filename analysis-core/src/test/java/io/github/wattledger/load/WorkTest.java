package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A watt over a second is a joule (SI brochure, 9th edition, table 4). */
class WorkTest {
    @Test
    void isThePowerOfEachSecondAddedUp() {
        double[] watts = {250, Double.NaN, 0, 150};
        assertThat(Work.kilojoules(watts)).hasValue(0.4);
        // Coasting counts, a missing second does not: 400 J over 3 s.
        assertThat(Work.averagePowerW(watts)).hasValue(400 / 3.0);
    }

    @Test
    void isNoneWithoutPower() {
        assertThat(Work.kilojoules(new double[] {Double.NaN, Double.NaN})).isEmpty();
        assertThat(Work.kilojoules(new double[0])).isEmpty();
        assertThat(Work.averagePowerW(new double[] {Double.NaN})).isEmpty();
        assertThat(Work.kilojoules(new double[] {0})).hasValue(0);
    }
}
