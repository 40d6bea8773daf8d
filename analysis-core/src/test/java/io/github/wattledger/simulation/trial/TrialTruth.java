package io.github.wattledger.simulation.trial;

import io.github.wattledger.ride.Interval;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a review of a race should find: the size of each mistake's effect in units of the effect from which its
 * definition speaks of it. The limits are those of {@code docs/methods.md}; where the level of a part is compared with
 * another, it is the level that the rider chose (by what the mistakes multiply the power of the place), so that a climb
 * is no hard start and a descent no fade. Nothing here was set by looking at what a review says.
 *
 * @param sizes the size of each kind, 0 for none
 * @param halvesRatio chosen level of the second half of the moving time over that of the first
 */
record TrialTruth(Map<MistakeKind, Double> sizes, double halvesRatio) {
    /** Normalized power of the opening over the target, less one, from which a start may be over-hard. */
    static final double OVER_HARD_START_OVER_TARGET = 0.10;
    /** And the level of the opening over what follows, less one. */
    static final double OVER_HARD_START_OVER_REST = 0.06;
    /** Level of the last sixth over what came before, less one. */
    static final double LATE_RESERVE = 0.065;
    /** Share of the level lost from early to late. */
    static final double FADE = 0.10;
    /** Share of the level lost in an energy crash. */
    static final double CRASH_POWER = 0.15;
    /** And share of heart rate lost at equal power. */
    static final double CRASH_HEART = 0.045;
    /** Rise of heart rate at equal power, as a fraction. */
    static final double DRIFT = 0.025;
    /** A stop that is told, seconds. */
    static final double STOP_SECONDS = 60;
    /** A stretch near threshold that is told, seconds. */
    static final double NEAR_THRESHOLD_SECONDS = 480;
    /** A tenth of 17 kJ an hour above threshold: the mean W' of published groups. */
    static final double SURGE_KJ_PER_HOUR = 1.7;

    private static final double NEAR_THRESHOLD = 0.95;
    private static final double SURGE = 1.2;
    private static final int SURGE_SECONDS = 8;
    /** Riding near threshold is told where the target is below 0.85 of it; beside that it is doubtful. */
    private static final double SURELY_LONG = 0.83;

    private static final double SURELY_SHORT = 0.87;
    private static final double UNEVEN_HALVES = 0.05;

    /** The first sixth of the moving time, at least 20 and at most 90 minutes. */
    static int openingSeconds(int movingSeconds) {
        return Math.max(1200, Math.min(5400, movingSeconds / 6));
    }

    /**
     * Normalized power over target below which a race is under-paced: 0.92, and less from six hours on down to 0.87 at
     * twelve, where coaches' own bands begin (0.58 of threshold at 12 h, common practice, no source).
     */
    static double underPacedFraction(double hours) {
        return 0.92 - 0.05 * Math.max(0, Math.min(1, (hours - 6) / 6));
    }

    /** Hours between the middle of minute 20 to half-way and the middle of the last third. */
    static double driftHours(int movingSeconds) {
        double hours = movingSeconds / 3600.0;
        return 5 * hours / 6 - (hours / 4 + 1.0 / 6);
    }

    Dose dose(MistakeKind kind) {
        return Dose.of(sizes.getOrDefault(kind, 0.0));
    }

    /** Whether no mistake is larger than negligible. */
    boolean isClean() {
        return sizes.values().stream().allMatch(size -> Dose.of(size) == Dose.NEGLIGIBLE)
                && Dose.of(unevenness()) == Dose.NEGLIGIBLE;
    }

    private double unevenness() {
        return Math.abs(halvesRatio - 1) / UNEVEN_HALVES;
    }

    /** Every verdict that a coach who knows the truth could defend. */
    Set<String> defensibleHeadlines() {
        Set<String> headlines = new TreeSet<>();
        boolean even = true;
        for (MistakeKind kind : MistakeKind.values()) {
            Dose dose = dose(kind);
            if (dose != Dose.NEGLIGIBLE) {
                headlines.add(kind.headline());
                even &= dose == Dose.DOUBTFUL || kind.leavesTheRaceEven();
            }
        }
        Dose halves = Dose.of(unevenness());
        if (halves != Dose.NEGLIGIBLE) {
            headlines.add(halvesRatio > 1 ? "NEGATIVE_SPLIT" : "UNEVEN");
            even &= halves == Dose.DOUBTFUL;
        }
        if (even) {
            headlines.add("EVEN");
        }
        return headlines;
    }

