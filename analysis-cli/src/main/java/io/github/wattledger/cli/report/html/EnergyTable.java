package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.EnergyWords;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.energy.EnergyHour;
import io.github.wattledger.energy.Estimate;
import io.github.wattledger.energy.FuelReview;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * What a ride asked of the body.
 *
 * @param ranges what is known of the whole within two ends
 * @param hours hour by hour
 * @param notes what else there is to say
 * @param otherwise why nothing is estimated, or empty
 */
public record EnergyTable(List<Range> ranges, List<Hour> hours, List<String> notes, String otherwise) {
    /** A number with its two ends. */
    public record Range(String label, Num low, Num high) {}

    /** An hour: when it is, its mean power, and the two ends of carbohydrate used in an hour of riding. */
    public record Hour(Num from, Num to, Num power, Num low, Num high) {}

    static EnergyTable of(RideReview review) {
        FuelReview fuel = review.fuel();
        if (fuel == null) {
            return new EnergyTable(List.of(), List.of(), List.of(), EnergyWords.notEstimated(review));
        }
        List<Hour> hours = new ArrayList<>();
        for (int i = 0; i < fuel.use().hours().size(); i++) {
            hours.add(hour(fuel.use().hours().get(i), "energy.hours[" + i + "]."));
        }
        return new EnergyTable(
                List.of(
                        range("Energy used, kJ", "energy.energyKJ", fuel.use().energyKJ(), Figures::modelledKilojoules),
                        range(
                                "Carbohydrate used, g",
                                "energy.carbohydrateG",
                                fuel.use().carbohydrateG(),
                                Figures::modelledGrams),
                        range(
                                "Carbohydrate used in an hour of riding, g",
                                "energy.carbohydrateGPerHour",
                                fuel.use().carbohydrateGPerHour(),
                                Figures::modelledGrams)),
                hours,
                EnergyWords.notes(fuel),
                "");
    }

    private static Range range(String label, String path, Estimate estimate, DoubleFunction<String> words) {
        return new Range(
                label, Num.of(path + ".low", estimate.low(), words), Num.of(path + ".high", estimate.high(), words));
    }

    private static Hour hour(EnergyHour hour, String path) {
        Estimate grams = hour.carbohydrateGPerHour();
        return new Hour(
                Num.of(path + "startSeconds", (double) hour.stretch().fromSecond(), Figures::clock),
                Num.of(path + "endSeconds", (double) hour.stretch().toSecond(), Figures::clock),
                Num.rounded(path + "meanPowerW", hour.meanPowerW(), " W"),
                end(path + "carbohydrateGPerHour", "low", grams == null ? null : grams.low()),
                end(path + "carbohydrateGPerHour", "high", grams == null ? null : grams.high()));
    }

    private static Num end(String path, String name, @Nullable Double grams) {
        return Num.of(path + "." + name, grams, Figures::modelledGrams);
    }
}
