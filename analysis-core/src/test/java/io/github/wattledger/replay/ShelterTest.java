package io.github.wattledger.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import io.github.wattledger.testing.FlatBunchRace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Shelter as a share of the drag, against steady speeds on the flat that an own balance of forces gives. */
class ShelterTest {
    private static final double SAVING = 0.30;
    private final FlatBunchRace race = new FlatBunchRace(260, SAVING, 200, 0.005);
    private final Replay replay = race.replay(1);

    /** The speeds of the check values: 260 W with 30 % less drag, and 200 W alone; reckoned once outside this project. */
    @Test
    void theRaceIsTheOneOfTheCheckValues() {
        assertThat(race.bunchMps()).isCloseTo(11.4964, within(1e-3));
        assertThat(race.aloneMps()).isCloseTo(9.3158, within(1e-3));
    }

    /** By definition: the same power in the same shelter is the recorded ride, however much the shelter saved. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.15, 0.3, 0.45, 0.8})
    void theRecordedPowerInTheRecordedShelterTakesTheRecordedTime(double saving) {
        Shelter kept = replay.sheltered(replay.noShelter(), race.bunch(), saving, 1 - saving);
        assertThat(replay.withShelter(kept).movingSeconds()).isCloseTo(replay.movingSeconds(), within(1e-6));
    }

    /** The bunch that is left at once: 20 km at 260 W alone take what the balance of forces says. */
    @Test
    void theSamePowerWithoutShelterRidesAtTheLoneSpeed() {
        Shelter lost = replay.sheltered(replay.noShelter(), race.bunch(), SAVING, 1);
        double expected = 20_000 / FlatBunchRace.speedMps(260, 1, 0.005) - 20_000 / race.bunchMps();
        assertThat(-replay.withShelter(lost).savedSeconds()).isCloseTo(expected, within(0.02 * expected));
    }

    /** Check value of the shared method: 200 W in a bunch that saves 30 % ride at 10.3853 m/s, not at 10.5031. */
    @Test
    void anotherPowerInTheSameShelterIsNotATailwind() {
        Shelter kept = replay.sheltered(replay.noShelter(), race.bunch(), SAVING, 1 - SAVING);
        double seconds = replay.withWork(easier(), kept).secondsFor(800);
        assertThat(race.bunchMps() / seconds).isCloseTo(10.3853, within(0.01));
        double asTailwind = replay.withWork(easier()).secondsFor(800);
        assertThat(race.bunchMps() / asTailwind).isCloseTo(10.5031, within(0.01));
    }

    private double[] easier() {
        double[] joules = new double[replay.bins()];
        Series watts = race.ride().series(Channel.POWER);
        for (int second = 0; second < race.ride().seconds(); second++) {
            if (replay.binOf(second) >= 0) {
                joules[replay.binOf(second)] += Math.min(200, watts.get(second));
            }
        }
        return joules;
    }

    /** On the flat the air takes what rolling and bearings leave: reckoned by hand from the forces of the race. */
    @Test
    void theAirsShareOfTheWorkIsWhatRollingLeaves() {
        double v = race.bunchMps();
        double expected = 1 - v * (84 * 9.80665 * 0.005 + 0.091 + 0.0087 * v) / (0.976 * 260);
        assertThat(replay.air(race.bunch()).workShare()).isCloseTo(expected, within(0.01));
        assertThat(replay.air(race.bunch()).withoutDragShare()).isZero();
        assertThat(replay.air(new Interval(0, 0)).workShare()).isNaN();
    }

    @Test
    void sharesOutOfRangeAreRefused() {
        Shelter none = replay.noShelter();
        assertThatThrownBy(() -> replay.sheltered(none, race.bunch(), 0.95, 1))
                .hasMessageContaining("saved share 0.95");
        assertThatThrownBy(() -> replay.sheltered(none, race.bunch(), 0.3, 0)).hasMessageContaining("drag share 0.0");
    }
}
