package io.github.wattledger.power;

import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A power held for a duration: a trial ridden to exhaustion, or the best mean power a rider has shown for that long.
 *
 * @param seconds the duration, seconds, above 0
 * @param watts mean power, watts, above 0
 */
public record BestEffort(double seconds, double watts) implements Serializable {
    /** @throws IllegalArgumentException when a number is not finite and above 0 */
    public BestEffort {
        Bounds.requireAboveZero("seconds", seconds);
        Bounds.requireAboveZero("watts", watts);
    }

    /**
     * Efforts from two arrays of equal length.
     *
     * @param seconds durations, seconds, each above 0
     * @param watts mean powers, watts, each above 0
     * @throws IllegalArgumentException when the lengths differ or a number is out of range
     */
    static List<BestEffort> listOf(double[] seconds, double[] watts) {
        if (seconds.length != watts.length) {
            throw new IllegalArgumentException(seconds.length + " durations but " + watts.length + " powers");
        }
        List<BestEffort> efforts = new ArrayList<>();
        for (int i = 0; i < seconds.length; i++) {
            efforts.add(new BestEffort(seconds[i], watts[i]));
        }
        return List.copyOf(efforts);
    }

    /** How many different durations there are. */
    static int durations(List<BestEffort> efforts) {
        Set<Double> seconds = new HashSet<>();
        for (BestEffort effort : efforts) {
            seconds.add(effort.seconds());
        }
        return seconds.size();
    }

    static double[] secondsOf(List<BestEffort> efforts) {
        double[] seconds = new double[efforts.size()];
        Arrays.setAll(seconds, i -> efforts.get(i).seconds());
        return seconds;
    }

    static double[] wattsOf(List<BestEffort> efforts) {
        double[] watts = new double[efforts.size()];
        Arrays.setAll(watts, i -> efforts.get(i).watts());
        return watts;
    }
}
