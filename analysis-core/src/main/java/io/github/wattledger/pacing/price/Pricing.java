package io.github.wattledger.pacing.price;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.replay.Shelter;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.RigChoice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Prices the repairs of one race by riding it again. What a repair takes out of some seconds, others make up for in
 * proportion to their power: at one end of the price until the total work is the recorded one, at the other end until
 * normalized power is.
 */
public final class Pricing {
    private static final double SECONDS_PER_MINUTE = 60;

    /** A smaller gain is no gain, seconds: the replay of an hour is not finer. */
    private static final double NOTICEABLE_SECONDS = 1;

    private static final String HOW = "ridden again without it";
    private static final String NOT_FASTER = "it would not have been faster";

    private static final Cost NOTHING_MAKES_UP =
            new Cost.NotPriced("there are no pedalled seconds left that could make up for it");
    private static final Cost OUT_OF_REACH =
            new Cost.NotPriced("the rest could not make up for it within what a rider can do");

    private final @Nullable Shelter shelter;
    private final Map<Repair, LostShelter> lostBy;
    private final int offsetSeconds;
    private final double targetW;
    private final Replay replay;
    private final RigChoice rig;
    private final Cancellation cancellation;
    private final RepairedPower unrepaired;
    private final RepairedRace inRecordedAir;
    private final RepairedRace asRidden;
    private final RepairedRace.State recorded;

    /**
     * Prepares a race for pricing.
     *
     * @param race the race
     * @param offsetSeconds what to add to a second of the race to get a second of the recording
     * @param targetW the power that could be held for the moving time of the race, watts, for the steps of a price;
     *     {@code NaN} when it is not known
     * @param replay the replay of the race
     * @param rig what the replay was made with
     * @param cancellation when to end early
     */
    public Pricing(
            Ride race, int offsetSeconds, double targetW, Replay replay, RigChoice rig, Cancellation cancellation) {
        this(race, offsetSeconds, targetW, replay, rig, cancellation, null);
    }

    /**
     * Prepares a race for pricing, a part of which was ridden in the shelter of a bunch.
     *
     * @param shelter the shelter, in which the repaired race is ridden as well; null where none is known
     */
    public Pricing(
            Ride race,
            int offsetSeconds,
            double targetW,
            Replay replay,
            RigChoice rig,
            Cancellation cancellation,
            @Nullable Shelter shelter) {
        this.shelter = shelter;
        this.lostBy = Map.of();
        this.offsetSeconds = offsetSeconds;
        this.targetW = targetW;
        this.replay = replay;
        this.rig = rig;
        this.cancellation = cancellation;
        this.unrepaired = new RepairedPower(race.series(Channel.POWER), replay);
        this.inRecordedAir = RepairedRace.of(race, replay, unrepaired);
        this.asRidden = shelter == null ? inRecordedAir : inRecordedAir.in(shelter);
        this.recorded = asRidden.unreplayed(1);
    }

    private Pricing(Pricing other, Map<Repair, LostShelter> lostBy) {
        this.shelter = other.shelter;
        this.lostBy = Map.copyOf(lostBy);
        this.offsetSeconds = other.offsetSeconds;
        this.targetW = other.targetW;
        this.replay = other.replay;
        this.rig = other.rig;
        this.cancellation = other.cancellation;
        this.unrepaired = other.unrepaired;
        this.inRecordedAir = other.inRecordedAir;
        this.asRidden = other.asRidden;
        this.recorded = other.recorded;
    }

    /**
     * What letting a bunch go would have been worth. Seconds are those of the race.
     *
     * @param hard the seconds ridden above the target to hold the bunch
     * @param sheltered the seconds in the bunch
     * @param hardPowerW normalized power of the hard stretch, watts, above the target
     * @param nextGroupShare the share of the sheltered way for which a next group shelters as much, 0 to 1
     * @param savings the savings for which the minutes are wanted, shares of the lone drag, by rising saving
     */
    public LettingGo lettingGo(
            Interval hard, Interval sheltered, double hardPowerW, double nextGroupShare, double... savings) {
        return new LettingGoSearch(replay, inRecordedAir, unrepaired, cancellation)
                .find(
                        new LettingGoSearch.Asked(hard, sheltered, hardPowerW, targetW, nextGroupShare),
                        savings,
                        offsetSeconds);
    }

