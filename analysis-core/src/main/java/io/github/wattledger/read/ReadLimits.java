package io.github.wattledger.read;

import java.io.Serializable;

/**
 * How much may be read, so that a hostile or broken file cannot exhaust the memory.
 *
 * @param maximumBytes largest file, bytes
 * @param maximumSamples most samples in one file
 */
public record ReadLimits(long maximumBytes, int maximumSamples) implements Serializable {
    /** 256 MB, two million samples: about 23 days at one a second. */
    public static final ReadLimits DEFAULT = new ReadLimits(256_000_000L, 2_000_000);
}
