package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.Occasion.Kind;
import io.github.wattledger.pacing.Occasion.Reason;
import io.github.wattledger.pacing.Occasion.WorkLap;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every limit of the list of rules on both sides. The limits were set on real rides and simulated races, see {@code
 * docs/methods.md}; what each ride here measures follows from how it is laid out. The guide is 200 W throughout.
 */
class OccasionTest {
    private static final double GUIDE_W = 200;
    private static final int HOUR = 3600;

    /** A ride as hard as the guide. */
    private static RideByHand hard(int seconds) {
        return new RideByHand().riding(seconds, GUIDE_W);
    }

    private static Circumstances circumstances(Ride ride, @Nullable Double guideW, Effort effort) {
        return new Circumstances(
                ride,
                new Interval(0, ride.seconds()),
                false,
                ride.has(Channel.LATITUDE),
                1,
                guideW != null,
                guideW,
                effort,
                false);
    }

    private static Occasion occasion(RideByHand ride) {
        return decide(circumstances(ride.build(), GUIDE_W, Effort.AUTO));
    }

    private static Reason reason(RideByHand ride) {
        return occasion(ride).reason();
    }

    private static Reason reasonWithoutThreshold(RideByHand ride) {
        return decide(circumstances(ride.build(), null, Effort.AUTO)).reason();
    }

    @Test
    void whatWasAskedForOverridesEverything() {
        Ride shortAndEasy = new RideByHand().riding(600, 100).build();
        assertThat(decide(circumstances(shortAndEasy, null, Effort.RACE)).reason())
                .isEqualTo(Reason.ASKED_AS_RACE);
        Ride race = hard(HOUR).build();
        Circumstances onARaceDay = new Circumstances(
                race,
                new Interval(0, HOUR),
                false,
                race.has(Channel.LATITUDE),
                3,
                true,
                GUIDE_W,
                Effort.TRAINING,
                true);
        assertThat(decide(onARaceDay).reason()).isEqualTo(Reason.ASKED_AS_TRAINING);
    }

    @ParameterizedTest
    @CsvSource({"2399, UNDER_FORTY_MINUTES", "2400, HARD_FOR_ITS_LENGTH"})
    void fortyMinutesMustBeRidden(int seconds, Reason expected) {
        // Standing is not riding: the ten minutes in the middle are no part of the forty.
        RideByHand ride = hard(seconds - 1200).standing(30, SecondState.PAUSED).riding(1200, GUIDE_W);
        assertThat(reason(ride)).isEqualTo(expected);
    }

