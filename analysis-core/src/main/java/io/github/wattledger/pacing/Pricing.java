package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.rig.RigChoice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.jspecify.annotations.Nullable;

/**
 * What the mistakes of a race cost, by riding it again without them: what was too much is taken out of the flagged stretch
 * and given back over the later pedalled stretches in proportion to power, at the low end until the total work is the
 * same, at the high end until normalized power is.
 */
final class Pricing {
    private static final double SECONDS_PER_MINUTE = 60;
    private static final int MOST_EVALUATIONS = 200;
    private static final int SOLVER_ORDER = 5;

    /** How close a quantity has to come to the recorded one, as a fraction of it: a tenth of a second in a day. */
    private static final double TOLERANCE = 1e-6;

    /** The next try goes so many times as far as the first guess seems to be off: every try is a whole replay. */
    private static final double BEYOND = 3;

    /** The steepness of a quantity is measured over this part of a share. */
    private static final double SHARE_STEP = 0.01;

    /** Below this a gain is no gain, seconds: an hour's replay is not finer. */
    private static final double NOTICEABLE_SECONDS = 1;

    private static final String HOW = "same work to same normalized power";
    private static final String NOT_FASTER = "it would not have been faster";
    private static final String NOT_FASTER_AT_EQUAL_WORK =
            "for the same work it would not have been faster; up to this for the same normalized power";

    private static final Cost NOTHING_TAKES_BACK =
            new Cost.NotPriced("nothing was pedalled later that could take the work back");

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
    private final Ability ability;
    private final RigChoice rig;
    private final Mend unmended;
    private final MendedRace asRidden;
    private final MendedRace.State recorded;
    private final Map<FindingKind, List<Planned>> planned = new EnumMap<>(FindingKind.class);

    private Pricing(Race race, Replay replay, Ability ability, RigChoice rig) {
        this.race = race;
        this.replay = replay;
        this.ability = ability;
        this.rig = rig;
        this.unmended = new Mend(race, replay);
        this.asRidden = MendedRace.of(race, replay, unmended);
        this.recorded = asRidden.unreplayed(1);
    }

    /** The findings with their prices, and the lines of the ledger. */
    record Priced(List<Finding> findings, List<TimeLedger.Entry> entries, List<String> notes) {}

