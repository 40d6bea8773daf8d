package io.github.wattledger.cli.report.json;

import io.github.wattledger.season.RiderStanding;
import java.io.IOException;
import java.util.List;

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
        JsonWriter.document(SCHEMA, out, json -> {
            json.whole("skippedFiles", skippedFiles);
            json.objects("riders", riders, rider -> rider(json, rider));
        });
    }

    private static void rider(JsonWriter json, RiderStanding rider) {
        json.string("name", rider.name());
        json.day("asOf", rider.asOf());
        json.number("chronicLoad", rider.chronic());
        json.number("acuteLoad", rider.acute());
        json.number("balance", rider.balance());
        json.number("ratio", rider.ratio());
        json.number("ramp", rider.ramp());
        json.number("sevenDayStress", rider.weekStress());
        json.wholeOrNull("daysSinceRide", rider.daysSinceRide());
        json.wholeOrNull("daysSinceLongRide", rider.daysSinceLongRide());
        json.string(
                "lastRaceVerdict",
                rider.lastVerdict() == null ? null : rider.lastVerdict().words());
        json.objects("warnings", rider.warnings(), warning -> {
            json.string("code", warning.code());
            json.string("reason", warning.reason());
        });
    }
}
