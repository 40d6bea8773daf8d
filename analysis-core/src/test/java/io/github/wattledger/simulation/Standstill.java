package io.github.wattledger.simulation;

import java.util.Arrays;
import java.util.List;

/** Tells standing from riding: speed below 0.8 m/s for 3 s or more with power 0 or missing. */
final class Standstill {
    private static final double SLOWEST_MPS = 0.8;
    private static final int SHORTEST_SECONDS = 3;

    private Standstill() {}

    /** For each sample whether the rider stood. */
    static boolean[] flags(List<RecordedSample> samples) {
        boolean[] standing = new boolean[samples.size()];
        int runFrom = 0;
        for (int i = 0; i <= samples.size(); i++) {
            if (i < samples.size() && looksStill(samples.get(i))) {
                continue;
            }
            if (i - runFrom >= SHORTEST_SECONDS) {
                Arrays.fill(standing, runFrom, i, true);
            }
            runFrom = i + 1;
        }
        return standing;
    }

    /** How many samples are of standing. */
    static int count(List<RecordedSample> samples) {
        int count = 0;
        for (boolean stands : flags(samples)) {
            count += stands ? 1 : 0;
        }
        return count;
    }

    private static boolean looksStill(RecordedSample sample) {
        return sample.speedMps() < SLOWEST_MPS && !(sample.powerW() > 0);
    }
}
