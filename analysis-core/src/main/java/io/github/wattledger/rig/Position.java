package io.github.wattledger.rig;

import java.util.Locale;

/**
 * How a rider sits, with the drag area that goes with it: the values that reproduce the 40 km times of Jeukendrup and
 * Martin, Sports Medicine 31:559-569 (2001), to 4 %. Riders differ by a quarter either way: typical, not measured.
 *
 * <p>How much a position wins over another is disputed. At the least: Grappe et al., Ergonomics 40 (1997), on a
 * velodrome, upright 0.299, drops 0.276, aero 0.262 m2 (from memory). At the most: a fifth of the drag from each
 * position to the next (common practice, no source); a rider who sits tall on the hoods can win so much.
 */
public enum Position {
    /** Hands on the brake hoods. */
    HOODS(0.358, 1, 1),
    /** Hands in the drops. */
    DROPS(0.307, 0.80, 0.276 / 0.299),
    /** Forearms on aero bars. */
    AERO_BARS(0.269, 0.80 * 0.80, 0.262 / 0.299);

    private final double dragAreaM2;
    private final double leastOfHoods;
    private final double mostOfHoods;

    Position(double dragAreaM2, double leastOfHoods, double mostOfHoods) {
        this.dragAreaM2 = dragAreaM2;
        this.leastOfHoods = leastOfHoods;
        this.mostOfHoods = mostOfHoods;
    }

    /** The typical drag area, m2, spokes left out. */
    public double dragAreaM2() {
        return dragAreaM2;
    }

    /**
     * The factor of a rider's drag area when the rider changes from another position to this one: the typical factor, with
     * the largest and the smallest step as its range.
     */
    public Measure dragRatioFrom(Position other) {
        double steep = leastOfHoods / other.leastOfHoods;
        double shallow = mostOfHoods / other.mostOfHoods;
        return new Measure(
                dragAreaM2 / other.dragAreaM2,
                Math.min(steep, shallow),
                Math.max(steep, shallow),
                Measure.Origin.TYPICAL);
    }

    /** The position in words, lower case, for people. */
    public String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** The position's fixed word, lower case with hyphens. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
