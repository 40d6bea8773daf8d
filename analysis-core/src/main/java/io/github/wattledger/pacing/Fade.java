package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Median;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Power fell from early to late on comparable ground: the second sixth of moving time against the last, grade band by
 * grade band, and a falling robust slope over the pedalled ten-minute blocks after the opening.
 */
final class Fade implements Detector {
    private static final double SIXTH = 1 / 6.0;
    private static final int BLOCK_SECONDS = 600;
    private static final int LEAST_BLOCKS = 4;

    /** Seconds that a band must have in both sixths to be compared, and all bands together. */
    private static final int LEAST_BAND_SECONDS = 60;

    private static final int LEAST_COMPARED_SECONDS = 300;

    private static final double MODERATE_LOSS_PERCENT = 13;
    private static final double MAJOR_LOSS_PERCENT = 20;

    @Override
    public Optional<Finding> detect(Race race) {
        if (!race.isLongEnough() || !race.watts().hasAny()) {
            return Optional.empty();
        }
        GradeBands bands = race.gradeBands();
        List<Block> blocks = blocks(race, bands);
        Comparison sixths =
                compare(race, bands, race.betweenShares(SIXTH, 2 * SIXTH), race.betweenShares(5 * SIXTH, 1));
        if (blocks.size() < LEAST_BLOCKS || sixths.seconds < LEAST_COMPARED_SECONDS) {
            return Optional.empty();
        }
        double slopePercentPerHour = slope(blocks) * 100;
        double lossPercent = (1 - sixths.lateW / sixths.earlyW) * 100;
        if (!(lossPercent >= race.limit(JudgementLimit.FADE_PERCENT) && slopePercentPerHour < 0)) {
            return Optional.empty();
        }
        Severity severity = lossPercent >= MAJOR_LOSS_PERCENT
                ? Severity.MAJOR
                : lossPercent >= MODERATE_LOSS_PERCENT ? Severity.MODERATE : Severity.MINOR;
        Evidence evidence = Evidence.none()
                .with("earlyPowerW", sixths.earlyW)
                .with("latePowerW", sixths.lateW)
                .with("lossPercent", lossPercent)
                .with("slopePercentPerHour", slopePercentPerHour)
                .with("comparedBlocks", blocks.size());
        return Optional.of(race.finding(
                FindingKind.FADE,
                severity,
                new Interval(onset(blocks, lossPercent), race.ride().seconds()),
                evidence,
                race.notPriced(),
                Caps.advise(
                        race,
                        "Ride the first half to %s at most, and eat and drink by the clock; then see whether the end holds.",
                        Double.isNaN(race.targetW()) ? sixths.lateW : race.targetW())));
    }

    private static boolean isPedalled(Race race, GradeBands bands, int second) {
        return race.ride().state(second) == SecondState.RIDING
                && race.watts().get(second) >= Ride.PEDALLING_W
                && bands.of(second) != GradeBands.UNKNOWN;
    }

    /**
     * Power of two stretches on comparable ground.
     *
     * @param earlyW mean power of the earlier one, watts
     * @param lateW mean power of the later one, watts
     * @param seconds how many seconds of each could be compared
     */
    record Comparison(double earlyW, double lateW, int seconds) {}

    /** Means of two stretches over the bands that both have, each band weighted by the seconds that both have of it. */
    private static Comparison compare(Race race, GradeBands bands, Interval early, Interval late) {
        double[] earlySum = new double[GradeBands.count()];
        double[] lateSum = new double[GradeBands.count()];
        int[] earlyCount = new int[GradeBands.count()];
        int[] lateCount = new int[GradeBands.count()];
        sumByBand(race, bands, early, earlySum, earlyCount);
        sumByBand(race, bands, late, lateSum, lateCount);
        double earlyW = 0;
        double lateW = 0;
        int seconds = 0;
        for (int band = 0; band < GradeBands.count(); band++) {
            int shared = Math.min(earlyCount[band], lateCount[band]);
            if (shared >= LEAST_BAND_SECONDS) {
                earlyW += shared * earlySum[band] / earlyCount[band];
                lateW += shared * lateSum[band] / lateCount[band];
                seconds += shared;
            }
        }
        return seconds == 0
                ? new Comparison(Double.NaN, Double.NaN, 0)
                : new Comparison(earlyW / seconds, lateW / seconds, seconds);
    }