    /**
     * A shelter that a repair gives up.
     *
     * @param stretch the seconds of the race in which it is given up
     * @param savedShare what it saved in the recording, a share of the lone drag
     * @param dragShare what is ridden against instead, a share of the lone drag: 1 alone, less with a next group
     */
    public record LostShelter(Interval stretch, double savedShare, double dragShare) {}

    /** The pricing of the same race where some repairs give up the shelter of a bunch, too. */
    public Pricing whereLost(Map<Repair, LostShelter> repairs) {
        return new Pricing(this, repairs);
    }

    /** The race as it was ridden, in the shelter that these repairs leave. */
    private RepairedRace sheltered(List<Repair> repairs) {
        Shelter left = null;
        for (Repair repair : repairs) {
            LostShelter lost = lostBy.get(repair);
            if (lost != null) {
                Shelter before = left == null ? Objects.requireNonNullElseGet(shelter, replay::noShelter) : left;
                left = replay.sheltered(before, lost.stretch(), lost.savedShare(), lost.dragShare());
            }
        }
        return left == null ? asRidden : inRecordedAir.in(left);
    }

    /** The price of one mistake. */
    public Price price(Repair repair) {
        RepairedPower power = new RepairedPower(unrepaired);
        List<PriceSteps.Stretch> stretches = carryOut(repair, power);
        PriceSteps.MakingUp makingUp = power.makingUp(offsetSeconds);
        if (makingUp == null) {
            return new Price(NOTHING_MAKES_UP, null);
        }
        Ends ends = ends(power, List.of(repair));
        PriceSteps steps = new PriceSteps.Replayed(
                targetW,
                stretches,
                makingUp,
                replay.movingSeconds(),
                recorded.workJ() / 1000,
                recorded.normalizedPowerW(),
                ends.equalWork(),
                ends.equalNormalizedPower(),
                rig);
        return new Price(ends.cost(), steps);
    }

    /**
     * Several mistakes repaired together.
     *
     * @param cost what they cost together
     * @param lost where that time was lost, on the race's seconds in the whole recording; null where the cost has no price
     */
    public record Together(Cost cost, @Nullable LostTime lost) {}

    /**
     * The cost of several mistakes together, and where it was lost. Repairs can cover the same seconds, or undo one another,
     * so that all of them need not save more than some. One after the other, a repair is added where the race gains by it.
     *
     * @param repairs those that are priced, the dearest first
     * @param alone what each of them costs alone: the whole is never less, since one repair is one way of repairing
     */
    public Together priceOfAll(List<Repair> repairs, List<Cost> alone) {
        List<Repair> chosen = new ArrayList<>();
        Cost together = NOTHING_MAKES_UP;
        Ends lowest = null;
        Ends highest = null;
        for (Repair repair : repairs) {
            chosen.add(repair);
            Ends ends = endsOf(chosen);
            Cost cost = ends == null ? NOTHING_MAKES_UP : ends.cost();
            boolean isFirst = chosen.size() == 1;
            if (cost instanceof Cost.Priced price && (isFirst || price.highMinutes() > high(together))) {
                lowest = isFirst || price.lowMinutes() > low(together) ? ends : lowest;
                highest = ends;
                together = isFirst
                        ? cost
                        : new Cost.Priced(Math.max(low(together), price.lowMinutes()), price.highMinutes(), HOW);
            } else if (isFirst) {
                return new Together(cost, null);
            } else {
                chosen.remove(repair);
            }
        }
        for (int i = 0; i < repairs.size(); i++) {
            if (low(alone.get(i)) > low(together)) {
                lowest = endsOf(List.of(repairs.get(i)));
                together = new Cost.Priced(low(alone.get(i)), high(together), HOW);
            }
        }
        return new Together(together, lowest == null || highest == null ? null : lost(lowest, highest));
    }

