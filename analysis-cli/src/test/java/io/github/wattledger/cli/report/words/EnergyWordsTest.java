package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.RideReview;
import io.github.wattledger.energy.CarbohydrateBalance;
import io.github.wattledger.energy.EnergyUse;
import io.github.wattledger.energy.Estimate;
import io.github.wattledger.energy.FindingFuel;
import io.github.wattledger.energy.FuelReview;
import io.github.wattledger.energy.IntakeGuide;
import io.github.wattledger.energy.Shortage;
import io.github.wattledger.pacing.Advice;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.testing.ReviewParts;
import io.github.wattledger.testing.SampleReviews;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Read as a coach: ranges, one of three words, and nothing that sounds like a diagnosis or a diet. */
class EnergyWordsTest {
    private static final Finding CRASH = new Finding(
            FindingKind.ENERGY_CRASH,
            Severity.MAJOR,
            new Interval(15_120, 18_000),
            null,
            null,
            Evidence.none().with("lossPercent", 18),
            new Cost.NotPriced("not priced here"),
            new Advice("Eat and drink by the clock", null, null),
            null);

    private static RideReview crashed(@Nullable Double eatenG, boolean wouldTell, @Nullable IntakeGuide guide) {
        RideReview race = SampleReviews.race(Verdict.FADED, List.of(CRASH), List.of());
        CarbohydrateBalance balance = new CarbohydrateBalance(
                CRASH.when().fromSecond(),
                new Estimate(480, 640, 800),
                eatenG,
                eatenG == null ? null : 0.85 * eatenG,
                Shortage.POSSIBLE,
                wouldTell);
        FuelReview fuel = new FuelReview(
                EnergyUse.of(new double[] {200, 200}, 250).orElseThrow(),
                null,
                null,
                List.of(new FindingFuel(FindingKind.ENERGY_CRASH, CRASH.when().fromSecond(), balance)),
                guide);
        return ReviewParts.changed(race, parts -> parts.fuel = fuel);
    }

    private static String evidence(RideReview review) {
        return FindingWords.of(review, Units.METRIC).stream()
                .filter(words -> words.title().equals("Energy crash"))
                .map(FindingWords::evidence)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theWordStandsBesideTheTwoRangesItRestsOn() {
        assertThat(evidence(crashed(120.0, false, null)))
                .contains(
                        "Short of carbohydrate: possible. By 4:12:00 the ride had used 480 to 800 g; the body of a trained adult stores 300 to 600 g; you ate 120 g by"
                                + " then, as you say, of which a body burns about 100 g in that time.")
                .doesNotContain("dietitian");
        assertThat(evidence(crashed(null, true, null))).contains("what you ate is not known.");
    }

    @Test
    void whatWasEatenIsAskedForOnlyWhereItWouldTell() {
        assertThat(UnknownWords.of(crashed(null, true, null))).contains("--eaten 55");
        assertThat(UnknownWords.of(crashed(null, false, null))).doesNotContain("--eaten");
    }

    @Test
    void thePublishedRangeIsForAdultsAndNamesWhoDecides() {
        assertThat(evidence(crashed(120.0, false, new IntakeGuide(58, 90, true))))
                .endsWith(
                        "Published for healthy, trained adults in rides of this length, and held to seven tenths of what"
                                + " this ride used: 60 to 90 g of carbohydrate an hour, above 60 g only as a mixture of sugars that"
                                + " the rider is used to. Whether and how much suits you is for a licensed dietitian or a"
                                + " physician.");
    }

    @Test
    void noSentenceCountsCaloriesOrSpeaksOfMass() {
        RideReview review = crashed(120.0, false, new IntakeGuide(58, 90, true));
        FuelReview fuel = Objects.requireNonNull(review.fuel());
        String all = EnergyWords.totals(fuel) + " " + EnergyWords.notes(fuel) + evidence(review);
        assertThat(all).doesNotContainIgnoringCase("calor").doesNotContainIgnoringCase("weight");
        assertThat(all).doesNotContainIgnoringCase("deficit").doesNotContain(" ml", " mg", "g/kg");
    }
}
