package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SimulatedRider;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Draws the mistakes of a race: their times are those of the race without a mistake, their places follow from it. */
final class MistakeDraw {
    private static final double CLEAN = 0.38;
    private static final double COMBINED = 0.25;
    private static final int CANDIDATES = 40;
    private static final double CRASH_RAMP_SECONDS = 600;
    private static final int SHORTEST_CRASH_SECONDS = 1500;

    /** The mistakes that races are lost by are drawn twice as often. */
    private static final List<MistakeKind> ALONE = List.of(
            MistakeKind.OVER_HARD_START,
            MistakeKind.OVER_HARD_START,
            MistakeKind.FADE,
            MistakeKind.FADE,
            MistakeKind.ENERGY_CRASH,
            MistakeKind.ENERGY_CRASH,
            MistakeKind.DRIFT,
            MistakeKind.DRIFT,
            MistakeKind.SURGES,
            MistakeKind.THRESHOLD_RIDING_EARLY,
            MistakeKind.STOPPED_TIME,
            MistakeKind.UNDER_PACED,
            MistakeKind.LATE_RESERVE);

    private static final List<List<MistakeKind>> COMBINATIONS = List.of(
            List.of(MistakeKind.OVER_HARD_START, MistakeKind.FADE),
            List.of(MistakeKind.OVER_HARD_START, MistakeKind.ENERGY_CRASH),
            List.of(MistakeKind.OVER_HARD_START, MistakeKind.SURGES),
            List.of(MistakeKind.OVER_HARD_START, MistakeKind.DRIFT, MistakeKind.STOPPED_TIME),
            List.of(MistakeKind.THRESHOLD_RIDING_EARLY, MistakeKind.FADE),
            List.of(MistakeKind.SURGES, MistakeKind.STOPPED_TIME),
            List.of(MistakeKind.SURGES, MistakeKind.FADE),
            List.of(MistakeKind.STOPPED_TIME, MistakeKind.LATE_RESERVE),
            List.of(MistakeKind.THRESHOLD_RIDING_EARLY, MistakeKind.DRIFT));

    private final Draw draw;
    private final RiddenRace clean;
    private final double thresholdW;
    private final double mostW;
    private final int movingSeconds;
    private final double hours;
    private final double beyondTheLineM;

    MistakeDraw(Draw draw, SimulatedRider rider, RiddenRace clean, double mostW) {
        this.draw = draw;
        this.clean = clean;
        this.mostW = mostW;
        thresholdW = rider.thresholdPowerW();
        movingSeconds = clean.movingSeconds();
        hours = movingSeconds / 3600.0;
        beyondTheLineM = clean.ride().scenario().course().lengthM() + 1000;
    }

    List<Mistake> mistakes() {
        if (draw.with(CLEAN)) {
            return List.of();
        }
        List<MistakeKind> kinds = draw.with(COMBINED) ? draw.oneOf(COMBINATIONS) : List.of(draw.oneOf(ALONE));
        List<Mistake> mistakes = new ArrayList<>();
        for (MistakeKind kind : kinds) {
            if (kind == MistakeKind.THRESHOLD_RIDING_EARLY && mostW > thresholdW) {
                // So short a race may be ridden near threshold from the start.
                kind = MistakeKind.OVER_HARD_START;
            }
            mistakes.add(mistake(kind, size()));
        }
        return mistakes;
    }

    /** The size of the effect in units of that from which its definition speaks of it. */
    private double size() {
        double where = draw.between(0, 1);
        if (where < 0.15) {
            return draw.between(0.1, 0.4);
        }
        return where < 0.27 ? draw.between(0.6, 1.15) : draw.betweenByRatio(1.35, 3);
    }

    private Mistake mistake(MistakeKind kind, double size) {
        return switch (kind) {
            case OVER_HARD_START -> overHardStart(size);
            case THRESHOLD_RIDING_EARLY -> thresholdRidingEarly(size);
            case SURGES -> surges(size > 1.25 ? draw.betweenByRatio(1.5, 14) : size);
            case FADE -> fade(size);
            case ENERGY_CRASH -> crash(Math.min(2.7, size));
            case DRIFT ->
                new Mistake.HeartDrift(TrialTruth.DRIFT * size / TrialTruth.driftHours(movingSeconds), beyondTheLineM);
            case STOPPED_TIME -> standing(size);
            case UNDER_PACED ->
                level(kind, 0, 1, 1 - (1 - TrialTruth.underPacedFraction(hours)) * Math.min(2.6, size), 0);
            case LATE_RESERVE ->
                level(kind, draw.between(0.81, 0.85), 1, possible(1 + TrialTruth.LATE_RESERVE * size), 0.01);
        };
    }

    /** Nobody rides far above threshold for long, whatever the dose asks for. */
    private double possible(double factor) {
        return Math.min(factor, 1.12 * thresholdW / TrialRace.targetW(thresholdW, movingSeconds));
    }

