package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.energy.CarbohydrateBalance;
import io.github.wattledger.energy.EnergyHour;
import io.github.wattledger.energy.Estimate;
import io.github.wattledger.energy.FuelReview;
import io.github.wattledger.energy.Intake;
import io.github.wattledger.energy.IntakeGuide;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a ride asked of the body: ranges, three careful words, and never a diagnosis or an amount for a person. */
public final class EnergyWords {
    /** What is said where nothing is estimated. */
    public static final String NOT_ESTIMATED =
            "Not estimated: it needs power in nine tenths of the ridden seconds of each"
                    + " hour, and a threshold power that can be relied on.";

    /** The part of {@link UnknownWords} that asks for what was eaten. */
    static final String ASKED =
            "how much carbohydrate you ate, which could change what is said of it" + " (grams an hour: --eaten 55)";

    private static final int HIGHEST_OF_ONE_SUGAR_G_PER_HOUR = 60;

    private EnergyWords() {}

    /** Work, energy and carbohydrate of the whole, in sentences. */
    public static List<String> totals(FuelReview fuel) {
        return List.of(
                "Work: " + Figures.decimal(fuel.use().workKJ(), 0) + " kJ. Energy used for it: "
                        + range(fuel.use().energyKJ()) + " kJ.",
                "Carbohydrate used: " + range(fuel.use().carbohydrateGPerHour())
                        + " g in an hour of riding, estimated from power and threshold power.");
    }

    /** What was eaten, the last third, and the caution. */
    public static List<String> notes(FuelReview fuel) {
        List<String> notes = new ArrayList<>();
        Intake intake = fuel.intake();
        if (intake != null) {
            notes.add(eaten(intake));
        }
        if (fuel.lastThird() != null) {
            notes.add("Where the last third began: " + balance(fuel.lastThird()));
        }
        notes.add(Cautions.ENERGY);
        return notes;
    }

    /** Power of an hour, or a dash. */
    public static String power(EnergyHour hour) {
        return hour.meanPowerW() == null ? "-" : Figures.watts(hour.meanPowerW());
    }

    /** Carbohydrate used in an hour, grams an hour of riding, or a dash. */
    public static String carbohydrate(EnergyHour hour) {
        Estimate grams = hour.carbohydrateGPerHour();
        return grams == null ? "-" : range(grams);
    }

    /** From when to when an hour is, for instance {@code 1:00 to 2:00}. */
    public static String when(EnergyHour hour) {
        return Figures.shortClock(hour.stretch().fromSecond()) + " to "
                + Figures.shortClock(hour.stretch().toSecond());
    }

    /** The sentences beside a finding; empty where there are none. */
    static String beside(Finding finding, RideReview review) {
        FuelReview fuel = review.fuel();
        CarbohydrateBalance balance = fuel == null ? null : fuel.at(finding);
        if (fuel == null || balance == null) {
            return "";
        }
        IntakeGuide guide = finding.kind() == FindingKind.ENERGY_CRASH ? fuel.guide() : null;
        return PlainText.capital(balance(balance)) + (guide == null ? "" : " " + guide(guide));
    }

    private static String eaten(Intake intake) {
        String grams = intake.gramsByHour().stream().map(Figures::brief).collect(Collectors.joining(", "));
        return intake.gramsByHour().size() == 1
                ? "Eaten, as you say: " + grams + " g of carbohydrate an hour."
                : "Eaten, as you say: " + grams
                        + " g of carbohydrate, hour by hour, and the last number in every hour after.";
    }

    private static String balance(CarbohydrateBalance balance) {
        return "short of carbohydrate: " + balance.shortage().name().toLowerCase(Locale.ROOT) + ". By "
                + Figures.clock(balance.second()) + " the ride had used " + range(balance.usedG())
                + " g; the body of a trained adult stores " + range(CarbohydrateBalance.STORED_G) + " g; "
                + eaten(balance.eatenG()) + ".";
    }

    private static String eaten(@Nullable Double grams) {
        return grams == null
                ? "what you ate is not known"
                : "you ate " + Figures.decimal(grams, 0) + " g by then, as you say";
    }

    private static String guide(IntakeGuide guide) {
        return "Published for healthy, trained adults in rides of this length, and held to seven tenths of what this ride used: "
                + Figures.decimal(guide.lowGPerHour(), 0) + " to " + Figures.decimal(guide.highGPerHour(), 0)
                + " g of carbohydrate an hour"
                + (guide.mixtureOfSugars()
                        ? ", above " + HIGHEST_OF_ONE_SUGAR_G_PER_HOUR
                                + " g only as a mixture of sugars that the rider is used to"
                        : "")
                + ". " + Cautions.INTAKE;
    }

    private static String range(Estimate estimate) {
        return Figures.decimal(estimate.low(), 0) + " to " + Figures.decimal(estimate.high(), 0);
    }
}
