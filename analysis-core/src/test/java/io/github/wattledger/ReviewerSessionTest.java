package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.RawFit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file of three sessions: a run, a ride and another run. */
class ReviewerSessionTest {
    private static final int RUNNING = 1;
    private static final int CYCLING = 2;
    private static final long START = 1_100_000_000L;

    @TempDir
    Path folder;

    private Path file = Path.of("");

    @BeforeEach
    void writeFile() throws IOException {
        RawFit fit = RawFit.littleEndian().define(0, RawFit.RECORD, 253, 4, RawFit.UINT32, 7, 2, RawFit.UINT16);
        for (int i = 0; i < 300; i++) {
            fit.data(0, START + i, 100 + i / 100);
        }
        // Session fields: 2 start time, 7 total elapsed time in ms, 5 sport (public FIT profile).
        fit.define(1, RawFit.SESSION, 2, 4, RawFit.UINT32, 7, 4, RawFit.UINT32, 5, 1, RawFit.ENUM);
        int[] sports = {RUNNING, CYCLING, RUNNING};
        for (int i = 0; i < sports.length; i++) {
            fit.data(1, START + 100L * i, 99_000, sports[i]);
        }
        file = Files.write(folder.resolve("three.fit"), fit.file());
    }

    private RideReview review(@Nullable Integer sessionIndex) throws UnreadableRideException {
        return Reviewer.review(file, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE.withSession(sessionIndex));
    }

    @Test
    void takesTheFirstCyclingSessionUnlessToldOtherwise() throws UnreadableRideException {
        RideReview review = review(null);
        assertThat(review.source().sessionIndex()).isEqualTo(1);
        assertThat(review.load().averagePowerW()).isEqualTo(101);
    }

    @Test
    void takesTheSessionAskedForWhateverItsSport() throws UnreadableRideException {
        RideReview review = review(2);
        assertThat(review.source().sport()).isEqualTo("running");
        assertThat(review.load().averagePowerW()).isEqualTo(102);
    }

    @Test
    void namesTheSessionsByNumber() throws UnreadableRideException {
        assertThat(review(null).quality().notes())
                .extracting(note -> note.text())
                .contains("The file holds sessions 1 (running), 2 (cycling), 3 (running). Only session 2 is reviewed.");
    }

    @Test
    void refusesASessionThatTheFileDoesNotHave() {
        assertThatThrownBy(() -> review(3))
                .isInstanceOf(UnreadableRideException.class)
                .hasMessage(file + ": has no session 4; it holds sessions 1 (running), 2 (cycling), 3 (running)");
    }
}
