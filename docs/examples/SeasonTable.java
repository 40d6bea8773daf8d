package examples;

import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.season.SeasonRequest;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRun;
import io.github.wattledger.season.SeasonStoreException;
import io.github.wattledger.table.SeasonTables;
import io.github.wattledger.table.TableCsv;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tech.tablesaw.api.Table;

/** A folder of rides as a Tablesaw table and as CSV. */
public final class SeasonTable {
    private SeasonTable() {}

    /** Reviews a folder, writes the rides harder than 150 in training stress into a file, and gives them back. */
    public static Table hardRides(Path folder, Path store, Path csv)
            throws UnreadableRideException, SeasonStoreException, IOException {
        // region season
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(250);
        SeasonReview season =
                SeasonRun.run(SeasonRequest.of(List.of(folder), store).withRider(rider));

        Table rides = SeasonTables.rides(season);
        Table hard = rides.where(rides.doubleColumn("trainingStress").isGreaterThan(150));
        try (Writer out = Files.newBufferedWriter(csv)) {
            TableCsv.write(hard, out);
        }
        // endregion
        return hard;
    }
}