    /** Easy, indoors, with stops and without a threshold: the rider's own word counts more than all of it. */
    @ParameterizedTest
    @CsvSource({"2399, UNDER_FORTY_MINUTES", "2400, RACE_DAY"})
    void aRaceDaySettlesItForWhatIsLongEnough(int seconds, Reason expected) {
        Ride ride = new RideByHand().riding(seconds, 80).build();
        assertThat(decide(new Circumstances(
                                ride,
                                new Interval(0, seconds),
                                true,
                                ride.has(Channel.LATITUDE),
                                1,
                                false,
                                null,
                                Effort.AUTO,
                                true))
                        .reason())
                .isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"2, THRESHOLD_NOT_KNOWN", "3, SEVERAL_SPORTS"})
    void threeSportsAreARaceWithoutAThreshold(int sports, Reason expected) {
        Ride ride = hard(HOUR).build();
        assertThat(decide(new Circumstances(
                                ride,
                                new Interval(0, HOUR),
                                false,
                                ride.has(Channel.LATITUDE),
                                sports,
                                false,
                                null,
                                Effort.AUTO,
                                false))
                        .reason())
                .isEqualTo(expected);
    }

    /** Twice {@code workSeconds} with rests; what is not a session here is easy. */
    private static RideByHand session(int workSeconds, int secondWorkSeconds, double workW, double restAfterW) {
        return new RideByHand()
                .lap(1203, 100)
                .lap(workSeconds, workW)
                .lap(403, restAfterW)
                .lap(secondWorkSeconds, workW)
                .lap(1403, 100);
    }

    @ParameterizedTest
    @CsvSource({
        // As hard as 1.2 times the laps around it, on both sides of the limit, for each neighbour.
        "300, 300, 121, 100, LAPS_OF_WORK_AND_REST",
        "300, 300, 119, 100, BELOW_GUIDE",
        "300, 300, 121, 102, BELOW_GUIDE",
        // Equal within 3 s or 1 %, round within 3 s, 5 s from ten minutes on.
        "300, 303, 130, 100, LAPS_OF_WORK_AND_REST",
        "297, 301, 130, 100, BELOW_GUIDE",
        "300, 304, 130, 100, BELOW_GUIDE",
        "300, 330, 130, 100, BELOW_GUIDE",
        "1195, 1205, 130, 100, LAPS_OF_WORK_AND_REST",
        "1195, 1206, 130, 100, BELOW_GUIDE",
        // Laps at the foot and at the top of a hill are equal and not round.
        "431, 432, 130, 100, BELOW_GUIDE",
        "15, 18, 130, 100, LAPS_OF_WORK_AND_REST"
    })
    void equalLapsOfARoundLengthAreASession(
            int workSeconds, int secondWorkSeconds, double workW, double restAfterW, Reason expected) {
        assertThat(reason(session(workSeconds, secondWorkSeconds, workW, restAfterW)))
                .isEqualTo(expected);
    }

    @Test
    void oneLapOfWorkIsNoSession() {
        assertThat(reason(new RideByHand().lap(1203, 100).lap(300, 150).lap(1203, 100)))
                .isEqualTo(Reason.BELOW_GUIDE);
    }

    /** Nobody knows how hard the rider rode before the first lap and after the last. */
    @Test
    void theFirstAndTheLastLapAreNoLapsOfWork() {
        assertThat(reason(new RideByHand().lap(300, 150).lap(2203, 100).lap(300, 150)))
                .isEqualTo(Reason.BELOW_GUIDE);
    }

    @ParameterizedTest
    @CsvSource({
        "11, false",
        "12, true",
        "19, false",
        "33, true",
        "34, false",
        "72, true",
        // From 75 s on only halves of a minute are round.
        "75, false",
        "86, false",
        "87, true",
        "93, true",
        "94, false",
        "105, false",
        "596, false",
        "597, true",
        "605, true",
        "606, false",
        "2700, true",
        "2701, false"
    })
    void workHasARoundLength(int seconds, boolean expected) {
        assertThat(LapsOfWork.isWorkLength(seconds)).isEqualTo(expected);
    }

    /** A second press of the button gives a lap of a few seconds, which must not stand between work and rest. */
    @ParameterizedTest
    @CsvSource({"9, LAPS_OF_WORK_AND_REST", "10, BELOW_GUIDE"})
    void aSlipOfTheFingerIsNoLap(int slipSeconds, Reason expected) {
        RideByHand ride = new RideByHand()
                .lap(1203, 100)
                .lap(300, 150)
                .lap(slipSeconds, 150)
                .lap(403, 100)
                .lap(300, 150)
                .lap(1203, 100);
        assertThat(reason(ride)).isEqualTo(expected);
    }

    @Test
    void aRestWithTheTimerStoppedIsARest() {
        RideByHand ride = new RideByHand()
                .lap(1203, 100)
                .lap(300, 150)
                .lapOfRestWithTheTimerStopped(120)
                .lap(300, 150)
                .lap(1203, 100);
        assertThat(reason(ride)).isEqualTo(Reason.LAPS_OF_WORK_AND_REST);
    }

    /** A lap each 5 km, or each 5 miles, on a circuit with a climb; with other distances the times make a session. */
    @ParameterizedTest
    @CsvSource({
        "5000, 5000, HARD_FOR_ITS_LENGTH",
        "5020, 4980, HARD_FOR_ITS_LENGTH",
        "8047, 8047, HARD_FOR_ITS_LENGTH",
        "5000, 4700, LAPS_OF_WORK_AND_REST",
        "5300, 5300, LAPS_OF_WORK_AND_REST"
    })
    void lapsByDistanceAreLeftOut(double climbM, double restM, Reason expected) {
        RideByHand ride = new RideByHand()
                .lap(613, 160, restM)
                .lap(900, 250, climbM)
                .lap(613, 160, restM)
                .lap(900, 250, climbM)
                .lap(613, 160, restM);
        assertThat(reason(ride)).isEqualTo(expected);
    }

    /** Three times up the same hill within a few seconds, with the button pressed at its foot and at its top. */
    @Test
    void aRaceWithLapsAtTheFootAndTheTopOfAHillStaysARace() {
        RideByHand ride = new RideByHand();
        for (int climbSeconds : new int[] {430, 431, 432}) {
            ride.lap(610, 160).lap(climbSeconds, 280);
        }
        assertThat(reason(ride.lap(610, 160))).isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
    }

    @Test
    void saysWhichLapsTheWorkWas() {
        Occasion occasion = occasion(new RideByHand()
                .lap(1203, 100)
                .lap(300, 150)
                .lap(403, 100)
                .lap(60, 180)
                .lap(403, 100)
                .lap(302, 160)
                .lap(403, 100));
        assertThat(occasion.kind()).isEqualTo(Kind.SESSION);
        assertThat(occasion.workLaps()).containsExactly(new WorkLap(2, 300, 150), new WorkLap(6, 302, 160));
        assertEvidence(occasion, "lapsOfWork", 2);
        assertEvidence(occasion, "lapSeconds", 300);
    }

    @Test
    void aSportThatIsRiddenIndoorsIsIndoors() {
        Ride virtualRoad = hard(HOUR).build();
        assertThat(decide(new Circumstances(
                                virtualRoad,
                                new Interval(0, HOUR),
                                true,
                                virtualRoad.has(Channel.LATITUDE),
                                1,
                                true,
                                GUIDE_W,
                                Effort.AUTO,
                                false))
                        .reason())
                .isEqualTo(Reason.INDOOR_SPORT);
    }

    @Test
    void whatDoesNotMoveIsIndoors() {
        assertThat(reason(hard(HOUR).without(Channel.LATITUDE, Channel.LONGITUDE, Channel.SPEED, Channel.DISTANCE)))
                .isEqualTo(Reason.NOTHING_MOVED);
        assertThat(reason(hard(HOUR).without(Channel.LATITUDE, Channel.LONGITUDE, Channel.SPEED)))
                .isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
        assertThat(reason(hard(HOUR).without(Channel.LATITUDE, Channel.LONGITUDE, Channel.DISTANCE)))
                .isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
    }

    @ParameterizedTest
    @CsvSource({"10, NO_POSITION_AND_LEVEL", "10.1, HARD_FOR_ITS_LENGTH"})
    void withoutPositionALevelRideIsIndoors(double hillM, Reason expected) {
        assertThat(reason(hard(HOUR).hill(hillM).without(Channel.LATITUDE, Channel.LONGITUDE)))
                .isEqualTo(expected);
    }

    @Test
    void aLevelRideWithPositionIsOutdoors() {
        assertThat(reason(hard(HOUR).hill(0))).isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
    }

    /** A wheel sensor alone says neither: outdoors is where a ride is judged, and the file has nothing against it. */
    @Test
    void withoutPositionAndAltitudeNothingSaysIndoors() {
        assertThat(reason(hard(HOUR).without(Channel.LATITUDE, Channel.LONGITUDE, Channel.ALTITUDE)))
                .isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
    }

    @ParameterizedTest
    @CsvSource({
        // 1500 of 10,000 s are 15 %, which is not above it.
        "8500, 1500, STOPPED, HARD_FOR_ITS_LENGTH",
        "8500, 1510, STOPPED, LONG_STOPS",
        "8500, 1510, PAUSED, LONG_STOPS",
        // What was not recorded may have been ridden.
        "8500, 1510, MISSING, HARD_FOR_ITS_LENGTH",
        // From twelve hours of riding on, a sleep is no outing.
        "43198, 9000, PAUSED, LONG_STOPS",
        "43200, 9000, PAUSED, HARD_FOR_ITS_LENGTH"
    })
    void longStopsMakeAnOuting(int ridingSeconds, int stoppedSeconds, SecondState state, Reason expected) {
        RideByHand ride =
                hard(ridingSeconds / 2).standing(stoppedSeconds, state).riding(ridingSeconds / 2, GUIDE_W);
        assertThat(reason(ride)).isEqualTo(expected);
    }

    @Test
    void standingBeforeTheFirstAndAfterTheLastRidingSecondIsNoStop() {
        RideByHand ride = new RideByHand()
                .standing(1500, SecondState.STOPPED)
                .riding(HOUR, GUIDE_W)
                .standing(1500, SecondState.PAUSED);
        assertThat(reason(ride)).isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
        assertEvidence(occasion(ride), "stoppedSharePercent", 0);
    }

    @ParameterizedTest
    @CsvSource({"8, 10, MANY_STOPS", "8, 9, HARD_FOR_ITS_LENGTH", "7, 10, HARD_FOR_ITS_LENGTH"})
    void fourStopsAnHourMakeAnOuting(int stops, int stopSeconds, Reason expected) {
        RideByHand ride = hard(2 * HOUR - stops * 100);
        for (int stop = 0; stop < stops; stop++) {
            ride.standing(stopSeconds, SecondState.STOPPED).riding(100, GUIDE_W);
        }
        assertThat(reason(ride)).isEqualTo(expected);
    }

    /** A stop goes on when the timer is stopped within it: these are seven in two hours, not fourteen. */
    @Test
    void aStopIsOneWhetherTheTimerRunsOrNot() {
        RideByHand ride = hard(2 * HOUR - 700);
        for (int stop = 0; stop < 7; stop++) {
            ride.standing(10, SecondState.STOPPED)
                    .standing(10, SecondState.PAUSED)
                    .riding(100, GUIDE_W);
        }
        assertEvidence(occasion(ride), "stopsOfTenSeconds", 7);
    }

    @Test
    void withoutPowerOrThresholdTheLevelIsNotKnown() {
        assertThat(reason(hard(HOUR).without(Channel.POWER))).isEqualTo(Reason.NO_POWER);
        assertThat(reasonWithoutThreshold(hard(HOUR))).isEqualTo(Reason.THRESHOLD_NOT_KNOWN);
        assertThat(reasonWithoutThreshold(hard(HOUR).without(Channel.POWER))).isEqualTo(Reason.NO_POWER);
    }

    /** The level is not shown either where it rests on a threshold that is not known. */
    @Test
    void aGuideFromAThresholdThatIsNotKnownCountsForNothing() {
        Ride ride = hard(HOUR).build();
        Occasion occasion = decide(new Circumstances(
                ride, new Interval(0, HOUR), false, ride.has(Channel.LATITUDE), 1, false, GUIDE_W, Effort.AUTO, false));
        assertThat(occasion.reason()).isEqualTo(Reason.THRESHOLD_NOT_KNOWN);
        assertThat(occasion.evidence().get("shareOfGuide")).isEmpty();
        assertThat(occasion.evidence().get("guideW")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        // Even rides, 0.845 and 0.855 of the guide.
        "169, 169, BELOW_GUIDE",
        "171, 171, HARD_FOR_ITS_LENGTH",
        // Normalized power of two equal halves is (a⁴/2 + b⁴/2)^¼: 0.814 and 0.798 of the guide.
        "190, 100, HARD_FIRST_HALF_ONLY",
        "186, 100, BELOW_GUIDE",
        // A hard second half is no race that broke down.
        "100, 190, BELOW_GUIDE"
    })
    void wellBelowTheGuideIsEasy(double firstHalfW, double secondHalfW, Reason expected) {
        RideByHand ride = new RideByHand().riding(2 * HOUR, firstHalfW).riding(2 * HOUR, secondHalfW);
        assertThat(reason(ride)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        // 0.935 and 0.945 of the guide, with 2.5 and 1.5 % stopped.
        "187, 9750, 250, BETWEEN_RACE_AND_TRAINING",
        "187, 9850, 150, HARD_FOR_ITS_LENGTH",
        "189, 9750, 250, HARD_FOR_ITS_LENGTH",
        "171, 9750, 250, BETWEEN_RACE_AND_TRAINING",
        "169, 9750, 250, BELOW_GUIDE"
    })
    void notQuiteHardWithAFewStopsMayBeEither(double watts, int ridingSeconds, int stoppedSeconds, Reason expected) {
        RideByHand ride = new RideByHand()
                .riding(ridingSeconds / 2, watts)
                .standing(stoppedSeconds, SecondState.PAUSED)
                .riding(ridingSeconds / 2, watts);
        assertThat(reason(ride)).isEqualTo(expected);
    }

    /** From the last line upwards, each time something more is true of the ride. */
    @Test
    void theFirstLineThatAppliesCounts() {
        RideByHand ride = new RideByHand()
                .lap(1203, 80)
                .lap(300, 120)
                .lap(403, 80)
                .lap(300, 120)
                .standing(1000, SecondState.PAUSED)
                .lap(1403, 80);
        Channel[] allThatMoves = {Channel.LATITUDE, Channel.LONGITUDE, Channel.SPEED, Channel.DISTANCE};
        assertThat(reasonWithoutThreshold(ride)).isEqualTo(Reason.LAPS_OF_WORK_AND_REST);
        assertThat(reasonWithoutThreshold(ride.without(allThatMoves))).isEqualTo(Reason.LAPS_OF_WORK_AND_REST);

        RideByHand withStops = new RideByHand()
                .riding(HOUR, 80)
                .standing(1500, SecondState.PAUSED)
                .riding(HOUR, 80);
        assertThat(reasonWithoutThreshold(withStops)).isEqualTo(Reason.LONG_STOPS);
        assertThat(reason(withStops)).isEqualTo(Reason.LONG_STOPS);
        assertThat(reasonWithoutThreshold(withStops.without(Channel.POWER))).isEqualTo(Reason.LONG_STOPS);
        assertThat(reason(withStops.without(allThatMoves))).isEqualTo(Reason.NOTHING_MOVED);

        Ride triathlon = session(300, 300, 150, 100).build();
        assertThat(decide(new Circumstances(
                                triathlon,
                                new Interval(0, triathlon.seconds()),
                                true,
                                triathlon.has(Channel.LATITUDE),
                                3,
                                true,
                                GUIDE_W,
                                Effort.AUTO,
                                false))
                        .reason())
                .isEqualTo(Reason.SEVERAL_SPORTS);
    }

    /** Two hours ridden with stops of 9, 60 and 331 s: 400 of 7,600 s. */
    @Test
    void carriesTheNumbersOfItsSentence() {
        Occasion occasion = occasion(new RideByHand()
                .riding(HOUR, 190)
                .standing(9, SecondState.STOPPED)
                .riding(HOUR / 2, 150)
                .standing(60, SecondState.STOPPED)
                .riding(HOUR / 4, 150)
                .standing(331, SecondState.PAUSED)
                .riding(HOUR / 4, 150));
        assertEvidence(occasion, "ridingHours", 2);
        assertEvidence(occasion, "stoppedSharePercent", 100 * 400 / 7600.0);
        assertEvidence(occasion, "stopsOfTenSeconds", 2);
        assertEvidence(occasion, "stopsOfAMinute", 2);
        assertEvidence(occasion, "stopsPerHour", 1);
        assertEvidence(occasion, "guideW", 200);
        // The window runs over the step between the halves for half a minute of two hours.
        double normalizedW = Math.pow(Math.pow(190, 4) / 2 + Math.pow(150, 4) / 2, 0.25);
        assertThat(occasion.evidence().get("normalizedPowerW").orElseThrow()).isCloseTo(normalizedW, within(0.2));
        assertThat(occasion.evidence().get("shareOfGuide").orElseThrow()).isCloseTo(normalizedW / 200, within(0.001));
        assertThat(occasion.evidence().get("firstHalfShareOfGuide").orElseThrow())
                .isCloseTo(0.95, within(1e-9));
    }

    /** The way to the start and home are no part of what was judged, and neither are the stops on them. */
    @Test
    void measuresTheJudgedPartAlone() {
        Ride ride = new RideByHand()
                .riding(600, 50)
                .standing(1500, SecondState.STOPPED)
                .riding(HOUR, 200)
                .standing(1500, SecondState.STOPPED)
                .riding(600, 50)
                .build();
        Circumstances judged = new Circumstances(
                ride,
                new Interval(2100, 2100 + HOUR),
                false,
                ride.has(Channel.LATITUDE),
                1,
                true,
                GUIDE_W,
                Effort.AUTO,
                false);
        Occasion occasion = decide(judged);
        assertThat(occasion.reason()).isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
        assertEvidence(occasion, "ridingHours", 1);
        assertEvidence(occasion, "shareOfGuide", 1);
    }

    @Test
    void aRideInWhichNothingWasRiddenIsTooShort() {
        Occasion occasion = occasion(new RideByHand().standing(HOUR, SecondState.STOPPED));
        assertThat(occasion.kind()).isEqualTo(Kind.TOO_SHORT);
        assertThat(occasion.evidence().get("stoppedSharePercent")).isEmpty();
        assertThat(occasion.evidence().get("stopsPerHour")).isEmpty();
    }

    @Test
    void refusesImpossibleCircumstances() {
        Ride ride = hard(HOUR).build();
        Interval whole = new Interval(0, HOUR);
        assertThatThrownBy(() -> new Circumstances(
                        ride, whole, false, ride.has(Channel.LATITUDE), 0, true, GUIDE_W, Effort.AUTO, false))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("sports 0");
        assertThatThrownBy(() -> new Circumstances(
                        ride, whole, false, ride.has(Channel.LATITUDE), 1, true, Double.NaN, Effort.AUTO, false))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("guideW");
        assertThatThrownBy(() -> new Circumstances(
                        ride,
                        new Interval(0, HOUR + 1),
                        false,
                        ride.has(Channel.LATITUDE),
                        1,
                        true,
                        GUIDE_W,
                        Effort.AUTO,
                        false))
                .isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void travelsBetweenMachines() throws IOException, ClassNotFoundException {
        Occasion session = occasion(session(300, 300, 150, 100));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(session);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            assertThat(in.readObject()).isEqualTo(session);
        }
    }

    private static void assertEvidence(Occasion occasion, String name, double expected) {
        assertThat(occasion.evidence().get(name).orElseThrow()).as(name).isCloseTo(expected, within(1e-9));
    }

    /** 0.85 of the guide unless the rider chooses another. */
    @Test
    void theRiderCanMoveTheLimitOfARaceEffort() {
        Circumstances easy =
                circumstances(new RideByHand().riding(HOUR, 0.8 * GUIDE_W).build(), GUIDE_W, Effort.AUTO);
        assertThat(decide(easy).reason()).isEqualTo(Reason.BELOW_GUIDE);
        JudgementLimits limits = JudgementLimits.USUAL.with(JudgementLimit.RACE_EFFORT_FRACTION, 0.75);
        assertThat(OccasionRules.decide(easy, limits).reason()).isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
    }

    private static Occasion decide(Circumstances circumstances) {
        return OccasionRules.decide(circumstances, JudgementLimits.USUAL);
    }
}
