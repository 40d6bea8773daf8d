package io.github.wattledger.pacing;

import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.road.Replay;
import io.github.wattledger.road.RigChoice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.jspecify.annotations.Nullable;

/**
 * What the mistakes of a race cost, by riding it again without them: what was too much is taken out of the flagged stretch
 * and given back over the later pedalled stretches in proportion to power, at the low end until the total work is the
 * same, at the high end until normalized power is.
 */
final class Pricing {
    private static final double SECONDS_PER_MINUTE = 60;
    private static final double LEAST_SHARE = 0.2;
    private static final double MOST_SHARE = 4;
    private static final int MOST_EVALUATIONS = 200;
    private static final int SOLVER_ORDER = 5;

    /** How close a quantity has to come to the recorded one, as a fraction of it: a tenth of a second in a day. */
    private static final double TOLERANCE = 1e-6;

    /** The share is sought near 1 first: mending moves little, and every try is a whole replay. */
    private static final double NEARBY = 1.04;

    /** Below this a gain is no gain, seconds: an hour's replay is not finer. */
    private static final double NOTICEABLE_SECONDS = 1;

    private static final String HOW = "same work to same normalized power";
    private static final String NOT_FASTER = "it would not have been faster";
    private static final String NOT_FASTER_AT_EQUAL_WORK =
            "for the same work it would not have been faster; up to this for the same normalized power";

    /** Factors first, the cap on surges last, so that it is not lowered once more. */
    private static final List<FindingKind> MENDING_ORDER = List.of(
            FindingKind.FADE,
            FindingKind.ENERGY_CRASH,
            FindingKind.LATE_RESERVE,
            FindingKind.OVER_HARD_START,
            FindingKind.THRESHOLD_RIDING_EARLY,
            FindingKind.SURGES);

    private final Race race;
    private final Replay replay;
    private final int forSeconds;
    private final MendedRace asRidden;
    private final MendedRace.State recorded;

    private Pricing(Race race, Replay replay, int forSeconds) {
        this.race = race;
        this.replay = replay;
        this.forSeconds = forSeconds;
        this.asRidden = new MendedRace(race, replay, new Mend(race, replay));
        this.recorded = asRidden.unreplayed();
    }

    /** The findings with their prices, and the lines of the ledger. */
    record Priced(List<Finding> findings, List<TimeLedger.Entry> entries, List<String> notes) {}

    /**
     * Prices the findings of a race.
     *
     * @param forSeconds the duration for which the race's target holds, seconds
     * @param targetSource the target's source in words, for the line against the ability
     */
    static Priced price(Race race, List<Finding> findings, RigChoice rig, int forSeconds, String targetSource) {
        Replay.Attempt attempt = Replay.of(race.ride(), rig.rig());
        Replay replay = attempt.replay();
        List<Finding> priced = new ArrayList<>();
        if (replay == null) {
            for (Finding finding : findings) {
                priced.add(
                        finding.cost() instanceof Cost.Priced
                                ? finding
                                : finding.withCost(new Cost.NotPriced(String.valueOf(attempt.refusal()))));
            }
            return new Priced(priced, entriesOf(priced), List.of());
        }
        Pricing pricing = new Pricing(race, replay, forSeconds);
        for (Finding finding : findings) {
            priced.add(pricing.priced(finding));
        }
        List<TimeLedger.Entry> entries = entriesOf(priced);
        List<String> notes = new ArrayList<>();
        if (entries.size() > 1) {
            entries.add(pricing.together(priced));
            notes.add("The parts need not add up to the line for all: mending one changes what the others cost.");
        }
        TimeLedger.Entry ability = pricing.againstAbility(targetSource);
        if (ability != null) {
            entries.add(ability);
        }
        if (!entries.isEmpty()) {
            notes.add(rig.words());
        }
        return new Priced(priced, entries, notes);
    }

    private static List<TimeLedger.Entry> entriesOf(List<Finding> findings) {
        List<TimeLedger.Entry> entries = new ArrayList<>();
        for (Finding finding : findings) {
            if (finding.cost() instanceof Cost.Priced price) {
                entries.add(new TimeLedger.Entry(finding.kind().id(), price.lowMinutes(), price.highMinutes()));
            }
        }
        return entries;
    }

    private Finding priced(Finding finding) {
        return switch (finding.kind()) {
            case STOPPED_TIME -> finding;
            case DRIFT -> finding.withCost(new Cost.NotPriced("a heart that beats faster costs no time by itself"));
            case SPUN_OUT, OVER_GEARED -> finding.withCost(new Cost.NotPriced("gears are not replayed"));
            case UNDER_PACED -> finding.withCost(new Cost.NotPriced("see the line against your ability"));
            case OVER_HARD_START, THRESHOLD_RIDING_EARLY, SURGES, FADE, ENERGY_CRASH, LATE_RESERVE -> {
                Mend mend = new Mend(race, replay);
                add(mend, finding);
                yield finding.withCost(cost(mend));
            }
        };
    }

    /** Adds the mending of one finding. */
    private void add(Mend mend, Finding finding) {
        Interval when = finding.when().shifted(-race.offsetSeconds());
        double target = race.targetW();
        switch (finding.kind()) {
            case OVER_HARD_START -> {
                mend.scale(when, target / race.normalizedPowerW(when));
                mend.giveBackFrom(when.toSecond());
            }
            case THRESHOLD_RIDING_EARLY -> {
                for (Interval stretch : ThresholdRidingEarly.stretches(race)) {
                    mend.scale(stretch, Math.min(1, target / race.normalizedPowerW(stretch)));
                }
                mend.giveBackFrom(when.fromSecond());
            }
            case SURGES -> {
                for (Interval surge : Surges.surges(race)) {
                    mend.cap(surge, target);
                }
                mend.giveBackFrom(when.fromSecond());
            }
            case FADE, ENERGY_CRASH -> {
                double kept = Fade.keptShare(race, new Interval(0, when.fromSecond()), when);
                if (!Double.isNaN(kept)) {
                    mend.level(when, 1 / kept);
                }
            }
            case LATE_RESERVE -> {
                double over = race.normalizedPowerW(when)
                        / race.normalizedPowerW(new Interval(0, Math.max(1, when.fromSecond())));
                if (!Double.isNaN(over)) {
                    mend.level(when, 1 / over);
                }
            }
            default -> throw new IllegalArgumentException(finding.kind() + " is not mended by another power");
        }
    }

