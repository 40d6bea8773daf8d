package io.github.wattledger.json;

import io.github.wattledger.energy.CarbohydrateBalance;
import io.github.wattledger.energy.EnergyHour;
import io.github.wattledger.energy.EnergyUse;
import io.github.wattledger.energy.Estimate;
import io.github.wattledger.energy.FindingFuel;
import io.github.wattledger.energy.FuelReview;
import io.github.wattledger.energy.Intake;
import io.github.wattledger.energy.IntakeGuide;
import java.util.Collections;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What a ride asked of the body. A number that is known only within wide limits has its two ends and no middle. */
final class JsonEnergy {
    private JsonEnergy() {}

    static void energy(JsonWriter json, @Nullable FuelReview fuel) {
        if (fuel == null) {
            json.none("energy");
            return;
        }
        EnergyUse use = fuel.use();
        json.begin("energy");
        json.number("workKJ", use.workKJ());
        range(json, "energyKJ", use.energyKJ());
        range(json, "carbohydrateG", use.carbohydrateG());
        range(json, "carbohydrateGPerHour", use.carbohydrateGPerHour());
        json.objects("hours", use.hours(), hour -> hour(json, hour));
        Intake intake = fuel.intake();
        json.objects(
                "eaten",
                intake == null ? Collections.emptyList() : intake.gramsByHour(),
                grams -> json.number("g", grams));
        balance(json, "lastThird", fuel.lastThird());
        json.objects("findings", fuel.findings(), each -> finding(json, each));
        json.flag("intakeWouldTell", fuel.intakeWouldTell());
        guide(json, fuel.guide());
        json.end();
    }

    private static void hour(JsonWriter json, EnergyHour hour) {
        json.whole("startSeconds", hour.stretch().fromSecond());
        json.whole("endSeconds", hour.stretch().toSecond());
        json.whole("ridingSeconds", hour.ridingSeconds());
        json.number("meanPowerW", hour.meanPowerW());
        range(json, "carbohydrateGPerHour", hour.carbohydrateGPerHour());
    }

    private static void finding(JsonWriter json, FindingFuel finding) {
        json.string("kind", finding.kind().id());
        balance(json, "balance", finding.balance());
    }

    private static void balance(JsonWriter json, String name, @Nullable CarbohydrateBalance balance) {
        if (balance == null) {
            json.none(name);
            return;
        }
        json.begin(name);
        json.whole("untilSeconds", balance.second());
        json.string("shortage", balance.shortage().name().toLowerCase(Locale.ROOT));
        range(json, "usedG", balance.usedG());
        range(json, "storedG", CarbohydrateBalance.STORED_G);
        json.number("eatenG", balance.eatenG());
        json.flag("intakeWouldTell", balance.intakeWouldTell());
        json.end();
    }

    private static void guide(JsonWriter json, @Nullable IntakeGuide guide) {
        if (guide == null) {
            json.none("intakeGuideGPerHour");
            return;
        }
        json.begin("intakeGuideGPerHour");
        json.number("low", guide.lowGPerHour());
        json.number("high", guide.highGPerHour());
        json.flag("mixtureOfSugars", guide.mixtureOfSugars());
        json.end();
    }

    private static void range(JsonWriter json, String name, @Nullable Estimate estimate) {
        if (estimate == null) {
            json.none(name);
            return;
        }
        json.begin(name);
        json.number("low", estimate.low());
        json.number("high", estimate.high());
        json.end();
    }
}
