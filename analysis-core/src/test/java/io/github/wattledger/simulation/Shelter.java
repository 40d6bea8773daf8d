package io.github.wattledger.simulation;

/** How much of a rider's drag is left in the shelter of other riders, by place. */
@FunctionalInterface
public interface Shelter {
    /** Nobody breaks the wind. */
    Shelter NONE = distanceM -> 1;

    /**
     * The share of the drag area that is left.
     *
     * @param distanceM metres from the start line
     * @return above 0 to 1, 1 without shelter
     */
    double dragShareAt(double distanceM);
}
