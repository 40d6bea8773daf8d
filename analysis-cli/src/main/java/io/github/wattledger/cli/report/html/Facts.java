package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.LoadWords;
import io.github.wattledger.cli.report.words.PlainText;
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

    static List<Fact> of(RideReview review) {
        return LoadWords.of(
                        review.load(),
                        review.ride(),
                        review.deviceTotals(),
                        review.rider().thresholdPowerW() != null)
                .stream()
                .map(Facts::fact)
                .toList();
    }

    private static Fact fact(LoadWords words) {
        String name = words.number().id();
        return new Fact(
                PlainText.capital(words.label()),
                Num.of("load." + name, words.here(), words::inUnits, words.otherwise()),
                words.device() == null ? null : Num.of("deviceTotals." + name, words.device(), words::inUnits));
    }
}
