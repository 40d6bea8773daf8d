package io.github.wattledger.energy;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EnergyUseTest {
    private static final double THRESHOLD_POWER_W = 250;

    /**
     * The rule written out by hand from the highest fat oxidation of Achten and Jeukendrup 2003 (Int J Sports Med
     * 24:603-608): grams an hour and their range at a share of a threshold of 250 W, gross efficiency 0.20. The energies of a
     * gram were rounded there, which moves the last digit.
     */
    @ParameterizedTest
    @CsvSource({
        "0.50, 65.8, 43, 90",
        "0.60, 86.9, 62, 114",
        "0.70, 110.6, 83, 140",
        "0.75, 123.5, 95, 154",
        "0.80, 138.7, 110, 171",
        "0.90, 183.1, 154, 218",
        "1.00, 245.9, 211, 281"
    })
    void carbohydrateFollowsTheFatThatIsLeft(double share, double middle, double low, double high) {
        Estimate grams = EnergyUse.carbohydrateGPerHour(share * THRESHOLD_POWER_W, THRESHOLD_POWER_W);
        assertThat(grams.middle()).isCloseTo(middle, within(0.1));
        assertThat(grams.low()).isCloseTo(low, within(0.5));
        assertThat(grams.high()).isCloseTo(high, within(0.5));
    }

    /** Above 86.1 % of the highest oxygen uptake no fat is burned: Achten and Jeukendrup 2003. */
    @Test
    void aboveThresholdAllIsCarbohydrate() {
        double powerW = 1.05 * THRESHOLD_POWER_W;
        assertThat(EnergyUse.carbohydrateGPerHour(powerW, THRESHOLD_POWER_W).middle())
                .isCloseTo(277.5, within(0.05));
    }

    /**
     * Podlogar et al. 2022 (Eur J Appl Physiol 122:2393-2401) measured 3.66 g/min at 256 W in riders whose threshold lay
     * between 300 W and 328 W.
     */
    @ParameterizedTest
    @CsvSource({"300", "328"})
    void aMeasurementLiesWithinTheRange(double thresholdPowerW) {
        Estimate grams = EnergyUse.carbohydrateGPerHour(256, thresholdPowerW);
        assertThat(3.66 * 60).isBetween(grams.low(), grams.high());
    }

    /**
     * Gross efficiency of 19.8 % (Moseley and Jeukendrup 2001, Med Sci Sports Exerc 33:621-627): 1,000 kJ of work take
     * 5,051 kJ.
     */
    @Test
    void energyIsWorkOverEfficiency() {
        EnergyUse use = EnergyUse.of(steady(1000, 1000), THRESHOLD_POWER_W).orElseThrow();
        assertThat(use.workKJ()).isCloseTo(1000, within(1e-9));
        assertThat(use.energyKJ().low()).isCloseTo(4545, within(0.5));
        assertThat(use.energyKJ().high()).isCloseTo(5556, within(0.5));
        assertThat(5051.0).isBetween(use.energyKJ().low(), use.energyKJ().high());
        assertThat(use.energyKJ().middle()).isCloseTo(5051, within(0.011 * 5051));
    }

    /**
     * The energies of a gram against the equations for oxygen and carbon dioxide of Jeukendrup and Wallis 2005 (from
     * memory): 3.0 and 2.7 litres a minute are 2.481 g of carbohydrate and 0.492 g of fat, 62.33 kJ.
     */
    @Test
    void theEnergyOfAGramFitsTheGasEquations() {
        double carbohydrate = 4.210 * 2.7 - 2.962 * 3.0;
        double fat = 1.695 * 3.0 - 1.701 * 2.7;
        assertThat(carbohydrate).isCloseTo(2.481, within(5e-4));
        assertThat(fat).isCloseTo(0.492, within(5e-4));
        assertThat(carbohydrate * FuelModel.CARBOHYDRATE_KJ_PER_G + fat * FuelModel.FAT_KJ_PER_G)
                .isCloseTo(62.33, within(0.02));
    }

    /**
     * Shares of energy from carbohydrate at a respiratory exchange ratio of 0.87, 0.83 and 0.81, as measured over three
     * hours by Coggan and Coyle 1987 (J Appl Physiol 63:2388-2395), with the same equations.
     */
    @ParameterizedTest
    @CsvSource({"0.87, 0.576", "0.83, 0.440", "0.81, 0.371"})
    void theSharesOfEnergyFitTheGasEquations(double ratio, double share) {
        double carbohydrate = (4.210 * ratio - 2.962) * FuelModel.CARBOHYDRATE_KJ_PER_G;
        double fat = (1.695 - 1.701 * ratio) * FuelModel.FAT_KJ_PER_G;
        assertThat(carbohydrate / (carbohydrate + fat)).isCloseTo(share, within(0.001));
    }

    @Test
    void anHourIsJudgedByItsOwnPower() {
        double[] watts = new double[2 * 3600 + 1800];
        Arrays.fill(watts, 0, 3600, 200);
        Arrays.fill(watts, 3600, watts.length, 125);
        EnergyUse use = EnergyUse.of(watts, THRESHOLD_POWER_W).orElseThrow();
        assertThat(use.hours()).hasSize(3);
        assertThat(gramsPerHour(use, 0)).isCloseTo(138.7, within(0.05));
        assertThat(gramsPerHour(use, 2)).isCloseTo(65.8, within(0.05));
        assertThat(use.carbohydrateG().middle()).isCloseTo(138.7 + 1.5 * 65.8, within(0.1));
    }

    @Test
    void whatIsNotRiddenUsesNothing() {
        Series watts = Series.of(steady(200, 7200));
        Ride ridden = Ride.builder(Instant.EPOCH, 7200)
                .channel(Channel.POWER, watts)
                .state(new Interval(3600, 7200), SecondState.STOPPED)
                .build();
        EnergyUse use = EnergyUse.of(ridden, THRESHOLD_POWER_W).orElseThrow();
        assertThat(use.ridingSeconds()).isEqualTo(3600);
        assertThat(use.workKJ()).isCloseTo(720, within(1e-9));
        assertThat(use.hours().get(1).carbohydrateG()).isNull();
        assertThat(use.carbohydrateGPerHour().middle()).isCloseTo(138.7, within(0.05));
    }

    @Test
    void anHourWithTooLittlePowerMakesTheWholeUnknown() {
        double[] watts = steady(200, 7200);
        Arrays.fill(watts, 3600, 3960, Double.NaN);
        assertThat(EnergyUse.of(watts, THRESHOLD_POWER_W)).isPresent();
        watts[3960] = Double.NaN;
        assertThat(EnergyUse.of(watts, THRESHOLD_POWER_W)).isEmpty();
    }

    /** The seconds that were not measured are taken to be like those that were. */
    @Test
    void aShortGapChangesNoMean() {
        double[] watts = steady(200, 3600);
        double whole = EnergyUse.of(watts, THRESHOLD_POWER_W).orElseThrow().workKJ();
        Arrays.fill(watts, 100, 200, Double.NaN);
        assertThat(EnergyUse.of(watts, THRESHOLD_POWER_W).orElseThrow().workKJ())
                .isCloseTo(whole, within(1e-9));
    }

    @Test
    void nothingComesOfNoPower() {
        assertThat(EnergyUse.of(new double[0], THRESHOLD_POWER_W)).isEmpty();
        assertThat(EnergyUse.of(steady(Double.NaN, 3600), THRESHOLD_POWER_W)).isEmpty();
    }

    @Test
    void morePowerNeverTakesLessCarbohydrate() {
        SplittableRandom random = new SplittableRandom(41);
        for (int trial = 0; trial < 2000; trial++) {
            double thresholdPowerW = random.nextDouble(80, 500);
            double powerW = random.nextDouble(0, 600);
            Estimate less = EnergyUse.carbohydrateGPerHour(powerW, thresholdPowerW);
            Estimate more = EnergyUse.carbohydrateGPerHour(powerW + random.nextDouble(0, 50), thresholdPowerW);
            assertThat(more.middle()).isGreaterThanOrEqualTo(less.middle());
            assertThat(less.low()).isBetween(0.0, less.middle());
            assertThat(less.high()).isGreaterThanOrEqualTo(less.middle());
        }
    }

    @Test
    void theWholeLiesWithinTheSumOfItsHours() {
        SplittableRandom random = new SplittableRandom(42);
        for (int trial = 0; trial < 20; trial++) {
            double[] watts = new double[4 * 3600];
            for (int i = 0; i < watts.length; i++) {
                watts[i] = random.nextDouble(0, 500);
            }
            EnergyUse use = EnergyUse.of(watts, THRESHOLD_POWER_W).orElseThrow();
            double sum = 0;
            for (EnergyHour hour : use.hours()) {
                sum += requireNonNull(hour.carbohydrateG()).middle();
            }
            assertThat(use.carbohydrateG().middle()).isCloseTo(sum, within(1e-6));
        }
    }

    @Test
    void badArgumentsAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> EnergyUse.of(steady(200, 3600), 0));
        assertThatIllegalArgumentException().isThrownBy(() -> EnergyUse.of(steady(-1, 3600), THRESHOLD_POWER_W));
        assertThatIllegalArgumentException().isThrownBy(() -> EnergyUse.carbohydrateGPerHour(-1, THRESHOLD_POWER_W));
        assertThatIllegalArgumentException().isThrownBy(() -> EnergyUse.carbohydrateGPerHour(200, Double.NaN));
    }

    private static double gramsPerHour(EnergyUse use, int hour) {
        return requireNonNull(use.hours().get(hour).carbohydrateGPerHour()).middle();
    }

    static double[] steady(double watts, int seconds) {
        double[] values = new double[seconds];
        Arrays.fill(values, watts);
        return values;
    }

    static Estimate used(double watts, int seconds) {
        Optional<EnergyUse> use = EnergyUse.of(steady(watts, seconds), THRESHOLD_POWER_W);
        return use.orElseThrow().carbohydrateG();
    }
}