    private static double low(Cost cost) {
        return cost instanceof Cost.Priced priced ? priced.lowMinutes() : 0;
    }

    private static double high(Cost cost) {
        return cost instanceof Cost.Priced priced ? priced.highMinutes() : 0;
    }

    private LostTime lost(Ends lowest, Ends highest) {
        return new LostTime(
                new Interval(offsetSeconds, offsetSeconds + unrepaired.seconds()),
                lost(lowest, lowest.low()),
                lost(highest, highest.high()),
                lowest.lowEnd());
    }

    /** Seconds lost in each second of the race against an end of a price; nothing where the end counts as no gain. */
    private Series lost(Ends ends, PriceSteps.@Nullable End end) {
        if (end == null || end.savedSeconds() <= 0 || !ends.isNoticeable()) {
            return Series.generate(unrepaired.seconds(), second -> 0);
        }
        double[] secondsOfBins = ends.race().secondsOfBins(end.share());
        return Series.generate(unrepaired.seconds(), second -> {
            int bin = replay.binOf(second);
            return bin < 0 ? 0 : 1 - secondsOfBins[bin];
        });
    }

    private @Nullable Ends endsOf(List<Repair> repairs) {
        RepairedPower power = new RepairedPower(unrepaired);
        repairs.stream().sorted(Comparator.comparing(Repair::turn)).forEach(repair -> carryOut(repair, power));
        return power.isMadeUpFor() ? ends(power, repairs) : null;
    }

    /**
     * Minutes between a low and a high end, of which the high end is the larger but for the tolerance of the search.
     *
     * @param low the low end
     * @param high the high end
     */
    public record Minutes(double low, double high) {}

    /**
     * The minutes saved if every pedalled second is scaled so that normalized power is what can be sustained for the time
     * that the race then takes, for the low end and for the high end of what can be sustained.
     *
     * @param ability what can be sustained
     * @return empty where the target is not known, where the race is shorter than the guide, or where no share brings the
     *     race there
     */
    public Optional<Minutes> againstAbility(Ability ability) {
        if (Double.isNaN(targetW) || ability.forSeconds() < SustainablePower.SHORTEST_GUIDE_SECONDS) {
            return Optional.empty();
        }
        AbilityEvidence evidence = ability.evidence();
        SustainablePower sustainable = evidence == null ? null : evidence.sustainable();
        double low = savedMinutesAt(sustainable == null ? targetW : sustainable.lowW(), ability);
        double high = savedMinutesAt(sustainable == null ? targetW : sustainable.highW(), ability);
        return Double.isNaN(low) || Double.isNaN(high)
                ? Optional.empty()
                : Optional.of(new Minutes(Math.max(0, low), Math.max(0, high)));
    }

    /** Minutes saved at a normalized power that can be held for the recorded moving time and falls with time. */
    private double savedMinutesAt(double watts, Ability ability) {
        double share = new ShareSearch(
                        asRidden,
                        state -> state.normalizedPowerW()
                                        / sustainableW(watts, ability.forSeconds() - state.savedSeconds(), ability)
                                - 1)
                .share();
        return Double.isNaN(share) ? Double.NaN : asRidden.at(share).savedSeconds() / SECONDS_PER_MINUTE;
    }

    /** What can be held for another duration, where a power can be held for the judged one: it falls as the guide does. */
    private static double sustainableW(double watts, double seconds, Ability ability) {
        double shortest = SustainablePower.SHORTEST_GUIDE_SECONDS;
        return watts
                * SustainablePower.guideW(1, Math.max(shortest, seconds))
                / SustainablePower.guideW(1, ability.forSeconds());
    }

