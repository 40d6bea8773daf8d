package io.github.wattledger.replay;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.rig.RoadLoad;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * How much time another position, mass, tyre, air or power is worth: on a course at a steady power ({@link #steady}), or
 * on a recorded ride ({@link #replayed}).
 *
 * <p>An answer is a number of minutes with a range. For the range each input that is not known exactly is put at its
 * lowest and its highest plausible value, one after another while the others stay, and the deviations to either side are
 * added as squares, as those of independent errors are. A change that is meant relative (a position, a difference, a
 * factor) moves along with what it changes. Not in the range: a wind, a bunch, brakes, the rider.
 */
public final class WhatIf {
    private static final double SECONDS_PER_MINUTE = 60;

    /** Published times are met within 4 %, full forward simulations within 5 %: the tests hold both. */
    private static final double MODEL_FRACTION = 0.05;

    private final RigChoice rig;
    private final Change change;
    private final Function<Trial, Times> ride;

    private WhatIf(RigChoice rig, Change change, Function<Trial, Times> ride) {
        this.rig = rig;
        this.change = change;
        this.ride = ride;
    }

    /**
     * Over how much of the distance a change holds.
     *
     * @param part the part; of a spread change only its length counts
     * @param isSpread whether it is spread alike over the whole distance instead of lying in one place
     */
    public record Extent(Replay.Share part, boolean isSpread) implements Serializable {
        /** All of it. */
        public static final Extent WHOLE = new Extent(Replay.Share.WHOLE, true);

        /**
         * So much of the distance, of every kind of road alike.
         *
         * @param share 0 to 1
         * @throws IllegalArgumentException when the share is out of range
         */
        public static Extent spread(double share) {
            return new Extent(new Replay.Share(0, share), true);
        }

        /** One part of the distance. */
        public static Extent of(Replay.Share part) {
            return new Extent(part, false);
        }

        /** How much of the distance it is, 0 to 1. */
        public double share() {
            return part.to() - part.from();
        }
    }

    /**
     * What is changed; null for what stays as it is.
     *
     * @param position another position; not together with {@code dragAreaM2}
     * @param dragAreaM2 another drag area
     * @param riderKg another mass of the rider; a difference may as well be the bicycle's
     * @param rollingResistance another coefficient of rolling resistance
     * @param powerW another power; of a ride, which has no one power, a difference or a factor
     * @param air what is different of the air, {@link Air#UNKNOWN} for nothing
     * @param extent over how much of the distance
     */
    public record Change(
            @Nullable Position position,
            @Nullable Adjustment dragAreaM2,
            @Nullable Adjustment riderKg,
            @Nullable Adjustment rollingResistance,
            @Nullable Adjustment powerW,
            Air air,
            Extent extent)
            implements Serializable {
        /** Nothing is changed, over the whole distance: to begin with. */
        public static final Change NOTHING = new Change(null, null, null, null, null, Air.UNKNOWN, Extent.WHOLE);

        /** @throws IllegalArgumentException when both position and drag area are given */
        public Change {
            if (position != null && dragAreaM2 != null) {
                throw new IllegalArgumentException("another position is another drag area: give one of them");
            }
        }

        /** With another position. */
        public Change withPosition(Position other) {
            return new Change(other, dragAreaM2, riderKg, rollingResistance, powerW, air, extent);
        }

        /** With another drag area. */
        public Change withDragAreaM2(Adjustment other) {
            return new Change(position, other, riderKg, rollingResistance, powerW, air, extent);
        }

        /** With another mass of the rider. */
        public Change withRiderKg(Adjustment other) {
            return new Change(position, dragAreaM2, other, rollingResistance, powerW, air, extent);
        }

        /** With another rolling resistance. */
        public Change withRollingResistance(Adjustment other) {
            return new Change(position, dragAreaM2, riderKg, other, powerW, air, extent);
        }

        /** With another power. */
        public Change withPowerW(Adjustment other) {
            return new Change(position, dragAreaM2, riderKg, rollingResistance, other, air, extent);
        }

        /** With other air. */
        public Change withAir(Air other) {
            return new Change(position, dragAreaM2, riderKg, rollingResistance, powerW, other, extent);
        }

        /** Over another part of the distance. */
        public Change over(Extent other) {
            return new Change(position, dragAreaM2, riderKg, rollingResistance, powerW, air, other);
        }

        private boolean isNothing() {
            return equals(NOTHING.over(extent));
        }
    }

    /** A number that can be off. */
    public enum Input {
        /** Mass of the rider, kg. */
        RIDER_MASS,
        /** Mass of the bicycle, kg. */
        BICYCLE_MASS,
        /** Drag area as it is, m2. */
        DRAG_AREA,
        /** By what the other position multiplies it. */
        POSITION_RATIO,
        /** Coefficient of rolling resistance as it is. */
        ROLLING_RESISTANCE,
        /** Density of the air as it is, kg/m3. */
        AIR_DENSITY,
        /** By what the model itself may have to be multiplied. */
        MODEL;

        /** The input's fixed word, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * What one uncertain input does to the answer, the others staying as they are.
     *
     * @param input the input
     * @param range its value and how far it can be off
     * @param savedAtLowMinutes minutes saved with the input at its low end
     * @param savedAtHighMinutes minutes saved with the input at its high end
     */
    public record Influence(Input input, Measure range, double savedAtLowMinutes, double savedAtHighMinutes)
            implements Serializable {}

    /**
     * What the model was told, once as it is and once with the change.
     *
     * @param powerW power at the pedals, watts, or null for that of the recorded ride
     * @param massKg rider and bicycle together
     * @param dragAreaM2 drag area
     * @param rollingResistance coefficient of rolling resistance
     * @param airDensityKgPerM3 density of the air
     */
    public record State(
            @Nullable Double powerW,
            double massKg,
            double dragAreaM2,
            double rollingResistance,
            double airDensityKgPerM3)
            implements Serializable {}

    /**
     * The answer.
     *
     * @param change what was asked
     * @param rig rider and bicycle as they are, with their ranges
     * @param asItIs what the model was told as it is
     * @param changed what it was told where the change holds
     * @param distanceM the distance, metres
     * @param asItIsSeconds moving time as it is; of a recorded ride exactly the recorded one
     * @param changedSeconds moving time with the change over its part of the distance
     * @param savedMinutes the difference, minutes; negative when the change costs time
     * @param lowMinutes lower end of its range
     * @param highMinutes upper end of its range
     * @param influences what the range is made of
     */
    public record Answer(
            Change change,
            RigChoice rig,
            State asItIs,
            State changed,
            double distanceM,
            double asItIsSeconds,
            double changedSeconds,
            double savedMinutes,
            double lowMinutes,
            double highMinutes,
            List<Influence> influences)
            implements Serializable {
        /** Copies the list. */
        public Answer {
            influences = List.copyOf(influences);
        }
    }

    /**
     * A change on a course ridden at a steady power, without wind. Where on the course a part lies makes no difference
     * here: only its length counts.
     *
     * @param course the road
     * @param powerW power at the pedals, watts, above 0
     * @param rig rider and bicycle as they are
     * @param air the air as it is
     * @throws IllegalArgumentException when a number lies outside its range or nothing is changed
     */
    public static Answer steady(Course course, double powerW, RigChoice rig, Air air, Change change) {
        Adjustment power = change.powerW();
        double changedW = power == null ? powerW : power.of(powerW);
        Measure density = air.density();
        double otherDensity = air.with(change.air()).density().value();
        // A density that is given for the change holds whatever it is now.
        boolean moves = change.air().densityKgPerM3() == null;
        WhatIf whatIf = new WhatIf(rig, change, trial -> {
            double factor = trial.densityKgPerM3() / density.value();
            RoadLoad asItIs = RoadLoad.of(trial.asItIs(), trial.densityKgPerM3());
            RoadLoad changed = RoadLoad.of(trial.changed(), moves ? otherDensity * factor : otherDensity);
            double seconds = asItIs.secondsFor(course, powerW, 0);
            return new Times(seconds, change.extent().share() * (seconds - changed.secondsFor(course, changedW, 0)));
        });
        return whatIf.answer(course.lengthM(), powerW, changedW, density, otherDensity, true);
    }

    /**
     * A change on a recorded ride, as {@link Replay} rides it again: same road, wind and stops.
     *
     * <p>The air of the ride counts as known: what it is wrong by, the drag area makes up for.
     *
     * @param ride a ride with power, distance and altitude
     * @param rig rider and bicycle as they were
     * @throws IllegalArgumentException when the ride cannot be replayed ({@link Replay#of} says why), a number lies
     *     outside its range, nothing is changed, or the change names one power for the whole ride
     */
    public static Answer replayed(Ride ride, RigChoice rig, Change change) {
        Adjustment power = change.powerW();
        if (power != null && power.kind() == Adjustment.Kind.TO) {
            throw new IllegalArgumentException("a ride has no one power: give a difference or a factor");
        }
        Replay recorded = replay(ride, rig.rig());
        Air air = Air.of(ride);
        Measure density = Measure.exactly(air.density().value(), Measure.Origin.ESTIMATED);
        double otherDensity = air.with(change.air()).density().value();
        Replay.Share part = change.extent().isSpread()
                ? Replay.Share.WHOLE
                : change.extent().part();
        double counted = change.extent().isSpread() ? change.extent().share() : 1;
        Series watts = power == null ? null : watts(ride, power, part);
        WhatIf whatIf = new WhatIf(rig, change, trial -> {
            Replay replay = trial.isCentral() ? recorded : replay(ride, trial.asItIs());
            // Air acts through density times drag area alone, so that thinner air is ridden as a smaller area.
            Rig other = inAir(trial.changed(), otherDensity / density.value());
            Replay.Result result = watts == null ? replay.withRig(other, part) : replay.with(watts, other, part);
            return new Times(replay.movingSeconds(), counted * result.savedSeconds());
        });
        return whatIf.answer(distanceM(ride), null, null, density, otherDensity, false);
    }

    private static Replay replay(Ride ride, Rig rig) {
        Replay.Attempt attempt = Replay.of(ride, rig);
        Replay replay = attempt.replay();
        if (replay == null) {
            throw new IllegalArgumentException("the ride cannot be ridden again: " + attempt.refusal());
        }
        return replay;
    }

    private static Rig inAir(Rig rig, double ratio) {
        return ratio == 1
                ? rig
                : new Rig(
                        rig.massKg(),
                        rig.dragAreaM2() * ratio,
                        rig.rollingResistance(),
                        rig.wheelRadiusM(),
                        rig.wheelInertiaKgM2(),
                        rig.driveEfficiency(),
                        rig.spokeDragAreaM2() * ratio);
    }

    /** The power of a ride with its pedalled seconds within a part of the distance adjusted, never below 0. */
    private static Series watts(Ride ride, Adjustment power, Replay.Share part) {
        Series watts = ride.series(Channel.POWER);
        Series distance = ride.series(Channel.DISTANCE);
        double[] ends = ends(ride);
        return Series.generate(watts.size(), second -> {
            double place = (distance.get(second) - ends[0]) / (ends[1] - ends[0]);
            boolean within = part.equals(Replay.Share.WHOLE) || (place >= part.from() && place < part.to());
            return within && watts.get(second) > 0 ? Math.max(0, power.of(watts.get(second))) : watts.get(second);
        });
    }

    private static double distanceM(Ride ride) {
        double[] ends = ends(ride);
        return ends[1] - ends[0];
    }

    /** The first and the last distance under way, metres. */
    private static double[] ends(Ride ride) {
        Series distance = ride.series(Channel.DISTANCE);
        double[] ends = {Double.NaN, Double.NaN};
        for (int second = 0; second < ride.seconds(); second++) {
            if (distance.isMeasured(second) && ride.state(second) == SecondState.RIDING) {
                ends[0] = Double.isNaN(ends[0]) ? distance.get(second) : ends[0];
                ends[1] = distance.get(second);
            }
        }
        return ends;
    }

    /** Both rigs and the density of one try; the central one is what the answer itself rests on. */
    private record Trial(Rig asItIs, Rig changed, double densityKgPerM3, boolean isCentral) {}

    private record Times(double asItIsSeconds, double savedSeconds) {}

    /** The inputs of one try. */
    private record Inputs(
            double riderKg,
            double bicycleKg,
            double dragAreaM2,
            double positionRatio,
            double rollingResistance,
            double densityKgPerM3) {
        Inputs with(Input input, double value) {
            return new Inputs(
                    input == Input.RIDER_MASS ? value : riderKg,
                    input == Input.BICYCLE_MASS ? value : bicycleKg,
                    input == Input.DRAG_AREA ? value : dragAreaM2,
                    input == Input.POSITION_RATIO ? value : positionRatio,
                    input == Input.ROLLING_RESISTANCE ? value : rollingResistance,
                    input == Input.AIR_DENSITY ? value : densityKgPerM3);
        }
    }

    private Answer answer(
            double distanceM,
            @Nullable Double powerW,
            @Nullable Double changedW,
            Measure density,
            double otherDensity,
            boolean densityCounts) {
        if (change.isNothing()) {
            throw new IllegalArgumentException("nothing is changed");
        }
        Measure ratio = change.position() == null
                ? Measure.exactly(1, Measure.Origin.GIVEN)
                : change.position().dragRatioFrom(rig.position());
        Inputs central = new Inputs(
                rig.riderKg().value(),
                rig.bicycleKg().value(),
                rig.dragAreaM2().value(),
                ratio.value(),
                rig.rollingResistance().value(),
                density.value());
        Rig before = rig.rig();
        Rig after = Rig.of(changedKg(central), changedAreaM2(central), changedRolling(central));
        Times times = ride.apply(new Trial(before, after, density.value(), true));

        List<Influence> influences = new ArrayList<>();
        add(influences, central, Input.RIDER_MASS, rig.riderKg());
        add(influences, central, Input.BICYCLE_MASS, rig.bicycleKg());
        add(influences, central, Input.DRAG_AREA, rig.dragAreaM2());
        add(influences, central, Input.POSITION_RATIO, ratio);
        add(influences, central, Input.ROLLING_RESISTANCE, rig.rollingResistance());
        if (densityCounts) {
            add(influences, central, Input.AIR_DENSITY, density);
        }
        double saved = times.savedSeconds() / SECONDS_PER_MINUTE;
        Measure model = Measure.within(1, MODEL_FRACTION, Measure.Origin.TYPICAL);
        influences.add(new Influence(Input.MODEL, model, saved * model.low(), saved * model.high()));
        double below = 0;
        double above = 0;
        for (Influence each : influences) {
            below += square(Math.min(0, Math.min(each.savedAtLowMinutes(), each.savedAtHighMinutes()) - saved));
            above += square(Math.max(0, Math.max(each.savedAtLowMinutes(), each.savedAtHighMinutes()) - saved));
        }
        return new Answer(
                change,
                rig,
                state(powerW, before, density.value()),
                state(changedW, after, otherDensity),
                distanceM,
                times.asItIsSeconds(),
                times.asItIsSeconds() - times.savedSeconds(),
                saved,
                saved - Math.sqrt(below),
                saved + Math.sqrt(above),
                influences);
    }

    private static double square(double value) {
        return value * value;
    }

    private static State state(@Nullable Double powerW, Rig rig, double density) {
        return new State(powerW, rig.massKg(), rig.dragAreaM2(), rig.rollingResistance(), density);
    }

    private void add(List<Influence> influences, Inputs central, Input input, Measure range) {
        if (range.hasRange()) {
            influences.add(new Influence(
                    input,
                    range,
                    savedMinutes(central.with(input, range.low())),
                    savedMinutes(central.with(input, range.high()))));
        }
    }

    private double savedMinutes(Inputs inputs) {
        Trial trial = new Trial(
                possible(inputs.riderKg() + inputs.bicycleKg(), inputs.dragAreaM2(), inputs.rollingResistance()),
                possible(changedKg(inputs), changedAreaM2(inputs), changedRolling(inputs)),
                inputs.densityKgPerM3(),
                false);
        return ride.apply(trial).savedSeconds() / SECONDS_PER_MINUTE;
    }

    /** An end of a range may lie beyond what a rig can be: then it is the nearest that can. */
    private static Rig possible(double massKg, double dragAreaM2, double rollingResistance) {
        return Rig.of(
                Bounds.RIG_MASS_KG.nearest(massKg),
                Bounds.DRAG_AREA_M2.nearest(dragAreaM2),
                Bounds.ROLLING_RESISTANCE.nearest(rollingResistance));
    }

    private double changedKg(Inputs inputs) {
        Adjustment mass = change.riderKg();
        return (mass == null ? inputs.riderKg() : mass.of(inputs.riderKg())) + inputs.bicycleKg();
    }

    private double changedAreaM2(Inputs inputs) {
        Adjustment area = change.dragAreaM2();
        return area == null
                ? inputs.dragAreaM2() * inputs.positionRatio()
                : adjusted(area, inputs.dragAreaM2(), rig.dragAreaM2());
    }

    private double changedRolling(Inputs inputs) {
        Adjustment rolling = change.rollingResistance();
        return rolling == null
                ? inputs.rollingResistance()
                : adjusted(rolling, inputs.rollingResistance(), rig.rollingResistance());
    }

    /** Who gives both values has them from one source, and they are off together. */
    private static double adjusted(Adjustment adjustment, double number, Measure asItIs) {
        boolean areOffTogether = adjustment.kind() == Adjustment.Kind.TO && asItIs.origin() == Measure.Origin.GIVEN;
        return areOffTogether ? adjustment.amount() * number / asItIs.value() : adjustment.of(number);
    }
}
