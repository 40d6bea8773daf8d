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

    /** Under what a ride asked of the body. */
    static final String ENERGY =
            "These ranges come from studies of trained adults. They are no diagnosis and no plan for"
                    + " eating: heat, illness, pacing and tiredness can look alike.";

    /** Beside a published range of intake. */
    static final String INTAKE = "Whether and how much suits you is for a licensed dietitian or a physician.";

    /** Beside a heart rate not to exceed. */
    static final String HEART_RATE_CAP =
            "The heart rate is a ceiling, never a goal; in heat it comes at less power: then ease" + " off.";

    /** Where a hot day is expected. */
    static final String HEAT =
            "Confusion, shivering or dry skin in the heat, or vomiting, is an emergency: stop, cool down, call for help.";

    /** Beside the minutes that less mass is worth. */
    static final String MASS =
            "Mass is not a thing to lose for its own sake: whether, how much and how is for a licensed"
                    + " dietitian or a physician.";

    /** Beside the minutes that aero bars are worth. */
    static final String AERO_BARS =
            "Aero bars: the rules of an event may forbid them, and in a bunch nobody rides on them.";

    private Cautions() {}
}
