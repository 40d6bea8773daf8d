package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.course.Course;
import io.github.wattledger.power.Ability;
import io.github.wattledger.replay.Replay;
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
class MendedRaceTest {
    private static final Ride RIDE =
            Cleaning.clean(SampleRides.overHardStart().toRecording()).ride();
    private static final Race RACE = new Race(
            RIDE,
            0,
            new Thresholds(250.0, false, null),
            new Ability(null, null, null, null, null, RIDE.seconds(), null),
            JudgementLimits.USUAL);
    private static final Replay REPLAY = Replay.of(RIDE, Course.of(RIDE).orElse(null), Rig.of(85, 0.358, 0.006))
            .orElseThrow(AssertionError::new);

    private static Mend mend() {
        Mend mend = new Mend(RACE, REPLAY);
        mend.scale(new Interval(0, 3000), 0.8);
        mend.cap(new Interval(5000, 9000), 230);
        mend.level(new Interval(15_000, 20_000), 1.1);
        mend.giveBackFrom(3000);
        return mend;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1, 1.03, 1.6})
    void agreeWithPlainLoops(double share) {
        Mend mend = mend();
        Series watts = Series.generate(
                RIDE.seconds(),
                second -> RACE.watts().get(second) * mend.factor(second) * (mend.takesBack(second) ? share : 1));
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

        MendedRace.State state = MendedRace.of(RACE, REPLAY, mend).at(share);

        assertThat(state.workJ()).isCloseTo(workJ, within(1e-6 * workJ));
        assertThat(state.normalizedPowerW()).isCloseTo(Math.pow(fourth / time, 0.25), within(1e-6));
        assertThat(state.savedSeconds()).isCloseTo(result.savedSeconds(), within(1e-4));
    }

    /** What a further change does not reach is taken over: the same as adding everything up. */
    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1, 1.03, 1.6})
    void furtherMendingIsTheSameAsMendingAtOnce(double share) {
        MendedRace atOnce = MendedRace.of(RACE, REPLAY, mend());
        MendedRace further = MendedRace.of(RACE, REPLAY, new Mend(RACE, REPLAY)).with(mend());

        MendedRace.State expected = atOnce.at(share);
        MendedRace.State state = further.at(share);
        assertThat(state.workJ()).isCloseTo(expected.workJ(), within(1e-9 * expected.workJ()));
        assertThat(state.normalizedPowerW()).isCloseTo(expected.normalizedPowerW(), within(1e-9));
        assertThat(state.savedSeconds()).isCloseTo(expected.savedSeconds(), within(1e-7));
    }

    /** A second lies in the windows of the 29 after it, in other bins too. */
    @ParameterizedTest
    @ValueSource(ints = {1, 29, 30, 31, 4000, 12_345})
    void oneChangedSecondReachesTheWindowsThatHoldIt(int second) {
        Mend mend = new Mend(RACE, REPLAY);
        mend.scale(new Interval(second, second + 1), 0.2);

        MendedRace.State expected = MendedRace.of(RACE, REPLAY, mend).unreplayed(1);
        MendedRace.State state =
                MendedRace.of(RACE, REPLAY, new Mend(RACE, REPLAY)).with(mend).unreplayed(1);
        assertThat(state.workJ()).isCloseTo(expected.workJ(), within(1e-12 * expected.workJ()));
        assertThat(state.normalizedPowerW()).isCloseTo(expected.normalizedPowerW(), within(1e-12));
    }

    @Test
    void nothingMendedIsTheRecordedRace() {
        MendedRace asRidden = MendedRace.of(RACE, REPLAY, new Mend(RACE, REPLAY));

        assertThat(asRidden.at(1).savedSeconds()).isCloseTo(0, within(1e-9));
        assertThat(asRidden.unreplayed(1).normalizedPowerW())
                .isCloseTo(RACE.normalizedPowerW(new Interval(0, RIDE.seconds())), within(1e-9));
    }
}
