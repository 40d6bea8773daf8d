package io.github.wattledger.pacing.price;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.replay.Shelter;
import io.github.wattledger.ride.Interval;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Rides a race again without its bunch, for supposed savings, and finds the saving at which that takes equally long. */
final class LettingGoSearch {
    /**
     * Where the air takes less of the driving work than this, the break-even is ill-posed: trials on mountains with 0.05 to
     * 0.17 were off by 5 to 19 hundredths, on flat to hilly roads with 0.62 to 0.78 by at most 3. Between the two nothing
     * was tried.
     */
    private static final double LEAST_AIR_SHARE = 0.30;

    /** The recorded balance may leave nothing for the air in this share of the bins. Own choice. */
    private static final double MOST_WITHOUT_DRAG = 1 / 3.0;

    private static final double SAVING_TOLERANCE = 0.0005;

    private final Replay replay;
    private final Shelter none;
    private final RepairedRace asRidden;
    private final RepairedPower unrepaired;
    private final RepairedRace.State recorded;
    private final Cancellation cancellation;

    LettingGoSearch(Replay replay, RepairedRace asRidden, RepairedPower unrepaired, Cancellation cancellation) {
        this.replay = replay;
        this.none = replay.noShelter();
        this.asRidden = asRidden;
        this.unrepaired = unrepaired;
        this.recorded = asRidden.unreplayed(1);
        this.cancellation = cancellation;
    }

    /**
     * The decision about one bunch.
     *
     * @param asked which
     * @param savings the savings for which the minutes are wanted, by rising saving
     * @param offsetSeconds what to add to a second of the race to get a second of the recording
     */
    LettingGo find(Asked asked, double[] savings, int offsetSeconds) {
        RepairedPower power = new RepairedPower(unrepaired);
        power.scale(asked.hard(), asked.targetW() / asked.hardPowerW());
        power.makeUpFrom(asked.hard().toSecond());
        RepairedRace eased = asRidden.with(power);
        Replay.AirOfStretch air = replay.air(asked.sheltered());
        String refused = refusal(air, power);
        return new LettingGo(
                asked.hard().shifted(offsetSeconds),
                asked.sheltered().shifted(offsetSeconds),
                asked.hardPowerW(),
                asked.targetW(),
                asked.nextGroupShare(),
                air.workShare(),
                refused == null
                        ? new LettingGo.BreakEven(
                                breakEven(eased, asked, RepairedRace.State::workJ),
                                breakEven(eased, asked, RepairedRace.State::normalizedPowerW))
                        : null,
                refused,
                Arrays.stream(savings)
                        .mapToObj(saving -> at(saving, eased, asked))
                        .toList());
    }

    /**
     * What is asked, in seconds of the race.
     *
     * @param hard the seconds ridden above the target
     * @param sheltered the seconds in the bunch
     * @param hardPowerW normalized power of the hard stretch, watts
     * @param targetW the power to ride it at instead, watts
     * @param nextGroupShare the share of the shelter that a next group gives
     */
    record Asked(Interval hard, Interval sheltered, double hardPowerW, double targetW, double nextGroupShare) {}

    private static @Nullable String refusal(Replay.AirOfStretch air, RepairedPower power) {
        if (!power.isMadeUpFor()) {
            return "nothing was pedalled after it that could use what letting go saves";
        }
        if (!(air.workShare() >= LEAST_AIR_SHARE)) {
            return "the air took too little of the work there for a percentage to mean anything";
        }
        return air.withoutDragShare() > MOST_WITHOUT_DRAG
                ? "on more than a third of it the recorded power leaves nothing for the air"
                : null;
    }

    private double breakEven(RepairedRace eased, Asked asked, ToDoubleFunction<RepairedRace.State> quantity) {
        double low = 0;
        double high = LettingGo.BreakEven.HIGHEST;
        if (!letGoPays(eased, asked, low, quantity)) {
            return low;
        }
        if (letGoPays(eased, asked, high, quantity)) {
            return high;
        }
        // The more the bunch saved, the longer the lone ride takes, so there is one root.
        while (high - low > SAVING_TOLERANCE) {
            cancellation.check();
            double middle = (low + high) / 2;
            if (letGoPays(eased, asked, middle, quantity)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private boolean letGoPays(
            RepairedRace eased, Asked asked, double saving, ToDoubleFunction<RepairedRace.State> quantity) {
        Ridden ridden = ridden(eased.in(letGo(asked, saving)), quantity);
        // Where no give-back reaches the recorded work, the lone ride takes too long for it.
        return ridden != null && ridden.savedSeconds() > 0;
    }

    private Shelter letGo(Asked asked, double saving) {
        return replay.sheltered(none, asked.sheltered(), saving, 1 - asked.nextGroupShare() * saving);
    }

    private LettingGo.AtSaving at(double saving, RepairedRace eased, Asked asked) {
        cancellation.check();
        RepairedRace alone = eased.in(letGo(asked, saving));
        RepairedRace kept = eased.in(replay.sheltered(none, asked.sheltered(), saving, 1 - saving));
        Ridden work = ridden(alone, RepairedRace.State::workJ);
        return new LettingGo.AtSaving(
                saving,
                work == null || work.share() < LettingGo.AtSaving.LEAST_GIVE_BACK ? null : work.savedSeconds(),
                seconds(ridden(alone, RepairedRace.State::normalizedPowerW)),
                seconds(ridden(kept, RepairedRace.State::workJ)),
                seconds(ridden(kept, RepairedRace.State::normalizedPowerW)));
    }

    private static @Nullable Double seconds(@Nullable Ridden ridden) {
        return ridden == null ? null : ridden.savedSeconds();
    }

    private record Ridden(double share, double savedSeconds) {}

    private @Nullable Ridden ridden(RepairedRace race, ToDoubleFunction<RepairedRace.State> quantity) {
        double aim = quantity.applyAsDouble(recorded);
        double share = new ShareSearch(race, state -> quantity.applyAsDouble(state) / aim - 1).share();
        return Double.isNaN(share) ? null : new Ridden(share, race.at(share).savedSeconds());
    }
}
