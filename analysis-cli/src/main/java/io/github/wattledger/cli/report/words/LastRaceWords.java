package io.github.wattledger.cli.report.words;

import io.github.wattledger.season.RacePacing;

/** How the last races of a rider were paced, in words. */
public final class LastRaceWords {
    /** What stands over them. */
    public static final String HEADING = "Pacing of the last races";

    /** What the columns mean. */
    public static final String LEGEND =
            "opening: its normalized power over the target; fade: effort lost from early to late on like ground;"
                    + " earlier cap: whether the opening kept to the power that the advice of the last earlier race of like"
                    + " length named.";

    private LastRaceWords() {}

    /** What the mistakes cost, from the lower to the upper end, or why there is no cost. */
    public static String cost(RacePacing race) {
        Double low = race.costMinutesLow();
        Double high = race.costMinutesHigh();
        if (low == null || high == null) {
            return race.isWithoutMistake() ? SeasonWords.NO_MISTAKE : SeasonWords.NOT_PRICED;
        }
        return Figures.minutes(low, high);
    }

    /** Whether the opening stayed within the cap of an earlier race, or other words where there is nothing to compare. */
    public static String lastCap(RacePacing race, String otherwise) {
        Boolean kept = race.keptLastCap();
        return kept == null ? otherwise : kept ? "kept" : "not kept";
    }
}
