package io.github.wattledger.json;

import io.github.wattledger.bunch.BunchProposal;
import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.ProposedBunch;
import io.github.wattledger.pacing.price.LettingGo;
import org.jspecify.annotations.Nullable;

/** Whether it was worth staying with the bunch, and whether there was one. */
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

    /** What the race itself proposes; null where the rider says something. */
    static void proposed(JsonWriter json, @Nullable ProposedBunch proposed) {
        json.object("proposedBunch", proposed, found -> {
            BunchProposal proposal = found.proposal();
            json.objects("stretches", proposal.stretches(), stretch -> {
                json.whole("startSeconds", stretch.when().fromSecond());
                json.whole("endSeconds", stretch.when().toSecond());
                json.number("saving", stretch.saving());
                json.number("savingLow", stretch.savingLow());
                json.number("savingHigh", stretch.savingHigh());
            });
            json.string("whyNoStretches", proposal.whyNoStretches());
            json.objects("wouldHaveShown", proposal.wouldHaveShown(), showing -> {
                json.whole("minutes", showing.minutes());
                json.number("saving", showing.saving());
            });
            json.object("level", proposal.mostOfRide(), level -> {
                json.number("mostDragAreaM2", level.mostDragAreaM2());
                json.number("comparedWithM2", level.comparedWithM2());
                json.flag("own", level.isOwn());
                json.flag("sheltered", level.isSheltered());
            });
            json.flag("oneKindOfRoad", proposal.oneKindOfRoad());
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
