package io.github.wattledger.energy;

import java.util.function.ToDoubleFunction;

/**
 * From mechanical power to the energy and the carbohydrate that the body used for it, under one set of assumptions.
 *
 * @param efficiency gross efficiency: mechanical work over energy used
 * @param highestFatGPerMinute the highest rate at which fat is burned, grams a minute
 * @param thresholdShare the share of the highest oxygen uptake that is used at threshold power
 */
record FuelModel(double efficiency, double highestFatGPerMinute, double thresholdShare) {
    private static final double KJ_PER_KCAL = 4.184;

    /**
     * Energy of a gram of carbohydrate, kJ: 4.07 kcal for a mixture of which a part is glycogen. Jeukendrup and Wallis
     * 2005, Int J Sports Med 26 Suppl 1:S28-S37; the constant from memory.
     */
    static final double CARBOHYDRATE_KJ_PER_G = 4.07 * KJ_PER_KCAL;

    /** Energy of a gram of fat, kJ: 9.75 kcal. Source as {@link #CARBOHYDRATE_KJ_PER_G}; the constant from memory. */
    static final double FAT_KJ_PER_G = 9.75 * KJ_PER_KCAL;

    /**
     * Gross efficiency: 19.8 ± 0.6 % (Moseley and Jeukendrup 2001, Med Sci Sports Exerc 33:621-627), 20.5 ± 1.4 % in the
     * cool and 19.6 ± 1.1 % in the heat (Hettinga et al. 2007, Eur J Appl Physiol 101:465-471).
     */
    private static final double EFFICIENCY = 0.20;

    private static final double LOW_EFFICIENCY = 0.18;
    private static final double HIGH_EFFICIENCY = 0.22;

    /**
     * Highest fat oxidation of 55 trained men, fasted: 0.52 ± 0.15 g/min at 62.5 % of the highest oxygen uptake, none at
     * 86.1 % (Achten and Jeukendrup 2003, Int J Sports Med 24:603-608). The two parabolas through these points are ours.
     */
    private static final double HIGHEST_FAT_G_PER_MINUTE = 0.52;

    private static final double HIGHEST_FAT_DEVIATION = 0.15;
    private static final double SHARE_OF_HIGHEST_FAT = 0.625;
    private static final double SHARE_WITHOUT_FAT = 0.861;

    /** Share of the highest oxygen uptake at threshold, and how far it may lie off to each side. From memory. */
    private static final double THRESHOLD_SHARE = 0.83;

    private static final double THRESHOLD_SHARE_DEVIATION = 0.05;

    private static final double SECONDS_PER_MINUTE = 60;

    /** The middle of every assumption. */
    static final FuelModel MIDDLE = new FuelModel(EFFICIENCY, HIGHEST_FAT_G_PER_MINUTE, THRESHOLD_SHARE);

    /** One assumption at one of its ends each, in pairs of the two ends of one assumption. */
    private static final FuelModel[][] ENDS = {
        {
            new FuelModel(LOW_EFFICIENCY, HIGHEST_FAT_G_PER_MINUTE, THRESHOLD_SHARE),
            new FuelModel(HIGH_EFFICIENCY, HIGHEST_FAT_G_PER_MINUTE, THRESHOLD_SHARE)
        },
        {
            new FuelModel(EFFICIENCY, HIGHEST_FAT_G_PER_MINUTE - HIGHEST_FAT_DEVIATION, THRESHOLD_SHARE),
            new FuelModel(EFFICIENCY, HIGHEST_FAT_G_PER_MINUTE + HIGHEST_FAT_DEVIATION, THRESHOLD_SHARE)
        },
        {
            new FuelModel(EFFICIENCY, HIGHEST_FAT_G_PER_MINUTE, THRESHOLD_SHARE + THRESHOLD_SHARE_DEVIATION),
            new FuelModel(EFFICIENCY, HIGHEST_FAT_G_PER_MINUTE, THRESHOLD_SHARE - THRESHOLD_SHARE_DEVIATION)
        }
    };

    /** The energy that mechanical work took, kJ, with the ends of gross efficiency. */
    static Estimate energyKJ(double workKJ) {
        return new Estimate(workKJ / HIGH_EFFICIENCY, workKJ / EFFICIENCY, workKJ / LOW_EFFICIENCY);
    }

    /**
     * A number with its range: each assumption is put to its ends with the others in the middle, and what that changes is
     * added up as squares, upwards and downwards apart.
     */
    static Estimate estimate(ToDoubleFunction<FuelModel> number) {
        double middle = number.applyAsDouble(MIDDLE);
        double squaresBelow = 0;
        double squaresAbove = 0;
        for (FuelModel[] ends : ENDS) {
            double one = number.applyAsDouble(ends[0]) - middle;
            double other = number.applyAsDouble(ends[1]) - middle;
            squaresBelow += square(Math.min(0, Math.min(one, other)));
            squaresAbove += square(Math.max(0, Math.max(one, other)));
        }
        return new Estimate(Math.max(0, middle - Math.sqrt(squaresBelow)), middle, middle + Math.sqrt(squaresAbove));
    }

    /**
     * Carbohydrate used, grams a minute, at a steady power.
     *
     * @param powerW mean power, watts, 0 or more
     * @param thresholdPowerW threshold power, watts, above 0
     */
    double carbohydrateGPerMinute(double powerW, double thresholdPowerW) {
        double energyKJPerMinute = powerW * SECONDS_PER_MINUTE / 1000 / efficiency;
        double fatKJPerMinute = FAT_KJ_PER_G * fatGPerMinute(thresholdShare * powerW / thresholdPowerW);
        return Math.max(0, energyKJPerMinute - fatKJPerMinute) / CARBOHYDRATE_KJ_PER_G;
    }

    /** Fat burned, grams a minute, at a share of the highest oxygen uptake. */
    private double fatGPerMinute(double share) {
        double width = share <= SHARE_OF_HIGHEST_FAT ? SHARE_OF_HIGHEST_FAT : SHARE_WITHOUT_FAT - SHARE_OF_HIGHEST_FAT;
        return Math.max(0, highestFatGPerMinute * (1 - square((share - SHARE_OF_HIGHEST_FAT) / width)));
    }

    private static double square(double value) {
        return value * value;
    }
}
