package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.RideFormat;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.csv.CsvFormat;
import io.github.wattledger.read.fit.FitFormat;
import io.github.wattledger.read.gpx.GpxFormat;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.ClosedByInterruptException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** An interrupt and a deadline end a review wherever it is, and with an exception of their own. */
class ReviewerCancellationTest {
    private static final Path FIT = Path.of("..", "sample-rides", "even-paced.fit");
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(240);

    @AfterEach
    void isNotInterruptedAnyMore() {
        Thread.interrupted();
    }

    @Test
    void anInterruptedThreadReadsNoFile() {
        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> Reviewer.review(FIT, RIDER, ReviewOptions.WHOLE_RIDE))
                .isInstanceOfSatisfying(
                        CancelledException.class,
                        e -> assertThat(e.reason()).isEqualTo(CancelledException.Reason.INTERRUPT));
        assertThat(Thread.currentThread().isInterrupted()).isTrue();
    }

    @Test
    void aStreamThatBreaksByAnInterruptIsNoUnreadableFile() {
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                return read(new byte[1], 0, 1);
            }

            @Override
            public int read(byte[] target, int from, int length) throws IOException {
                Thread.currentThread().interrupt();
                throw new ClosedByInterruptException();
            }
        };
        assertThatThrownBy(() -> Reviewer.review(RideInput.of(broken, "upload"), RIDER, ReviewOptions.WHOLE_RIDE))
                .isInstanceOf(CancelledException.class);
    }

    static Stream<Named<RideFormat>> formats() {
        return Stream.of(
                Named.of("FIT", new FitFormat()), Named.of("GPX", new GpxFormat()), Named.of("CSV", new CsvFormat()));
    }

    /** A reader keeps what it has before a damage; an interrupt must not be taken for one. */
    @ParameterizedTest
    @MethodSource("formats")
    void anInterruptDuringReadingIsNoDamage(RideFormat format) throws IOException {
        byte[] content = content(format);
        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> format.read(content, ReadRequest.DEFAULT)).isInstanceOf(CancelledException.class);
    }

    @ParameterizedTest
    @MethodSource("formats")
    void aReaderThatIsNotCancelledReads(RideFormat format) throws Exception {
        byte[] content = content(format);
        Thread.currentThread().interrupt();
        assertThat(format.read(content, ReadRequest.DEFAULT.withCancellation(Cancellation.NEVER))
                        .recordings())
                .hasSize(1);
    }

    private static byte[] content(RideFormat format) throws IOException {
        return switch (format.name()) {
            case "FIT" -> Files.readAllBytes(FIT);
            case "GPX" ->
                "<gpx><trk><trkseg><trkpt lat=\"1\" lon=\"2\"><time>2024-05-04T07:00:00Z</time></trkpt></trkseg></trk></gpx>"
                        .getBytes(StandardCharsets.UTF_8);
            default -> "time,power\n2024-05-04T07:00:00Z,200\n".getBytes(StandardCharsets.UTF_8);
        };
    }

    @Test
    void anInterruptOfARideInMemoryEndsItsReview() {
        Ride ride = steady();
        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> Reviewer.review(ride, RIDER, ReviewOptions.WHOLE_RIDE))
                .isInstanceOf(CancelledException.class);
    }

    @Test
    void anInterruptDuringTheReviewEndsItBeforeTheNextStep() {
        AtomicInteger asked = new AtomicInteger();
        ReviewOptions options = ReviewOptions.WHOLE_RIDE.withDetectors(List.of(
                part -> {
                    Thread.currentThread().interrupt();
                    return List.of();
                },
                part -> {
                    asked.incrementAndGet();
                    return List.of();
                }));
        assertThatThrownBy(() -> Reviewer.review(steady(), RIDER, options)).isInstanceOf(CancelledException.class);
        assertThat(asked).hasValue(0);
    }

    @Test
    void aDeadlineEndsAReview() {
        assertThatThrownBy(
                        () -> Reviewer.review(FIT, RIDER, ReviewOptions.WHOLE_RIDE.withTimeLimit(Duration.ofNanos(1))))
                .isInstanceOfSatisfying(
                        CancelledException.class,
                        e -> assertThat(e.reason()).isEqualTo(CancelledException.Reason.DEADLINE));
    }

    @Test
    void aDeadlineThatIsNotReachedChangesNothing() throws Exception {
        RideReview with = Reviewer.review(FIT, RIDER, ReviewOptions.WHOLE_RIDE.withTimeLimit(Duration.ofHours(1)));
        assertThat(with).isEqualTo(Reviewer.review(FIT, RIDER, ReviewOptions.WHOLE_RIDE.withTimeLimit(null)));
    }

    @Test
    void noTimeAtAllIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ReviewOptions.WHOLE_RIDE.withTimeLimit(Duration.ZERO))
                .withMessage("timeLimit PT0S, expected more than 0");
    }

    private static Ride steady() {
        double[] watts = new double[3600];
        Arrays.fill(watts, 200);
        return Ride.ofWatts(watts);
    }
}
