package io.github.wattledger.pacing;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What to do next time.
 *
 * @param text one or two sentences, caps included
 * @param capW the power not to exceed, watts, or null
 * @param capBpm the heart rate not to exceed, beats per minute, or null
 */
public record Advice(
        String text, @Nullable Double capW, @Nullable Double capBpm) implements Serializable {}
