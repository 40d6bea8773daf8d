package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;

/**
 * Sets 0 W where a head unit leaves the power out while the rider coasts. Such a unit is known by what it never writes:
 * a cadence of 0 together with a power. Where both do occur together, a missing power stays missing.
 */
final class CoastingWithoutPower {
    /** Fewer seconds than this prove no habit of the head unit. */
    private static final int FEWEST_SECONDS = 30;

    /** One wild sample must not decide: so many seconds of coasting with power in a hundred without are put up with. */
    private static final double MOST_WITH_POWER = 0.01;

    /** Least share of coasting among the seconds without power: where a meter fell silent, most of them are pedalled. */
    private static final double LEAST_COASTING_SHARE = 0.5;

    private CoastingWithoutPower() {}

    static void fill(SecondTable table, Notes notes) {
        double[] watts = table.column(Channel.POWER);
        double[] cadence = table.column(Channel.CADENCE);
        if (watts == null || cadence == null || !leavesPowerOut(table, watts, cadence)) {
            return;
        }
        int filled = 0;
        for (int row = 0; row < watts.length; row++) {
            if (isCoastingWithoutPower(table, watts, cadence, row)) {
                watts[row] = 0;
                filled++;
            }
        }
        notes.repaired(
                "power-left-out-coasting",
                filled,
                "The head unit leaves the power out while the rider coasts: " + Notes.count(filled, "second")
                        + " with a cadence of 0 and no power set to 0 W.");
    }

    private static boolean leavesPowerOut(SecondTable table, double[] watts, double[] cadence) {
        int without = 0;
        int with = 0;
        int pedalledWithout = 0;
        for (int row = 0; row < watts.length; row++) {
            if (isCoastingWithoutPower(table, watts, cadence, row)) {
                without++;
            } else if (cadence[row] == 0 && !Double.isNaN(watts[row])) {
                with++;
            } else if (cadence[row] > 0 && Double.isNaN(watts[row])) {
                pedalledWithout++;
            }
        }
        return without >= FEWEST_SECONDS
                && with <= MOST_WITH_POWER * without
                && without >= LEAST_COASTING_SHARE * (without + pedalledWithout);
    }

    private static boolean isCoastingWithoutPower(SecondTable table, double[] watts, double[] cadence, int row) {
        return cadence[row] == 0 && Double.isNaN(watts[row]) && !table.isPaused(row);
    }
}
