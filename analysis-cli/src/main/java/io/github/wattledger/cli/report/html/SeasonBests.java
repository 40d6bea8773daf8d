package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.SeasonWords;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.SeasonReview;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The best efforts of a season, and what they say of the rider.
 *
 * @param drawn the best efforts over their durations, or null with fewer than two
 * @param rows the best efforts in numbers
 * @param threshold the threshold in force beside what recent efforts imply, in sentences
 * @param durability efforts after much work beside those before it, in sentences
 */
public record SeasonBests(@Nullable Markup drawn, List<Best> rows, List<String> threshold, List<String> durability) {
    /** A best effort over a duration, of the season and of its last days. */
    public record Best(
            String over,
            Num watts,
            String day,
            boolean mayBeLow,
            @Nullable Num recent,
            String recentDay) {}

    static SeasonBests of(SeasonReview season) {
        return new SeasonBests(
                drawn(season),
                rows(season),
                season.threshold() == null ? List.of() : SeasonWords.threshold(season.threshold()),
                season.durability().stream().map(SeasonWords::durability).toList());
    }

    private static @Nullable Markup drawn(SeasonReview season) {
        BestEfforts all = season.bests();
        return all == null || all.efforts().size() < 2
                ? null
                : SeasonCharts.bests(all, season.recentBests(), season.threshold());
    }

    private static List<Best> rows(SeasonReview season) {
        BestEfforts all = season.bests();
        BestEfforts recent = season.recentBests();
        List<Best> rows = new ArrayList<>();
        if (all == null) {
            return rows;
        }
        for (int i = 0; i < all.efforts().size(); i++) {
            BestEfforts.Effort effort = all.efforts().get(i);
            BestEfforts.Effort late = recent == null ? null : recent.over(effort.seconds());
            rows.add(new Best(
                    Figures.duration(effort.seconds()),
                    Num.of("bests[" + i + "].watts", effort.watts(), Figures::watts),
                    effort.day().toString(),
                    effort.mayBeLow(),
                    late == null || recent == null
                            ? null
                            : Num.of(
                                    "recentBests[" + recent.efforts().indexOf(late) + "].watts",
                                    late.watts(),
                                    Figures::watts),
                    late == null ? "" : late.day().toString()));
        }
        return rows;
    }
}