    /** Carries a repair out, and returns what it changed. */
    private List<PriceSteps.Stretch> carryOut(Repair repair, RepairedPower power) {
        List<PriceSteps.Stretch> stretches = new ArrayList<>();
        for (Repair.Stretch stretch : repair.stretches()) {
            stretches.add(carryOut(stretch, power));
        }
        if (repair.madeUpFromSecond() > 0) {
            power.makeUpFrom(repair.madeUpFromSecond());
        }
        return stretches;
    }

    private PriceSteps.Stretch carryOut(Repair.Stretch stretch, RepairedPower power) {
        Interval when = stretch.when();
        double factor = stretch.factor();
        RepairedPower.Change change = switch (stretch.change()) {
            case TO_MIDDLE_POWER -> power.scale(when, factor);
            case CAPPED_AT_TARGET -> power.cap(when, stretch.toW());
            case TO_EARLIER_POWER, TO_POWER_BEFORE -> power.level(when, factor);
            case AS_RIDDEN -> power.scale(when, 1);
        };
        return new PriceSteps.Stretch(
                when.shifted(offsetSeconds),
                stretch.change(),
                numberOrNull(stretch.fromW()),
                stretch.toW(),
                numberOrNull(factor),
                change.seconds(),
                change.takenOutJ() / 1000);
    }

    private static @Nullable Double numberOrNull(double value) {
        return Double.isNaN(value) ? null : value;
    }

    /**
     * Both ends of a price; null where no share brings the race there.
     *
     * @param race the repaired race, for any share
     */
    private record Ends(
            RepairedRace race, PriceSteps.@Nullable End equalWork, PriceSteps.@Nullable End equalNormalizedPower) {
        /** Whether the same normalized power gains less than the same work, which is rare. */
        boolean isEffortLower() {
            return equalWork != null
                    && equalNormalizedPower != null
                    && equalWork.savedSeconds() > equalNormalizedPower.savedSeconds();
        }

        LostTime.LowEnd lowEnd() {
            return isEffortLower() ? LostTime.LowEnd.SAME_EFFORT : LostTime.LowEnd.SAME_ENERGY;
        }

        PriceSteps.@Nullable End low() {
            return isEffortLower() ? equalNormalizedPower : equalWork;
        }

        PriceSteps.@Nullable End high() {
            return isEffortLower() ? equalWork : equalNormalizedPower;
        }

        /** Whether the larger of both gains is one at all. */
        boolean isNoticeable() {
            PriceSteps.End high = high();
            return high != null && high.savedSeconds() >= NOTICEABLE_SECONDS;
        }

        Cost cost() {
            PriceSteps.End low = low();
            PriceSteps.End high = high();
            if (low == null || high == null) {
                return OUT_OF_REACH;
            }
            if (!isNoticeable()) {
                return new Cost.Priced(0, 0, NOT_FASTER);
            }
            return new Cost.Priced(
                    Math.max(0, low.savedSeconds()) / SECONDS_PER_MINUTE,
                    high.savedSeconds() / SECONDS_PER_MINUTE,
                    HOW);
        }
    }

    private Ends ends(RepairedPower power, List<Repair> repairs) {
        cancellation.check();
        RepairedRace repaired = sheltered(repairs).with(power);
        return new Ends(
                repaired,
                whenEqual(repaired, RepairedRace.State::workJ),
                whenEqual(repaired, RepairedRace.State::normalizedPowerW));
    }

    /** The repaired race once a quantity of it equals the recorded one's; null when it never does. */
    private PriceSteps.@Nullable End whenEqual(RepairedRace repaired, ToDoubleFunction<RepairedRace.State> quantity) {
        double aim = quantity.applyAsDouble(recorded);
        double share = new ShareSearch(repaired, state -> quantity.applyAsDouble(state) / aim - 1).share();
        if (Double.isNaN(share)) {
            return null;
        }
        RepairedRace.State state = repaired.at(share);
        return new PriceSteps.End(
                share,
                state.workJ() / 1000,
                state.normalizedPowerW(),
                replay.movingSeconds() - state.savedSeconds(),
                state.savedSeconds());
    }
}
