package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import java.util.List;
import java.util.Optional;

/**
 * The effort fell from early to late on like ground, and stayed down: the last two twelfths of moving time against the first
 * three after the opening.
 */
final class Fade implements Detector {
    private static final int PARTS = 12;
    private static final int EARLY_PARTS = 3;
    private static final int LATE_PARTS = 2;

    /** Each of the late parts must show at least this share of the limit, so that a slow last lap is no fade. */
    private static final double LASTING_SHARE = 0.5;

    private static final double MODERATE_LOSS_PERCENT = 13;
    private static final double MAJOR_LOSS_PERCENT = 20;

    @Override
    public Optional<Found> detect(Race race) {
        if (!race.isLongEnough() || !race.watts().hasAny()) {
            return Optional.empty();
        }
        List<Interval> parts = race.parts(PARTS);
        int first = firstAfterOpening(race, parts);
        GroundAndTime efforts = efforts(race, parts);
        double early = early(efforts, first);
        double late = mean(efforts, PARTS - LATE_PARTS, PARTS);
        double lossPercent = (1 - late / early) * 100;
        double limit = race.limit(JudgementLimit.FADE_PERCENT);
        if (!(lossPercent >= limit) || !lasts(efforts, early, limit)) {
            return Optional.empty();
        }
        EffortFall fall = EffortFall.of(race, efforts, parts.get(first).fromSecond());
        Interval reference = new Interval(
                parts.get(first).fromSecond(),
                parts.get(first + EARLY_PARTS - 1).toSecond());
        Interval faded = new Interval(
                Math.min(fall.onsetSecond(), parts.get(PARTS - LATE_PARTS).fromSecond()),
                race.ride().seconds());
        double earlyW = race.ground().meanW(reference);
        Evidence evidence = Evidence.none()
                .with("earlyPowerW", earlyW)
                .with("latePowerW", earlyW * late / early)
                .with("lossPercent", lossPercent)
                .with("slopePercentPerHour", fall.isTrend() ? fall.slopePerHour() / early * 100 : Double.NaN)
                .with("comparedBlocks", fall.isTrend() ? fall.blocks() : Double.NaN)
                .with("temperatureC", race.mean(Channel.TEMPERATURE, faded))
                .with("temperatureBeforeC", race.mean(Channel.TEMPERATURE, new Interval(0, faded.fromSecond())));
        return Optional.of(new Found(
                severity(lossPercent),
                faded,
                evidence,
                Caps.advise(
                        race,
                        "Hold the average power of the first half, the opening included, to %s, and eat and drink as you have practised;"
                                + " then see whether the end holds.",
                        capW(race)),
                EffortRepair.of(race, reference, faded)));
    }

    /**
     * Effort lost from early to late on like ground, percent, whether or not it is enough for a finding; below 0 where it
     * rose, {@code NaN} where there is nothing to compare.
     */
    static double lossPercent(Race race) {
        if (!race.isLongEnough() || !race.watts().hasAny()) {
            return Double.NaN;
        }
        List<Interval> parts = race.parts(PARTS);
        GroundAndTime efforts = efforts(race, parts);
        double early = early(efforts, firstAfterOpening(race, parts));
        return (1 - mean(efforts, PARTS - LATE_PARTS, PARTS) / early) * 100;
    }

    /** A hard start and threshold riding early are findings of their own, and no measure of the rest. */
    private static GroundAndTime efforts(Race race, List<Interval> parts) {
        return race.ground().without(ThresholdRidingEarly.stretches(race)).compare(parts);
    }

    private static double early(GroundAndTime efforts, int first) {
        return mean(efforts, first, Math.min(first + EARLY_PARTS, PARTS - LATE_PARTS));
    }

    @Override
    public boolean comparesParts() {
        return true;
    }

    @Override
    public boolean givesWayTo(Detector other, Found own, Found others) {
        return other instanceof EnergyCrash;
    }

    /**
     * The target, and never more than the first half was ridden at: it was too much already. Without a target the mean of the
     * whole race, which an even race of the same work has in each half; the late power of like ground says nothing of a half
     * with its climbs.
     */
    private static double capW(Race race) {
        double firstHalfW = race.normalizedPowerW(race.betweenShares(0, 0.5));
        double most =
                Double.isNaN(race.targetW()) ? race.mean(Channel.POWER, race.betweenShares(0, 1)) : race.targetW();
        return firstHalfW < most ? firstHalfW : most;
    }

    private static Severity severity(double lossPercent) {
        return lossPercent >= MAJOR_LOSS_PERCENT
                ? Severity.MAJOR
                : lossPercent >= MODERATE_LOSS_PERCENT ? Severity.MODERATE : Severity.MINOR;
    }

    private static int firstAfterOpening(Race race, List<Interval> parts) {
        int opening = race.opening().toSecond();
        int first = 0;
        while (first < PARTS - LATE_PARTS - EARLY_PARTS && parts.get(first).fromSecond() < opening) {
            first++;
        }
        return first;
    }

    /** Mean effort of some parts, each weighted by its compared seconds; {@code NaN} where none is known. */
    private static double mean(GroundAndTime efforts, int from, int to) {
        double sum = 0;
        int seconds = 0;
        for (int part = from; part < to; part++) {
            if (efforts.seconds(part) > 0) {
                sum += efforts.seconds(part) * efforts.effort(part);
                seconds += efforts.seconds(part);
            }
        }
        return sum / seconds;
    }

    private static boolean lasts(GroundAndTime efforts, double early, double limitPercent) {
        double most = early * (1 - LASTING_SHARE * limitPercent / 100);
        for (int part = PARTS - LATE_PARTS; part < PARTS; part++) {
            if (efforts.effort(part) > most) {
                return false;
            }
        }
        return true;
    }
}
