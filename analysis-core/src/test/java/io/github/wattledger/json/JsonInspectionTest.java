package io.github.wattledger.json;

import static io.github.wattledger.testing.SchemaCheck.assertFits;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.testing.SampleInspections;
import org.junit.jupiter.api.Test;

class JsonInspectionTest {
    private static String json() {
        return JsonDocument.of(SampleInspections.race()).text();
    }

    @Test
    void theFileComesFirstAndThenItsSessions() {
        assertThat(json()).startsWith("""
                        {
                          "schema": "wattledger.inspection/2",
                          "file": "pinewood-coast-160.fit",
                          "format": "FIT",
                          "bytes": 1234567,
                          "sha256": "%s",
                          "notes": [
                            {
                              "code": "cut-short",
                              "seconds": null,
                              "text": "The file breaks off at byte 1234000"
                            }
                          ],
                          "sessions": [
                            {
                              "sessionIndex": 0,
                              "sport": "cycling",
                              "device": "Acme Recorder 7",
                              "startTime": "2026-06-14T07:00:12+03:00",
                              "sampleCount": 25860,
                              "usualIntervalSeconds": 1,
                              "longestIntervalSeconds": 241,
                              "lapCount": 7,
                              "channels": [
                                {
                                  "channel": "power",
                                  "unit": "W",
                                  "sampleCount": 25740,
                                  "coveragePercent": 99.54,
                                  "lowest": 0,
                                  "highest": 903
                                },
                        """.formatted("0123456789abcdef".repeat(4)));
    }

    @Test
    void whatIsNotKnownIsNull() {
        assertThat(json())
                .contains("\"usualIntervalSeconds\": null", "\"channels\": []", "\"deviceTotals\": null")
                .doesNotContain("NaN");
        assertThat(json())
                .containsPattern("\"gaps\": \\[\\s+\\{\\s+\"startSeconds\": 4000,\\s+\"endSeconds\": 4075")
                .containsPattern("\"pauses\": \\[\\s+\\{\\s+\"startSeconds\": 12000,");
    }

    @Test
    void itFollowsThePublishedSchema() {
        assertFits(JsonSchema.INSPECTION, json());
    }
}
