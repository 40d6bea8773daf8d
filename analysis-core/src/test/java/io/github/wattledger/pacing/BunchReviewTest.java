package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.offset;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.FlatBunchRace;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** What a bunch that the rider names makes of the judgement. */
class BunchReviewTest {
    /** The guide gives about 200 W for the 2 h 50 min of the races below. */
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(237).withMassKg(73);

    /** 20 % over the target in a bunch that saves 40 %, then even: by closed values level at 1 to 8 %, far below 25 %. */
    private static final FlatBunchRace PAYS = new FlatBunchRace(240, 0.40, 200, 0.005);

    private static PacingReview review(Ride ride, Company company) {
        return Reviewer.review(
                        ride,
                        RIDER,
                        ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE).withCompany(company))
                .pacing();
    }

    private static Finding start(PacingReview review) {
        return review.finding(FindingKind.OVER_HARD_START).orElseThrow();
    }

    private static BunchReview.Decision decision(PacingReview review) {
        return Objects.requireNonNull(review.bunch()).decisions().get(0);
    }

    @Test
    void stayingThatPaidIsNoMistakeAndNoHeadline() {
        PacingReview review = review(PAYS.ride(), Company.inBunches(List.of(PAYS.bunch())));
        assertThat(decision(review).outcome()).isEqualTo(BunchReview.Outcome.STAYING_PAID);
        assertThat(start(review).severity()).isEqualTo(Severity.OBSERVATION);
        assertThat(start(review).cost()).isInstanceOf(Cost.NotPriced.class);
        assertThat(review.verdict()).isNotEqualTo(Verdict.OVER_HARD_START);
        assertThat(review.ledger().entries()).noneMatch(entry -> entry.label().equals("over-hard-start"));
    }

    /** Without a word about a bunch, and alone, the opening is priced as it always was. */
    @Test
    void aloneThePriceIsTheOneWithoutAWord() {
        PacingReview silent = review(PAYS.ride(), Company.NOT_SAID);
        PacingReview alone = review(PAYS.ride(), Company.ALONE);
        assertThat(silent.bunch()).isNull();
        assertThat(silent.verdict()).isEqualTo(Verdict.OVER_HARD_START);
        assertThat(alone.findings()).isEqualTo(silent.findings());
        assertThat(Objects.requireNonNull(alone.bunch()).decisions()).isEmpty();
    }

    /**
     * 40 % over the target, then fading to 180 W. Already at 30 % over it the closed values are level at 26 % for the same
     * effort and at 5 % for the same work, on both sides of the 25 % that a bunch saves at least.
     */
    @Test
    void aHardBunchThatWasPaidForLaterIsOpen() {
        FlatBunchRace race = new FlatBunchRace(280, 0.30, 180, 0.005);
        PacingReview review = review(race.ride(), Company.inBunches(List.of(race.bunch())));
        assertThat(decision(review).outcome()).isEqualTo(BunchReview.Outcome.OPEN);
        assertThat(start(review).severity()).isEqualTo(Severity.OBSERVATION);
        assertThat(review.verdict()).isNotEqualTo(Verdict.OVER_HARD_START);
    }

    /**
     * A climb of 8 % throughout: the air takes a few hundredths of the work, so there is no percentage. On even ground even
     * power is the fastest for the same normalized power, so letting go is faster in any case.
     */
    @Test
    void aClimbHasMinutesAndNoPercentage() {
        PacingReview review = review(climb(), Company.inBunches(List.of(new Interval(0, HARD_SECONDS))));
        assertThat(decision(review).lettingGo().airWorkShare()).isBetween(0.01, 0.10);
        assertThat(decision(review).lettingGo().breakEven()).isNull();
        assertThat(decision(review).lettingGo().noBreakEven()).contains("too little of the work");
        assertThat(decision(review).outcome()).isEqualTo(BunchReview.Outcome.LETTING_GO_WAS_FASTER);
        assertThat(start(review).cost()).isInstanceOf(Cost.Priced.class);
    }

    /** Who is taken in by a next group rides with less drag than alone, so letting go saves more. */
    @Test
    void aNextGroupCountsInThePrice() {
        List<Interval> bunch = List.of(new Interval(0, HARD_SECONDS));
        Cost.Priced alone =
                (Cost.Priced) start(review(climb(), Company.inBunches(bunch))).cost();
        Cost.Priced taken = (Cost.Priced)
                start(review(climb(), new Company(bunch, false, 1))).cost();
        assertThat(taken.highMinutes()).isGreaterThan(alone.highMinutes());
        assertThat(taken.lowMinutes()).isGreaterThanOrEqualTo(alone.lowMinutes());
        assertThat(alone.how()).isEqualTo("the bunch let go, and ridden alone");
        assertThat(taken.how()).isEqualTo("the bunch let go, and ridden with the next group as far as you say");
    }

    /**
     * By definition: what is told of a part says nothing of the rest, so the seconds outside the bunch keep their price. Each
     * two minutes more in the bunch take a fourteenth of the hard start out of it; the first five minutes, which are no decision,
     * and the last five outside go at once, a fifth each.
     */
    @Test
    void thePriceFallsLittleByLittleWithWhatWasToldOfTheStart() {
        FlatBunchRace race = new FlatBunchRace(280, 0.30, 180, 0.005);
        double whole = highMinutes(start(review(race.ride(), Company.NOT_SAID)));
        double before = whole;
        for (int told = 240; told <= race.bunch().toSecond(); told += 120) {
            double now = highMinutes(start(review(race.ride(), inBunchUntil(told))));
            assertThat(now).as("told until " + told).isLessThanOrEqualTo(before + 0.01);
            assertThat(before - now).as("told until " + told).isLessThan(0.3 * whole);
            before = now;
        }
        assertThat(whole).isGreaterThan(1);
        assertThat(before).isZero();
    }

    /** Most of the start was the bunch's: what is left has its price, but it is no headline. */
    @Test
    void theHeadlineIsOfWhatWasMostlyTheRidersOwn() {
        FlatBunchRace race = new FlatBunchRace(280, 0.30, 180, 0.005);
        PacingReview less = review(race.ride(), inBunchUntil(600));
        PacingReview more = review(race.ride(), inBunchUntil(1200));
        assertThat(less.verdict()).isEqualTo(Verdict.OVER_HARD_START);
        assertThat(more.verdict()).isNotEqualTo(Verdict.OVER_HARD_START);
        int seconds = start(more).when().seconds();
        assertThat(start(more).severity()).isNotEqualTo(Severity.OBSERVATION);
        assertThat(((Cost.Priced) start(more).cost()).how())
                .isEqualTo("the " + Math.round((seconds - 1200) / 60.0) + " of " + Math.round(seconds / 60.0)
                        + " min outside the bunch ridden again without it");
        assertThat(more.ledger().entries()).anyMatch(entry -> entry.label().equals("over-hard-start"));
    }

    /**
     * A flat road without any shelter, hard until 1670 s or so, a bunch told until 1000 s: by an own balance of forces only the
     * seconds between are ridden slower and all after them faster, and what the bunch was told for stays as it was.
     */
    @Test
    void thePriceOutsideIsThatOfTheClosedBalance() {
        FlatBunchRace race = new FlatBunchRace(280, 0, 180, 0.005);
        Finding start = start(review(race.ride(), inBunchUntil(1000)));
        PriceSteps.Replayed steps = (PriceSteps.Replayed) Objects.requireNonNull(start.priceSteps());
        assertThat(steps.stretches()).hasSize(2);
        assertThat(steps.stretches().get(0).change()).isEqualTo(StretchChange.AS_RIDDEN);
        assertThat(steps.stretches().get(0).takenOutKJ()).isZero();
        PriceSteps.Stretch eased = steps.stretches().get(1);
        PriceSteps.End end = Objects.requireNonNull(steps.equalWork());
        double easedW = 280 * Objects.requireNonNull(eased.factor());
        double easedM = eased.when().seconds() * race.bunchMps();
        double hardAfterSeconds = race.bunch().toSecond() - eased.when().toSecond();
        double aloneSeconds = race.ride().seconds() - race.bunch().toSecond();
        double saved = eased.when().seconds()
                - easedM / FlatBunchRace.speedMps(easedW, 1, 0.005)
                + faster(hardAfterSeconds, race.bunchMps(), 280 * end.share())
                + faster(aloneSeconds, race.aloneMps(), 180 * end.share());
        assertThat(end.savedSeconds()).isCloseTo(saved, offset(Math.max(5, 0.05 * Math.abs(saved))));
    }

    private static double faster(double seconds, double mps, double watts) {
        return seconds - seconds * mps / FlatBunchRace.speedMps(watts, 1, 0.005);
    }

    private static Company inBunchUntil(int second) {
        return Company.inBunches(List.of(new Interval(0, second)));
    }

    private static double highMinutes(Finding finding) {
        return finding.cost() instanceof Cost.Priced priced ? priced.highMinutes() : 0;
    }

    private static final int HARD_SECONDS = 1740;

    /** 84 kg at 8 % with rolling 0.006 ask for 70.8 N; air and bearings 2.8 N at 3.58 m/s and 1.4 N at 2.43 m/s. */
    private static Ride climb() {
        int seconds = 10_440;
        Series distance = Series.generate(
                seconds, second -> 3.58 * Math.min(second, HARD_SECONDS) + 2.43 * Math.max(0, second - HARD_SECONDS));
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.POWER, Series.generate(seconds, second -> second < HARD_SECONDS ? 270 : 180))
                .channel(Channel.SPEED, Series.generate(seconds, second -> second < HARD_SECONDS ? 3.58 : 2.43))
                .channel(Channel.DISTANCE, distance)
                .channel(Channel.ALTITUDE, Series.generate(seconds, second -> 100 + 0.08 * distance.get(second)))
                .build();
    }

    @Test
    void aBunchBeyondTheRecordingIsRefusedInOneLine() {
        Company beyond = Company.inBunches(List.of(new Interval(0, 100_000)));
        assertThatThrownBy(() -> review(PAYS.ride(), beyond))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ends after the recording");
    }

    @Test
    void whatContradictsItselfIsRefused() {
        List<Interval> bunch = List.of(new Interval(0, 60));
        assertThatThrownBy(() -> new Company(bunch, true, 0)).hasMessageContaining("alone");
        assertThatThrownBy(() -> new Company(List.of(), false, 0.5)).hasMessageContaining("next group");
        assertThatThrownBy(() -> new Company(bunch, false, 1.5)).hasMessageContaining("expected 0 to 1");
        assertThatThrownBy(() -> Company.inBunches(List.of(new Interval(0, 60), new Interval(30, 90))))
                .hasMessageContaining("overlap");
    }
}
