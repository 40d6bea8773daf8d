package io.github.wattledger.pacing.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.testing.FlatBunchRace;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Holding a bunch against letting it go, on the flat in still air at steady speeds. The expected values were reckoned once
 * outside this project from closed forms and steady balances of forces, with whole stretches in place of bins.
 */
class LettingGoTest {
    /** Bins of 200 m, whole seconds and the change of speed between both stretches, which the closed values leave out. */
    private static final double SAVING_ERROR = 0.01;

    private static LettingGo lettingGo(
            FlatBunchRace race, double bunchW, double dragFactor, double group, double... at) {
        Replay replay = race.replay(dragFactor);
        RigChoice rig = RigChoice.ofNoRide(null, null, null, null, Position.HOODS);
        return new Pricing(race.ride(), 0, FlatBunchRace.TARGET_W, replay, rig, Cancellation.NEVER)
                .lettingGo(race.bunch(), race.bunch(), bunchW, group, at);
    }

    private static LettingGo.BreakEven breakEven(LettingGo decision) {
        return Objects.requireNonNull(decision.breakEven());
    }

    /** Recorded at 1.3 times the target with different true savings; 80 km at the target afterwards. */
    @ParameterizedTest
    @CsvSource({"0.10, 0.0299, 0.1206", "0.20, 0.0409, 0.1351", "0.30, 0.0540, 0.1521", "0.40, 0.0699, 0.1726"})
    void breakEvenOfARecordedRace(double saving, double equalWork, double equalNormalizedPower) {
        LettingGo.BreakEven found = breakEven(lettingGo(new FlatBunchRace(260, saving, 200, 0.005), 260, 1, 0));
        assertThat(found.equalWork()).isCloseTo(equalWork, within(SAVING_ERROR));
        assertThat(found.equalNormalizedPower()).isCloseTo(equalNormalizedPower, within(SAVING_ERROR));
    }

    /** The shelter is tuned until both decisions take equally long; the tool has to find that shelter. */
    @ParameterizedTest
    @CsvSource({
        "220, 200, 0.005, 0.0164", "240, 200, 0.005, 0.0604", "250, 200, 0.005, 0.0903", "260, 200, 0.005, 0.1239",
        "280, 200, 0.005, 0.1989", "300, 200, 0.005, 0.2789", "260, 200, 0.009, 0.1451", "260, 190, 0.005, 0.1892",
        "260, 180, 0.005, 0.2606"
    })
    void tunedShelterIsFoundAtEqualNormalizedPower(double bunchW, double restW, double rolling, double tuned) {
        LettingGo decision = lettingGo(new FlatBunchRace(bunchW, tuned, restW, rolling), bunchW, 1, 0);
        assertThat(breakEven(decision).equalNormalizedPower()).isCloseTo(tuned, within(SAVING_ERROR));
    }

    @ParameterizedTest
    @CsvSource({
        "220, 200, 0.005, 0.0030",
        "260, 200, 0.005, 0.0224",
        "300, 200, 0.005, 0.0522",
        "260, 200, 0.009, 0.0271",
        "260, 190, 0.005, 0.0341",
        "260, 180, 0.005, 0.0465"
    })
    void tunedShelterIsFoundAtEqualWork(double bunchW, double restW, double rolling, double tuned) {
        LettingGo decision = lettingGo(new FlatBunchRace(bunchW, tuned, restW, rolling), bunchW, 1, 0);
        assertThat(breakEven(decision).equalWork()).isCloseTo(tuned, within(SAVING_ERROR));
    }

    /**
     * Where the air alone resists, power in the bunch r times the target and four times as far alone afterwards: the root of the
     * closed balance. No tyre rolls for nothing, so the line through two rolling resistances is followed to where it would,
     * and the bearings (some 0.17 N, as a rolling resistance of 0.0002) with it.
     */
    @ParameterizedTest
    @CsvSource({"220, 0.0130", "250, 0.0733", "280, 0.1647", "300, 0.2340"})
    void breakEvenTendsToThatOfAirAlone(double bunchW, double closed) {
        double high = ofTunedRace(bunchW, closed, 0.004);
        double low = ofTunedRace(bunchW, closed, 0.002);
        double ofAirAlone = low - (high - low) / 0.002 * 0.0022;
        assertThat(ofAirAlone).isCloseTo(closed, within(SAVING_ERROR));
    }

