package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.energy.CarbohydrateBalance;
import io.github.wattledger.energy.EnergyHour;
import io.github.wattledger.energy.Estimate;
import io.github.wattledger.energy.FuelReview;
import io.github.wattledger.energy.Intake;
import io.github.wattledger.energy.IntakeGuide;
import io.github.wattledger.energy.Shortage;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.plan.PlanFuel;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What a ride asked of the body: ranges, three careful words, and never a diagnosis or an amount for a person. */
public final class EnergyWords {
    /** The part of {@link UnknownWords} that asks for what was eaten. */
    static final String ASKED =
            "how much carbohydrate you ate, which could change what is said of it" + " (grams an hour: --eaten 55)";

    private static final int HIGHEST_OF_ONE_SUGAR_G_PER_HOUR = 60;

    private EnergyWords() {}

    /** Why nothing is estimated, a sentence. */
    public static String notEstimated(RideReview review) {
        return "Not estimated, so that nothing is said of what was eaten either: " + whyNotEstimated(review) + ".";
    }

    private static String whyNotEstimated(RideReview review) {
        if (!review.ride().has(Channel.POWER)) {
            return "there is no power in this file";
        }
        if (review.rider().mayBeUnder18()) {
            return "the numbers are of adults, and the rider may be under 18 by the profile";
        }
        return review.pacing().targetW() == null
                ? "there is no threshold power that can be relied on"
                : "power is missing in more than a tenth of the ridden seconds of an hour";
    }

    /** Energy and carbohydrate of the whole, in sentences. */
    public static List<String> totals(FuelReview fuel) {
        return List.of(
                "Energy used for the work of riding: " + kilojoules(fuel.use().energyKJ()) + " kJ.",
                "Carbohydrate used: " + range(fuel.use().carbohydrateGPerHour())
                        + " g in an hour of riding, estimated from power and threshold power.");
    }

    /** What a plan will use, what is published of intake, and the cautions. */
    static List<String> planned(PlanFuel fuel) {
        List<String> said = new ArrayList<>();
        said.add("The plan uses " + range(fuel.carbohydrateGPerHour())
                + " g of carbohydrate in an hour of riding, estimated from power and threshold power.");
        if (fuel.guide() != null) {
            said.add(guide(fuel.guide(), "the plan uses"));
        }
        said.add(Cautions.ENERGY);
        return said;
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
        return PlainText.capital(balance(balance)) + (guide == null ? "" : " " + guide(guide, "this ride used"));
    }

    /** What to do about a crash: of food only where food can have been behind it. */
    static String nextTime(Finding crash, RideReview review) {
        return isFoodUnlikely(crash, review)
                ? "By what was used and eaten, food was hardly behind it."
                : "Eat from the first hour on as you have practised, and drink to thirst.";
    }

    /** Whether a finding was hardly a matter of food; false where that is not known. */
    static boolean isFoodUnlikely(Finding finding, RideReview review) {
        FuelReview fuel = review.fuel();
        CarbohydrateBalance balance = fuel == null ? null : fuel.at(finding);
        return balance != null && balance.shortage() == Shortage.UNLIKELY;
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
                + eaten(balance) + ".";
    }

    private static String eaten(CarbohydrateBalance balance) {
        Double eatenG = balance.eatenG();
        Double burnedG = balance.burnedG();
        return eatenG == null || burnedG == null
                ? "what you ate is not known"
                : "you ate " + Figures.modelledGrams(eatenG) + " g by then, as you say, of which a body burns about "
                        + Figures.modelledGrams(burnedG) + " g in that time";
    }

    private static String guide(IntakeGuide guide, String use) {
        return "Published for healthy, trained adults in rides of this length, and held to seven tenths of what "
                + use + ": "
                + range(Figures.modelledGrams(guide.lowGPerHour()), Figures.modelledGrams(guide.highGPerHour()))
                + " g of carbohydrate an hour"
                + (guide.mixtureOfSugars()
                        ? ", above " + HIGHEST_OF_ONE_SUGAR_G_PER_HOUR
                                + " g only as a mixture of sugars that the rider is used to"
                        : "")
                + ". " + Cautions.INTAKE;
    }

    private static String kilojoules(Estimate estimate) {
        return range(Figures.modelledKilojoules(estimate.low()), Figures.modelledKilojoules(estimate.high()));
    }

    private static String range(Estimate estimate) {
        return range(Figures.modelledGrams(estimate.low()), Figures.modelledGrams(estimate.high()));
    }

    /** What is rounded to the same number is no range. */
    private static String range(String low, String high) {
        return low.equals(high) ? "about " + low : low + " to " + high;
    }
}
