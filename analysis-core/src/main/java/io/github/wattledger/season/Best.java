package io.github.wattledger.season;

import java.io.Serializable;

/**
 * The best mean power of one ride over one duration.
 *
 * @param seconds the duration, seconds
 * @param watts best mean power over that many consecutive seconds of elapsed time, watts
 * @param mayBeLow whether missing seconds may have lowered it
 */
public record Best(int seconds, double watts, boolean mayBeLow) implements Serializable {}
