package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.compare.Comparer;
import io.github.wattledger.intake.Inspector;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.RawFit;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A file, its bytes and a stream of them are one ride: nothing is lost on any of the three ways in. */
class ReviewerInputTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(240).withMassKg(70);

    private static final int RUNNING = 1;
    private static final int CYCLING = 2;
    private static final long START = 1_100_000_000L;

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"damaged.fit", "even-paced.fit", "over-hard-start.fit"})
    void theReviewIsEqual(String name) throws IOException, UnreadableRideException {
        Path file = SAMPLES.resolve(name);
        byte[] content = Files.readAllBytes(file);
        RideReview byPath = Reviewer.review(file, RIDER, ReviewOptions.WHOLE_RIDE);
        RideReview byBytes = Reviewer.review(RideInput.of(content, name), RIDER, ReviewOptions.WHOLE_RIDE);
        RideReview byStream =
                Reviewer.review(RideInput.of(new ByteArrayInputStream(content), name), RIDER, ReviewOptions.WHOLE_RIDE);
        assertThat(byBytes).isEqualTo(byPath);
        assertThat(byStream).isEqualTo(byPath);
        assertThat(byBytes.source().format()).isEqualTo("FIT");
        assertThat(byBytes.source().sha256()).hasSize(64);
    }

    @Test
    void theNotesOnDamageComeAlong() throws IOException, UnreadableRideException {
        byte[] content = Files.readAllBytes(SAMPLES.resolve("damaged.fit"));
        RideReview review = Reviewer.review(RideInput.of(content, "upload 7"), RIDER, ReviewOptions.WHOLE_RIDE);
        assertThat(review.quality().notes()).extracting(QualityNote::code).contains("cut-short");
        assertThat(review.source().file()).isEqualTo("upload 7");
    }

    @Test
    void theSessionOfAnUploadIsChosen() throws UnreadableRideException {
        byte[] content = twoSessions();
        for (int session = 0; session < 2; session++) {
            InputStream stream = new ByteArrayInputStream(content);
            RideReview review = Reviewer.review(
                    RideInput.of(stream, "upload"), RIDER, ReviewOptions.WHOLE_RIDE.withSession(session));
            assertThat(review.source().sessionIndex()).isEqualTo(session);
            assertThat(review.load().averagePowerW()).isEqualTo(100.0 + session);
        }
        assertThatThrownBy(() -> Reviewer.review(
                        RideInput.of(content, "upload"), RIDER, ReviewOptions.WHOLE_RIDE.withSession(2)))
                .isInstanceOfSatisfying(
                        UnreadableRideException.class,
                        e -> assertThat(e.reason()).isEqualTo(Reason.NO_SUCH_SESSION))
                .hasMessageStartingWith("upload: has no session 3");
    }

    @Test
    void anotherSessionThanTheOneInMemoryIsRefused() throws UnreadableRideException {
        Recording second = RideFiles.read(RideInput.of(twoSessions(), "upload"), ReadOptions.DEFAULT)
                .recordings()
                .get(1);
        assertThat(Reviewer.review(second, RIDER, ReviewOptions.WHOLE_RIDE.withSession(1))
                        .load()
                        .averagePowerW())
                .isEqualTo(101);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Reviewer.review(second, RIDER, ReviewOptions.WHOLE_RIDE.withSession(0)))
                .withMessage(
                        "session 1 was asked for, but session 2 is open; choose the session when the file is read");
    }

    @Test
    void theLimitsOfFilesHoldForUploads() throws IOException {
        byte[] content = Files.readAllBytes(SAMPLES.resolve("damaged.fit"));
        ReviewOptions small = ReviewOptions.WHOLE_RIDE.withReading(
                ReadOptions.DEFAULT.withLimits(new ReadLimits(content.length - 1, 1_000_000, 1_000, 512_000_000L)));
        InputStream stream = new ByteArrayInputStream(content);
        for (RideInput input : List.of(
                RideInput.of(SAMPLES.resolve("damaged.fit")),
                RideInput.of(content, "upload"),
                RideInput.of(stream, "upload"))) {
            assertThatThrownBy(() -> Reviewer.review(input, RIDER, small))
                    .isInstanceOfSatisfying(
                            UnreadableRideException.class,
                            e -> assertThat(e.reason()).isEqualTo(Reason.TOO_LARGE))
                    .hasMessageStartingWith(input.name() + ": has ");
        }
    }

    @Test
    void theOtherDoorsTakeUploadsAsWell() throws IOException, UnreadableRideException {
        Path file = SAMPLES.resolve("even-paced.fit");
        byte[] content = Files.readAllBytes(file);
        RideInput upload = RideInput.of(content, "even-paced.fit");
        assertThat(Inspector.inspect(upload, ReadOptions.DEFAULT)).isEqualTo(Inspector.inspect(file));
        assertThat(Comparer.compare(List.of(upload, upload), ReadOptions.DEFAULT, 0, Double.POSITIVE_INFINITY))
                .isEqualTo(Comparer.compare(
                        List.of(RideInput.of(file), RideInput.of(file)),
                        ReadOptions.DEFAULT,
                        0,
                        Double.POSITIVE_INFINITY));
    }

    @Test
    void programsLearnTheReason() throws IOException {
        assertReason(Reason.NO_SUCH_FILE, RideInput.of(folder.resolve("none.fit")));
        assertReason(Reason.NOT_ACCESSIBLE, RideInput.of(folder));
        assertReason(Reason.EMPTY, text(""));
        assertReason(Reason.UNKNOWN_FORMAT, text("Dear diary. Today I rode far."));
        assertReason(Reason.NOT_A_RECORDING, text("power,heart rate\n200,140\n"));
        assertReason(Reason.NOT_A_RECORDING, text("<gpx><trk><trkseg></trkseg></trk></gpx>"));
        assertReason(Reason.DAMAGED, text("<gpx><trk><trkseg>"));
        byte[] fit = Files.readAllBytes(SAMPLES.resolve("even-paced.fit"));
        byte[] start = Arrays.copyOf(fit, 40);
        assertReason(Reason.DAMAGED, RideInput.of(start, "ride"));
        assertReason(Reason.NO_CYCLING, RideInput.of(running(), "ride"));
    }

    private static void assertReason(Reason reason, RideInput input) {
        assertThatThrownBy(() -> Reviewer.review(input, RIDER, ReviewOptions.WHOLE_RIDE))
                .isInstanceOfSatisfying(
                        UnreadableRideException.class,
                        e -> assertThat(e.reason()).isEqualTo(reason))
                .hasMessageStartingWith(input.name() + ": ");
    }

    private static RideInput text(String text) {
        return RideInput.of(text.getBytes(StandardCharsets.UTF_8), "ride");
    }

    /** Two sessions of 100 s, the first at 100 W and the second at 101 W. */
    private static byte[] twoSessions() {
        return sessions(CYCLING, CYCLING);
    }

    /** 12 is cross_country_skiing in the public FIT profile; a reader sees words. */
    @Test
    void theSportsOfAFileWithoutCyclingAreWords() {
        assertThatThrownBy(() ->
                        Reviewer.review(RideInput.of(sessions(RUNNING, 12), "day"), RIDER, ReviewOptions.WHOLE_RIDE))
                .hasMessage("day: holds no cycling, but sessions 1 (running), 2 (cross country skiing); choose a file"
                        + " with a ride");
    }

    private static byte[] running() {
        return sessions(RUNNING);
    }

    private static byte[] sessions(int... sports) {
        RawFit fit = RawFit.littleEndian().define(0, RawFit.RECORD, 253, 4, RawFit.UINT32, 7, 2, RawFit.UINT16);
        for (int i = 0; i < 100 * sports.length; i++) {
            fit.data(0, START + i, 100 + i / 100);
        }
        // Session fields: 2 start time, 7 total elapsed time in ms, 5 sport (public FIT profile).
        fit.define(1, RawFit.SESSION, 2, 4, RawFit.UINT32, 7, 4, RawFit.UINT32, 5, 1, RawFit.ENUM);
        for (int i = 0; i < sports.length; i++) {
            fit.data(1, START + 100L * i, 99_000, sports[i]);
        }
        return fit.file();
    }

    /** An empty second reading would look like an empty file. */
    @Test
    void aStreamThatIsReadTwiceIsSaidToBe() throws Exception {
        RideInput stream =
                RideInput.of(new ByteArrayInputStream(Files.readAllBytes(SAMPLES.resolve("damaged.fit"))), "upload");
        Reviewer.review(stream, RIDER, ReviewOptions.WHOLE_RIDE);
        assertThatIllegalStateException()
                .isThrownBy(() -> Reviewer.review(stream, RIDER, ReviewOptions.WHOLE_RIDE))
                .withMessage("upload: the stream was read already; keep its bytes to read them again");
    }
}
