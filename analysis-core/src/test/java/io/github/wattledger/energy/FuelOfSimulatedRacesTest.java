package io.github.wattledger.energy;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.HeartResponse;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RidingStyle;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.SimulatedRider;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * The simulator knows why its rider slowed, and what the rider had eaten: the word fits in nine of ten races, and is
 * <em>possible</em> where nothing is said and food would change it. The powers are chosen by the definition of the words
 * and the published grams an hour of the check values: at 0.88 of threshold at least 140 g/h, so at least 600 g by 4.5 h;
 * at 0.7 at most 140 g/h.
 */
class FuelOfSimulatedRacesTest {
    private static final int RACES = 10;
    private static final int FITTING = 9;
    private static final double THRESHOLD_W = 250;
    private static final Rider RIDER =
            Rider.UNKNOWN.withThresholdPowerW(THRESHOLD_W).withMassKg(74);

    private static RideReview race(
            double powerW, double km, double fallSecond, double powerFall, HeartResponse heart, long seed) {
        return race(RIDER, powerW, km, fallSecond, powerFall, heart, seed);
    }

    private static RideReview race(
            Rider rider,
            double powerW,
            double km,
            double fallSecond,
            double powerFall,
            HeartResponse heart,
            long seed) {
        PacingPlan plan = moment -> powerW * (moment.racingSeconds() < fallSecond ? 1 : 1 - powerFall);
        Course course = Course.builder()
                .startLine(45, 0, 100)
                .stretch(km * 1000, 0, 0.006)
                .rollers(40, 4000)
                .build();
        Scenario scenario = Scenario.of(course, SimulatedRider.tireless().withHeart(heart), plan.onTerrain(2))
                .withStyle(RidingStyle.FOREST_ROAD, seed);
        return Reviewer.review(
                SensorNoise.ordinary(seed).record(RoadSimulation.ride(scenario)).toRecording(),
                rider,
                ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
    }

    private static FuelReview fuel(RideReview review, @Nullable Intake intake) {
        return FuelReview.of(review.ride(), review.reviewed(), review.pacing(), THRESHOLD_W, intake)
                .orElseThrow();
    }

    /** The balance beside the finding, where there is one. */
    private static List<CarbohydrateBalance> beside(FindingKind kind, FuelReview fuel) {
        return fuel.findings().stream()
                .filter(each -> each.kind() == kind)
                .map(FindingFuel::balance)
                .toList();
    }

    private static void assertWords(List<RideReview> races, FindingKind kind, double gramsPerHour, Shortage told) {
        List<Shortage> words = new ArrayList<>();
        List<CarbohydrateBalance> untold = new ArrayList<>();
        for (RideReview race : races) {
            beside(kind, fuel(race, Intake.ofGramsPerHour(gramsPerHour))).forEach(each -> words.add(each.shortage()));
            untold.addAll(beside(kind, fuel(race, null)));
        }
        assertThat(words.stream().filter(told::equals)).hasSizeGreaterThanOrEqualTo(FITTING);
        assertThat(untold).hasSizeGreaterThanOrEqualTo(FITTING).allSatisfy(balance -> {
            // A fade that begins early needs no food to be told from a shortage: nothing can be used up yet.
            assertThat(balance.shortage()).isEqualTo(balance.intakeWouldTell() ? Shortage.POSSIBLE : Shortage.UNLIKELY);
            assertThat(balance.intakeWouldTell() || kind == FindingKind.FADE).isTrue();
            assertThat(balance.eatenG()).isNull();
        });
    }

    /** The rider ate nothing for five hours of hard riding, then power and heart rate fell. */
    @Test
    void aCrashWithoutFoodIsLikelyShort() {
        double crashSecond = 5.0 * 3600;
        HeartResponse heart = SimulatedRider.tireless().heart().withCrash(crashSecond, 0.12);
        List<RideReview> races = LongStream.rangeClosed(1, RACES)
                .mapToObj(seed -> race(220, 190, crashSecond, 0.3, heart, seed))
                .toList();
        assertWords(races, FindingKind.ENERGY_CRASH, 0, Shortage.LIKELY);
    }

    /** All these numbers are of adults: where the rider may be under 18 on the day, none is shown. */
    @Test
    void fuelIsNotForMinors() {
        double crashSecond = 5.0 * 3600;
        HeartResponse heart = SimulatedRider.tireless().heart().withCrash(crashSecond, 0.12);
        RideReview adult = race(220, 190, crashSecond, 0.3, heart, 1);
        int year = adult.rider().day().getYear();
        assertThat(guide(adult)).isNotNull();
        assertThat(guide(race(RIDER.withBirthYear(year - 19), 220, 190, crashSecond, 0.3, heart, 1)))
                .isEqualTo(guide(adult));
        assertThat(race(RIDER.withBirthYear(year - 18), 220, 190, crashSecond, 0.3, heart, 1)
                        .fuel())
                .as("may still be 17")
                .isNull();
    }

    private static @Nullable IntakeGuide guide(RideReview review) {
        return Objects.requireNonNull(review.fuel()).guide();
    }

    /** The rider ate 90 g an hour and rode at 0.7 of threshold; then power fell, and the heart rate with it. */
    @Test
    void aFadeOfARiderWhoAteIsUnlikelyShort() {
        HeartResponse heart = SimulatedRider.tireless().heart();
        List<RideReview> races = LongStream.rangeClosed(11, 10 + RACES)
                .mapToObj(seed -> race(175, 140, 3.0 * 3600, 0.2, heart, seed))
                .toList();
        assertWords(races, FindingKind.FADE, 90, Shortage.UNLIKELY);
    }

    /** Heart rate rises at equal power, as in heat: no word beside a finding, and none to ask for. */
    @Test
    void aDriftOfARiderWhoAteIsNotAQuestionOfFood() {
        HeartResponse heart = SimulatedRider.tireless().heart().withDrift(0.025, 0, 0);
        int fitting = 0;
        for (long seed = 21; seed <= 20 + RACES; seed++) {
            RideReview race = race(175, 140, 3.0 * 3600, 0, heart, seed);
            FuelReview told = fuel(race, Intake.ofGramsPerHour(90));
            CarbohydrateBalance lastThird = told.lastThird();
            boolean fits = race.pacing().finding(FindingKind.DRIFT).isPresent()
                    && told.findings().isEmpty()
                    && lastThird != null
                    && lastThird.shortage() == Shortage.UNLIKELY
                    && !fuel(race, null).intakeWouldTell();
            fitting += fits ? 1 : 0;
        }
        assertThat(fitting).isGreaterThanOrEqualTo(FITTING);
    }
}
