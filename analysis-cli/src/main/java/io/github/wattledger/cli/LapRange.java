package io.github.wattledger.cli;

/**
 * Laps as given on the command line, {@code 3} or {@code 3-7}.
 *
 * @param first the first lap, from 1
 * @param last the last lap, included
 */
record LapRange(int first, int last) {}
