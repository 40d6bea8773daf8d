package io.github.wattledger.pacing.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.course.Course;
import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.simulation.SampleRides;
import java.util.ArrayDeque;
import java.util.Deque;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The polynomials over bins against the plain loops over seconds that they stand for, on a ride with pauses and stops. */
class RepairedRaceTest {
    private static final Ride RIDE =
            Cleaning.clean(SampleRides.overHardStart().toRecording()).ride();
    private static final Series WATTS = RIDE.series(Channel.POWER);
    private static final Replay REPLAY = Replay.of(RIDE, Course.of(RIDE).orElse(null), Rig.of(85, 0.358, 0.006))
            .orElseThrow(AssertionError::new);

    private static RepairedPower repaired() {
        RepairedPower power = new RepairedPower(WATTS, REPLAY);
        power.scale(new Interval(0, 3000), 0.8);
        power.cap(new Interval(5000, 9000), 230);
        power.level(new Interval(15_000, 20_000), 1.1);
        power.makeUpFrom(3000);
        return power;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1, 1.03, 1.6})
    void agreeWithPlainLoops(double share) {
        RepairedPower power = repaired();
        Series watts = Series.generate(
                RIDE.seconds(),
                second -> WATTS.get(second) * power.factor(second) * (power.makesUp(second) ? share : 1));
        Replay.Result result = REPLAY.withPower(watts);
        double workJ = 0;
        double fourth = 0;
        double time = 0;
        Deque<Double> window = new ArrayDeque<>();
        for (int second = 0; second < watts.size(); second++) {
            if (RIDE.state(second) == SecondState.PAUSED || !watts.isMeasured(second)) {
                continue;
            }
            double lasts = RIDE.state(second) == SecondState.RIDING ? result.secondsFor(second) : 1;
            workJ += lasts * watts.get(second);
            window.addLast(watts.get(second));
            if (window.size() > 30) {
                window.removeFirst();
            }
            if (window.size() == 30) {
                double mean =
                        window.stream().mapToDouble(each -> each).average().orElseThrow();
                fourth += lasts * Math.pow(mean, 4);
                time += lasts;
            }
        }

        RepairedRace.State state = RepairedRace.of(RIDE, REPLAY, power).at(share);

        assertThat(state.workJ()).isCloseTo(workJ, within(1e-6 * workJ));
        assertThat(state.normalizedPowerW()).isCloseTo(Math.pow(fourth / time, 0.25), within(1e-6));
        assertThat(state.savedSeconds()).isCloseTo(result.savedSeconds(), within(1e-4));
    }

    /** Sums that a further change does not reach are kept: the result is that of adding everything up. */
    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1, 1.03, 1.6})
    void furtherRepairsAreTheSameAsRepairsAtOnce(double share) {
        RepairedRace atOnce = RepairedRace.of(RIDE, REPLAY, repaired());
        RepairedRace further =
                RepairedRace.of(RIDE, REPLAY, new RepairedPower(WATTS, REPLAY)).with(repaired());

        RepairedRace.State expected = atOnce.at(share);
        RepairedRace.State state = further.at(share);
        assertThat(state.workJ()).isCloseTo(expected.workJ(), within(1e-9 * expected.workJ()));
        assertThat(state.normalizedPowerW()).isCloseTo(expected.normalizedPowerW(), within(1e-9));
        assertThat(state.savedSeconds()).isCloseTo(expected.savedSeconds(), within(1e-7));
    }

    /** A second lies in the windows of the 29 after it, in other bins too. */
    @ParameterizedTest
    @ValueSource(ints = {1, 29, 30, 31, 4000, 12_345})
    void oneChangedSecondReachesTheWindowsThatHoldIt(int second) {
        RepairedPower power = new RepairedPower(WATTS, REPLAY);
        power.scale(new Interval(second, second + 1), 0.2);

        RepairedRace.State expected = RepairedRace.of(RIDE, REPLAY, power).unreplayed(1);
        RepairedRace.State state = RepairedRace.of(RIDE, REPLAY, new RepairedPower(WATTS, REPLAY))
                .with(power)
                .unreplayed(1);
        assertThat(state.workJ()).isCloseTo(expected.workJ(), within(1e-12 * expected.workJ()));
        assertThat(state.normalizedPowerW()).isCloseTo(expected.normalizedPowerW(), within(1e-12));
    }

    @Test
    void nothingRepairedIsTheRecordedRace() {
        RepairedRace asRidden = RepairedRace.of(RIDE, REPLAY, new RepairedPower(WATTS, REPLAY));

        assertThat(asRidden.at(1).savedSeconds()).isCloseTo(0, within(1e-9));
        assertThat(asRidden.unreplayed(1).normalizedPowerW())
                .isCloseTo(NormalizedPower.of(RIDE).orElseThrow(), within(1e-9));
    }
}
