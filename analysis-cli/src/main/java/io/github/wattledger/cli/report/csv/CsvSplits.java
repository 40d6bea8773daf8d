package io.github.wattledger.cli.report.csv;

import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.load.StretchLoad;
import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/**
 * A ride hour by hour, lap by lap, climb by climb and section by section, a row each, under the same columns. The units end
 * the names; seconds are those of the recording; a blank is a missing value. Hours, and sections where there are any, each
 * make up the whole reviewed part.
 */
public final class CsvSplits implements Report {
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();

    private static final List<String> COLUMNS = List.of(
            "part",
            "number",
            "from_s",
            "to_s",
            "start_m",
            "end_m",
            "ground",
            "mean_grade",
            "moving_s",
            "standing_s",
            "missing_s",
            "distance_m",
            "work_kj",
            "average_power_w",
            "normalized_power_w",
            "target_w",
            "average_heart_rate_bpm",
            "average_speed_mps",
            "average_temperature_c",
            "lost_low_min",
            "lost_high_min");

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        RideSplits splits = RideSplits.of(review);
        // Not closed: what is written to belongs to the caller.
        Rows rows = new Rows(new CSVPrinter(out, FORMAT), review.pacing().targetW());
        rows.table.printRecord(COLUMNS);
        rows.all("hour", splits.hours());
        rows.all("lap", splits.laps());
        rows.all("climb", splits.climbs());
        int number = 0;
        for (RideSplits.Section section : splits.sections()) {
            number++;
            rows.row(
                    "section",
                    number,
                    section.split(),
                    section.startM(),
                    section.endM(),
                    section.ground().id(),
                    section.meanGrade());
        }
    }

    private record Rows(CSVPrinter table, @Nullable Double targetW) {
        void all(String part, List<RideSplits.Split> splits) throws IOException {
            int number = 0;
            for (RideSplits.Split split : splits) {
                number++;
                row(part, number, split, null, null, null, null);
            }
        }

        void row(
                String part,
                int number,
                RideSplits.Split split,
                @Nullable Double startM,
                @Nullable Double endM,
                @Nullable String ground,
                @Nullable Double meanGrade)
                throws IOException {
            StretchLoad load = split.load();
            table.printRecord(
                    part,
                    number,
                    load.when().fromSecond(),
                    load.when().toSecond(),
                    digits(startM),
                    digits(endM),
                    ground,
                    digits(meanGrade),
                    load.movingSeconds(),
                    load.standingSeconds(),
                    load.missingSeconds(),
                    digits(load.distanceM()),
                    digits(load.workKJ()),
                    digits(load.averagePowerW()),
                    digits(load.normalizedPowerW()),
                    digits(targetW),
                    digits(load.averageHeartRateBpm()),
                    digits(load.averageSpeedMps()),
                    digits(load.averageTemperatureC()),
                    digits(split.lostLowMinutes()),
                    digits(split.lostHighMinutes()));
        }

        private static @Nullable String digits(@Nullable Double value) {
            return value == null ? null : CsvReport.digits(value);
        }
    }
}
