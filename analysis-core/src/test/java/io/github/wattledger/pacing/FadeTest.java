package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.ability;
import static io.github.wattledger.pacing.RaceByHand.changes;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.onRoad;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The effort fell from early to late on like ground, on both sides of each limit of {@code docs/methods.md}. */
class FadeTest {
    /** Six hours, each at its power: the reference is from 1:00 h to 2:30 h, the end the last hour. */
    private static double[] hours(double... hoursW) {
        double[] watts = new double[hoursW.length * HOUR];
        Arrays.setAll(watts, second -> hoursW[second / HOUR]);
        return watts;
    }

    private static Race fading(double lastW) {
        return race(hours(200, 200, 200, 190, 185, lastW));
    }

    /** How strong it was counts where the race could not be ridden again. */
    @ParameterizedTest
    @CsvSource({"179.8, MINOR", "174.2, MINOR", "173.8, MODERATE", "160.2, MODERATE", "159.8, MAJOR"})
    void isGradedByTheLoss(double lastW, Severity severity) {
        assertThat(found(new Fade(), fading(lastW)).severity()).isEqualTo(severity);
    }

    @Test
    void isNotReportedUnderTenPercent() {
        assertThat(new Fade().detect(fading(180.2))).isEmpty();
        assertThat(new Fade().detect(fading(179.8))).isPresent();
    }

    /** 15 % less than before, on one ground. */
    @Test
    void carriesItsNumbers() {
        Found fade = found(new Fade(), fading(170));
        assertThat(evidence(fade, "lossPercent")).isCloseTo(15, within(1e-6));
        assertThat(evidence(fade, "earlyPowerW")).isCloseTo(200, within(1e-9));
        assertThat(evidence(fade, "latePowerW")).isCloseTo(170, within(1e-6));
        // Five hours after the opening are thirty blocks of ten minutes.
        assertThat(evidence(fade, "comparedBlocks")).isEqualTo(30);
    }

    /** The last two twelfths are 15 % down together, but the very last one only 4 %: it did not last. At 6 % it did. */
    @ParameterizedTest
    @CsvSource({"148, 192, false", "148, 188, true"})
    void lastsToTheEnd(double lastButOneW, double lastW, boolean isFade) {
        double[] watts = hours(200, 200, 200, 200, 200, lastButOneW);
        Arrays.fill(watts, 19_800, 21_600, lastW);
        assertThat(new Fade().detect(race(watts)).isPresent()).isEqualTo(isFade);
    }

    /** 200 W for four hours, then 20 W an hour less: the last hour is at 170 W on average, 15 % down. */
    @Test
    void beginsWhereTheRampBegins() {
        double[] watts = Series.generate(6 * HOUR, second -> 200 - 20 * Math.max(0, second / 3600.0 - 4))
                .toArray();
        Found fade = found(new Fade(), race(watts));
        assertThat(evidence(fade, "lossPercent")).isCloseTo(15, within(0.1));
        assertThat((double) fade.when().fromSecond()).isCloseTo(4 * HOUR, within(600.0));
        assertThat(fade.when().toSecond()).isEqualTo(6 * HOUR);
        // 20 W an hour of the 200 W before.
        assertThat(evidence(fade, "slopePercentPerHour")).isCloseTo(-10, within(0.5));
        // What is repaired is what fell: the last twelfth by 17.5 %, and nothing above what was ridden before.
        List<Repair.Stretch> changes = changes(fade);
        Repair.Stretch last = changes.get(changes.size() - 1);
        assertThat(last.change()).isEqualTo(StretchChange.TO_EARLIER_POWER);
        assertThat(last.toW() / last.fromW()).isCloseTo(200 / 165.0, within(0.01));
        assertThat(last.when().toSecond()).isEqualTo(6 * HOUR);
        assertThat(changes.get(0).when().fromSecond()).isEqualTo(fade.when().fromSecond());
    }

