package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.SeasonWords;
import io.github.wattledger.season.RideJudgement;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The races and long rides of a season.
 *
 * @param scale minutes along the head of the bars, or null where nothing is priced
 * @param rows the rides
 * @param named which of them have a name, and what had been agreed before, in sentences
 * @param trend whether pacing improved, in sentences
 */
public record SeasonRaces(@Nullable Markup scale, List<Race> rows, List<String> named, List<String> trend) {
    /** A race or a long ride. */
    public record Race(
            LocalDate day,
            @Nullable String page,
            Num moving,
            String verdict,
            Num intensity,
            Num decoupling,
            String price,
            @Nullable Num low,
            @Nullable Num high,
            @Nullable Markup bar) {}

    static SeasonRaces of(SeasonReview season, PageNames pages) {
        Scale minutes = minutes(season);
        boolean anyPriced = season.pacing().rides().stream()
                .anyMatch(ride -> ride.judgement().costMinutesHigh() != null);
        return new SeasonRaces(
                anyPriced ? LossBars.scale(minutes) : null,
                rows(season, pages, minutes),
                SeasonWords.named(season.pacing()),
                SeasonWords.trend(season.pacing()));
    }

    private static Scale minutes(SeasonReview season) {
        double most = 1;
        for (SeasonRide ride : season.pacing().rides()) {
            Double high = ride.judgement().costMinutesHigh();
            most = high == null ? most : Math.max(most, high);
        }
        return Scale.fromZero(most);
    }

    private static List<Race> rows(SeasonReview season, PageNames pages, Scale minutes) {
        List<Race> rows = new ArrayList<>();
        for (SeasonRide ride : season.pacing().rides()) {
            RideJudgement judgement = ride.judgement();
            String path = "rides[" + season.rides().indexOf(ride) + "].";
            Double low = judgement.costMinutesLow();
            Double high = judgement.costMinutesHigh();
            boolean isPriced = low != null && high != null;
            rows.add(new Race(
                    ride.day(),
                    pages.of(ride),
                    Num.of(path + "movingSeconds", (double) ride.numbers().movingSeconds(), Figures::clock),
                    SeasonWords.verdict(judgement),
                    Num.of(path + "intensityFactor", judgement.intensityFactor(), value -> Figures.decimal(value, 2)),
                    Num.tenths(path + "decouplingPercent", ride.numbers().decouplingPercent(), " %"),
                    SeasonWords.price(judgement),
                    isPriced ? Num.tenths(path + "costMinutesLow", low) : null,
                    isPriced ? Num.tenths(path + "costMinutesHigh", high) : null,
                    low == null || high == null ? null : LossBars.bar(minutes, low, high)));
        }
        return rows;
    }
}
