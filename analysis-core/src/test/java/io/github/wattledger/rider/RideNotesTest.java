package io.github.wattledger.rider;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rider.MisplacedNote.Fault;
import io.github.wattledger.rider.MisplacedNote.Subject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RideNotesTest {
    private static RideNotes eaten(Double... grams) {
        return new RideNotes(null, null, null, null, List.of(grams), List.of(), List.of(), null);
    }

    @Test
    void nothingWrittenDownIsEmpty() {
        assertThat(RideNotes.NONE.isEmpty()).isTrue();
        assertThat(eaten(0.0).isEmpty()).isFalse();
    }

    @Test
    void listsAreCopied() {
        List<Double> grams = new ArrayList<>(List.of(60.0));
        RideNotes notes = new RideNotes(null, null, null, null, grams, List.of(), List.of(), null);
        grams.add(90.0);
        assertThat(notes.eatenGPerHour()).containsExactly(60.0);
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> eaten(60.0, 251.0));
        assertThatIllegalArgumentException().isThrownBy(() -> eaten(-1.0));
        assertThatIllegalArgumentException().isThrownBy(() -> eaten(Double.NaN));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new RideNotes(" ", null, null, null, List.of(), List.of(), List.of(), null));
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        new RideNotes(null, null, null, null, List.of(), List.of(), List.of(new Interval(5, 5)), null));
        assertThatIllegalArgumentException().isThrownBy(() -> new StopNotChosen("puncture", 10, 10));
        assertThatIllegalArgumentException().isThrownBy(() -> new StopNotChosen("puncture", -1, null));
        assertThatIllegalArgumentException().isThrownBy(() -> new StopNotChosen("", 1, null));
    }

    private static RideNotes timed(List<StopNotChosen> stops, List<Interval> bunches) {
        return new RideNotes(null, null, null, null, List.of(), stops, bunches, null);
    }

    /** What the notes are by their definition: a recording of 1000 s cannot tell of what comes after it. */
    @Test
    void whatLiesAfterTheEndIsLeftOutAndWhatReachesBeyondItIsCut() {
        StopNotChosen early = new StopNotChosen("puncture", 100, 200);
        RideNotes notes = timed(
                List.of(
                        early,
                        new StopNotChosen("crossing", 999, null),
                        new StopNotChosen("late", 1000, null),
                        new StopNotChosen("long", 900, 1200)),
                List.of(new Interval(0, 1000), new Interval(500, 1001), new Interval(1000, 1010)));
        assertThat(notes.within(1000))
                .isEqualTo(timed(
                        List.of(early, new StopNotChosen("crossing", 999, null), new StopNotChosen("long", 900, 1000)),
                        List.of(new Interval(0, 1000), new Interval(500, 1000))));
        assertThat(notes.mayBeMisplacedIn(1000)).isTrue();
        assertThat(timed(List.of(), List.of(new Interval(0, 1000))).mayBeMisplacedIn(1000))
                .isFalse();
    }

    /** A ride of 1000 s that stops from 400 to 450. A noted time may lie a minute beside the stop (docs/notes.md). */
    @Test
    void notesThatDoNotFitTheRecordingAreFound() {
        Ride ride = Ride.builder(Instant.EPOCH, 1000)
                .state(new Interval(0, 1000), SecondState.RIDING)
                .state(new Interval(400, 450), SecondState.STOPPED)
                .build();
        RideNotes notes = timed(
                List.of(
                        new StopNotChosen("fits", 340, null),
                        new StopNotChosen("too early", 339, null),
                        new StopNotChosen("fits, after it", 509, 600),
                        new StopNotChosen("too late", 510, 600),
                        new StopNotChosen("after the end", 1000, null),
                        new StopNotChosen("beyond the end", 420, 1061)),
                List.of(new Interval(0, 1060), new Interval(0, 1061), new Interval(1000, 1010)));
        assertThat(notes.misplacedIn(ride))
                .containsExactly(
                        new MisplacedNote(Subject.STOP, 1, Fault.NO_STOP_THERE),
                        new MisplacedNote(Subject.STOP, 3, Fault.NO_STOP_THERE),
                        new MisplacedNote(Subject.STOP, 4, Fault.AFTER_THE_END),
                        new MisplacedNote(Subject.STOP, 5, Fault.ENDS_AFTER_THE_END),
                        new MisplacedNote(Subject.BUNCH, 1, Fault.ENDS_AFTER_THE_END),
                        new MisplacedNote(Subject.BUNCH, 2, Fault.AFTER_THE_END));
    }

    /** A device may have been switched off at the stop: where nothing was recorded, nothing can be said against it. */
    @Test
    void aGapMayBeTheStop() {
        Ride ride = Ride.builder(Instant.EPOCH, 1000)
                .state(new Interval(0, 1000), SecondState.RIDING)
                .state(new Interval(400, 450), SecondState.MISSING)
                .build();
        assertThat(new StopNotChosen("puncture", 420, null).liesAtAStopOf(ride)).isTrue();
        assertThat(new StopNotChosen("puncture", 800, null).liesAtAStopOf(ride)).isFalse();
    }
}
