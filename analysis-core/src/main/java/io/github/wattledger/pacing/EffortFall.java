package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * How the effort fell: a broken line through ten-minute blocks of effort, level up to its knee and straight from there on, by
 * least squares. The knee is where the fall begins.
 *
 * @param onsetSecond the first second of the fall
 * @param slopePerHour how the effort changes in an hour after it, 1 being the mean effort of the race; negative in a fall
 * @param blocks how many blocks the line goes through
 */
record EffortFall(int onsetSecond, double slopePerHour, int blocks) {
    private static final int BLOCK_SECONDS = 600;

    /** A line through fewer blocks than this is no trend. */
    private static final int TREND_BLOCKS = 6;

    private static final double SECONDS_PER_HOUR = 3600;

    /**
     * Ten minutes of comparable pedalling.
     *
     * @param firstSecond where it begins
     * @param middleHours its middle, hours from the start of the race
     * @param effort its power over what its ground asks for
     */
    private record Block(int firstSecond, double middleHours, double effort) {}

    /** Whether there are blocks enough to speak of a trend. */
    boolean isTrend() {
        return blocks >= TREND_BLOCKS;
    }

    /**
     * Fits the broken line from a second on.
     *
     * @param efforts the parts of the race, whose ground the blocks are measured by
     */
    static EffortFall of(Race race, GroundAndTime efforts, int fromSecond) {
        List<Block> blocks = blocks(race, efforts, fromSecond);
        EffortFall best = new EffortFall(fromSecond, 0, blocks.size());
        double least = Double.POSITIVE_INFINITY;
        for (int knee = 0; knee + 1 < blocks.size(); knee++) {
            Line line = Line.of(blocks, blocks.get(knee).firstSecond / SECONDS_PER_HOUR);
            if (line.slope < 0 && line.squaredErrors < least) {
                least = line.squaredErrors;
                best = new EffortFall(blocks.get(knee).firstSecond, line.slope, blocks.size());
            }
        }
        return best;
    }

    private static List<Block> blocks(Race race, GroundAndTime efforts, int fromSecond) {
        List<Block> blocks = new ArrayList<>();
        ComparableGround ground = race.ground();
        double joules = 0;
        double asked = 0;
        int seconds = 0;
        int first = fromSecond;
        for (int second = fromSecond; second < race.ride().seconds(); second++) {
            if (!ground.isCompared(second)) {
                continue;
            }
            double groundW = efforts.groundW(ground.ground(second));
            if (Double.isNaN(groundW)) {
                continue;
            }
            joules += race.watts().get(second);
            asked += groundW;
            seconds++;
            if (seconds == BLOCK_SECONDS) {
                Interval block = new Interval(first, second + 1);
                blocks.add(new Block(
                        first, (block.fromSecond() + block.toSecond()) / 2.0 / SECONDS_PER_HOUR, joules / asked));
                joules = 0;
                asked = 0;
                seconds = 0;
                first = second + 1;
            }
        }
        return blocks;
    }

    /** The least-squares line that is level before its knee. */
    private record Line(double slope, double squaredErrors) {
        static Line of(List<Block> blocks, double kneeHours) {
            double n = blocks.size();
            double sumX = 0;
            double sumY = 0;
            for (Block block : blocks) {
                sumX += after(block, kneeHours);
                sumY += block.effort;
            }
            double xx = 0;
            double xy = 0;
            double yy = 0;
            for (Block block : blocks) {
                double x = after(block, kneeHours) - sumX / n;
                double y = block.effort - sumY / n;
                xx += x * x;
                xy += x * y;
                yy += y * y;
            }
            return xx == 0 ? new Line(0, yy) : new Line(xy / xx, yy - xy * xy / xx);
        }

        private static double after(Block block, double kneeHours) {
            return Math.max(0, block.middleHours - kneeHours);
        }
    }
}