    /**
     * Prices the findings of a race.
     *
     * @param course the course of the race, or null where it leads nowhere
     * @param ability what the race's target rests on
     */
    static Priced price(Race race, @Nullable Course course, List<Finding> findings, RigChoice rig, Ability ability) {
        Outcome<Replay> outcome = Replay.of(race.ride(), course, rig.rig());
        List<Finding> priced = new ArrayList<>();
        if (outcome instanceof Outcome.Refused<Replay> refused) {
            for (Finding finding : findings) {
                priced.add(
                        finding.cost() instanceof Cost.Priced
                                ? finding
                                : finding.withCost(new Cost.NotPriced(refused.reason())));
            }
            return new Priced(priced, entriesOf(priced), List.of());
        }
        Replay replay = outcome.orElseThrow(AssertionError::new);
        Pricing pricing = new Pricing(race, replay, ability, rig);
        for (Finding finding : findings) {
            priced.add(pricing.priced(finding));
        }
        List<TimeLedger.Entry> entries = entriesOf(priced);
        List<String> notes = new ArrayList<>();
        if (entries.size() > 1) {
            entries.add(pricing.together(priced));
            notes.add("The parts need not add up to the line for all: mending one changes what the others cost.");
        }
        TimeLedger.Entry againstAbility = pricing.againstAbility();
        if (againstAbility != null) {
            entries.add(againstAbility);
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
                Mend mend = new Mend(unmended);
                List<Planned> plan = plan(finding);
                planned.put(finding.kind(), plan);
                yield priced(finding, mend, carryOut(mend, finding, plan));
            }
        };
    }

    private Finding priced(Finding finding, Mend mend, List<PriceSteps.Stretch> stretches) {
        PriceSteps.TakingBack takingBack = mend.takingBack();
        if (takingBack == null) {
            return finding.withCost(NOTHING_TAKES_BACK);
        }
        Ends ends = ends(mend);
        return finding.withCost(ends.cost())
                .withPriceSteps(new PriceSteps.Replayed(
                        race.targetW(),
                        stretches,
                        takingBack,
                        replay.movingSeconds(),
                        recorded.workJ() / 1000,
                        recorded.normalizedPowerW(),
                        ends.equalWork(),
                        ends.equalNormalizedPower(),
                        rig));
    }

    /**
     * A change of one stretch.
     *
     * @param fromW its power as ridden, watts; {@code NaN} where every second has its own
     * @param toW its power instead, watts
     */
    private record Planned(Interval when, PriceSteps.Mending mending, double fromW, double toW) {
        double factor() {
            return toW / fromW;
        }
    }

    /** What mending a finding changes. */
    private List<Planned> plan(Finding finding) {
        Interval when = when(finding);
        double target = race.targetW();
        List<Planned> plan = new ArrayList<>();
        switch (finding.kind()) {
            case OVER_HARD_START ->
                plan.add(new Planned(when, PriceSteps.Mending.TO_TARGET, race.normalizedPowerW(when), target));
            case THRESHOLD_RIDING_EARLY -> {
                for (Interval stretch : ThresholdRidingEarly.stretches(race)) {
                    double normalizedW = race.normalizedPowerW(stretch);
                    // Never up to the target: it is what was too much that is taken out.
                    double toW = Math.min(normalizedW, target);
                    plan.add(new Planned(stretch, PriceSteps.Mending.TO_TARGET, normalizedW, toW));
                }
            }
            case SURGES -> {
                for (Interval surge : Surges.surges(race)) {
                    plan.add(new Planned(surge, PriceSteps.Mending.CAPPED_AT_TARGET, Double.NaN, target));
                }
            }
            case FADE, ENERGY_CRASH ->
                Fade.comparison(race, new Interval(0, when.fromSecond()), when)
                        .ifPresent(like -> plan.add(
                                new Planned(when, PriceSteps.Mending.TO_EARLIER_POWER, like.lateW(), like.earlyW())));
            case LATE_RESERVE -> {
                double lateW = race.normalizedPowerW(when);
                double beforeW = race.normalizedPowerW(new Interval(0, Math.max(1, when.fromSecond())));
                if (!Double.isNaN(lateW / beforeW)) {
                    plan.add(new Planned(when, PriceSteps.Mending.TO_POWER_BEFORE, lateW, beforeW));
                }
            }
            default -> throw new IllegalArgumentException(finding.kind() + " is not mended by another power");
        }
        return plan;
    }

    private Interval when(Finding finding) {
        return finding.when().shifted(-race.offsetSeconds());
    }

    /** Mends a finding as planned, and tells what that changed. */
    private List<PriceSteps.Stretch> carryOut(Mend mend, Finding finding, List<Planned> plan) {
        List<PriceSteps.Stretch> stretches = new ArrayList<>();
        for (Planned each : plan) {
            Mend.Change change = switch (each.mending) {
                case TO_TARGET -> mend.scale(each.when, each.factor());
                case CAPPED_AT_TARGET -> mend.cap(each.when, each.toW);
                case TO_EARLIER_POWER, TO_POWER_BEFORE -> mend.level(each.when, each.factor());
            };
            boolean capped = each.mending == PriceSteps.Mending.CAPPED_AT_TARGET;
            stretches.add(new PriceSteps.Stretch(
                    each.when.shifted(race.offsetSeconds()),
                    each.mending,
                    capped ? null : (Double) each.fromW,
                    each.toW,
                    capped ? null : (Double) each.factor(),
                    change.seconds(),
                    change.takenOutJ() / 1000));
        }
        if (finding.kind() == FindingKind.THRESHOLD_RIDING_EARLY || finding.kind() == FindingKind.SURGES) {
            mend.giveBackFrom(when(finding).fromSecond());
        }
        return stretches;
    }

    /** All mistakes mended at once, with the stops beside them, which no other power shortens. */
    private TimeLedger.Entry together(List<Finding> findings) {
        Mend mend = new Mend(unmended);
        double stops = 0;
        boolean any = false;
        List<Finding> ordered = new ArrayList<>(findings);
        ordered.sort(Comparator.comparingInt(each -> MENDING_ORDER.indexOf(each.kind())));
        for (Finding finding : ordered) {
            if (finding.cost() instanceof Cost.Priced price) {
                if (finding.kind() == FindingKind.STOPPED_TIME) {
                    stops += price.lowMinutes();
                } else {
                    carryOut(mend, finding, Objects.requireNonNull(planned.get(finding.kind())));
                    any = true;
                }
            }
        }
        Cost cost = any ? cost(mend) : new Cost.Priced(0, 0, HOW);
        return cost instanceof Cost.Priced price
                ? new TimeLedger.Entry(TimeLedger.ALL_AT_ONCE, stops + price.lowMinutes(), stops + price.highMinutes())
                : new TimeLedger.Entry(TimeLedger.ALL_AT_ONCE, stops, stops);
    }

    private Cost cost(Mend mend) {
        return mend.takesAnythingBack() ? ends(mend).cost() : NOTHING_TAKES_BACK;
    }

    /** Both ends of a price; null where no share brings the race there. */
    private record Ends(PriceSteps.@Nullable End equalWork, PriceSteps.@Nullable End equalNormalizedPower) {
        Cost cost() {
            if (equalWork == null || equalNormalizedPower == null) {
                return new Cost.NotPriced("what was too much could not be given back within what a rider can do");
            }
            double low = Math.min(equalWork.savedSeconds(), equalNormalizedPower.savedSeconds());
            double high = Math.max(equalWork.savedSeconds(), equalNormalizedPower.savedSeconds());
            if (high < NOTICEABLE_SECONDS) {
                return new Cost.Priced(0, 0, NOT_FASTER);
            }
            String how = low < 0 ? NOT_FASTER_AT_EQUAL_WORK : HOW;
            return new Cost.Priced(Math.max(0, low) / SECONDS_PER_MINUTE, high / SECONDS_PER_MINUTE, how);
        }
    }

    private Ends ends(Mend mend) {
        MendedRace mended = asRidden.with(mend);
        return new Ends(
                whenEqual(mended, MendedRace.State::workJ), whenEqual(mended, MendedRace.State::normalizedPowerW));
    }

    /** The replayed race once a quantity of it equals the recorded one's; null when it never does. */
    private PriceSteps.@Nullable End whenEqual(MendedRace mended, ToDoubleFunction<MendedRace.State> quantity) {
        double aim = quantity.applyAsDouble(recorded);
        double share = shareFor(mended, state -> quantity.applyAsDouble(state) / aim - 1);
        if (Double.isNaN(share)) {
            return null;
        }
        MendedRace.State state = mended.at(share);
        return new PriceSteps.End(
                share,
                state.workJ() / 1000,
                state.normalizedPowerW(),
                replay.movingSeconds() - state.savedSeconds(),
                state.savedSeconds());
    }

    /** The share at which a quantity that rises with it is zero, within what a rider can do; {@code NaN} if none is. */
    private static double shareFor(MendedRace mended, ToDoubleFunction<MendedRace.State> rising) {
        double byTries = mended.shareByInterpolation(rising);
        double near = Double.isNaN(byTries) ? shareUnreplayed(mended, rising) : byTries;
        near = Math.max(PriceSteps.LEAST_SHARE, Math.min(PriceSteps.MOST_SHARE, near));
        double over = rising.applyAsDouble(mended.at(near));
        if (Math.abs(over) <= TOLERANCE) {
            return near;
        }
        double low = near;
        double high = near;
        // Infinite where nothing reacts to the share: then the bound is tried next.
        double step = BEYOND * Math.abs(over) / riseUnreplayed(mended, near, rising);
        while (over > 0 && low > PriceSteps.LEAST_SHARE) {
            high = low;
            low = Math.max(PriceSteps.LEAST_SHARE, low / (1 + step));
            step *= BEYOND;
            if (rising.applyAsDouble(mended.at(low)) <= 0) {
                return solve(mended, rising, low, high);
            }
        }
        while (over <= 0 && high < PriceSteps.MOST_SHARE) {
            low = high;
            high = Math.min(PriceSteps.MOST_SHARE, high * (1 + step));
            step *= BEYOND;
            if (rising.applyAsDouble(mended.at(high)) >= 0) {
                return solve(mended, rising, low, high);
            }
        }
        return Double.NaN;
    }

    /** Where it would be zero if every second lasted as long as it did, or the bound beyond which that lies. */
    private static double shareUnreplayed(MendedRace mended, ToDoubleFunction<MendedRace.State> rising) {
        UnivariateFunction unreplayed = share -> rising.applyAsDouble(mended.unreplayed(share));
        if (!(unreplayed.value(PriceSteps.LEAST_SHARE) < 0)) {
            return PriceSteps.LEAST_SHARE;
        }
        if (!(unreplayed.value(PriceSteps.MOST_SHARE) > 0)) {
            return PriceSteps.MOST_SHARE;
        }
        return solver().solve(MOST_EVALUATIONS, unreplayed, PriceSteps.LEAST_SHARE, PriceSteps.MOST_SHARE, 1);
    }

    /** By how much it would rise with a share that is larger by a fraction, per that fraction. */
    private static double riseUnreplayed(MendedRace mended, double share, ToDoubleFunction<MendedRace.State> rising) {
        double more = rising.applyAsDouble(mended.unreplayed(share * (1 + SHARE_STEP)))
                - rising.applyAsDouble(mended.unreplayed(share));
        return more / SHARE_STEP;
    }

    private static double solve(MendedRace mended, ToDoubleFunction<MendedRace.State> rising, double low, double high) {
        double start = Math.max(low, Math.min(high, mended.shareByInterpolation(rising)));
        // The solver would not stop here, but go on until its bracket is as narrow as the tolerance.
        return Math.abs(rising.applyAsDouble(mended.at(start))) <= TOLERANCE
                ? start
                : solver().solve(MOST_EVALUATIONS, share -> rising.applyAsDouble(mended.at(share)), low, high, start);
    }

    private static BracketingNthOrderBrentSolver solver() {
        return new BracketingNthOrderBrentSolver(TOLERANCE, TOLERANCE, TOLERANCE, SOLVER_ORDER);
    }

    /**
     * The race with every pedalled second scaled so that its normalized power is what can be sustained for the time it
     * then takes, at the low end and at the high end of what that may be; null where the target is not known.
     */
    private TimeLedger.@Nullable Entry againstAbility() {
        if (Double.isNaN(race.targetW()) || ability.forSeconds() < SustainablePower.SHORTEST_GUIDE_SECONDS) {
            return null;
        }
        AbilityEvidence evidence = ability.evidence();
        SustainablePower sustainable = evidence == null ? null : evidence.sustainable();
        double low = savedMinutesAt(sustainable == null ? race.targetW() : sustainable.lowW());
        double high = savedMinutesAt(sustainable == null ? race.targetW() : sustainable.highW());
        if (Double.isNaN(low) || Double.isNaN(high)) {
            return null;
        }
        Ability.Source source = ability.source();
        String words = source == null || source.isGuide() ? "a guide" : "own bests";
        return new TimeLedger.Entry("against your ability (" + words + ")", Math.max(0, low), Math.max(0, high));
    }

    /** Minutes saved at a normalized power that can be held for the recorded moving time, and falls with it. */
    private double savedMinutesAt(double watts) {
        double share = shareFor(
                asRidden,
                state -> state.normalizedPowerW() / sustainableW(watts, ability.forSeconds() - state.savedSeconds())
                        - 1);
        return Double.isNaN(share) ? Double.NaN : asRidden.at(share).savedSeconds() / SECONDS_PER_MINUTE;
    }

    /** A power that can be held for the judged moving time, for another duration: it falls with time as the guide does. */
    private double sustainableW(double watts, double seconds) {
        double shortest = SustainablePower.SHORTEST_GUIDE_SECONDS;
        return watts
                * SustainablePower.guideW(1, Math.max(shortest, seconds))
                / SustainablePower.guideW(1, ability.forSeconds());
    }
}
