package io.github.wattledger.json;

import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.price.LettingGo;
import org.jspecify.annotations.Nullable;

/** Whether it was worth staying with the bunch. */
final class JsonBunch {
    private JsonBunch() {}

    /** Null where the rider says nothing of a bunch. */
    static void bunch(JsonWriter json, @Nullable BunchReview review) {
        if (review == null) {
            json.none("bunch");
            return;
        }
        json.begin("bunch");
        json.flag("alone", review.told().isAlone());
        json.objects("toldStretches", review.told().bunches(), stretch -> {
            json.whole("startSeconds", stretch.fromSecond());
            json.whole("endSeconds", stretch.toSecond());
        });
        json.number("nextGroupShare", review.told().nextGroupShare());
        json.number("assumedSavingLow", review.savingLow());
        json.number("assumedSavingHigh", review.savingHigh());
        json.flag("unpaved", review.isUnpaved());
        json.wholeOrNull("surgesInBunch", review.surgesInBunch());
        json.wholeOrNull("surgesAlone", review.surgesAlone());
        json.objects("decisions", review.decisions(), each -> decision(json, each));
        json.end();
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