    private static double ofTunedRace(double bunchW, double saving, double rolling) {
        LettingGo decision = lettingGo(new FlatBunchRace(bunchW, saving, 200, rolling), bunchW, 1, 0);
        return breakEven(decision).equalNormalizedPower();
    }

    /** A drag area that the tool takes to be wrong hardly matters: the drag alone follows from the recorded balance. */
    @ParameterizedTest
    @CsvSource({"0.75, 0.1465", "1.1, 0.1541"})
    void breakEvenHardlyTurnsOnTheDragArea(double factor, double equalNormalizedPower) {
        LettingGo.BreakEven found = breakEven(lettingGo(new FlatBunchRace(260, 0.30, 200, 0.005), 260, factor, 0));
        assertThat(found.equalNormalizedPower()).isCloseTo(equalNormalizedPower, within(SAVING_ERROR));
    }

    /** Seconds won by letting go at supposed savings; within 5 s, since the 1740 s in the bunch end within a bin. */
    @ParameterizedTest
    @CsvSource({"0, 99.4, 51.2", "0.15, 1.6, -107.3", "0.30, -138.1, -336.1", "0.45, -357.1, -700.3"})
    void secondsOfLettingGo(double saving, double equalNormalizedPower, double equalWork) {
        LettingGo.AtSaving at = lettingGo(new FlatBunchRace(260, 0.30, 200, 0.005), 260, 1, 0, saving)
                .savings()
                .get(0);
        assertThat(at.letGoEqualNormalizedPowerSeconds()).isCloseTo(equalNormalizedPower, within(5 + 10 * saving));
        assertThat(at.letGoEqualWorkSeconds()).isCloseTo(equalWork, within(5 + 20 * saving));
    }

    /** The same bunch ridden at the target: 78 and 17 s. Shelter taken for a tailwind would give 99 and 51 s. */
    @Test
    void keptShelterIsNotATailwind() {
        LettingGo.AtSaving at = lettingGo(new FlatBunchRace(260, 0.30, 200, 0.005), 260, 1, 0, 0.30)
                .savings()
                .get(0);
        assertThat(at.keptEqualNormalizedPowerSeconds()).isCloseTo(78.2, within(3.0));
        assertThat(at.keptEqualWorkSeconds()).isCloseTo(17.1, within(3.0));
    }

    /** By definition: a next group that shelters all the way is the same bunch. */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.4})
    void aNextGroupAllTheWayIsTheSameBunch(double saving) {
        LettingGo.AtSaving at = lettingGo(new FlatBunchRace(260, 0.30, 200, 0.005), 260, 1, 1, saving)
                .savings()
                .get(0);
        assertThat(at.letGoEqualNormalizedPowerSeconds()).isEqualTo(at.keptEqualNormalizedPowerSeconds());
    }

    /** By definition: the more the bunch saved, the more is lost without it, and a next group makes up for some. */
    @Test
    void losesMoreTheMoreTheBunchSaved() {
        FlatBunchRace race = new FlatBunchRace(260, 0.30, 200, 0.005);
        double before = Double.POSITIVE_INFINITY;
        for (LettingGo.AtSaving at :
                lettingGo(race, 260, 1, 0, 0, 0.1, 0.2, 0.3, 0.4, 0.5).savings()) {
            assertThat(at.letGoEqualNormalizedPowerSeconds()).isLessThan(before);
            before = Objects.requireNonNull(at.letGoEqualNormalizedPowerSeconds());
        }
        assertThat(breakEven(lettingGo(race, 260, 1, 0.5)).equalNormalizedPower())
                .isGreaterThan(breakEven(lettingGo(race, 260, 1, 0)).equalNormalizedPower());
    }
}
