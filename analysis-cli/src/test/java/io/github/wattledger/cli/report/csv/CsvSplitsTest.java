package io.github.wattledger.cli.report.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class CsvSplitsTest {
    private static List<CSVRecord> rows(RideReview review) throws IOException {
        StringBuilder out = new StringBuilder();
        new CsvSplits().write(review, out);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.parse(out.toString(), format)) {
            return parser.getRecords();
        }
    }

    private static List<CSVRecord> of(List<CSVRecord> rows, String part) {
        return rows.stream().filter(row -> row.get("part").equals(part)).toList();
    }

    private static double sum(List<CSVRecord> rows, String column) {
        return rows.stream()
                .mapToDouble(row -> Double.parseDouble(row.get(column)))
                .sum();
    }

    /** Read back from the file, hours and sections each make up the ride and what was lost in it. */
    @Test
    void hoursAndSectionsMakeUpTheRide() throws IOException, UnreadableRideException {
        RideReview review = Reviewer.review(
                Path.of("..", "sample-rides", "over-hard-start.fit"),
                Rider.UNKNOWN.withThresholdPowerW(250),
                ReviewOptions.WHOLE_RIDE);
        TimeLedger.Entry all = review.pacing().ledger().allAtOnce().orElseThrow();
        List<CSVRecord> rows = rows(review);
        for (String part : List.of("hour", "section")) {
            List<CSVRecord> parts = of(rows, part);
            assertThat(sum(parts, "moving_s")).isEqualTo(review.load().movingSeconds());
            assertThat(sum(parts, "work_kj")).isCloseTo(4102, within(0.5)); // The device's own total.
            assertThat(sum(parts, "lost_low_min")).isCloseTo(all.minutesLow(), within(1e-6));
            assertThat(sum(parts, "lost_high_min")).isCloseTo(all.minutesHigh(), within(1e-6));
        }
        assertThat(of(rows, "lap")).hasSameSizeAs(review.ride().laps());
        assertThat(of(rows, "climb")).hasSize(8);
        assertThat(of(rows, "section")).extracting(row -> row.get("ground")).contains("climb", "descent", "flat");
    }

    /** A minute at 200 W, which is 12 kJ, and nothing else, by hand. */
    @Test
    void whatIsMissingIsBlank() throws IOException {
        double[] watts = new double[60];
        Arrays.fill(watts, 200);
        RideReview review = Reviewer.review(Ride.ofWatts(watts), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
        StringBuilder out = new StringBuilder();
        new CsvSplits().write(review, out);
        assertThat(out.toString())
                .endsWith("\nhour,1,0,60,,,,,60,0,0,,12,200,200,,,,,,\n")
                .hasLineCount(2);
    }
}
