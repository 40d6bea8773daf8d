package io.github.wattledger.rider;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import io.github.wattledger.ride.Interval;
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
}
