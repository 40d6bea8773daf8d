package io.github.wattledger.simulation.trial;

import java.util.List;
import java.util.Random;

/** Numbers by chance. */
record Draw(Random chance) {
    /** The chance of a seed; seeds that follow one another give chances that have nothing in common. */
    static Draw of(long seed) {
        return new Draw(new Random((seed + 1) * 0x9E3779B97F4A7C15L));
    }

    /** Between two numbers, all alike. */
    double between(double low, double high) {
        return low + (high - low) * chance.nextDouble();
    }

    /** Between two numbers above 0, so that each multiple is as likely as another. */
    double betweenByRatio(double low, double high) {
        return low * Math.pow(high / low, chance.nextDouble());
    }

    double gaussian() {
        return chance.nextGaussian();
    }

    boolean with(double probability) {
        return chance.nextDouble() < probability;
    }

    <T> T oneOf(List<T> choices) {
        return choices.get(chance.nextInt(choices.size()));
    }
}
