package io.github.wattledger.table;

import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.RideNumbers;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import tech.tablesaw.api.BooleanColumn;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** A season as tables. Columns are named as in the JSON report, units last; what is not known is missing. */
public final class SeasonTables {
    private SeasonTables() {}

    /** One row a ride, in time order. */
    public static Table rides(SeasonReview season) {
        List<SeasonRide> rides = season.rides();
        DateColumn day = DateColumn.create("day");
        StringColumn start = StringColumn.create("startTime");
        StringColumn file = StringColumn.create("file");
        StringColumn thresholdSource = StringColumn.create("thresholdPowerSource");
        StringColumn verdict = StringColumn.create("verdict");
        for (SeasonRide ride : rides) {
            day.append(ride.day());
            start.append(ride.source().start().toString());
            file.append(ride.source().file());
            thresholdSource.append(word(ride.judgement().thresholdSource()));
            verdict.append(ride.judgement().verdict().words());
        }
        Table table = Table.create("rides", day, start, file);
        for (LoadNumber number : RideNumbers.KEPT) {
            table.addColumns(column(number, rides));
        }
        return table.addColumns(
                column("thresholdPowerW", rides, ride -> ride.judgement().thresholdPowerW()),
                thresholdSource,
                column(
                        LoadNumber.INTENSITY_FACTOR.id(),
                        rides,
                        ride -> ride.judgement().intensityFactor()),
                column(
                        LoadNumber.TRAINING_STRESS.id(),
                        rides,
                        ride -> ride.judgement().trainingStress()),
                verdict,
                column("costMinutesLow", rides, ride -> ride.judgement().costMinutesLow()),
                column("costMinutesHigh", rides, ride -> ride.judgement().costMinutesHigh()));
    }

    /** One row a calendar day, from the first ride to the season's last day. */
    public static Table days(SeasonReview season) {
        List<LoadHistory.Day> days = season.load().days();
        DateColumn day = DateColumn.create("day");
        days.forEach(each -> day.append(each.day()));
        return Table.create(
                "days",
                day,
                column("trainingStress", days, LoadHistory.Day::trainingStress),
                column("acuteLoad", days, LoadHistory.Day::acute),
                column("chronicLoad", days, LoadHistory.Day::chronic),
                column("balance", days, LoadHistory.Day::balance),
                column("ratio", days, LoadHistory.Day::ratio),
                column("ramp", days, LoadHistory.Day::ramp));
    }

    /** One row a duration: the best effort of the season. */
    public static Table bests(SeasonReview season) {
        BestEfforts bests = season.bests();
        List<BestEfforts.Effort> efforts = bests == null ? List.of() : bests.efforts();
        IntColumn seconds = IntColumn.create("seconds");
        DateColumn day = DateColumn.create("day");
        StringColumn file = StringColumn.create("file");
        BooleanColumn mayBeLow = BooleanColumn.create("mayBeLow");
        for (BestEfforts.Effort effort : efforts) {
            seconds.append(effort.seconds());
            day.append(effort.day());
            file.append(effort.file());
            mayBeLow.append(effort.mayBeLow());
        }
        ToDoubleFunction<BestEfforts.Effort> watts = BestEfforts.Effort::watts;
        return Table.create("bests", seconds, column("watts", efforts, watts::applyAsDouble), day, file, mayBeLow);
    }

    private static String word(@Nullable Enum<?> constant) {
        // The empty text is the library's own mark of a missing text.
        return constant == null ? "" : constant.name().toLowerCase(Locale.ROOT);
    }

    /** A column of whole seconds for a time, of real numbers otherwise. */
    private static Column<?> column(LoadNumber number, List<SeasonRide> rides) {
        DoubleColumn column = column(number.id(), rides, ride -> ride.numbers().of(number));
        return number.quantity() == LoadNumber.Quantity.TIME ? column.asIntColumn() : column;
    }

    private static <T> DoubleColumn column(String name, List<T> rows, Function<T, @Nullable Double> number) {
        DoubleColumn column = DoubleColumn.create(name);
        for (T row : rows) {
            Double value = number.apply(row);
            if (value == null) {
                column.appendMissing();
            } else {
                column.append(value.doubleValue());
            }
        }
        return column;
    }
}
