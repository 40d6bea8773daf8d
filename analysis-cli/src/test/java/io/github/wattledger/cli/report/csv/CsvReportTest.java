package io.github.wattledger.cli.report.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class CsvReportTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");

    private static RideReview review(String name, ReviewOptions options) throws UnreadableRideException {
        return Reviewer.review(SAMPLES.resolve(name), Rider.UNKNOWN, options);
    }

    private static String csv(RideReview review) throws IOException {
        StringBuilder out = new StringBuilder();
        new CsvReport().write(review, out);
        return out.toString();
    }

    private static List<CSVRecord> rows(String csv) throws IOException {
        try (CSVParser parser = CSVParser.parse(
                csv,
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())) {
            return parser.getRecords();
        }
    }

    private static RideReview reviewOf(Ride ride) {
        return Reviewer.review(ride, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
    }

    /** Written by hand: a second of each state, a missing reading, digits that a float would lose. */
    @Test
    void aRowIsASecond() throws IOException {
        Ride ride = Ride.builder(Instant.parse("2026-06-14T05:00:00Z"), 4)
                .channel(Channel.TEMPERATURE, Series.of(-0.5, 0, -0.0, 21))
                .channel(Channel.POWER, Series.of(250, Double.NaN, 0, 0.1 + 0.2))
                .channel(Channel.ACCUMULATED_WORK, Series.of(12_345_678.5, Double.NaN, Double.NaN, 1e-5))
                .state(1, SecondState.MISSING)
                .state(2, SecondState.PAUSED)
                .state(3, SecondState.STOPPED)
                .build();
        assertThat(csv(reviewOf(ride))).isEqualTo("""
                        time,state,power_w,temperature_c,accumulated_work_j
                        2026-06-14T05:00:00Z,riding,250,-0.5,12345678.5
                        2026-06-14T05:00:01Z,missing,,0,
                        2026-06-14T05:00:02Z,paused,0,0,
                        2026-06-14T05:00:03Z,stopped,0.30000000000000004,21,0.00001
                        """);
    }

    @ParameterizedTest
    @ValueSource(strings = {"even-paced.fit", "over-hard-start.fit", "damaged.fit"})
    void aSampleRideComesBackToTheLastDigit(String name) throws IOException, UnreadableRideException {
        RideReview review = review(name, ReviewOptions.WHOLE_RIDE);
        Ride ride = review.ride();
        List<CSVRecord> rows = rows(csv(review));
        assertThat(rows).hasSize(ride.seconds());
        for (int second = 0; second < rows.size(); second++) {
            CSVRecord row = rows.get(second);
            assertThat(Instant.parse(row.get("time")).getEpochSecond())
                    .isEqualTo(ride.start().getEpochSecond() + second);
            assertThat(row.get("state")).isEqualTo(ride.state(second).name().toLowerCase(Locale.ROOT));
            int column = 2;
            for (Channel channel : ride.channels()) {
                String text = row.get(column++);
                double value = ride.series(channel).get(second);
                boolean same = text.isEmpty() ? Double.isNaN(value) : Double.parseDouble(text) == value;
                if (!same) {
                    fail("%s at %d s: %s for %s", channel, second, text, value);
                }
            }
            assertThat(row.size()).isEqualTo(column);
        }
    }

    /** Read back, it is the same ride: nothing is cleaned twice, nothing lost but the laps. */
    @ParameterizedTest
    @ValueSource(strings = {"even-paced.fit", "over-hard-start.fit", "damaged.fit"})
    void readBackItIsTheSameRide(String name, @TempDir Path folder) throws IOException, UnreadableRideException {
        Ride ride = review(name, ReviewOptions.WHOLE_RIDE).ride();
        Path file = Files.writeString(folder.resolve("ride.csv"), csv(review(name, ReviewOptions.WHOLE_RIDE)));
        Ride back =
                Reviewer.review(file, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE).ride();
        assertThat(back.start()).isEqualTo(ride.start());
        assertThat(back.channels()).isEqualTo(ride.channels());
        for (Channel channel : ride.channels()) {
            assertThat(back.series(channel).equals(ride.series(channel)))
                    .as("%s is the same", channel)
                    .isTrue();
        }
        for (SecondState state : SecondState.values()) {
            assertThat(back.countSeconds(state)).as("%s", state).isEqualTo(ride.countSeconds(state));
        }
    }

    @Test
    void onlyTheReviewedPartIsWritten() throws IOException, UnreadableRideException {
        RideReview review = review(
                "even-paced.fit", ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(3600, 3660)));
        List<CSVRecord> rows = rows(csv(review));
        assertThat(review.reviewed()).isEqualTo(new Interval(3600, 3660));
        assertThat(rows).hasSize(60);
        assertThat(rows.get(0).get("time"))
                .isEqualTo(review.ride().start().plusSeconds(3600).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG", "hi-IN-u-nu-deva"})
    void theLocaleOfTheMachineChangesNothing(String tag) throws IOException, UnreadableRideException {
        RideReview review = review(
                "even-paced.fit", ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(0, 600)));
        String before = csv(review);
        Locale locale = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            assertThat(csv(review)).isEqualTo(before);
        } finally {
            Locale.setDefault(locale);
        }
    }

    @ParameterizedTest
    @EnumSource
    void noColumnHasTwoChannels(Channel channel) {
        assertThat(List.of(Channel.values()).stream()
                        .filter(each -> CsvReport.column(each).equals(CsvReport.column(channel))))
                .containsExactly(channel);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "-0.0, 0",
        "250, 250",
        "-3, -3",
        "0.1, 0.1",
        "1.0E7, 10000000",
        "1.23456789E8, 123456789",
        "12345678.25, 12345678.25",
        "1.0E-5, 0.00001",
        "1.0E16, 10000000000000000"
    })
    void digitsArePlain(double value, String digits) {
        assertThat(CsvReport.digits(value)).isEqualTo(digits);
    }

    @Test
    void theSmallestNumberComesBackToo() {
        assertThat(Double.parseDouble(CsvReport.digits(Double.MIN_VALUE))).isEqualTo(Double.MIN_VALUE);
    }
}
