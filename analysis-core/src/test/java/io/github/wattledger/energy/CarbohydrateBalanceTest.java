package io.github.wattledger.energy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Ride;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CarbohydrateBalanceTest {
    private static final double THRESHOLD_POWER_W = 250;

    /** A mean of 0.684 of threshold, as a normalized power of 0.72 leaves it. */
    private static final double MEAN_W = 0.684 * THRESHOLD_POWER_W;

    /**
     * How long a store lasts at 0.72 of threshold, by hand: 450 g last 4.2 h with nothing eaten and 14 h with 90 g/h, 300 g
     * at the high use last 2.2 h and 4.9 h, 600 g at the low use 7.8 h and for ever. The long ends were reckoned with
     * another way of adding the ranges up, and lie up to a tenth off.
     */
    @ParameterizedTest
    @CsvSource({"0, 4.2, 2.2, 7.8", "40, 6.2, 2.9, 14", "60, 8.1, 3.5, 23", "90, 14, 4.9, NaN"})
    void theWordsTurnWhereTheStoreEnds(double eaten, double middleHours, double lowHours, double highHours) {
        Estimate rate = EnergyUse.carbohydrateGPerHour(MEAN_W, THRESHOLD_POWER_W);
        double burned = Math.min(0.85 * eaten, 75);
        assertThat(CarbohydrateBalance.STORED_G.middle() / (rate.middle() - burned))
                .isCloseTo(middleHours, within(0.05 * middleHours));
        assertThat(wordAt(0.95 * lowHours, eaten)).isEqualTo(Shortage.UNLIKELY);
        assertThat(wordAt(1.05 * lowHours, eaten)).isEqualTo(Shortage.POSSIBLE);
        if (Double.isNaN(highHours)) {
            assertThat(wordAt(40, eaten)).isEqualTo(Shortage.POSSIBLE);
        } else {
            assertThat(wordAt(0.88 * highHours, eaten)).isEqualTo(Shortage.POSSIBLE);
            assertThat(wordAt(1.12 * highHours, eaten)).isEqualTo(Shortage.LIKELY);
        }
    }

    private static Shortage wordAt(double hours, double eatenGPerHour) {
        int second = (int) Math.round(hours * 3600);
        Ride ride = Ride.ofWatts(EnergyUseTest.steady(MEAN_W, second));
        return CarbohydrateBalance.at(ride, second, THRESHOLD_POWER_W, Intake.ofGramsPerHour(eatenGPerHour))
                .orElseThrow()
                .shortage();
    }

    /** Rapoport 2010, PLoS Comput Biol 6:e1000960: 70 kg with 21 % of leg muscle store 289 g to 520 g in the legs. */
    @Test
    void theStoreIsAsPublished() {
        double loadedG = 144 * 0.21 * 70 / 4.07;
        double usualG = 80 * 0.21 * 70 / 4.07;
        assertThat(loadedG).isCloseTo(520, within(0.5));
        assertThat(usualG).isCloseTo(289, within(0.5));
        assertThat(CarbohydrateBalance.STORED_G.low()).isCloseTo(usualG, within(15.0));
        assertThat(CarbohydrateBalance.STORED_G.high()).isBetween(loadedG, loadedG + 110);
    }

    /**
     * Podlogar et al. 2022, Eur J Appl Physiol 122:2393-2401: of 90 and 120 g/h eaten 1.29 and 1.51 g a minute were burned
     * in the third hour, 0.86 and 0.755 of it.
     */
    @Test
    void whatIsBurnedOfAMealIsAsMeasured() {
        assertThat(1.29 * 60 / 90).isCloseTo(0.86, within(0.001));
        assertThat(Intake.ofGramsPerHour(90).burnedGUntil(3600)).isCloseTo(1.29 * 60, within(3.0));
        assertThat(Intake.ofGramsPerHour(120).burnedGUntil(3600)).isBetween(70.0, 1.51 * 60);
        assertThat(new Intake(List.of(120.0), false).burnedGUntil(3600)).isLessThan(60);
    }

    /** Counted in the field: 6 to 136 g/h, 53 ± 22 g/h on long rides (Pfeiffer et al. 2012, Med Sci Sports Exerc 44:344). */
    @ParameterizedTest
    @CsvSource({"6", "53", "75", "136"})
    void whatPeopleEatIsBelieved(double gramsPerHour) {
        assertThat(Intake.ofGramsPerHour(gramsPerHour).gramsUntil(2 * 3600)).isCloseTo(2 * gramsPerHour, within(1e-9));
    }

    @Test
    void anHourCountsAsFarAsItWasRidden() {
        Intake intake = new Intake(List.of(60.0, 30.0), true);
        assertThat(intake.gramsUntil(0)).isZero();
        assertThat(intake.gramsUntil(1800)).isCloseTo(30, within(1e-9));
        assertThat(intake.gramsUntil(5400)).isCloseTo(75, within(1e-9));
        assertThat(intake.gramsUntil(10800)).isCloseTo(120, within(1e-9));
    }

    @Test
    void nothingToldIsPossibleAndAskedFor() {
        Estimate used = EnergyUseTest.used(MEAN_W, 4 * 3600);
        CarbohydrateBalance balance = CarbohydrateBalance.of(4 * 3600, used, null);
        assertThat(balance.shortage()).isEqualTo(Shortage.POSSIBLE);
        assertThat(balance.intakeWouldTell()).isTrue();
        assertThat(balance.eatenG()).isNull();
    }

    /** Two hours cannot empty even a small store at this power, whatever was eaten; so nothing is asked. */
    @Test
    void whereFoodChangesNothingItIsNotAskedFor() {
        CarbohydrateBalance balance = CarbohydrateBalance.of(7200, EnergyUseTest.used(MEAN_W, 7200), null);
        assertThat(balance.shortage()).isEqualTo(Shortage.UNLIKELY);
        assertThat(balance.intakeWouldTell()).isFalse();
    }

    @Test
    void moreFoodNeverMakesAShortageLikelier() {
        SplittableRandom random = new SplittableRandom(43);
        for (int trial = 0; trial < 500; trial++) {
            int seconds = random.nextInt(3600, 12 * 3600);
            Estimate used = EnergyUse.carbohydrateGPerHour(random.nextDouble(80, 240), THRESHOLD_POWER_W)
                    .times(seconds / 3600.0);
            double grams = random.nextDouble(0, 120);
            Shortage less = CarbohydrateBalance.of(seconds, used, Intake.ofGramsPerHour(grams))
                    .shortage();
            Shortage more = CarbohydrateBalance.of(seconds, used, Intake.ofGramsPerHour(grams + 40))
                    .shortage();
            assertThat(more).isLessThanOrEqualTo(less);
        }
    }

    @Test
    void gramsOutOfRangeAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Intake.ofGramsPerHour(-1))
                .withMessage("gramsByHour -1.0, expected 0 to 180");
        assertThatIllegalArgumentException().isThrownBy(() -> new Intake(List.of(), true));
    }
}
