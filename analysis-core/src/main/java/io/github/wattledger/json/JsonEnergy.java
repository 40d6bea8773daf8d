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
import org.jspecify.annotations.Nullable;

/** What a ride asked of the body. A number that is known only within wide limits has its two ends and no middle. */
final class JsonEnergy {
    private JsonEnergy() {}

    static void energy(JsonWriter json, @Nullable FuelReview fuel) {
        json.object("energy", fuel, found -> {
            EnergyUse use = found.use();
            json.number("workKJ", use.workKJ());
            range(json, "energyKJ", use.energyKJ());
            range(json, "carbohydrateG", use.carbohydrateG());
            range(json, "carbohydrateGPerHour", use.carbohydrateGPerHour());
            json.objects("hours", use.hours(), hour -> hour(json, hour));
            Intake intake = found.intake();
            json.objects(
                    "eaten",
                    intake == null ? Collections.emptyList() : intake.gramsByHour(),
                    grams -> json.number("g", grams));
            balance(json, "lastThird", found.lastThird());
            json.objects("findings", found.findings(), each -> finding(json, each));
            json.flag("intakeWouldTell", found.intakeWouldTell());
            guide(json, found.guide());
        });
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
        json.object(name, balance, found -> {
            json.whole("untilSeconds", found.second());
            json.word("shortage", found.shortage());
            range(json, "usedG", found.usedG());
            range(json, "storedG", CarbohydrateBalance.STORED_G);
            json.number("eatenG", found.eatenG());
            json.number("burnedG", found.burnedG());
            json.flag("intakeWouldTell", found.intakeWouldTell());
        });
    }

    static void guide(JsonWriter json, @Nullable IntakeGuide guide) {
        json.object("intakeGuideGPerHour", guide, found -> {
            json.number("low", found.lowGPerHour());
            json.number("high", found.highGPerHour());
            json.flag("mixtureOfSugars", found.mixtureOfSugars());
        });
    }

    static void range(JsonWriter json, String name, @Nullable Estimate estimate) {
        json.object(name, estimate, found -> {
            json.number("low", found.low());
            json.number("high", found.high());
        });
    }
}
