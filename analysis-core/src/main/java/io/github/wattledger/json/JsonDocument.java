package io.github.wattledger.json;

import io.github.wattledger.RideReview;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.intake.FileInspection;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.plan.RacePlan;
import io.github.wattledger.read.RouteResult;
import io.github.wattledger.replay.Replayer;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.season.RiderStanding;
import io.github.wattledger.season.SeasonReview;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * A result as JSON that fits its published schema. Every name is always there, in the order of the schema; what could not
 * be computed is {@code null}, never 0. Numbers have a unit in their name and three decimals at most, coefficients five.
 * The same result gives the same characters on every machine. Immutable and safe for many threads.
 */
public final class JsonDocument {
    private final JsonSchema schema;
    private final String text;

    private JsonDocument(JsonSchema schema, Consumer<JsonWriter> body) {
        this.schema = schema;
        this.text = JsonWriter.document(schema.id(), body);
    }

    /** A review, by {@link JsonSchema#REVIEW}. The single seconds of the ride are not in it. */
    public static JsonDocument of(RideReview review) {
        return of(review, (PlanReview) null);
    }

    /**
     * A review, and the ride held against a plan, by {@link JsonSchema#REVIEW}.
     *
     * @param plan the ride against its plan, or null where there was none
     */
    public static JsonDocument of(RideReview review, @Nullable PlanReview plan) {
        return new JsonDocument(JsonSchema.REVIEW, json -> JsonReview.review(json, review, plan));
    }

    /** What a file holds, by {@link JsonSchema#INSPECTION}. */
    public static JsonDocument of(FileInspection inspection) {
        return new JsonDocument(JsonSchema.INSPECTION, json -> JsonInspection.inspection(json, inspection));
    }

    /** A season, by {@link JsonSchema#SEASON}. */
    public static JsonDocument of(SeasonReview season) {
        return new JsonDocument(JsonSchema.SEASON, json -> JsonSeason.season(json, season));
    }

    /**
     * Where several riders stand, by {@link JsonSchema#RIDERS}.
     *
     * @param riders one for each rider, in the order of the document
     * @param skippedFiles how many files of all riders gave no ride
     */
    public static JsonDocument ofRiders(List<RiderStanding> riders, int skippedFiles) {
        return new JsonDocument(JsonSchema.RIDERS, json -> JsonRiders.riders(json, riders, skippedFiles));
    }

    /** Rides over one course, by {@link JsonSchema#COMPARISON}. */
    public static JsonDocument of(RideComparison comparison) {
        return new JsonDocument(JsonSchema.COMPARISON, json -> JsonComparison.comparison(json, comparison));
    }

    /** What a change is worth on a recorded file, by {@link JsonSchema#WHAT_IF}. */
    public static JsonDocument of(Replayer.Replayed replayed) {
        return new JsonDocument(JsonSchema.WHAT_IF, json -> JsonWhatIf.ofRide(json, replayed));
    }

    /**
     * What a change is worth on a road, or on a ride that came from no file, by {@link JsonSchema#WHAT_IF}.
     *
     * @param answer what the change is worth
     * @param ascentM the ascent of the road, metres, or null where it is not known
     */
    public static JsonDocument of(WhatIf.Answer answer, @Nullable Double ascentM) {
        return new JsonDocument(JsonSchema.WHAT_IF, json -> JsonWhatIf.withoutFile(json, answer, ascentM));
    }

    /**
     * A plan for a race, by {@link JsonSchema#PLAN}.
     *
     * @param plan the plan
     * @param courseFile the name of the course's file without its folder, or null without a file
     * @param read what was read of the file, or null without a file
     */
    public static JsonDocument of(RacePlan plan, @Nullable String courseFile, @Nullable RouteResult read) {
        return new JsonDocument(JsonSchema.PLAN, json -> JsonPlan.plan(json, plan, courseFile, read));
    }

    /** The format of the document, whose {@link JsonSchema#id()} is its first value. */
    public JsonSchema schema() {
        return schema;
    }

    /** The document: two spaces a level, lines that end with a line feed, the last one too. */
    public String text() {
        return text;
    }

    /**
     * Writes the document as UTF-8.
     *
     * @param out where the bytes go; it is not closed
     * @throws IOException when {@code out} fails
     */
    public void writeTo(OutputStream out) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    /** The document, as {@link #text()} gives it. */
    @Override
    public String toString() {
        return text;
    }
}
