package io.github.wattledger.json;

import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.load.RideTemperature;
import io.github.wattledger.load.ZoneTime;
import io.github.wattledger.ride.DeviceTotals;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The load of a ride and the totals of its device, number by number in the order of {@link LoadNumber}. */
final class JsonLoad {
    private JsonLoad() {}

    /** The load of a recording. */
    static void load(JsonWriter json, RideLoad load) {
        json.begin("load");
        numbers(json, load);
        json.end();
    }

    /** The load of a reviewed part, with its temperature, which is null where it was not measured. */
    static void load(JsonWriter json, RideLoad load, @Nullable RideTemperature temperature) {
        json.begin("load");
        numbers(json, load);
        json.number("averageTemperatureC", temperature == null ? null : temperature.meanC());
        json.number("highestTemperatureC", temperature == null ? null : temperature.highestC());
        json.number("temperatureRiseC", temperature == null ? null : temperature.riseC());
        json.end();
    }

    private static void numbers(JsonWriter json, RideLoad load) {
        for (LoadNumber number : LoadNumber.values()) {
            json.number(number.id(), number.of(load));
        }
        zones(json, "powerZones", "fromW", "toW", load.powerZones());
        zones(json, "heartRateZones", "fromBpm", "toBpm", load.heartRateZones());
    }

    private static void zones(JsonWriter json, String name, String from, String to, List<ZoneTime> zones) {
        json.objects(name, zones, zone -> {
            json.string("name", zone.name());
            json.number(from, zone.from());
            json.number(to, zone.to());
            json.whole("seconds", zone.seconds());
        });
    }

    static void deviceTotals(JsonWriter json, @Nullable DeviceTotals totals) {
        json.object("deviceTotals", totals, found -> {
            for (LoadNumber number : LoadNumber.values()) {
                json.number(number.id(), number.of(found));
            }
        });
    }
}
