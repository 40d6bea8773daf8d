package io.github.wattledger.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The formats of the JSON documents, each with its published schema. */
public enum JsonSchema {
    /** A review of one ride. */
    REVIEW("review", 2),
    /** What a file holds. */
    INSPECTION("inspection", 2),
    /** A season. */
    SEASON("season", 2),
    /** Where several riders stand. */
    RIDERS("riders", 2),
    /** Rides over one course. */
    COMPARISON("compare", 1),
    /** What a change is worth on a ride or a road. */
    WHAT_IF("what-if", 1),
    /** A plan for a race. */
    PLAN("plan", 1);

    private final String word;
    private final int version;

    JsonSchema(String word, int version) {
        this.word = word;
        this.version = version;
    }

    /** The name and version of the format, for instance {@code wattledger.review/2}: the first value of its documents. */
    public String id() {
        return "wattledger." + word + "/" + version;
    }

    /** The version of the format, from 1. It rises when a program that reads the version before could fail. */
    public int version() {
        return version;
    }

    /**
     * Gives the schema itself, JSON Schema of the draft 2020-12. It is read anew with each call; a validator of it may be
     * kept and used for many documents.
     */
    public String text() {
        String name = word + ".schema.json";
        try (InputStream schema = JsonSchema.class.getResourceAsStream(name)) {
            if (schema == null) {
                throw new IllegalStateException(name + " is not beside the classes of the library");
            }
            return new String(schema.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
