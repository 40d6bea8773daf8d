package io.github.wattledger.cli.report.words;

/** What stands at the end of every report about effort and heart rate. */
public final class Cautions {
    /** Under the review of a ride, and under a comparison of rides. */
    public static final String RIDE =
            "These are numbers about effort and heart rate, not medical advice: anything unusual belongs to a physician."
                    + " The rules of your event come first.";

    /** Under a season. */
    public static final String SEASON =
            "These are numbers about effort and heart rate, not medical advice. Unusual tiredness, or anything unusual"
                    + " about the heart, belongs to a physician.";

    /** Under a table of several riders. */
    public static final String RIDERS =
            "These numbers describe load, not health: they foretell neither injury nor illness. Unusual tiredness, or"
                    + " anything unusual about the heart, belongs to a physician.";

    private Cautions() {}
}
