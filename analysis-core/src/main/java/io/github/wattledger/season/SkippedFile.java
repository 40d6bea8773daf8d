package io.github.wattledger.season;

import java.io.Serializable;

/**
 * A file that gave no ride.
 *
 * @param file its path below the season's folder, with slashes
 * @param reason why, and what to do, one clause
 */
public record SkippedFile(String file, String reason) implements Serializable {}
