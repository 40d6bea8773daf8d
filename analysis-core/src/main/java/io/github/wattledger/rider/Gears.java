package io.github.wattledger.rider;

import java.io.Serializable;
import java.util.List;
import java.util.TreeSet;

/**
 * The gears of a bicycle.
 *
 * @param chainrings teeth of each chainring, the smallest first
 * @param cogs teeth of each cog, the smallest first
 * @param wheelCircumferenceM how far the wheel rolls in one turn, metres
 */
public record Gears(List<Integer> chainrings, List<Integer> cogs, double wheelCircumferenceM) implements Serializable {
    /**
     * Sorts the teeth.
     *
     * @throws IllegalArgumentException when there is no chainring or no cog, one occurs twice, or a number lies outside
     *     its range
     */
    public Gears {
        chainrings = sorted("chainrings", chainrings, Bounds.CHAINRING_TEETH);
        cogs = sorted("cogs", cogs, Bounds.COG_TEETH);
        Bounds.WHEEL_CIRCUMFERENCE_M.require("wheelCircumferenceM", wheelCircumferenceM);
    }

    private static List<Integer> sorted(String name, List<Integer> teeth, Bounds bounds) {
        List<Integer> sorted = List.copyOf(new TreeSet<>(teeth));
        if (teeth.isEmpty() || sorted.size() != teeth.size()) {
            throw new IllegalArgumentException(name + " " + teeth + ", expected at least one, and none twice");
        }
        for (int each : sorted) {
            bounds.require(name, (double) each);
        }
        return sorted;
    }
}
