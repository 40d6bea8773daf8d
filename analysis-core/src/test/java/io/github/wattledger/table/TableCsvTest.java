package io.github.wattledger.table;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.season.SeasonRequest;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRun;
import io.github.wattledger.testing.RideFolders;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

class TableCsvTest {
    @Test
    void theSecondsOfARide() throws IOException {
        Ride ride = Ride.builder(Instant.EPOCH, 3)
                .channel(Channel.POWER, Series.of(100, Double.NaN, 0))
                .channel(Channel.LATITUDE, Series.of(45.12345678, 45, -0.0))
                .build();
        StringBuilder csv = new StringBuilder();
        TableCsv.write(RideTable.of(ride), csv);
        assertThat(csv).hasToString("""
                        second,state,power [W],latitude [deg]
                        0,riding,100,45.1234568
                        1,riding,,45
                        2,riding,0,0
                        """);
    }

    @Test
    void textThatASpreadsheetWouldRunIsMadePlain() throws IOException {
        StringBuilder csv = new StringBuilder();
        TableCsv.write(Table.create("t", StringColumn.create("file", "=1+1", "a,\"b\".fit")), csv);
        assertThat(csv).hasToString("file\n'=1+1\n\"a,\"\"b\"\".fit\"\n");
    }

    @Test
    void theTablesOfASeason(@TempDir Path temp) throws Exception {
        RideFolders.writeRide(temp.resolve("a.fit"), Instant.parse("2026-05-01T08:00:00Z"), 1800, second -> 200);
        SeasonReview season = SeasonRun.run(SeasonRequest.of(List.of(temp), temp.resolve(".store")));
        StringBuilder rides = new StringBuilder();
        SeasonCsv.rides(season, rides);
        List<CSVRecord> records = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new java.io.StringReader(rides.toString()))
                .getRecords();
        assertThat(records).hasSize(1);
        assertThat(records.get(0).get("workKJ")).isEqualTo("360");
        assertThat(records.get(0).get("distanceM")).isEqualTo("14392");
        assertThat(records.get(0).get("costMinutesLow")).isEmpty();
        StringBuilder days = new StringBuilder();
        SeasonCsv.days(season, days);
        assertThat(days.toString().lines()).hasSize(2);
        StringBuilder bests = new StringBuilder();
        SeasonCsv.bests(season, bests);
        assertThat(bests.toString()).contains("\n1200,200,2026-05-01,a.fit,false\n");
    }
}