    /** A later stretch against an earlier one on comparable ground; empty when there is too little of it. */
    static Optional<Comparison> comparison(Race race, Interval early, Interval late) {
        Comparison comparison = compare(race, race.gradeBands(), early, late);
        return comparison.seconds < LEAST_COMPARED_SECONDS ? Optional.empty() : Optional.of(comparison);
    }

    /** Power of a later stretch over that of an earlier one on comparable ground; {@code NaN} when there is too little. */
    static double keptShare(Race race, Interval early, Interval late) {
        return comparison(race, early, late)
                .map(like -> like.lateW() / like.earlyW())
                .orElse(Double.NaN);
    }

    private static void sumByBand(Race race, GradeBands bands, Interval stretch, double[] sum, int[] count) {
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            addTo(race, bands, second, sum, count);
        }
    }

    private static void addTo(Race race, GradeBands bands, int second, double[] sum, int[] count) {
        if (isPedalled(race, bands, second)) {
            sum[bands.of(second)] += race.watts().get(second);
            count[bands.of(second)]++;
        }
    }

    /** A block's place, and its power relative to what the race shows on the same grades (1 is as usual). */
    private record Block(int firstSecond, double middleHours, double relativePower) {}

    /** Ten-minute blocks of pedalled seconds after the opening. */
    private static List<Block> blocks(Race race, GradeBands bands) {
        Interval after = race.after(race.opening());
        double[] sum = new double[GradeBands.count()];
        int[] count = new int[GradeBands.count()];
        sumByBand(race, bands, after, sum, count);
        List<Block> blocks = new ArrayList<>();
        double relative = 0;
        int seconds = 0;
        int first = after.fromSecond();
        for (int second = after.fromSecond(); second < after.toSecond(); second++) {
            if (!isPedalled(race, bands, second)) {
                continue;
            }
            int band = bands.of(second);
            relative += race.watts().get(second) / (sum[band] / count[band]);
            seconds++;
            if (seconds == BLOCK_SECONDS) {
                blocks.add(new Block(first, (first + second) / 2.0 / 3600, relative / seconds));
                relative = 0;
                seconds = 0;
                first = second + 1;
            }
        }
        return blocks;
    }

    /** Theil-Sen: the median of the slopes of all pairs, which a few odd blocks cannot turn (Sen 1968). */
    private static double slope(List<Block> blocks) {
        double[] slopes = new double[blocks.size() * (blocks.size() - 1) / 2];
        int k = 0;
        for (int i = 0; i < blocks.size(); i++) {
            for (int j = i + 1; j < blocks.size(); j++) {
                slopes[k++] = (blocks.get(j).relativePower - blocks.get(i).relativePower)
                        / (blocks.get(j).middleHours - blocks.get(i).middleHours);
            }
        }
        return Median.of(slopes);
    }

    /** The first second of the first block from which on the median block has lost half of the loss. */
    private static int onset(List<Block> blocks, double lossPercent) {
        double lowered = blocks.get(0).relativePower * (1 - lossPercent / 200);
        double[] powers = new double[blocks.size()];
        Arrays.setAll(powers, block -> blocks.get(block).relativePower);
        for (int from = 0; from < powers.length; from++) {
            if (powers[from] <= lowered && Median.of(Arrays.copyOfRange(powers, from, powers.length)) <= lowered) {
                return blocks.get(from).firstSecond;
            }
        }
        return blocks.get(blocks.size() - 1).firstSecond;
    }
}