    static TrialTruth of(TrialRace race) {
        Map<MistakeKind, Double> sizes = new EnumMap<>(MistakeKind.class);
        Parts parts = new Parts(race);
        sizes.put(MistakeKind.OVER_HARD_START, parts.overHardStart());
        sizes.put(MistakeKind.LATE_RESERVE, parts.lateReserve());
        sizes.put(MistakeKind.DRIFT, parts.drift());
        sizes.put(MistakeKind.STOPPED_TIME, parts.stoppedTime());
        sizes.put(MistakeKind.SURGES, parts.surges());
        double crash = parts.crash();
        double fade = parts.fade();
        sizes.put(MistakeKind.ENERGY_CRASH, crash);
        // A crash takes the place of the fade that it is as well.
        sizes.put(MistakeKind.FADE, crash >= 0.5 ? Math.min(1, fade) : fade);
        sizes.put(MistakeKind.UNDER_PACED, parts.underPaced());
        double near = parts.thresholdRidingEarly();
        boolean within = sizes.getOrDefault(MistakeKind.OVER_HARD_START, 0.0) >= 0.5;
        // An over-hard start takes in the threshold riding that lies within it.
        sizes.put(MistakeKind.THRESHOLD_RIDING_EARLY, within ? Math.min(1, near) : near);
        return new TrialTruth(sizes, parts.level(0.5, 1) / parts.level(0, 0.5));
    }

    /** The seconds of a mistake, or the whole race where it has no place of its own. */
    static Interval seconds(TrialRace race, Mistake mistake) {
        RiddenRace ridden = race.ridden();
        int from = Math.min(ridden.seconds() - 1, ridden.secondAt(mistake.fromM()));
        return new Interval(from, Math.max(from + 1, ridden.secondAt(mistake.toM())));
    }

    /** The parts of one race. */
    private static final class Parts {
        private final TrialRace race;
        private final RiddenRace ridden;
        private final SensiblePower plan;
        private final double thresholdW;
        private final double hours;

        Parts(TrialRace race) {
            this.race = race;
            ridden = race.ridden();
            plan = race.plan();
            thresholdW = race.rider().thresholdPowerW();
            hours = ridden.movingSeconds() / 3600.0;
        }

        /** Mean level that the rider chose between two shares of the moving time. */
        double level(double fromShare, double toShare) {
            return levelBetween(fromShare * ridden.movingSeconds(), toShare * ridden.movingSeconds());
        }

        private double levelBetween(double fromMoving, double toMoving) {
            return Arrays.stream(levels(fromMoving, toMoving)).average().orElse(1);
        }

        private double medianLevel(double fromMoving, double toMoving) {
            double[] levels = levels(fromMoving, toMoving);
            Arrays.sort(levels);
            return levels[levels.length / 2];
        }

        private double[] levels(double fromMoving, double toMoving) {
            int from = (int) fromMoving;
            double[] levels = new double[Math.max(1, (int) toMoving - from)];
            for (int i = 0; i < levels.length; i++) {
                int second = Math.min(ridden.seconds() - 1, ridden.secondOfMoving(from + (double) i));
                levels[i] = plan.factorAt(ridden.distanceM(second));
            }
            return levels;
        }

        double overHardStart() {
            int opening = openingSeconds(ridden.movingSeconds());
            double overTarget = ridden.normalizedPowerW(0, ridden.secondOfMoving(opening)) / race.targetW() - 1;
            double overRest = levelBetween(0, opening) / levelBetween(opening, ridden.movingSeconds() / 2.0) - 1;
            return Math.max(
                    0, Math.min(overTarget / OVER_HARD_START_OVER_TARGET, overRest / OVER_HARD_START_OVER_REST));
        }

        double lateReserve() {
            return Math.max(0, (level(5 / 6.0, 1) / level(0, 5 / 6.0) - 1) / LATE_RESERVE);
        }

