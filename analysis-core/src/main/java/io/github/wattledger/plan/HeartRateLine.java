package io.github.wattledger.plan;

import java.io.Serializable;

/**
 * A rider's heart rate at steady power in the first half of a race.
 *
 * @param atNoPowerBpm where the line meets 0 W, beats per minute
 * @param bpmPerW how much the heart rate rises for a watt
 */
public record HeartRateLine(double atNoPowerBpm, double bpmPerW) implements Serializable {
    /** The heart rate of a power, beats per minute. */
    public double bpm(double powerW) {
        return atNoPowerBpm + bpmPerW * powerW;
    }
}