    /** All mistakes mended at once, with the stops beside them, which no other power shortens. */
    private TimeLedger.Entry together(List<Finding> findings) {
        Mend mend = new Mend(race, replay);
        double stops = 0;
        boolean any = false;
        List<Finding> ordered = new ArrayList<>(findings);
        ordered.sort(Comparator.comparingInt(each -> MENDING_ORDER.indexOf(each.kind())));
        for (Finding finding : ordered) {
            if (finding.cost() instanceof Cost.Priced price) {
                if (finding.kind() == FindingKind.STOPPED_TIME) {
                    stops += price.lowMinutes();
                } else {
                    add(mend, finding);
                    any = true;
                }
            }
        }
        Cost cost = any ? cost(mend) : new Cost.Priced(0, 0, HOW);
        return cost instanceof Cost.Priced price
                ? new TimeLedger.Entry(
                        "all of these mended at once", stops + price.lowMinutes(), stops + price.highMinutes())
                : new TimeLedger.Entry("all of these mended at once", stops, stops);
    }

    private Cost cost(Mend mend) {
        if (!mend.canGiveBack()) {
            return new Cost.NotPriced("nothing was pedalled later that could take the work back");
        }
        MendedRace mended = new MendedRace(race, replay, mend);
        double equalWork = savedWhenEqual(mended, MendedRace.State::workJ);
        double equalNormalized = savedWhenEqual(mended, MendedRace.State::normalizedPowerW);
        double low = Math.min(equalWork, equalNormalized);
        double high = Math.max(equalWork, equalNormalized);
        if (Double.isNaN(low) || Double.isNaN(high)) {
            return new Cost.NotPriced("what was too much could not be given back within what a rider can do");
        }
        if (high < NOTICEABLE_SECONDS) {
            return new Cost.Priced(0, 0, NOT_FASTER);
        }
        String how = low < 0 ? NOT_FASTER_AT_EQUAL_WORK : HOW;
        return new Cost.Priced(Math.max(0, low) / SECONDS_PER_MINUTE, high / SECONDS_PER_MINUTE, how);
    }

    /** Seconds saved once a quantity of the replayed race equals the recorded one's; {@code NaN} when it never does. */
    private double savedWhenEqual(MendedRace mended, ToDoubleFunction<MendedRace.State> quantity) {
        double aim = quantity.applyAsDouble(recorded);
        double share = shareFor(mended, state -> quantity.applyAsDouble(state) / aim - 1);
        return Double.isNaN(share) ? Double.NaN : mended.at(share).savedSeconds();
    }

    /** The share at which a quantity that rises with it is zero, within what a rider can do; {@code NaN} if none is. */
    private static double shareFor(MendedRace mended, ToDoubleFunction<MendedRace.State> rising) {
        double low = 1;
        double high = 1;
        double step = NEARBY;
        double atOne = rising.applyAsDouble(mended.at(1));
        while (atOne > 0 && low > LEAST_SHARE) {
            high = low;
            low = Math.max(LEAST_SHARE, low / step);
            step *= step;
            if (rising.applyAsDouble(mended.at(low)) <= 0) {
                return solve(mended, rising, low, high);
            }
        }
        while (atOne <= 0 && high < MOST_SHARE) {
            low = high;
            high = Math.min(MOST_SHARE, high * step);
            step *= step;
            if (rising.applyAsDouble(mended.at(high)) >= 0) {
                return solve(mended, rising, low, high);
            }
        }
        return Double.NaN;
    }

    private static double solve(MendedRace mended, ToDoubleFunction<MendedRace.State> rising, double low, double high) {
        double start = Math.max(low, Math.min(high, mended.shareByInterpolation(rising)));
        return new BracketingNthOrderBrentSolver(TOLERANCE, TOLERANCE, TOLERANCE, SOLVER_ORDER)
                .solve(MOST_EVALUATIONS, share -> rising.applyAsDouble(mended.at(share)), low, high, start);
    }

    /**
     * The race with every pedalled second scaled so that its normalized power is what can be sustained for the time it
     * then takes; null where the target is not known.
     */
    private TimeLedger.@Nullable Entry againstAbility(String targetSource) {
        if (Double.isNaN(race.targetW()) || forSeconds < SustainablePower.SHORTEST_GUIDE_SECONDS) {
            return null;
        }
        double share = shareFor(
                asRidden, state -> state.normalizedPowerW() / sustainableW(forSeconds - state.savedSeconds()) - 1);
        if (Double.isNaN(share)) {
            return null;
        }
        double minutes = asRidden.at(share).savedSeconds() / SECONDS_PER_MINUTE;
        double floored = Math.max(0, minutes);
        return new TimeLedger.Entry("against your ability (" + targetSource + ")", floored, floored);
    }

    /** The target for another duration: it falls with time as the guide does. */
    private double sustainableW(double seconds) {
        double shortest = SustainablePower.SHORTEST_GUIDE_SECONDS;
        return race.targetW()
                * SustainablePower.guideW(1, Math.max(shortest, seconds))
                / SustainablePower.guideW(1, forSeconds);
    }
}
