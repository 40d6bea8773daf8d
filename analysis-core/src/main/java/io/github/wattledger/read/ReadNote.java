package io.github.wattledger.read;

import java.io.Serializable;

/**
 * Something a reader survived or left out.
 *
 * @param code a fixed word for programs, lower case with hyphens
 * @param text one sentence for people: what, and where in the file
 */
public record ReadNote(String code, String text) implements Serializable {}
