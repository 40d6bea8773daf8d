package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.power.WPrimeBalance.Model;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class WPrimeBalanceTest {
    private static final double CP_W = 300;
    private static final double W_PRIME_J = 20_000;

    @ParameterizedTest
    @CsvSource({"25, 249.76", "50, 155.03", "100, 96.23", "150, 72.80", "200, 59.73", "300, 45.19"})
    void eliteTimeConstantIsThePublishedOne(double below, double seconds) {
        // 2287.2 D^-0.688, Bartram et al. 2018, abstract; values by arithmetic.
        assertThat(WPrimeBalance.timeConstantSeconds(Model.DIFFERENTIAL_ELITE, CP_W - below, CP_W, W_PRIME_J))
                .isCloseTo(seconds, within(0.01));
    }

    @ParameterizedTest
    @CsvSource({"0, 862", "50, 647.17", "100, 516.86", "150, 437.83", "200, 389.89", "300, 343.18"})
    void integralTimeConstantIsThePublishedOne(double below, double seconds) {
        // 546 e^(-0.01 D) + 316, Skiba et al. 2012; the constants are from memory.
        assertThat(WPrimeBalance.timeConstantSeconds(Model.INTEGRAL, CP_W - below, CP_W, W_PRIME_J))
                .isCloseTo(seconds, within(0.01));
    }

    @Test
    void modelsRecoverInTheOrderThatTheLiteratureGives() {
        // At 150 W below critical power and W' 20 kJ: 73 s (elite), 133 s, 438 s.
        assertThat(WPrimeBalance.timeConstantSeconds(Model.DIFFERENTIAL_ELITE, 150, CP_W, W_PRIME_J))
                .isCloseTo(73, within(0.5));
        assertThat(WPrimeBalance.timeConstantSeconds(Model.DIFFERENTIAL, 150, CP_W, W_PRIME_J))
                .isCloseTo(133, within(0.5));
        assertThat(WPrimeBalance.timeConstantSeconds(Model.INTEGRAL, 150, CP_W, W_PRIME_J))
                .isCloseTo(438, within(0.5));
    }

    @Test
    void differentialRecoveryFromEmptyIsTheExactExponential() {
        // Skiba et al. 2015, formula from memory: 20 kJ, 150 W below, 120 s give 20000 (1 - e^-0.9) J.
        WPrimeBalance balance = WPrimeBalance.of(
                join(constant(200, CP_W + 100), constant(120, CP_W - 150)), CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        assertThat(balance.balanceJ().get(199)).isCloseTo(0, within(1e-9));
        assertThat(balance.balanceJ().get(319)).isCloseTo(11868.6, within(0.1));
    }

    @ParameterizedTest
    @EnumSource(Model.class)
    void fiftyWattsAboveEmptyTwentyKilojoulesInFourHundredSeconds(Model model) {
        WPrimeBalance balance = WPrimeBalance.of(constant(400, 350), CP_W, W_PRIME_J, model);
        assertThat(balance.balanceJ().get(399)).isCloseTo(0, within(1e-6));
        assertThat(balance.balanceJ().get(398)).isCloseTo(50, within(1e-6));
        assertThat(balance.warning()).isEmpty();
        WPrimeBalance beyond = WPrimeBalance.of(constant(500, 350), CP_W, W_PRIME_J, model);
        assertThat(beyond.minimumJ()).isCloseTo(-5000, within(1e-6));
        assertThat(beyond.warning())
                .hasValueSatisfying(text -> assertThat(text).contains("-5.0 kJ").contains("set too low"));
    }

    @ParameterizedTest
    @CsvSource({"120, 37, 5", "360, 65, 6", "900, 86, 4"})
    void singleExponentialOfThePublishedHalfTimeLiesWithinTheMeasuredRecovery(
            int seconds, double percent, double standardDeviation) {
        // Ferguson et al. 2010: recovery after exhaustion, mean and SD. One exponential through the three means has a
        // time
        // constant of 333.38 s; the differential model has it 60 W below critical power with W' 20 kJ.
        double belowW = W_PRIME_J / 333.38;
        WPrimeBalance balance = WPrimeBalance.of(
                join(constant(200, CP_W + 100), constant(seconds, CP_W - belowW)), CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        double recovered = 100 * balance.balanceJ().get(199 + seconds) / W_PRIME_J;
        assertThat(recovered).isCloseTo(percent, within(2 * standardDeviation));
    }

    @Test
    void halfTimeIsWithinTheMeasuredOnes() {
        // Ferguson et al. 2010: 234 ± 32 s; the fit to their means gives 231.1 s, and Skiba et al. 2015 saw 232 s.
        double seconds = Math.log(2)
                * WPrimeBalance.timeConstantSeconds(Model.DIFFERENTIAL, CP_W - W_PRIME_J / 333.38, CP_W, W_PRIME_J);
        assertThat(seconds).isCloseTo(231.1, within(0.1));
        assertThat(seconds).isCloseTo(232, within(32.0));
    }

    @ParameterizedTest
    @CsvSource({"15, 27.32", "30, 41.79", "60, 54.63", "120, 63.60", "180, 68.97", "240, 73.42", "360, 80.49"})
    void noModelFollowsBothPhasesOfTheMeasuredRecovery(int seconds, double percent) {
        // Chorley et al. 2022: 50.67 % come back with 21.5 s, 49.33 % with 388 s. The sum is checked against the
        // published
        // amplitudes; the differential model with the same mean start is a single phase and must lie below it at first.
        double twoPhases = 50.67 * (1 - Math.exp(-seconds / 21.5)) + 49.33 * (1 - Math.exp(-seconds / 388.0));
        assertThat(twoPhases).isCloseTo(percent, within(0.01));
        double onePhase = 100 * (1 - Math.exp(-seconds / 333.38));
        WPrimeBalance balance = WPrimeBalance.of(
                join(constant(200, CP_W + 100), constant(seconds, CP_W - W_PRIME_J / 333.38)),
                CP_W,
                W_PRIME_J,
                Model.DIFFERENTIAL);
        double modelled = 100 * balance.balanceJ().get(199 + seconds) / W_PRIME_J;
        assertThat(modelled).isCloseTo(onePhase, within(1e-6)).isLessThan(percent);
    }

    @Test
    void integralByRecursionEqualsTheDoubleSum() {
        double[] watts = jagged(3000, 7);
        WPrimeBalance balance = WPrimeBalance.of(watts, CP_W, W_PRIME_J, Model.INTEGRAL);
        double meanBelow =
                Arrays.stream(watts).filter(each -> each < CP_W).average().orElseThrow();
        double tau = 546 * Math.exp(-0.01 * (CP_W - meanBelow)) + 316;
        for (int second = 0; second < watts.length; second += 61) {
            double spent = 0;
            for (int earlier = 0; earlier <= second; earlier++) {
                spent += Math.max(0, watts[earlier] - CP_W) * Math.exp(-(second - earlier) / tau);
            }
            assertThat(balance.balanceJ().get(second)).isCloseTo(W_PRIME_J - spent, within(1e-6));
        }
    }

    @ParameterizedTest
    @EnumSource(Model.class)
    void neverExceedsWPrime(Model model) {
        for (int seed = 0; seed < 20; seed++) {
            WPrimeBalance balance = WPrimeBalance.of(jagged(2000, seed), CP_W, W_PRIME_J, model);
            for (int second = 0; second < 2000; second++) {
                assertThat(balance.balanceJ().get(second))
                        .as("seed %d, second %d", seed, second)
                        .isLessThanOrEqualTo(W_PRIME_J);
            }
        }
    }

    @Test
    void tellsHowWPrimeWasUsed() {
        // 12 kJ in 100 s, then 60 W below critical power: back at 90 % when 12 e^(-t 60/20000) = 2 kJ, t = 597.25 s.
        WPrimeBalance balance = WPrimeBalance.of(
                join(constant(10, 100), constant(100, 420), constant(1000, 240)), CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        assertThat(balance.minimumJ()).isCloseTo(8000, within(1e-6));
        assertThat(balance.minimumSecond()).hasValue(109);
        assertThat(balance.spentJ(new Interval(0, 60))).isCloseTo(50 * 120, within(1e-9));
        assertThat(balance.secondsToRecover(109, 0.9)).hasValue(598);
        assertThat(balance.secondsToRecover(0, 1)).hasValue(0);
        assertThat(balance.secondsToRecover(1000, 0.999)).isEmpty();
        // Below half: after 84 s of spending 120 W (10,080 J), and until 12 e^(-0.003 t) = 10 kJ, 60.8 s after the end.
        assertThat(balance.secondsBelow(0.5)).isEqualTo(100 - 83 + 60);
    }

    @Test
    void eliteRecoveryFromEmptyIsTheExactExponential() {
        // 150 W below critical power: time constant 72.80 s (above), 120 s give 20000 (1 - e^(-120 / 72.80)) J.
        WPrimeBalance balance = WPrimeBalance.of(
                join(constant(200, CP_W + 100), constant(120, CP_W - 150)), CP_W, W_PRIME_J, Model.DIFFERENTIAL_ELITE);
        assertThat(balance.balanceJ().get(319)).isCloseTo(20_000 * (1 - Math.exp(-120 / 72.80)), within(0.5));
    }

    @Test
    void secondsAtCriticalPowerAreNotBelowIt() {
        // Definition (Skiba et al. 2012): the time constant takes the mean of the powers below critical power. Here it
        // is
        // 100 W, 200 W below: 389.89 s (above). 100 J, two seconds later.
        WPrimeBalance balance = WPrimeBalance.of(new double[] {400, 300, 100}, CP_W, W_PRIME_J, Model.INTEGRAL);
        assertThat(balance.balanceJ().get(2)).isCloseTo(W_PRIME_J - 100 * Math.exp(-2 / 389.89), within(1e-4));
    }

    @Test
    void nothingRecoversAtCriticalPower() {
        for (Model model : new Model[] {Model.DIFFERENTIAL, Model.DIFFERENTIAL_ELITE}) {
            assertThat(WPrimeBalance.timeConstantSeconds(model, CP_W, CP_W, W_PRIME_J))
                    .isInfinite();
            assertThat(WPrimeBalance.timeConstantSeconds(model, CP_W + 1, CP_W, W_PRIME_J))
                    .isInfinite();
        }
    }

    @Test
    void lowestOfAStretchLooksNowhereElse() {
        // 100 W above for two seconds, at critical power, 100 W above, at critical power: 100, 200, 200, 300, 300 J
        // spent.
        WPrimeBalance balance =
                WPrimeBalance.of(new double[] {400, 400, 300, 400, 300}, CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        assertThat(balance.minimumJ(new Interval(0, 1))).isEqualTo(19_900);
        assertThat(balance.minimumJ(new Interval(0, 3))).isEqualTo(19_800);
        assertThat(balance.minimumJ(new Interval(2, 4))).isEqualTo(19_700);
        assertThat(balance.minimumJ()).isEqualTo(19_700);
        assertThatIllegalArgumentException().isThrownBy(() -> balance.minimumJ(new Interval(2, 2)));
        assertThatExceptionOfType(IndexOutOfBoundsException.class)
                .isThrownBy(() -> balance.minimumJ(new Interval(2, 6)));
        // Recovery within the stretch comes after its lowest second.
        WPrimeBalance recovering = WPrimeBalance.of(new double[] {400, 400, 0, 0}, CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        assertThat(recovering.minimumJ(new Interval(1, 4))).isEqualTo(19_800);
    }

    @Test
    void theLowestSecondIsTheFirstOfSeveral() {
        assertThat(WPrimeBalance.of(new double[] {300, 400, 300, 300}, CP_W, W_PRIME_J, Model.DIFFERENTIAL)
                        .minimumSecond())
                .hasValue(1);
        assertThat(WPrimeBalance.of(new double[] {400, 0, 0}, CP_W, W_PRIME_J, Model.DIFFERENTIAL)
                        .minimumSecond())
                .hasValue(0);
    }

    @Test
    void aSecondThatEndsOnTheShareIsNotBelowIt() {
        // 100 J a second for 50 s: 15,000 J of 20,000 are left at the end of the last, three quarters exactly.
        WPrimeBalance balance = WPrimeBalance.of(constant(50, 400), CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        assertThat(balance.secondsBelow(0.75)).isZero();
        assertThat(balance.secondsBelow(0.755)).isEqualTo(1);
    }

    @Test
    void roundingIsNoOverdraft() {
        // 300.1 W is a little more than that in binary, so that 2,000 s of it overdraw 200 J by less than a billionth.
        WPrimeBalance balance = WPrimeBalance.of(constant(2000, 300.1), CP_W, 200, Model.DIFFERENTIAL);
        assertThat(balance.minimumJ()).isNegative();
        assertThat(balance.warning()).isEmpty();
    }

    @Test
    void isEqualWhenCriticalPowerWPrimeModelAndPowerAre() {
        double[] watts = {400, 200, 100};
        WPrimeBalance balance = WPrimeBalance.of(watts, CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        assertThat(balance)
                .isEqualTo(WPrimeBalance.of(watts.clone(), CP_W, W_PRIME_J, Model.DIFFERENTIAL))
                .hasSameHashCodeAs(WPrimeBalance.of(watts.clone(), CP_W, W_PRIME_J, Model.DIFFERENTIAL))
                .isNotEqualTo(WPrimeBalance.of(watts, CP_W + 1, W_PRIME_J, Model.DIFFERENTIAL))
                .isNotEqualTo(WPrimeBalance.of(watts, CP_W, W_PRIME_J + 1, Model.DIFFERENTIAL))
                .isNotEqualTo(WPrimeBalance.of(watts, CP_W, W_PRIME_J, Model.INTEGRAL))
                .isNotEqualTo(WPrimeBalance.of(new double[] {400, 200, 101}, CP_W, W_PRIME_J, Model.DIFFERENTIAL))
                .isNotEqualTo("balance");
    }

    @Test
    void remembersTheNumbersItRestsOn() {
        WPrimeBalance balance = WPrimeBalance.of(new double[] {400}, CP_W, W_PRIME_J, Model.INTEGRAL);
        assertThat(balance.criticalPowerW()).isEqualTo(CP_W);
        assertThat(balance.wPrimeJ()).isEqualTo(W_PRIME_J);
        assertThat(balance.model()).isEqualTo(Model.INTEGRAL);
    }

    @Test
    void spendingOfARideIsToldInKilojoules() {
        // 12 kJ in 100 s, then 5 s at rest. Less than a quarter (5 kJ) is never left.
        AbilityEvidence.Spending spending =
                spendingOf(Ride.ofWatts(join(constant(10, 100), constant(100, 420), constant(5, 0))));
        assertThat(spending.lowestKJ()).isCloseTo(8, within(1e-9));
        assertThat(spending.lowestSecond()).isEqualTo(109);
        assertThat(spending.secondsBelowQuarter()).isZero();
        assertThat(spending.warning()).isNull();
        // 120 J a second: below 5 kJ from second 125 on (126 x 120 = 15,120 J), 4 kJ overdrawn after 200 s.
        AbilityEvidence.Spending beyond = spendingOf(Ride.ofWatts(constant(200, 420)));
        assertThat(beyond.lowestKJ()).isCloseTo(-4, within(1e-9));
        assertThat(beyond.secondsBelowQuarter()).isEqualTo(75);
        assertThat(beyond.warning()).contains("-4.0 kJ");
        assertThat(AbilityEvidence.Spending.of(balanceOf(Ride.ofWatts()))).isNull();
    }

    private static AbilityEvidence.Spending spendingOf(Ride ride) {
        return Objects.requireNonNull(AbilityEvidence.Spending.of(balanceOf(ride)));
    }

    private static WPrimeBalance balanceOf(Ride ride) {
        return WPrimeBalance.of(ride, CP_W, W_PRIME_J, Model.DIFFERENTIAL);
    }

    @Test
    void secondsWithoutPowerAndPausesRecoverAsAtZeroWatts() {
        Ride ride = Ride.builder(Instant.EPOCH, 300)
                .channel(
                        Channel.POWER,
                        Series.generate(300, second -> second < 100 ? 400 : second < 200 ? Double.NaN : 500))
                .state(new Interval(100, 200), SecondState.MISSING)
                .state(new Interval(200, 300), SecondState.PAUSED)
                .build();
        WPrimeBalance balance = WPrimeBalance.of(ride, CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        assertThat(balance.balanceJ().get(299))
                .isCloseTo(W_PRIME_J - 10_000 * Math.exp(-200 * CP_W / W_PRIME_J), within(1e-6));
        assertThat(balance.secondsWithoutPower()).isEqualTo(200);
    }

    @Test
    void refusesNumbersThatAreNone() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WPrimeBalance.of(new double[] {1}, 0, W_PRIME_J, Model.DIFFERENTIAL))
                .withMessageContaining("criticalPowerW");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WPrimeBalance.of(new double[] {1}, CP_W, Double.NaN, Model.INTEGRAL))
                .withMessageContaining("wPrimeJ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WPrimeBalance.of(new double[] {1}, CP_W, 0, Model.DIFFERENTIAL))
                .withMessageContaining("wPrimeJ");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WPrimeBalance.timeConstantSeconds(Model.DIFFERENTIAL, 100, 0, W_PRIME_J))
                .withMessageContaining("criticalPowerW");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WPrimeBalance.timeConstantSeconds(Model.DIFFERENTIAL, 100, CP_W, 0))
                .withMessageContaining("wPrimeJ");
    }

    @Test
    void aRideOfNoSecondsIsFull() {
        WPrimeBalance balance = WPrimeBalance.of(new double[0], CP_W, W_PRIME_J, Model.DIFFERENTIAL);
        assertThat(balance.minimumJ()).isEqualTo(W_PRIME_J);
        assertThat(balance.minimumSecond()).isEmpty();
    }

    private static double[] constant(int seconds, double watts) {
        double[] values = new double[seconds];
        Arrays.fill(values, watts);
        return values;
    }

    private static double[] join(double[]... parts) {
        return Arrays.stream(parts).flatMapToDouble(Arrays::stream).toArray();
    }

    private static double[] jagged(int seconds, long seed) {
        RandomGenerator random = new SplittableRandom(seed);
        double[] values = new double[seconds];
        double level = 200;
        for (int second = 0; second < seconds; second++) {
            if (second % 45 == 0) {
                level = random.nextDouble(0, 450);
            }
            values[second] = Math.max(0, level + random.nextGaussian(0, 40));
        }
        return values;
    }
}
