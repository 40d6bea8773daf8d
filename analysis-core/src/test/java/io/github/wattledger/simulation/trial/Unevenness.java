package io.github.wattledger.simulation.trial;

/** By what each cell of a course multiplies the power of a sensible rider: attention, rough ground, a bunch, a rest. */
final class Unevenness {
    private final double[] byCell;

    Unevenness(double... byCell) {
        this.byCell = byCell.clone();
    }

    int cells() {
        return byCell.length;
    }

    /** The multiple in a cell, 0 for a rest. */
    double of(int cell) {
        return byCell[cell];
    }
}
