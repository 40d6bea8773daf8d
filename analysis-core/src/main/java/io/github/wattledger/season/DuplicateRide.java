package io.github.wattledger.season;

import java.io.Serializable;

/**
 * A ride that is in the season once already.
 *
 * @param file the file that was left out
 * @param keptFile the file that stands for the ride
 * @param isCopy whether the two files are equal byte for byte; otherwise the same ride was recorded or exported twice
 */
public record DuplicateRide(String file, String keptFile, boolean isCopy) implements Serializable {}
