package io.github.wattledger.read;

import java.io.Serializable;

/**
 * How much may be read, so that a hostile or broken file cannot exhaust the memory.
 *
 * @param maximumBytes largest file, on disk or unpacked from an archive, bytes
 * @param maximumSamples most samples in one file or archive
 * @param maximumArchiveEntries most entries in one archive
 * @param maximumUnpackedBytes most bytes that an archive may unpack to, all its entries together
 */
public record ReadLimits(long maximumBytes, int maximumSamples, int maximumArchiveEntries, long maximumUnpackedBytes)
        implements Serializable {
    /** 128 MB and a million samples, about eleven days at one a second; from an archive 1,000 entries and 512 MB. */
    public static final ReadLimits DEFAULT = new ReadLimits(128_000_000L, 1_000_000, 1_000, 512_000_000L);

    /** @throws IllegalArgumentException when a limit is below 1, or a file could not be held in memory at all */
    public ReadLimits {
        if (maximumBytes < 1 || maximumSamples < 1 || maximumArchiveEntries < 1 || maximumUnpackedBytes < 1) {
            throw new IllegalArgumentException("a limit below 1");
        }
        if (maximumBytes > Integer.MAX_VALUE - 8) {
            throw new IllegalArgumentException("maximumBytes " + maximumBytes + ", expected less than 2 GiB");
        }
    }
}