        /** The last two twelfths against the three after the opening, a hard start that lasts longer left out. */
        double fade() {
            int opening = openingSeconds(ridden.movingSeconds());
            double early = medianLevel(opening, opening + ridden.movingSeconds() / 4.0);
            return Math.max(0, (1 - level(10 / 12.0, 1) / early) / FADE);
        }

        double crash() {
            for (Mistake mistake : race.mistakes()) {
                if (mistake instanceof Mistake.Crash crash) {
                    return Math.min((1 - crash.level().factor()) / CRASH_POWER, crash.heartFraction() / CRASH_HEART);
                }
            }
            return 0;
        }

        double drift() {
            double perHour = race.rider().heart().driftPerHour();
            for (Mistake mistake : race.mistakes()) {
                if (mistake instanceof Mistake.HeartDrift drift) {
                    perHour = drift.perHour();
                }
            }
            return perHour * driftHours(ridden.movingSeconds()) / DRIFT;
        }

        double stoppedTime() {
            return race.stops().stream()
                            .mapToDouble(stop -> stop.seconds())
                            .max()
                            .orElse(0)
                    / STOP_SECONDS;
        }

        double underPaced() {
            double intended = race.cleanNormalizedPowerW();
            for (Mistake mistake : race.mistakes()) {
                if (mistake.kind() == MistakeKind.UNDER_PACED && mistake instanceof Mistake.Level level) {
                    intended *= level.factor();
                }
            }
            double reached = Math.max(intended, ridden.normalizedPowerW()) / race.targetW();
            return Math.max(0, (1 - reached) / (1 - underPacedFraction(hours)));
        }

        /**
         * Work above threshold in surges. A climb that is steady above their limit is none; where another mistake takes
         * the rider there, it is doubtful.
         */
        double surges() {
            double putIn = 0;
            double others = 0;
            int run = 0;
            boolean hasSurges = race.mistakes().stream().anyMatch(mistake -> mistake.kind() == MistakeKind.SURGES);
            for (int second = 0; second < ridden.seconds(); second++) {
                double above = ridden.powerW(second) - thresholdW;
                run = ridden.powerW(second) > SURGE * thresholdW ? run + 1 : 0;
                if (above > 0 && hasSurges && plan.isBoutAt(ridden.distanceM(second))) {
                    putIn += above;
                } else if (run >= SURGE_SECONDS && isMistakeAt(ridden.distanceM(second))) {
                    others += above;
                }
            }
            double perSize = 1000 * SURGE_KJ_PER_HOUR * hours;
            return Math.max(putIn / perSize, Math.min(1, others / perSize));
        }

        private boolean isMistakeAt(double distanceM) {
            return plan.isBoutAt(distanceM) || plan.factorAt(distanceM) > 1;
        }

        /** The longest stretch of the first third with a mean near threshold. */
        double thresholdRidingEarly() {
            double target = race.targetW() / thresholdW;
            if (target >= SURELY_SHORT) {
                return 0;
            }
            double size =
                    longestAbove(NEAR_THRESHOLD * thresholdW, ridden.secondAtShare(1 / 3.0)) / NEAR_THRESHOLD_SECONDS;
            return target > SURELY_LONG ? Math.min(1, size) : size;
        }

        /** Seconds of the longest stretch before a second whose mean power is at least so much. */
        private int longestAbove(double watts, int toSecond) {
            double[] sums = new double[toSecond + 1];
            int[] lowest = new int[toSecond + 1];
            int count = 0;
            for (int second = 0; second <= toSecond; second++) {
                sums[second] = second == 0 ? 0 : sums[second - 1] + ridden.powerW(second - 1) - watts;
                if (count == 0 || sums[second] < sums[lowest[count - 1]]) {
                    lowest[count++] = second;
                }
            }
            int longest = 0;
            for (int end = toSecond; end > 0; end--) {
                while (count > 0 && sums[end] >= sums[lowest[count - 1]]) {
                    longest = Math.max(longest, end - lowest[--count]);
                }
            }
            return longest;
        }
    }

    /** The kinds with a dose. */
    Set<MistakeKind> kinds(Dose dose) {
        Set<MistakeKind> kinds = EnumSet.noneOf(MistakeKind.class);
        for (MistakeKind kind : MistakeKind.values()) {
            if (dose(kind) == dose) {
                kinds.add(kind);
            }
        }
        return kinds;
    }
}
