package io.github.wattledger.json;

import io.github.wattledger.RideSplits;
import io.github.wattledger.load.StretchLoad;

/** A ride hour by hour, section by section, lap by lap and climb by climb, with the minutes lost in each part. */
final class JsonSplits {
    private JsonSplits() {}

    static void splits(JsonWriter json, RideSplits splits) {
        json.begin("splits");
        json.objects("hours", splits.hours(), each -> split(json, each));
        json.objects("sections", splits.sections(), each -> section(json, each));
        json.objects("laps", splits.laps(), each -> split(json, each));
        json.objects("climbs", splits.climbs(), each -> split(json, each));
        json.end();
    }

    private static void section(JsonWriter json, RideSplits.Section section) {
        split(json, section.split());
        json.number("startM", section.startM());
        json.number("endM", section.endM());
        json.string("ground", section.ground().id());
        json.number("meanGrade", section.meanGrade(), 5);
    }

    private static void split(JsonWriter json, RideSplits.Split split) {
        StretchLoad load = split.load();
        json.whole("fromSecond", load.when().fromSecond());
        json.whole("toSecond", load.when().toSecond());
        json.whole("movingSeconds", load.movingSeconds());
        json.whole("standingSeconds", load.standingSeconds());
        json.whole("missingSeconds", load.missingSeconds());
        json.number("distanceM", load.distanceM());
        json.number("workKJ", load.workKJ());
        json.number("averagePowerW", load.averagePowerW());
        json.number("normalizedPowerW", load.normalizedPowerW());
        json.number("averageHeartRateBpm", load.averageHeartRateBpm());
        json.number("averageSpeedMps", load.averageSpeedMps());
        json.number("averageTemperatureC", load.averageTemperatureC());
        json.number("lostLowMinutes", split.lostLowMinutes());
        json.number("lostHighMinutes", split.lostHighMinutes());
    }
}
