package io.github.wattledger.json;

import io.github.wattledger.compare.CourseComparison;
import io.github.wattledger.compare.Ground;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.ride.Channel;
import java.util.Locale;

/** The names and values of a comparison, in the order of {@link JsonSchema#COMPARISON}. */
final class JsonComparison {
    private JsonComparison() {}

    static void comparison(JsonWriter json, RideComparison comparison) {
        source(json, "reference", comparison.reference().source());
        CourseComparison course = comparison.course();
        json.begin("course");
        json.number("startM", course.startM());
        json.number("stepM", course.stepM());
        json.whole("pointCount", course.points());
        json.series("referenceSeconds", course.referenceSecond());
        json.series("powerW", comparison.along(Channel.POWER));
        json.series("heartRateBpm", comparison.along(Channel.HEART_RATE));
        json.end();
        json.objects("others", comparison.others(), other -> other(json, other));
    }

    private static void source(JsonWriter json, String name, RideSource source) {
        json.begin(name);
        json.string("file", source.file());
        json.string("format", source.format());
        json.string("sha256", source.sha256());
        json.whole("sessionIndex", source.sessionIndex());
        json.startTime(source.startTime(), source.utcOffsetSeconds());
        json.end();
    }

    private static void other(JsonWriter json, RideComparison.Against other) {
        CourseComparison comparison = other.comparison();
        source(json, "source", other.compared().source());
        json.string("method", comparison.method().name().toLowerCase(Locale.ROOT));
        json.whole("fromPoint", comparison.fromPoint());
        json.whole("toPoint", comparison.toPoint());
        json.number("fromM", comparison.distanceM(comparison.fromPoint()));
        json.number("toM", comparison.distanceM(comparison.toPoint()));
        json.begin("gap");
        json.number("elapsedSeconds", comparison.finalGapSeconds());
        json.number("movingSeconds", comparison.finalMovingGapSeconds());
        json.number("standingSeconds", comparison.lostStandingSeconds());
        for (Ground ground : Ground.values()) {
            boolean isThere = comparison.stretches().stream().anyMatch(stretch -> stretch.ground() == ground);
            json.number(ground.id() + "Seconds", isThere ? comparison.lostMovingSecondsOn(ground) : null);
        }
        json.end();
        json.objects("stretches", comparison.stretches(), stretch -> stretch(json, stretch));
        json.objects("apart", comparison.apart(), apart -> {
            json.word("reason", apart.reason());
            json.number("startM", apart.startM());
            json.number("endM", apart.endM());
        });
        json.series("gapSeconds", comparison.gapSeconds());
        json.series("movingGapSeconds", comparison.movingGapSeconds());
        json.series("powerW", other.along(Channel.POWER));
        json.series("heartRateBpm", other.along(Channel.HEART_RATE));
    }

    private static void stretch(JsonWriter json, CourseComparison.Stretch stretch) {
        json.string("ground", stretch.ground().id());
        json.number("startM", stretch.startM());
        json.number("endM", stretch.endM());
        Double grade = stretch.meanGrade();
        json.number("meanGradePercent", grade == null ? null : grade * 100);
        json.number("apartM", stretch.apartM());
        json.number("lostSeconds", stretch.lostSeconds());
        json.number("lostMovingSeconds", stretch.lostMovingSeconds());
        side(json, "reference", stretch.reference());
        side(json, "other", stretch.other());
    }

    private static void side(JsonWriter json, String name, CourseComparison.Side side) {
        json.begin(name);
        json.number("elapsedSeconds", side.elapsedSeconds());
        json.number("movingSeconds", side.movingSeconds());
        json.number("averagePowerW", side.averagePowerW());
        json.number("averageHeartRateBpm", side.averageHeartRateBpm());
        json.end();
    }
}
