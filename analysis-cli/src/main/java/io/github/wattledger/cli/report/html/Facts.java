package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.LoadWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.TemperatureWords;
import io.github.wattledger.cli.report.words.Units;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The load of a ride, number by number, ours beside what the device stored. */
public final class Facts {
    /**
     * A number.
     *
     * @param label what it is
     * @param here ours
     * @param device the device's, or null where it stored none
     */
    public record Fact(String label, Num here, @Nullable Num device) {}

    private Facts() {}

    static List<Fact> of(RideReview review, Units units) {
        List<Fact> facts = new ArrayList<>();
        LoadWords.of(
                        review.load(),
                        review.ride(),
                        review.deviceTotals(),
                        review.rider().thresholdPowerW() != null)
                .stream()
                .map(words -> fact(words, units))
                .forEach(facts::add);
        temperatures(review, units)
                .forEach(words ->
                        facts.add(new Fact(PlainText.capital(words.label()), Num.inWords(words.value()), null)));
        return facts;
    }

    /** How warm the reviewed part was; nothing where no temperature was recorded. */
    static List<TemperatureWords> temperatures(RideReview review, Units units) {
        return TemperatureWords.of(review.ride().part(review.reviewed()), units);
    }

    private static Fact fact(LoadWords words, Units units) {
        String name = words.number().id();
        return new Fact(
                PlainText.capital(words.label()),
                Num.of("load." + name, words.here(), value -> words.inUnits(value, units), words.otherwise()),
                words.device() == null
                        ? null
                        : Num.of("deviceTotals." + name, words.device(), value -> words.inUnits(value, units)));
    }
}
