package io.github.wattledger.simulation.trial;

import io.github.wattledger.ride.Interval;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;

/** All that is known of one race, for a developer who wants to see why it is judged wrongly. */
final class RaceSheet {
    private static final int PARTS = 12;

    private final TrialRace race;
    private final TrialTruth truth;
    private final StringBuilder text = new StringBuilder();

    RaceSheet(long seed) {
        race = TrialRace.of(seed);
        truth = TrialTruth.of(race);
    }

    String markdown() {
        RiddenRace ridden = race.ridden();
        line(
                "Race %d: %s, %.1f km, %s moving, rider %.0f kg, threshold %.0f W%s, target %.0f W, normalized %.0f W",
                race.seed(),
                race.course().family().words(),
                race.course().course().lengthM() / 1000,
                Interval.clock(ridden.movingSeconds()),
                race.rider().massKg(),
                race.rider().thresholdPowerW(),
                race.thresholdGiven() ? "" : " (not given)",
                race.targetW(),
                ridden.normalizedPowerW());
        twelfths();
        mistakes();
        judged();
        return text.toString();
    }

    private void twelfths() {
        line("");
        line("| twelfth | from | mean W | normalized W | chosen level | grade %% | km/h | heart rate |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- |");
        RiddenRace ridden = race.ridden();
        SensiblePower plan = race.plan();
        var heart = ridden.ride().truth(io.github.wattledger.ride.Channel.HEART_RATE);
        var altitude = ridden.ride().truth(io.github.wattledger.ride.Channel.ALTITUDE);
        for (int part = 0; part < PARTS; part++) {
            int from = ridden.secondAtShare((double) part / PARTS);
            int to = ridden.secondAtShare((double) (part + 1) / PARTS);
            double watts = 0;
            double level = 0;
            double beats = 0;
            for (int second = from; second < to; second++) {
                watts += ridden.powerW(second);
                level += plan.factorAt(ridden.distanceM(second));
                beats += heart.get(second);
            }
            double metres = ridden.distanceM(to - 1) - ridden.distanceM(from);
            double seconds = to - (double) from;
            line(
                    "| %d | %s | %.0f | %.0f | %.2f | %.1f | %.1f | %.0f |",
                    part + 1,
                    Interval.clock(from),
                    watts / seconds,
                    ridden.normalizedPowerW(from, to),
                    level / seconds,
                    100 * (altitude.get(to - 1) - altitude.get(from)) / metres,
                    3.6 * metres / seconds,
                    beats / seconds);
        }
    }

    private void mistakes() {
        line("");
        line("In it (1 is where the definition begins, negligible below 0.5, clear from 1.25):");
        for (Map.Entry<MistakeKind, Double> size : truth.sizes().entrySet()) {
            if (size.getValue() > 0) {
                line("- %s: %.2f", size.getKey().words(), size.getValue());
            }
        }
        line("- second half over first: %.3f; fitting headlines: %s", truth.halvesRatio(), truth.defensibleHeadlines());
        for (Mistake mistake : race.mistakes()) {
            Interval when = TrialTruth.seconds(race, mistake);
            line(
                    "- put in: %s, %s to %s",
                    mistake.kind().words(), Interval.clock(when.fromSecond()), Interval.clock(when.toSecond()));
        }
        RiddenAgain again = new RiddenAgain(race);
        EnumSet<MistakeKind> putIn = EnumSet.noneOf(MistakeKind.class);
        race.mistakes().stream()
                .map(Mistake::kind)
                .filter(MistakeKind::hasPrice)
                .forEach(putIn::add);
        again.prices(putIn)
                .forEach((kind, price) -> line(
                        "- true price of %s: %.2f min at equal work, %.2f min at equal" + " normalized power",
                        kind.words(), price.equalWorkMinutes(), price.equalNormalizedPowerMinutes()));
        if (putIn.size() > 1) {
            RiddenAgain.Price whole = again.without(putIn);
            line(
                    "- true price of all at once: %.2f and %.2f min",
                    whole.equalWorkMinutes(), whole.equalNormalizedPowerMinutes());
        }
    }

    private void judged() {
        LibraryReview review = new LibraryReview(race);
        LibraryReview.Judged judged = review.asRace();
        line("");
        line(
                "Said: %s, target %.0f W; unasked: %s",
                judged.headline(), judged.targetW(), review.unasked().headline());
        for (LibraryReview.Accusation each : judged.accusations()) {
            line(
                    "- %s (%s), %s to %s, %.2f to %.2f min: %s",
                    each.kind(),
                    each.severity(),
                    Interval.clock(each.when().fromSecond()),
                    Interval.clock(each.when().toSecond()),
                    each.lowMinutes(),
                    each.highMinutes(),
                    each.evidence());
        }
        line("- all at once: %.2f to %.2f min", judged.wholeLowMinutes(), judged.wholeHighMinutes());
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
