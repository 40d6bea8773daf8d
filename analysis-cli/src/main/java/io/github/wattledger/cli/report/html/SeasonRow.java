package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.SeasonWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A ride as a row of a season's table.
 *
 * @param page the address of its page, or null where it has none
 * @param verdict the verdict on its pacing, in words
 */
public record SeasonRow(
        String day,
        @Nullable String page,
        String file,
        Num moving,
        Num distance,
        Num ascent,
        Num work,
        Num power,
        Num heartRate,
        Num intensity,
        Num stress,
        String verdict) {
    static List<SeasonRow> of(SeasonReview season, Units units, PageNames pages) {
        List<SeasonRow> rows = new ArrayList<>();
        for (int i = 0; i < season.rides().size(); i++) {
            SeasonRide ride = season.rides().get(i);
            String path = "rides[" + i + "].";
            rows.add(new SeasonRow(
                    SeasonWords.day(ride),
                    pages.of(ride),
                    PlainText.of(ride.source().file()),
                    Num.of(path + "movingSeconds", (double) ride.numbers().movingSeconds(), Figures::clock),
                    Num.of(path + "distanceM", ride.numbers().distanceM(), units::distanceWords),
                    Num.of(path + "ascentM", ride.numbers().ascentM(), units::heightWords),
                    Num.rounded(path + "workKJ", ride.numbers().workKJ(), " kJ"),
                    Num.rounded(path + "normalizedPowerW", ride.numbers().normalizedPowerW(), " W"),
                    Num.rounded(path + "averageHeartRateBpm", ride.numbers().averageHeartRateBpm(), " bpm"),
                    Num.of(
                            path + "intensityFactor",
                            ride.judgement().intensityFactor(),
                            value -> Figures.decimal(value, 2)),
                    Num.rounded(path + "trainingStress", ride.judgement().trainingStress(), ""),
                    SeasonWords.verdict(ride.judgement())));
        }
        return rows;
    }
}