    private Mistake level(MistakeKind kind, double fromShare, double toShare, double factor, double rampShare) {
        double fromM = fromShare <= 0 ? 0 : clean.distanceAtShare(fromShare);
        double toM = toShare >= 1 ? beyondTheLineM : clean.distanceAtShare(toShare);
        double rampToM = clean.distanceAtShare(Math.min(1, fromShare + rampShare));
        return new Mistake.Level(kind, fromM, toM, factor, rampShare <= 0 ? 0 : rampToM - fromM);
    }

    private Mistake overHardStart(double size) {
        double share = (double) TrialTruth.openingSeconds(movingSeconds) / movingSeconds;
        double excess = TrialTruth.OVER_HARD_START_OVER_TARGET * size;
        return level(
                MistakeKind.OVER_HARD_START,
                0,
                Math.min(0.45, share * draw.between(0.8, 1.3)),
                possible(1 + excess),
                0);
    }

    private Mistake fade(double size) {
        double onset = draw.between(0.42, 0.72);
        double ramp = draw.between(0.03, 0.82 - onset);
        return level(MistakeKind.FADE, onset, 1, 1 - TrialTruth.FADE * size, ramp);
    }

    private Mistake crash(double size) {
        double latest = 1 - SHORTEST_CRASH_SECONDS / (double) movingSeconds;
        double onset = Math.min(latest, draw.between(0.55, 0.88));
        Mistake.Level level = (Mistake.Level) level(
                MistakeKind.ENERGY_CRASH,
                onset,
                1,
                1 - TrialTruth.CRASH_POWER * size,
                CRASH_RAMP_SECONDS / movingSeconds);
        double heart = size >= 1.25 ? draw.between(1.3, 2.4) : size;
        return new Mistake.Crash(level, TrialTruth.CRASH_HEART * heart);
    }

    private Mistake standing(double size) {
        int count = size > 1.25 ? 1 + draw.chance().nextInt(3) : 1;
        List<Scenario.Stop> stops = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double atM = clean.distanceAtShare((i + draw.between(0.4, 1.2)) / (count + 1));
            double seconds = TrialTruth.STOP_SECONDS * size * (size > 1.25 ? draw.betweenByRatio(1, 2.5) : 1);
            stops.add(new Scenario.Stop(atM, (int) seconds, draw.with(0.3)));
        }
        return new Mistake.Standing(stops);
    }

    private Mistake thresholdRidingEarly(double size) {
        double seconds = TrialTruth.NEAR_THRESHOLD_SECONDS * size;
        int from = TrialTruth.openingSeconds(movingSeconds);
        int to = (int) Math.max(from + 60, movingSeconds / 3.0 - seconds);
        double watts = thresholdW * draw.between(0.99, 1.06);
        Mistake.Stretch best = null;
        int fewest = Integer.MAX_VALUE;
        for (int i = 0; i < CANDIDATES; i++) {
            double at = draw.between(from, to);
            int coasted = coasted(at, at + seconds);
            if (coasted < fewest) {
                fewest = coasted;
                best = new Mistake.Stretch(clean.distanceAtMoving(at), afterAtPowerM(at, seconds, watts));
            }
        }
        return new Mistake.Bouts(MistakeKind.THRESHOLD_RIDING_EARLY, best == null ? List.of() : List.of(best), watts);
    }

    /** Where a stretch ends that is ridden faster than the clean race: by the cube root of power, as against the air. */
    private double afterAtPowerM(double atMoving, double seconds, double watts) {
        double cleanSeconds = seconds * Math.cbrt(watts / clean.normalizedPowerW());
        return clean.distanceAtMoving(atMoving + cleanSeconds);
    }

    private int coasted(double fromMoving, double toMoving) {
        int coasted = 0;
        for (int second = clean.secondOfMoving(fromMoving); second < clean.secondOfMoving(toMoving); second++) {
            coasted += clean.powerW(second) == 0 ? 1 : 0;
        }
        return coasted;
    }

    private Mistake surges(double size) {
        double seconds = draw.between(11, 25);
        double watts = thresholdW * draw.between(1.45, 1.9);
        double eachKJ = (watts - thresholdW) * seconds / 1000;
        int count = (int) Math.max(1, Math.round(size * TrialTruth.SURGE_KJ_PER_HOUR * hours / eachKJ));
        List<Mistake.Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double slot = (double) movingSeconds / count;
            for (int candidate = 0; candidate < CANDIDATES; candidate++) {
                double at = slot * (i + draw.between(0.1, 0.8));
                if (at > 60 && coasted(at - 5, at + seconds + 10) == 0) {
                    stretches.add(new Mistake.Stretch(clean.distanceAtMoving(at), afterAtPowerM(at, seconds, watts)));
                    break;
                }
            }
        }
        stretches.sort(Comparator.comparingDouble(Mistake.Stretch::fromM));
        return new Mistake.Bouts(MistakeKind.SURGES, stretches, watts);
    }
}
