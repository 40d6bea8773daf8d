package io.github.wattledger.simulation.trial;

/**
 * How much of a mistake is in a race, by the size of its effect in units of the effect from which its definition speaks
 * of it. Two careful people with a definition each agree on what lies well below and well above it, not on what lies
 * beside it; so whatever is said of a doubtful dose counts neither as right nor as wrong.
 */
enum Dose {
    /** Under half of the effect that the definition asks for: who is accused of it is accused falsely. */
    NEGLIGIBLE,
    /** From half of that effect to a quarter above it. */
    DOUBTFUL,
    /** A quarter above it or more: who does not find it misses it. */
    CLEAR;

    private static final double NEGLIGIBLE_BELOW = 0.5;
    private static final double CLEAR_FROM = 1.25;

    static Dose of(double size) {
        if (size >= CLEAR_FROM) {
            return CLEAR;
        }
        return size >= NEGLIGIBLE_BELOW ? DOUBTFUL : NEGLIGIBLE;
    }
}
