package io.github.wattledger.cli.report.json;

import io.github.wattledger.season.RiderStanding;
import java.io.IOException;
import java.util.List;
import tools.jackson.core.JsonGenerator;

/** Where several riders stand, as JSON by the schema {@code wattledger.riders/1}; what is not known is {@code null}. */
public final class JsonRiders {
    private static final String SCHEMA = "wattledger.riders/1";

    /**
     * Writes the riders.
     *
     * @param riders one for each
     * @param skippedFiles how many files gave no ride
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(List<RiderStanding> riders, int skippedFiles, Appendable out) throws IOException {
        JsonReport.document(SCHEMA, out, json -> {
            json.writeNumberProperty("skippedFiles", skippedFiles);
            json.writeName("riders").writeStartArray();
            for (RiderStanding rider : riders) {
                rider(json, rider);
            }
            json.writeEndArray();
        });
    }

    private static void rider(JsonGenerator json, RiderStanding rider) {
        json.writeStartObject();
        json.writeStringProperty("name", rider.name());
        JsonReport.string(json, "asOf", JsonSeason.text(rider.asOf()));
        JsonReport.number(json, "chronicLoad", rider.chronic());
        JsonReport.number(json, "acuteLoad", rider.acute());
        JsonReport.number(json, "balance", rider.balance());
        JsonReport.number(json, "ratio", rider.ratio());
        JsonReport.number(json, "ramp", rider.ramp());
        JsonReport.number(json, "sevenDayStress", rider.weekStress());
        JsonReport.number(json, "daysSinceRide", JsonSeason.real(rider.daysSinceRide()));
        JsonReport.number(json, "daysSinceLongRide", JsonSeason.real(rider.daysSinceLongRide()));
        JsonReport.string(
                json,
                "lastRaceVerdict",
                rider.lastVerdict() == null ? null : rider.lastVerdict().words());
        json.writeName("warnings").writeStartArray();
        for (RiderStanding.Warning warning : rider.warnings()) {
            json.writeStartObject();
            json.writeStringProperty("code", warning.code());
            json.writeStringProperty("reason", warning.reason());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
