package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.ZoneScheme;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against the definitions: what the seconds of a stretch add up to. */
class StretchLoadsTest {
    private static final Instant START = Instant.parse("2026-06-14T05:00:00Z");

    /** 200 W for an hour is 720 kJ; a steady power is its own normalized power (Allen and Coggan 2010). */
    @Test
    void powerAloneIsEnough() {
        double[] watts = new double[5400];
        Arrays.fill(watts, 0, 3600, 200);
        Arrays.fill(watts, 3600, 5400, 100);
        List<StretchLoad> hours = StretchLoads.byHour(watts);
        assertThat(hours).hasSize(2);
        assertThat(hours.get(0).when()).isEqualTo(new Interval(0, 3600));
        assertThat(hours.get(1).when()).isEqualTo(new Interval(3600, 5400));
        assertThat(hours.get(0).workKJ()).isCloseTo(720, within(1e-9));
        assertThat(hours.get(1).workKJ()).isCloseTo(180, within(1e-9));
        assertThat(hours.get(1).averagePowerW()).isCloseTo(100, within(1e-9));
        assertThat(hours.get(0).normalizedPowerW()).isCloseTo(200, within(1e-9));
        assertThat(hours.get(0).movingSeconds()).isEqualTo(3600);
        assertThat(hours.get(0).distanceM()).isNull();
        assertThat(hours.get(0).averageHeartRateBpm()).isNull();
        assertThat(hours.get(0).averageSpeedMps()).isNull();
        assertThat(hours.get(0).averageTemperatureC()).isNull();
        assertThat(StretchLoads.byHour(new double[0])).isEmpty();
    }

    /** Ten seconds by hand: 10 m a second, two seconds stopped, one paused, one missing. */
    @Test
    void countsEachSecondOnce() {
        Ride ride = Ride.builder(START, 10)
                .channel(Channel.DISTANCE, Series.of(0, 10, 20, 30, 30, 30, 30, Double.NaN, 50, 60))
                .channel(Channel.TEMPERATURE, Series.of(20, 20, 20, 20, 30, 30, 99, Double.NaN, 40, 40))
                .channel(Channel.HEART_RATE, Series.of(100, 110, 120, 130, 140, 150, 200, Double.NaN, 160, 170))
                .state(new Interval(4, 6), SecondState.STOPPED)
                .state(6, SecondState.PAUSED)
                .state(7, SecondState.MISSING)
                .laps(List.of(new Interval(0, 4), new Interval(4, 10)))
                .build();
        List<StretchLoad> laps = StretchLoads.byLap(ride);
        assertThat(laps).extracting(StretchLoad::when).isEqualTo(ride.laps());
        StretchLoad first = laps.get(0);
        assertThat(first.movingSeconds()).isEqualTo(4);
        assertThat(first.standingSeconds()).isZero();
        assertThat(first.distanceM()).isEqualTo(30);
        assertThat(first.averageSpeedMps()).isEqualTo(7.5);
        assertThat(first.averageHeartRateBpm()).isEqualTo(115);
        assertThat(first.averageTemperatureC()).isEqualTo(20);
        assertThat(first.workKJ()).isNull();
        StretchLoad second = laps.get(1);
        assertThat(second.movingSeconds()).isEqualTo(2);
        assertThat(second.standingSeconds()).isEqualTo(3);
        assertThat(second.missingSeconds()).isEqualTo(1);
        assertThat(second.distanceM()).isEqualTo(30);
        assertThat(second.averageSpeedMps()).isEqualTo(15);
        // What was recorded while the timer stood counts in no mean.
        assertThat(second.averageHeartRateBpm()).isEqualTo((140 + 150 + 160 + 170) / 4.0);
        assertThat(second.averageTemperatureC()).isEqualTo(35);
    }

    /** Whatever the stretches, they add up to what the load of the whole says. */
    @Test
    void stretchesAddUpToTheRide() {
        Random random = new Random(7);
        int seconds = 9000;
        double[] metres = new double[seconds];
        for (int second = 1; second < seconds; second++) {
            metres[second] = metres[second - 1] + 12 * random.nextDouble();
        }
        Ride.Builder builder = Ride.builder(START, seconds)
                .channel(
                        Channel.DISTANCE,
                        Series.generate(seconds, second -> second % 17 == 3 ? Double.NaN : metres[second]))
                .channel(
                        Channel.POWER,
                        Series.generate(seconds, second -> second % 11 == 3 ? Double.NaN : 400 * random.nextDouble()));
        List<SecondState> states = List.of(SecondState.values());
        for (int second = 0; second < seconds; second += 1 + random.nextInt(300)) {
            builder.state(second, states.get(random.nextInt(states.size())));
        }
        Ride ride = builder.build();
        RideLoad whole =
                RideLoad.of(ride, null, null, ZoneScheme.POWER_SEVEN_LEVELS, ZoneScheme.HEART_RATE_FIVE_LEVELS);
        List<StretchLoad> hours = StretchLoads.byHour(ride);
        assertThat(hours.stream().mapToInt(StretchLoad::movingSeconds).sum()).isEqualTo(whole.movingSeconds());
        assertThat(hours.stream().mapToInt(hour -> hour.when().seconds()).sum()).isEqualTo(seconds);
        assertThat(hours)
                .allMatch(hour -> hour.movingSeconds() + hour.standingSeconds() + hour.missingSeconds()
                        == hour.when().seconds());
        assertThat(hours.stream()
                        .mapToDouble(hour -> Objects.requireNonNull(hour.workKJ()))
                        .sum())
                .isCloseTo(Objects.requireNonNull(whole.workKJ()), within(1e-6));
        assertThat(hours.stream()
                        .mapToDouble(hour -> Objects.requireNonNull(hour.distanceM()))
                        .sum())
                .isCloseTo(Objects.requireNonNull(whole.distanceM()), within(1e-6));
        StretchLoad all = StretchLoads.of(ride).of(new Interval(0, seconds));
        assertThat(all.averagePowerW()).isCloseTo(Objects.requireNonNull(whole.averagePowerW()), within(1e-9));
        assertThat(all.normalizedPowerW()).isCloseTo(Objects.requireNonNull(whole.normalizedPowerW()), within(1e-6));
        assertThat(all.averageSpeedMps()).isCloseTo(Objects.requireNonNull(whole.averageSpeedMps()), within(1e-9));
    }

    @Test
    void aStretchLiesWithinTheRide() {
        StretchLoads loads = StretchLoads.of(Ride.ofWatts(1, 2, 3));
        assertThatThrownBy(() -> loads.of(new Interval(1, 4))).isInstanceOf(IndexOutOfBoundsException.class);
    }
}
