package io.github.wattledger.json;

import io.github.wattledger.season.RacePacing;
import io.github.wattledger.season.RiderStanding;
import java.util.List;

/** The names and values of where several riders stand, in the order of {@link JsonSchema#RIDERS}. */
final class JsonRiders {
    private JsonRiders() {}

    static void riders(JsonWriter json, List<RiderStanding> riders, int skippedFiles) {
        json.whole("skippedFiles", skippedFiles);
        json.objects("riders", riders, rider -> rider(json, rider));
    }

    private static void rider(JsonWriter json, RiderStanding rider) {
        json.string("name", rider.name());
        json.day("asOf", rider.asOf());
        json.number("load42Days", rider.load42Days());
        json.number("load7Days", rider.load7Days());
        json.number("loadDifference", rider.loadDifference());
        json.number("loadRatio", rider.loadRatio());
        json.number("loadChangeInWeek", rider.loadChange());
        json.number("sevenDayStress", rider.weekStress());
        json.wholeOrNull("daysSinceRide", rider.daysSinceRide());
        json.wholeOrNull("daysSinceLongRide", rider.daysSinceLongRide());
        json.string(
                "lastRaceVerdict",
                rider.lastVerdict() == null ? null : rider.lastVerdict().words());
        json.objects("lastRaces", rider.races(), race -> race(json, race));
        json.objects("warnings", rider.warnings(), warning -> {
            json.string("code", warning.code());
            json.string("reason", warning.reason());
        });
    }

    static void race(JsonWriter json, RacePacing race) {
        json.day("day", race.day());
        json.string("verdict", race.verdict().words());
        json.number("costMinutesLow", race.costMinutesLow());
        json.number("costMinutesHigh", race.costMinutesHigh());
        json.number("openingOverTarget", race.openingOverTarget());
        json.number("fadePercent", race.fadePercent());
        json.number("lastCapW", race.lastCapW());
        json.flagOrNull("keptLastCap", race.keptLastCap());
    }
}
