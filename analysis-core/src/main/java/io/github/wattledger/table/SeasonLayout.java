package io.github.wattledger.table;

import static io.github.wattledger.table.SeasonColumn.day;
import static io.github.wattledger.table.SeasonColumn.number;
import static io.github.wattledger.table.SeasonColumn.text;
import static io.github.wattledger.table.SeasonColumn.wholeNumber;
import static io.github.wattledger.table.SeasonColumn.wholeNumberOf;
import static io.github.wattledger.table.SeasonColumn.yesOrNo;

import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.RideNumbers;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Which rows and columns a season's table has. The tables of the library and the CSV files are both made from it.
 *
 * @param <T> what a row is about
 * @param name of the table
 * @param columns from left to right
 * @param rows from top to bottom
 */
record SeasonLayout<T>(String name, List<SeasonColumn<T>> columns, Function<SeasonReview, List<T>> rows) {
    /** One row a ride, in time order. */
    static final SeasonLayout<SeasonRide> RIDES = new SeasonLayout<>("rides", ofRides(), SeasonReview::rides);

    /** One row a calendar day. */
    static final SeasonLayout<LoadHistory.Day> DAYS = new SeasonLayout<>(
            "days",
            List.of(
                    day("day", LoadHistory.Day::day),
                    number("trainingStress", LoadHistory.Day::trainingStress),
                    number("load7Days", LoadHistory.Day::load7Days),
                    number("load42Days", LoadHistory.Day::load42Days),
                    number("loadDifference", LoadHistory.Day::loadDifference),
                    number("loadRatio", LoadHistory.Day::loadRatio),
                    number("loadChangeInWeek", LoadHistory.Day::loadChange)),
            season -> season.load().days());

    /** One row a duration. */
    static final SeasonLayout<BestEfforts.Effort> BESTS = new SeasonLayout<>(
            "bests",
            List.of(
                    wholeNumber("seconds", BestEfforts.Effort::seconds),
                    number("watts", BestEfforts.Effort::watts),
                    day("day", BestEfforts.Effort::day),
                    text("file", BestEfforts.Effort::file),
                    yesOrNo("mayBeLow", BestEfforts.Effort::mayBeLow)),
            SeasonLayout::efforts);

    private static List<SeasonColumn<SeasonRide>> ofRides() {
        List<SeasonColumn<SeasonRide>> columns = new ArrayList<>();
        columns.add(day("day", SeasonRide::day));
        columns.add(text("startTime", ride -> ride.source().start().toString()));
        columns.add(text("file", ride -> ride.source().file()));
        for (LoadNumber kept : RideNumbers.KEPT) {
            Function<SeasonRide, @Nullable Double> value =
                    ride -> ride.numbers().of(kept);
            boolean isTime = kept.quantity() == LoadNumber.Quantity.TIME; // in whole seconds
            columns.add(isTime ? wholeNumberOf(kept.id(), value) : number(kept.id(), value));
        }
        columns.add(number("thresholdPowerW", ride -> ride.judgement().thresholdPowerW()));
        columns.add(text("thresholdPowerSource", ride -> word(ride.judgement().thresholdSource())));
        columns.add(number(
                LoadNumber.INTENSITY_FACTOR.id(), ride -> ride.judgement().intensityFactor()));
        columns.add(
                number(LoadNumber.TRAINING_STRESS.id(), ride -> ride.judgement().trainingStress()));
        columns.add(text("verdict", ride -> ride.judgement().verdict().words()));
        columns.add(number("costMinutesLow", ride -> ride.judgement().costMinutesLow()));
        columns.add(number("costMinutesHigh", ride -> ride.judgement().costMinutesHigh()));
        return List.copyOf(columns);
    }

    private static List<BestEfforts.Effort> efforts(SeasonReview season) {
        BestEfforts bests = season.bests();
        return bests == null ? List.of() : bests.efforts();
    }

    private static @Nullable String word(@Nullable Enum<?> constant) {
        return constant == null ? null : constant.name().toLowerCase(Locale.ROOT);
    }
}
