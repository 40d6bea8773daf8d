package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.SimulatedRider;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/** The same race ridden again by the simulator: without a mistake, or on another bicycle. */
final class RiddenAgain {
    private static final double TOLERANCE = 5e-5;
    private static final int MOST_RIDES = 12;
    /** Of a quantity by share, both as fractions: below it the second of a bend decides, not the share. */
    private static final double LEAST_SLOPE = 0.2;

    private static final double[] MASSES_KG = {-0.15, -0.05, 0.05, 0.15};

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
        double equalWork = 0;
        double equalNormalizedPower = 0;
        for (SimulatedRider rider : alike(race.rider())) {
            RiddenRace asRidden = race.riddenWith(rider, mistake -> true, 1);
            double seconds = asRidden.finishSeconds();
            if (kinds.equals(EnumSet.of(MistakeKind.STOPPED_TIME))) {
                // Who does not stop rides the same power: nothing is given back.
                double saved = seconds - riddenWithout(rider, kinds, 1).finishSeconds();
                equalWork += saved;
                equalNormalizedPower += saved;
            } else {
                equalWork += seconds
                        - whenEqual(rider, asRidden, kinds, RiddenRace::workJ).finishSeconds();
                equalNormalizedPower += seconds
                        - whenEqual(rider, asRidden, kinds, RiddenRace::movingNormalizedPowerW)
                                .finishSeconds();
            }
        }
        double perMinute = 60.0 * MASSES_KG.length;
        return new Price(equalWork / perMinute, equalNormalizedPower / perMinute);
    }

    /**
     * The rider with slightly other masses. In which second a bend or a rest falls is chance, worth some seconds over a
     * race with many of them; the mean over riders who are all but the same takes it out.
     */
    private static List<SimulatedRider> alike(SimulatedRider rider) {
        return Arrays.stream(MASSES_KG)
                .mapToObj(more -> rider.withBody(rider.massKg() + more, rider.bikeMassKg(), rider.dragAreaM2()))
                .toList();
    }

    /** The race without some mistakes, every power multiplied by the share that makes a quantity what it was. */
    RiddenRace whenEqual(Set<MistakeKind> kinds, ToDoubleFunction<RiddenRace> quantity) {
        return whenEqual(race.rider(), race.ridden(), kinds, quantity);
    }

    private RiddenRace whenEqual(
            SimulatedRider rider, RiddenRace asRidden, Set<MistakeKind> kinds, ToDoubleFunction<RiddenRace> quantity) {
        double aim = quantity.applyAsDouble(asRidden);
        double shareBefore = 1;
        RiddenRace again = riddenWithout(rider, kinds, shareBefore);
        double overBefore = quantity.applyAsDouble(again) / aim - 1;
        double share = 1 / (1 + overBefore);
        for (int rides = 1; Math.abs(overBefore) > TOLERANCE && rides < MOST_RIDES; rides++) {
            again = riddenWithout(rider, kinds, share);
            double over = quantity.applyAsDouble(again) / aim - 1;
            double slope = (over - overBefore) / (share - shareBefore);
            shareBefore = share;
            overBefore = over;
            share -= slope > LEAST_SLOPE ? over / slope : over;
        }
        return again;
    }

    private RiddenRace riddenWithout(SimulatedRider rider, Set<MistakeKind> kinds, double share) {
        return race.riddenWith(rider, mistake -> !kinds.contains(mistake.kind()), share);
    }

    /**
     * Minutes that another drag area and another mass save at the same power in the same places, descents that were
     * freewheeled included.
     */
    double savedMinutes(double dragFactor, double riderKgMore) {
        SensiblePower samePowers = race.plan().freewheelingAsIn(race.ridden());
        double saved = 0;
        for (SimulatedRider rider : alike(race.rider())) {
            SimulatedRider other =
                    rider.withBody(rider.massKg() + riderKgMore, rider.bikeMassKg(), rider.dragAreaM2() * dragFactor);
            saved += finishSeconds(rider, samePowers) - finishSeconds(other, samePowers);
        }
        return saved / (60 * MASSES_KG.length);
    }

    private double finishSeconds(SimulatedRider rider, SensiblePower plan) {
        return TrialRace.ride(race.course(), rider, plan, race.stops()).finishSeconds();
    }
}
