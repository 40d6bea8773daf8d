package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Median;
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

    private static final double MODERATE_LOSS_PERCENT = 13;
    private static final double MAJOR_LOSS_PERCENT = 20;

    @Override
    public Optional<Found> detect(Race race) {
        if (!race.isLongEnough() || !race.watts().hasAny()) {
            return Optional.empty();
        }
        List<Block> blocks = blocks(race);
        LikeGround sixths = LikeGround.of(race, race.betweenShares(SIXTH, 2 * SIXTH), race.betweenShares(5 * SIXTH, 1))
                .orElse(null);
        if (blocks.size() < LEAST_BLOCKS || sixths == null) {
            return Optional.empty();
        }
        double slopePercentPerHour = slope(blocks) * 100;
        double lossPercent = (1 - sixths.keptShare()) * 100;
        if (!(lossPercent >= race.limit(JudgementLimit.FADE_PERCENT) && slopePercentPerHour < 0)) {
            return Optional.empty();
        }
        Severity severity = lossPercent >= MAJOR_LOSS_PERCENT
                ? Severity.MAJOR
                : lossPercent >= MODERATE_LOSS_PERCENT ? Severity.MODERATE : Severity.MINOR;
        Evidence evidence = Evidence.none()
                .with("earlyPowerW", sixths.earlyW())
                .with("latePowerW", sixths.lateW())
                .with("lossPercent", lossPercent)
                .with("slopePercentPerHour", slopePercentPerHour)
                .with("comparedBlocks", blocks.size());
        Interval faded = new Interval(onset(blocks, lossPercent), race.ride().seconds());
        return Optional.of(new Found(
                severity,
                faded,
                evidence,
                Caps.advise(
                        race,
                        "Ride the first half to %s at most, and eat and drink by the clock; then see whether the end holds.",
                        Double.isNaN(race.targetW()) ? sixths.lateW() : race.targetW()),
                LikeGround.repair(race, faded)));
    }

    @Override
    public boolean isOfRacesOnly() {
        return true;
    }

    @Override
    public boolean givesWayTo(Detector other, Found own, Found others) {
        return other instanceof EnergyCrash;
    }

    /**
     * Ten minutes of pedalling.
     *
     * @param firstSecond where it begins
     * @param middleHours its middle, hours from the start of the race
     * @param relativePower its power over what the race shows on the same grades; 1 is as usual
     */
    private record Block(int firstSecond, double middleHours, double relativePower) {}

    /** The blocks of pedalled seconds after the opening. */
    private static List<Block> blocks(Race race) {
        Interval after = race.after(race.opening());
        LikeGround.Bands usual = LikeGround.Bands.of(race, after);
        List<Block> blocks = new ArrayList<>();
        double relative = 0;
        int seconds = 0;
        int first = after.fromSecond();
        for (int second = after.fromSecond(); second < after.toSecond(); second++) {
            if (!LikeGround.isCompared(race, second)) {
                continue;
            }
            relative += race.watts().get(second) / usual.meanW(race.gradeBands().of(second));
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
