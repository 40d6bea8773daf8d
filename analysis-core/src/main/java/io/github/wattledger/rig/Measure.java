package io.github.wattledger.rig;

import io.github.wattledger.rider.Bounds;
import java.io.Serializable;

/**
 * A number that an answer rests on, how far it can be off, and where it comes from.
 *
 * @param value the number, in the unit that the name of the field says
 * @param low the lowest that is plausible, at most {@code value}
 * @param high the highest that is plausible, at least {@code value}
 * @param origin where it comes from
 */
public record Measure(double value, double low, double high, Origin origin) implements Serializable {
    /** Where a number comes from. */
    public enum Origin {
        /** The caller gave it. */
        GIVEN("as given"),
        /** It was set on the recording device. */
        DEVICE("as set on the device"),
        /** It was estimated from the ride itself. */
        ESTIMATED("estimated from this ride"),
        /** It is what the rider's own earlier rides show. */
        OWN_RIDES("from your own rides"),
        /** It is that of an ordinary rider. */
        TYPICAL("typical values");

        private final String words;

        Origin(String words) {
            this.words = words;
        }

        /** The origin in a few words, for people. */
        public String words() {
            return words;
        }
    }

    /** @throws IllegalArgumentException when the ends are out of order or not numbers */
    public Measure {
        if (!(low <= value && value <= high)) {
            throw new IllegalArgumentException(
                    value + " in " + low + " to " + high + ", expected low <= value <= high");
        }
    }

    /** A number that is taken as it is. */
    public static Measure exactly(double value, Origin origin) {
        return new Measure(value, value, value, origin);
    }

    /** A number above 0 with a range of a fraction of itself to either side. */
    public static Measure within(double value, double fraction, Origin origin) {
        return new Measure(value, value * (1 - fraction), value * (1 + fraction), origin);
    }

    /** This number with the ends of its range cut to the bounds; the number itself has to lie within them. */
    Measure boundedBy(Bounds bounds) {
        return new Measure(value, Math.max(bounds.low(), low), Math.min(bounds.high(), high), origin);
    }

    /** This number with a share of its range, 0 to 1. */
    public Measure narrowedTo(double share) {
        return new Measure(value, value - share * (value - low), value + share * (high - value), origin);
    }

    /** Whether it can be off at all. */
    public boolean hasRange() {
        return low < high;
    }
}
