package io.github.wattledger.json;

import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.price.LettingGo;
import org.jspecify.annotations.Nullable;

/** Whether it was worth staying with the bunch. */
final class JsonBunch {
    private JsonBunch() {}

    /** Null where the rider says nothing of a bunch. */
    static void bunch(JsonWriter json, @Nullable BunchReview review) {
        json.object("bunch", review, found -> {
            json.flag("alone", found.told().isAlone());
            json.objects("toldStretches", found.told().bunches(), stretch -> {
                json.whole("startSeconds", stretch.fromSecond());
                json.whole("endSeconds", stretch.toSecond());
            });
            json.number("nextGroupShare", found.told().nextGroupShare());
            json.number("assumedSavingLow", found.savingLow());
            json.number("assumedSavingHigh", found.savingHigh());
            json.flag("unpaved", found.isUnpaved());
            json.wholeOrNull("surgesInBunch", found.surgesInBunch());
            json.wholeOrNull("surgesAlone", found.surgesAlone());
            json.objects("decisions", found.decisions(), each -> decision(json, each));
        });
    }

    private static void decision(JsonWriter json, BunchReview.Decision decision) {
        LettingGo lettingGo = decision.lettingGo();
        LettingGo.BreakEven breakEven = lettingGo.breakEven();
        json.string("kind", decision.kind().id());
        json.string("outcome", decision.outcome().words());
        json.whole("hardStartSeconds", lettingGo.hard().fromSecond());
        json.whole("hardEndSeconds", lettingGo.hard().toSecond());
        json.whole("leftSeconds", lettingGo.sheltered().toSecond());
        json.number("hardNormalizedPowerW", lettingGo.hardPowerW());
        json.number("targetW", lettingGo.targetW());
        double airShare = lettingGo.airWorkShare();
        json.number("airWorkShare", Double.isNaN(airShare) ? null : airShare);
        json.number("breakEvenSavingEqualWork", breakEven == null ? null : breakEven.equalWork());
        json.number("breakEvenSavingEqualNormalizedPower", breakEven == null ? null : breakEven.equalNormalizedPower());
        json.string("noBreakEven", lettingGo.noBreakEven());
        json.objects("savings", lettingGo.savings(), at -> {
            json.number("saving", at.savedShare());
            json.number("letGoEqualWorkSeconds", at.letGoEqualWorkSeconds());
            json.number("letGoEqualNormalizedPowerSeconds", at.letGoEqualNormalizedPowerSeconds());
            json.number("keptEqualWorkSeconds", at.keptEqualWorkSeconds());
            json.number("keptEqualNormalizedPowerSeconds", at.keptEqualNormalizedPowerSeconds());
        });
    }
}
