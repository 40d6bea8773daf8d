package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.TARGET_W;
import static io.github.wattledger.pacing.RaceByHand.THRESHOLDS;
import static io.github.wattledger.pacing.RaceByHand.ability;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.ride;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.StopNotChosen;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stops that took longer than a minute. */
class StoppedTimeTest {
    private static final int SECONDS = 10_000;

    private Race stopping(Interval stop) {
        return race(ride(SECONDS, second -> 200, second -> 140)
                .state(stop, SecondState.STOPPED)
                .build());
    }

    /** Shares of 10,000 s, how strong it was. */
    @ParameterizedTest
    @CsvSource({"61, MINOR", "299, MINOR", "300, MODERATE", "799, MODERATE", "800, MAJOR"})
    void areGradedByTheirShareOfElapsedTime(int seconds, Severity severity) {
        assertThat(found(new StoppedTime(), stopping(new Interval(4000, 4000 + seconds)))
                        .severity())
                .isEqualTo(severity);
    }

    @Test
    void nameTheLimitInForce() {
        JudgementLimits limits = JudgementLimits.USUAL.with(JudgementLimit.STOP_SECONDS, 200);
        Ride ride = ride(SECONDS, second -> 200, second -> 140)
                .state(new Interval(1000, 1150), SecondState.STOPPED)
                .state(new Interval(4000, 4300), SecondState.STOPPED)
                .build();
        Found stops = found(new StoppedTime(), race(ride, THRESHOLDS, ability(TARGET_W), limits));
        assertThat(evidence(stops, "longerThanSeconds")).isEqualTo(200);
        assertThat(evidence(stops, "stopCount")).isEqualTo(1);
        assertThat(evidence(found(new StoppedTime(), race(ride)), "longerThanSeconds"))
                .isEqualTo(60);
    }

    @Test
    void lieBetweenMovingSeconds() {
        assertThat(found(new StoppedTime(), stopping(new Interval(1, 100))).when())
                .isEqualTo(new Interval(1, 100));
        assertThat(new StoppedTime().detect(stopping(new Interval(0, 100)))).isEmpty();
        assertThat(new StoppedTime().detect(stopping(new Interval(9000, SECONDS))))
                .isEmpty();
    }

    /** A stop costs what it takes, and about 12 s more for slowing down and getting going again. */
    @Test
    void costARange() {
        Ride ride = ride(SECONDS, second -> 200, second -> 140)
                .state(new Interval(1000, 1150), SecondState.STOPPED)
                .state(new Interval(4000, 4300), SecondState.PAUSED)
                .state(new Interval(6000, 6060), SecondState.STOPPED) // a minute and no more: not reported
                .build();
        PricePlan.Known plan =
                (PricePlan.Known) found(new StoppedTime(), race(ride)).price();
        Cost.Priced cost = (Cost.Priced) plan.price().cost();
        assertThat(cost.lowMinutes()).isCloseTo(450 / 60.0, within(1e-9));
        assertThat(cost.highMinutes()).isCloseTo((450 + 2 * 12) / 60.0, within(1e-9));
    }

    /** From the definition: a stop for a puncture is no pacing mistake; what was stopped besides is one. */
    @Nested
    class WithNotes {
        private Optional<Found> found(int offsetSeconds, StopNotChosen... notes) {
            Ride ride = ride(SECONDS, second -> 200, second -> 140)
                    .state(new Interval(2000, 2600), SecondState.STOPPED)
                    .state(new Interval(6000, 6300), SecondState.STOPPED)
                    .build();
            return new StoppedTime().detect(race(ride, offsetSeconds, notes(notes)));
        }

        private RideNotes notes(StopNotChosen... stops) {
            return new RideNotes(null, null, null, null, List.of(), List.of(stops), List.of(), null);
        }

        private double totalMinutes(int offsetSeconds, StopNotChosen... notes) {
            return evidence(found(offsetSeconds, notes).orElseThrow(), "totalMinutes");
        }

        @Test
        void aNotedStopIsLeftOut() {
            assertThat(totalMinutes(0)).isEqualTo(15);
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 2000, 2600)))
                    .isEqualTo(5);
            assertThat(found(
                            0,
                            new StopNotChosen("puncture", 2000, 2600),
                            new StopNotChosen("level crossing", 6100, null)))
                    .isEmpty();
        }

        @Test
        void aMomentStandsForTheWholeStop() {
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 2300, null)))
                    .isEqualTo(5);
            // Read from a clock to the minute: a minute beside the stop is still meant, more is not.
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 1940, null)))
                    .isEqualTo(5);
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 1938, null)))
                    .isEqualTo(15);
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 2659, null)))
                    .isEqualTo(5);
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 2660, null)))
                    .isEqualTo(15);
        }

        @Test
        void theRestOfALongerStopIsTheRidersChoice() {
            // 2000 to 2200 noted, a minute of reading: 340 of 600 s are left.
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 2000, 2200)))
                    .isCloseTo((340 + 300) / 60.0, within(1e-9));
            // What is left of a stop counts from the usual limit on: 60 s are not more than 60 s.
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 2120, 2600)))
                    .isEqualTo(5);
            assertThat(totalMinutes(0, new StopNotChosen("puncture", 2121, 2600)))
                    .isCloseTo((61 + 300) / 60.0, within(1e-9));
        }

        @Test
        void secondsAreThoseOfTheWholeRecording() {
            assertThat(totalMinutes(1000, new StopNotChosen("puncture", 3000, 3600)))
                    .isEqualTo(5);
            assertThat(totalMinutes(1000, new StopNotChosen("puncture", 100, 200)))
                    .isEqualTo(15);
        }

        @Test
        void whatIsLeftOutIsSaid() {
            Ride ride = ride(SECONDS, second -> 200, second -> 140)
                    .state(new Interval(2000, 2600), SecondState.STOPPED)
                    .build();
            Race race = race(
                    ride, 0, notes(new StopNotChosen("puncture", 2300, null), new StopNotChosen("flat", 2400, null)));
            assertThat(LeftOut.of(race, true, Company.NOT_SAID))
                    .contains(
                            "Stops that by the rider's notes were not the rider's choice, 0:10:00 in all, are no pacing"
                                    + " mistake.");
            assertThat(LeftOut.of(race(ride), true, Company.NOT_SAID)).noneMatch(line -> line.contains("notes"));
        }
    }
}
