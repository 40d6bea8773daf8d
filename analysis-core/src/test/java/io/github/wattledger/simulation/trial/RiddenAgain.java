package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SimulatedRide;
import io.github.wattledger.simulation.SimulatedRider;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/** The same race ridden again by the simulator: without a mistake, or on another bicycle. */
final class RiddenAgain {
    private static final double TOLERANCE = 5e-5;
    private static final int MOST_RIDES = 12;
    private static final double CRAWLING_MPS = 1.5;
    private static final double CRAWLING_W = 100;

    private final TrialRace race;

    RiddenAgain(TrialRace race) {
        this.race = race;
    }

    /**
     * What a mistake truly cost, minutes.
     *
     * @param equalWorkMinutes minutes saved without it for the same work
     * @param equalNormalizedPowerMinutes minutes saved without it at the same normalized power of the moving time
     */
    record Price(double equalWorkMinutes, double equalNormalizedPowerMinutes) {
        /** The lower end, not below 0: nobody is told to lose time. */
        double lowMinutes() {
            return Math.max(0, Math.min(equalWorkMinutes, equalNormalizedPowerMinutes));
        }

        double highMinutes() {
            return Math.max(0, Math.max(equalWorkMinutes, equalNormalizedPowerMinutes));
        }
    }

    /** The prices of the given kinds. */
    Map<MistakeKind, Price> prices(Set<MistakeKind> kinds) {
        Map<MistakeKind, Price> prices = new EnumMap<>(MistakeKind.class);
        for (MistakeKind kind : kinds) {
            if (kind.hasPrice() && race.mistakes().stream().anyMatch(mistake -> mistake.kind() == kind)) {
                prices.put(kind, without(EnumSet.of(kind)));
            }
        }
        return prices;
    }

    /** The price of some mistakes together. */
    Price without(Set<MistakeKind> kinds) {
        double seconds = race.ridden().finishSeconds();
        if (kinds.equals(EnumSet.of(MistakeKind.STOPPED_TIME))) {
            // Who does not stop rides the same power: nothing is given back.
            double minutes = (seconds - ridden(kinds, 1).finishSeconds()) / 60;
            return new Price(minutes, minutes);
        }
        return new Price(
                (seconds - whenEqual(kinds, RiddenRace::workJ).finishSeconds()) / 60,
                (seconds - whenEqual(kinds, RiddenRace::movingNormalizedPowerW).finishSeconds()) / 60);
    }

    /** The race without some mistakes, every power multiplied by the share that makes a quantity what it was. */
    RiddenRace whenEqual(Set<MistakeKind> kinds, ToDoubleFunction<RiddenRace> quantity) {
        double aim = quantity.applyAsDouble(race.ridden());
        double shareBefore = 1;
        RiddenRace again = ridden(kinds, shareBefore);
        double overBefore = quantity.applyAsDouble(again) / aim - 1;
        double share = 1 / (1 + overBefore);
        for (int rides = 1; Math.abs(overBefore) > TOLERANCE && rides < MOST_RIDES; rides++) {
            again = ridden(kinds, share);
            double over = quantity.applyAsDouble(again) / aim - 1;
            double slope = (over - overBefore) / (share - shareBefore);
            shareBefore = share;
            overBefore = over;
            share -= slope > 0 ? over / slope : over;
        }
        return again;
    }

    private RiddenRace ridden(Set<MistakeKind> without, double share) {
        return race.riddenWith(mistake -> !without.contains(mistake.kind()), share);
    }

    /**
     * Minutes that another drag area and another mass save at the same power in the same places, descents that were
     * freewheeled included.
     */
    double savedMinutes(double dragFactor, double riderKgMore) {
        SimulatedRider rider = race.rider();
        SimulatedRider other =
                rider.withBody(rider.massKg() + riderKgMore, rider.bikeMassKg(), rider.dragAreaM2() * dragFactor);
        return (samePowers(rider).finishSeconds() - samePowers(other).finishSeconds()) / 60;
    }

    private RiddenRace samePowers(SimulatedRider rider) {
        SimulatedRide recorded = race.ridden().ride();
        Scenario scenario = recorded.scenario();
        PacingPlan plan = moment -> {
            int second = Math.min(race.ridden().seconds() - 1, race.ridden().secondAt(moment.distanceM() + 1e-6));
            double watts = race.ridden().powerW(second);
            return moment.speedMps() < CRAWLING_MPS ? Math.max(CRAWLING_W, watts) : watts;
        };
        return new RiddenRace(RoadSimulation.ride(scenario.withRider(rider).withPlan(plan)));
    }
}
