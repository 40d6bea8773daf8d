package io.github.wattledger.testing;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.season.SeasonRequest;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRun;
import io.github.wattledger.season.SeasonStoreException;
import io.github.wattledger.table.RideTable;
import io.github.wattledger.table.SeasonCsv;
import io.github.wattledger.table.SeasonTables;
import io.github.wattledger.table.TableCsv;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** What a program with few jars would do with the library. To be run in a JVM of its own: WHAT [FILE...]. */
public final class SmallPrograms {
    private SmallPrograms() {}

    /** Prints the result, or the class and message of the exception that ended it. */
    @SuppressWarnings("CatchGeneric") // whatever a door throws is what the test asks about
    public static void main(String[] arguments) {
        try {
            Path first = arguments.length > 1 ? Path.of(arguments[1]) : Path.of("");
            Path second = arguments.length > 2 ? Path.of(arguments[2]) : Path.of("");
            System.out.print(
                    switch (arguments[0]) {
                        case "metric" -> metric();
                        case "review" -> review(first);
                        case "season" -> season(first, second);
                        case "season-csv" -> seasonCsv(season(List.of(first), second));
                        case "season-tables" -> seasonTables(season(List.of(first), second));
                        case "ride-table" -> rideTable(first);
                        default -> throw new IllegalArgumentException(arguments[0]);
                    });
        } catch (Exception | LinkageError e) {
            System.out.println(e.getClass().getSimpleName() + ": " + e.getMessage());
        }
    }

    private static String metric() {
        double[] watts = new double[3600];
        Arrays.fill(watts, 200);
        return NormalizedPower.of(watts).orElseThrow() + "\n";
    }

    private static String review(Path file) throws UnreadableRideException {
        RideReview review = reviewed(file);
        return review.source().format() + " " + review.load() + " "
                + review.pacing().verdict() + "\n";
    }

    private static RideReview reviewed(Path file) throws UnreadableRideException {
        return Reviewer.review(file, Rider.UNKNOWN.withThresholdPowerW(250), ReviewOptions.WHOLE_RIDE);
    }

    private static SeasonReview season(List<Path> folders, Path store)
            throws UnreadableRideException, SeasonStoreException {
        return SeasonRun.run(SeasonRequest.of(folders, store).withRider(Rider.UNKNOWN.withThresholdPowerW(250)));
    }

    private static String season(Path folder, Path store) throws UnreadableRideException, SeasonStoreException {
        SeasonReview season = season(List.of(folder), store);
        StringBuilder lines = new StringBuilder();
        season.rides()
                .forEach(ride -> lines.append(ride.source().file())
                        .append(": ")
                        .append(ride.numbers().workKJ())
                        .append(" kJ\n"));
        season.skipped()
                .forEach(file -> lines.append(file.file())
                        .append(" skipped: ")
                        .append(file.reason())
                        .append('\n'));
        return lines.toString();
    }

    private static String seasonCsv(SeasonReview season) throws IOException {
        StringBuilder csv = new StringBuilder();
        SeasonCsv.rides(season, csv);
        SeasonCsv.days(season, csv);
        SeasonCsv.bests(season, csv);
        return csv.toString();
    }

    private static String seasonTables(SeasonReview season) throws IOException {
        StringBuilder csv = new StringBuilder();
        TableCsv.write(SeasonTables.rides(season), csv);
        TableCsv.write(SeasonTables.days(season), csv);
        TableCsv.write(SeasonTables.bests(season), csv);
        return csv.toString();
    }

    private static String rideTable(Path file) throws IOException, UnreadableRideException {
        StringBuilder csv = new StringBuilder();
        TableCsv.write(RideTable.of(reviewed(file).ride()), csv);
        return csv.toString();
    }
}
