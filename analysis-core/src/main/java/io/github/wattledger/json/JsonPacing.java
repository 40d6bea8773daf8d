package io.github.wattledger.json;

import io.github.wattledger.pacing.AnyFinding;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.Occasion;
import io.github.wattledger.pacing.PacingNumbers;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Remark;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.ride.Interval;
import org.jspecify.annotations.Nullable;

/** The pacing of a ride: the verdict, the findings with their prices, and the ledger of time. */
final class JsonPacing {
    private JsonPacing() {}

    static void pacing(JsonWriter json, PacingReview pacing) {
        json.begin("pacing");
        json.string("verdict", pacing.verdict().words());
        occasion(json, pacing.occasion());
        json.number("secondHalfOverFirst", pacing.secondHalfOverFirst());
        json.objects("findings", pacing.findings(), each -> finding(json, each));
        json.objects("remarks", pacing.remarks(), each -> remark(json, each));
        ledger(json, pacing.ledger());
        JsonBunch.bunch(json, pacing.bunch());
        JsonBunch.proposed(json, pacing.proposedBunch());
        json.objects("ownFindings", pacing.ownFindings(), each -> finding(json, each));
        json.objects("leftOut", pacing.leftOut(), sentence -> json.string("words", sentence));
        lostSplit(json, pacing.lost());
        numbers(json, pacing.numbers());
        json.end();
    }

    /** What the ride shows of its rider whether or not anything was found. */
    private static void numbers(JsonWriter json, PacingNumbers numbers) {
        json.begin("numbers");
        json.number("openingOverTarget", numbers.openingOverTarget());
        json.number("fadePercent", numbers.fadePercent());
        JsonHistory.heartLine(json, numbers.heartLine());
        json.number("descentSpeedMps", numbers.descentSpeedMps());
        json.end();
    }

    /** What the low end of the minutes lost in the parts of the ride means; the high end is the other one. */
    private static void lostSplit(JsonWriter json, @Nullable LostTime lost) {
        json.object("lostSplit", lost, found -> {
            json.word("lowEnd", found.lowEnd());
        });
    }

    private static void occasion(JsonWriter json, Occasion occasion) {
        json.begin("occasion");
        json.string("kind", occasion.kind().id());
        json.string("reason", occasion.reason().words());
        evidence(json, occasion.evidence());
        json.objects("workLaps", occasion.workLaps(), lap -> {
            json.whole("number", lap.number());
            json.whole("seconds", lap.seconds());
            json.number("meanPowerW", lap.meanPowerW());
        });
        json.end();
    }

    private static void remark(JsonWriter json, Remark remark) {
        json.string("kind", remark.kind().id());
        place(json, remark.when(), remark.startM(), remark.endM());
        evidence(json, remark.evidence());
    }

    private static void finding(JsonWriter json, AnyFinding finding) {
        json.string("kind", finding.kindId());
        json.string("severity", finding.severity().id());
        place(json, finding.when(), finding.startM(), finding.endM());
        evidence(json, finding.evidence());
        if (finding instanceof Finding ours) {
            cost(json, ours.cost());
        }
        json.string("advice", finding.advice().text());
    }

    private static void place(JsonWriter json, Interval when, @Nullable Double startM, @Nullable Double endM) {
        json.whole("startSeconds", when.fromSecond());
        json.whole("endSeconds", when.toSecond());
        json.number("startM", startM);
        json.number("endM", endM);
    }

    private static void evidence(JsonWriter json, Evidence evidence) {
        json.begin("evidence");
        for (Evidence.Entry entry : evidence.entries()) {
            json.number(entry.name(), entry.value());
        }
        json.end();
    }

    private static void cost(JsonWriter json, Cost cost) {
        if (cost instanceof Cost.Priced priced) {
            json.begin("costMinutes");
            json.number("low", priced.lowMinutes());
            json.number("high", priced.highMinutes());
            json.end();
            json.string("costNote", priced.how());
        } else if (cost instanceof Cost.NotPriced notPriced) {
            json.none("costMinutes");
            json.string("costNote", notPriced.reason());
        } else {
            throw new AssertionError(cost);
        }
    }

    private static void ledger(JsonWriter json, TimeLedger ledger) {
        json.begin("ledger");
        json.number("elapsedMinutes", ledger.elapsedMinutes());
        json.number("movingMinutes", ledger.movingMinutes());
        json.number("stoppedMinutes", ledger.stoppedMinutes());
        json.number("missingMinutes", ledger.missingMinutes());
        json.objects("entries", ledger.entries(), each -> entry(json, each));
        json.end();
    }

    private static void entry(JsonWriter json, TimeLedger.Entry entry) {
        json.string("label", entry.label());
        json.number("minutesLow", entry.minutesLow());
        json.number("minutesHigh", entry.minutesHigh());
    }
}
