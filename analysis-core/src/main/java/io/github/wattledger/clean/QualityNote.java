package io.github.wattledger.clean;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * One thing that was found odd in a recording, and what was done about it.
 *
 * @param code a fixed word for programs, lower case with hyphens
 * @param seconds how many seconds (or samples) it concerns, or null where a count says nothing
 * @param text one sentence for people
 */
public record QualityNote(String code, @Nullable Integer seconds, String text) implements Serializable {}