    /**
     * 190 W throughout, but for 50 minutes early on at 245 W, near threshold: these are left out of the reference. At 235 W
     * they are no threshold riding, and (3000 s x 235 + 2400 s x 190) / 5400 s = 215 W are 11.6 % above the end.
     */
    @Test
    void isNotMeasuredAgainstThresholdRiding() {
        double[] watts = steady(6 * HOUR, 190);
        Arrays.fill(watts, 3600, 6600, 245);
        assertThat(new Fade().detect(race(watts))).isEmpty();
        Arrays.fill(watts, 3600, 6600, 235);
        assertThat(evidence(found(new Fade(), race(watts)), "lossPercent")).isCloseTo(11.6, within(0.1));
    }

    /** Ridden at 150 W and then less, a target of more is no advice: the first half was too much already. */
    @Test
    void advisesNoMoreThanWasRidden() {
        double[] watts = hours(150, 150, 150, 150, 120, 120);
        assertThat(found(new Fade(), race(Ride.ofWatts(watts), ability(190.0)))
                        .advice()
                        .capW())
                .isEqualTo(150);
        assertThat(found(new Fade(), race(Ride.ofWatts(watts), ability(130.0)))
                        .advice()
                        .capW())
                .isEqualTo(130);
    }

    /** Forty minutes after an opening of twenty are four blocks of ten minutes, which are no trend. */
    @Test
    void fewBlocksAreNoTrend() {
        double[] watts = steady(HOUR, 200);
        Arrays.fill(watts, 50 * 60, HOUR, 150);
        Found fade = found(new Fade(), race(watts));
        assertThat(fade.evidence().get("lossPercent")).isPresent();
        assertThat(fade.evidence().get("slopePercentPerHour")).isEmpty();
        assertThat(fade.evidence().get("comparedBlocks")).isEmpty();
    }

    /** A hard first hour is the opening, and no part of the reference. */
    @Test
    void isNotMeasuredAgainstTheOpening() {
        assertThat(new Fade().detect(race(hours(240, 190, 190, 190, 190, 190)))).isEmpty();
    }

    /** Ten minutes up and ten level in turn for five hours; 230 W up 5.5 %, 180 W on the level. */
    private static double grade(int second, double lastHour) {
        return second >= 5 * HOUR ? lastHour : second / 600 % 2 == 0 ? 0.055 : 0;
    }

    private static Race hilly(double lastHourGrade, double lastHourW) {
        return race(onRoad(
                6 * HOUR,
                second -> second >= 5 * HOUR ? lastHourW : grade(second, 0) > 0 ? 230 : 180,
                second -> grade(second, lastHourGrade)));
    }

    /** The plain power of the last hour is 12 % down on 205 W, but it is as hard as the level was before. */
    @Test
    void aLevelWayHomeIsNone() {
        assertThat(new Fade().detect(hilly(0, 180))).isEmpty();
    }

    @Test
    void aClimbAtTheEndIsNone() {
        assertThat(new Fade().detect(hilly(0.055, 230))).isEmpty();
    }

    /** 195.5 W up the last climb is only 5 % down on 205 W, but 15 % on the climbs before. */
    @Test
    void aClimbAtTheEndHidesNone() {
        Found fade = found(new Fade(), hilly(0.055, 0.85 * 230));
        assertThat(evidence(fade, "lossPercent")).isCloseTo(15, within(0.5));
    }

    @Test
    void advisesTheTargetOrTheMeanOfTheWhole() {
        assertThat(found(new Fade(), fading(160)).advice().capW()).isEqualTo(200.0);
        Race withoutTarget = race(fading(160).ride(), ability(null));
        // By hand: (3 x 200 + 190 + 185 + 160) / 6 = 189.2 W, which an even race of the same work has throughout.
        assertThat(found(new Fade(), withoutTarget).advice().capW()).isEqualTo(189.0);
    }
}
