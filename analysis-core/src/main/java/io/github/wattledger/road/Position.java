package io.github.wattledger.road;

/**
 * How a rider sits, with the drag area that goes with it: the values that reproduce the 40 km times of Jeukendrup and
 * Martin, Sports Medicine 31:559-569 (2001), to 4 %. Riders differ by a quarter either way: typical, not measured.
 */
public enum Position {
    /** Hands on the brake hoods. */
    HOODS(0.358),
    /** Hands in the drops. */
    DROPS(0.307),
    /** Forearms on aero bars. */
    AERO_BARS(0.269);

    private final double dragAreaM2;

    Position(double dragAreaM2) {
        this.dragAreaM2 = dragAreaM2;
    }

    /** The typical drag area, m2, spokes left out. */
    public double dragAreaM2() {
        return dragAreaM2;
    }
}
