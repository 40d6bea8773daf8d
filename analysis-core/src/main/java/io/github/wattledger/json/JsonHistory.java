package io.github.wattledger.json;

import io.github.wattledger.history.Agreement;
import io.github.wattledger.history.OwnThreshold;
import io.github.wattledger.history.RiderHistory;
import io.github.wattledger.history.RiderTraits;
import io.github.wattledger.history.Spread;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.power.HeartLine;
import io.github.wattledger.power.LongRide;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.TrialCriticalPower;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.season.RiderFromRides;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The names and values of what a rider's own rides say of the rider. */
final class JsonHistory {
    private static final double J_PER_KJ = 1000;

    /** Rolling resistance is a few thousandths. */
    private static final int DECIMALS_OF_SPREAD = 5;

    private static final int DECIMALS_OF_SLOPE = 5;

    private JsonHistory() {}

    static void rider(JsonWriter json, @Nullable RiderFromRides rider) {
        json.object("rider", rider, found -> {
            Origin from = found.onDay().thresholdPowerOrigin();
            json.number("thresholdPowerW", found.onDay().thresholdPowerW());
            json.string("thresholdPowerSource", from == null ? null : from.id());
            history(json, found.history());
            json.objects("sustainable", found.sustainable(), over -> {
                SustainablePower power = over.power();
                json.whole("hours", over.hours());
                json.number("watts", power.watts());
                json.number("lowW", power.lowW());
                json.number("highW", power.highW());
                json.word("source", power.source());
            });
            json.objects("thresholds", found.thresholds().entries(), entry -> {
                json.day("from", entry.from());
                json.number("powerW", entry.powerW());
                json.number("heartRateBpm", entry.heartRateBpm());
            });
            json.objects("moves", found.moves(), move -> {
                json.day("day", move.day());
                json.number("fromW", move.fromW());
                json.number("toW", move.toW());
                json.word("reason", move.reason());
                json.flag("isRise", move.isRise());
            });
            traits(json, found);
        });
    }

    private static void traits(JsonWriter json, RiderFromRides rider) {
        RiderTraits traits = rider.traits();
        json.number("criticalPowerAtLeastW", traits.criticalPowerAtLeastW());
        json.object("easyHeartRate", rider.easyHeartRate().found().orElse(null), easy -> {
            json.number("watts", easy.watts());
            json.number("medianBpm", easy.medianBpm());
            json.number("lowBpm", easy.medianBpm() - easy.halfWidthBpm());
            json.number("highBpm", easy.medianBpm() + easy.halfWidthBpm());
            json.whole("rides", easy.rides());
        });
        spread(json, "dragAreaM2", traits.dragAreaM2());
        spread(json, "rollingResistance", traits.rollingResistance());
        spread(json, "stoppedShare", traits.stoppedShare());
        spread(json, "openingOverTarget", traits.openingOverTarget());
        spread(json, "fadePercent", traits.fadePercent());
        spread(json, "descentSpeedMps", traits.descentSpeedMps());
    }

    private static void spread(JsonWriter json, String name, Outcome<Spread> spread) {
        json.object(name, spread.found().orElse(null), found -> {
            json.number("low", found.low(), DECIMALS_OF_SPREAD);
            json.number("median", found.median(), DECIMALS_OF_SPREAD);
            json.number("high", found.high(), DECIMALS_OF_SPREAD);
            json.whole("rides", found.rides());
        });
    }

    static void history(JsonWriter json, @Nullable RiderHistory history) {
        json.object("history", history, found -> {
            json.day("day", found.day());
            json.whole("rides", found.rides());
            threshold(json, found.threshold());
            endurance(json, found.endurance());
            criticalPower(json, found.criticalPower());
            agreed(json, found.agreed());
        });
    }

    private static void threshold(JsonWriter json, @Nullable OwnThreshold threshold) {
        json.object("threshold", threshold, found -> {
            json.number("watts", found.watts());
            json.number("impliedW", found.impliedW());
            json.day("day", found.day());
        });
    }

    private static void endurance(JsonWriter json, Outcome<OwnEndurance> endurance) {
        OwnEndurance found = endurance.found().orElse(null);
        json.begin("endurance");
        json.string("refusal", endurance.refusal().orElse(null));
        json.flag("isNamed", found != null && found.isNamed());
        json.objects("restsOn", found == null ? List.<LongRide>of() : found.top(), ride -> {
            json.day("day", ride.day());
            json.number("hours", ride.hours());
            json.number("watts", ride.watts());
            json.number("thresholdOfDayW", ride.thresholdOfDayW());
        });
        json.end();
    }

    private static void criticalPower(JsonWriter json, Outcome<TrialCriticalPower> criticalPower) {
        TrialCriticalPower found = criticalPower.found().orElse(null);
        json.begin("criticalPower");
        json.string("refusal", criticalPower.refusal().orElse(null));
        json.number("watts", found == null ? null : (Double) found.criticalPowerW());
        json.number("errorW", found == null ? null : (Double) found.criticalPowerErrorW());
        json.number("wPrimeKJ", found == null ? null : (Double) (found.wPrimeJ() / J_PER_KJ));
        json.number("wPrimeErrorKJ", found == null ? null : (Double) (found.wPrimeErrorJ() / J_PER_KJ));
        json.whole("trials", found == null ? 0 : found.used().size());
        json.whole("setAside", found == null ? 0 : found.setAside().size());
        json.end();
    }

    static void agreed(JsonWriter json, @Nullable Agreement agreed) {
        json.object("agreed", agreed, found -> {
            json.day("day", found.day());
            json.string("words", found.words());
        });
    }

    static void heartLine(JsonWriter json, @Nullable HeartLine line) {
        json.object("heartLine", line, found -> {
            json.number("bpmAtZeroW", found.bpmAtZeroW());
            json.number("bpmPerW", found.bpmPerW(), DECIMALS_OF_SLOPE);
            json.number("lowW", found.lowW());
            json.number("highW", found.highW());
        });
    }
}
