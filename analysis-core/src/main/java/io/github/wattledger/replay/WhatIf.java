package io.github.wattledger.replay;

import io.github.wattledger.course.Course;
import io.github.wattledger.replay.Influence.Input;
import io.github.wattledger.replay.Uncertainty.Inputs;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.OffTogether;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.rig.RoadLoad;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * How much time another position, mass, tyre, air or power is worth: on a course at a steady power ({@link #steady}), or
 * on a recorded ride ({@link #replayed}).
 *
 * <p>An answer is a number of minutes with a range. For the range each input that is not known exactly is put at its
 * lowest and its highest plausible value, one after another while the others stay, and the deviations to either side are
 * added as squares, as those of independent errors are. Drag area, rolling resistance and mass of one estimate are off
 * together ({@link io.github.wattledger.rig.OffTogether}). A change that is meant relative (a position, a difference, a
 * factor) moves along with what it changes. A wind, a bunch and the rider are not in the range.
 */
public final class WhatIf {
    private static final double SECONDS_PER_MINUTE = 60;

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
     * @param isSpread whether it is spread evenly over the whole distance instead of lying in one place
     */
    public record Extent(Replay.Share part, boolean isSpread) implements Serializable {
        /** The whole distance. */
        public static final Extent WHOLE = new Extent(Replay.Share.WHOLE, true);

        /**
         * A share of the distance, with the same share of every kind of road.
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

        /** The share of the distance that it covers, 0 to 1. */
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
     * @param bunchSaving the share of the drag that a bunch saves, above 0 and at most {@link Shelter#MOST_SAVING}; not together
     *     with {@code position} or {@code dragAreaM2}
     * @param extent over how much of the distance
     */
    public record Change(
            @Nullable Position position,
            @Nullable Adjustment dragAreaM2,
            @Nullable Adjustment riderKg,
            @Nullable Adjustment rollingResistance,
            @Nullable Adjustment powerW,
            Air air,
            @Nullable Double bunchSaving,
            Extent extent)
            implements Serializable {
        /** Nothing is changed, over the whole distance. A change starts from here. */
        public static final Change NOTHING = new Change(null, null, null, null, null, Air.UNKNOWN, null, Extent.WHOLE);

        /** @throws IllegalArgumentException when two of them change the drag area, or the saving is out of range */
        public Change {
            if (bunchSaving != null && (position != null || dragAreaM2 != null)) {
                throw new IllegalArgumentException("a bunch counts as another drag area: give one of them");
            }
            if (bunchSaving != null && !(bunchSaving > 0 && bunchSaving <= Shelter.MOST_SAVING)) {
                throw new IllegalArgumentException(
                        "bunchSaving " + bunchSaving + ", expected above 0 and at most " + Shelter.MOST_SAVING);
            }
            if (position != null && dragAreaM2 != null) {
                throw new IllegalArgumentException("another position is another drag area: give one of them");
            }
        }

        /** This change with another position. */
        public Change withPosition(Position other) {
            return new Change(other, dragAreaM2, riderKg, rollingResistance, powerW, air, bunchSaving, extent);
        }

        /** This change with another drag area. */
        public Change withDragAreaM2(Adjustment other) {
            return new Change(position, other, riderKg, rollingResistance, powerW, air, bunchSaving, extent);
        }

        /** This change with another mass of the rider. */
        public Change withRiderKg(Adjustment other) {
            return new Change(position, dragAreaM2, other, rollingResistance, powerW, air, bunchSaving, extent);
        }

        /** This change with another rolling resistance. */
        public Change withRollingResistance(Adjustment other) {
            return new Change(position, dragAreaM2, riderKg, other, powerW, air, bunchSaving, extent);
        }

        /** This change with another power. */
        public Change withPowerW(Adjustment other) {
            return new Change(position, dragAreaM2, riderKg, rollingResistance, other, air, bunchSaving, extent);
        }

        /** This change with other air. */
        public Change withAir(Air other) {
            return new Change(position, dragAreaM2, riderKg, rollingResistance, powerW, other, bunchSaving, extent);
        }

        /** This change in a bunch that saves a share of the drag, above 0 and at most {@link Shelter#MOST_SAVING}. */
        public Change withBunchSaving(double savedShare) {
            return new Change(position, dragAreaM2, riderKg, rollingResistance, powerW, air, savedShare, extent);
        }

        /** This change over another part of the distance. */
        public Change over(Extent other) {
            return new Change(position, dragAreaM2, riderKg, rollingResistance, powerW, air, bunchSaving, other);
        }

        private boolean isNothing() {
            return equals(NOTHING.over(extent));
        }
    }

    /**
     * The numbers that the model computes with, once as they are and once with the change.
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
     * @param asItIs the numbers of the model as they are
     * @param changed the numbers of the model where the change holds
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
     * A change on a recorded ride, as {@link Replay} replays it: same road, wind and stops.
     *
     * <p>The air of the ride counts as known: the drag area that was estimated with it makes up for its error.
     *
     * @param ride a ride with power, distance and altitude
     * @param course the course of this ride, or null where it leads nowhere
     * @param rig rider and bicycle as they were
     * @return the answer; refused where {@link Replay#of} refuses the ride
     * @throws IllegalArgumentException when a number lies outside its range, nothing is changed, or the change names one
     *     power for the whole ride
     */
    public static Outcome<Answer> replayed(Ride ride, @Nullable Course course, RigChoice rig, Change change) {
        Adjustment power = change.powerW();
        if (power != null && power.kind() == Adjustment.Kind.TO) {
            throw new IllegalArgumentException("a ride has no one power: give a difference or a factor");
        }
        Outcome<Replay> outcome = Replay.of(ride, course, rig.rig());
        if (outcome instanceof Outcome.Refused<Replay> refused) {
            return Outcome.refused(refused.reason());
        }
        Replay recorded = outcome.orElseThrow(AssertionError::new);
        Air air = Air.of(ride);
        Measure density = Measure.exactly(air.density().value(), Measure.Origin.ESTIMATED);
        double otherDensity = air.with(change.air()).density().value();
        Replay.Share part = change.extent().isSpread()
                ? Replay.Share.WHOLE
                : change.extent().part();
        double counted = change.extent().isSpread() ? change.extent().share() : 1;
        RiddenDistance distance = new RiddenDistance(ride);
        Series watts = power == null ? null : distance.watts(power, part);
        WhatIf whatIf = new WhatIf(rig, change, trial -> {
            // Whether a ride can be replayed does not depend on the rig, so this one is never refused.
            Replay replay = trial.isCentral()
                    ? recorded
                    : Replay.of(ride, course, trial.asItIs()).orElseThrow(AssertionError::new);
            // Air acts through density times drag area alone, so that thinner air is ridden as a smaller area.
            Rig other = inAir(trial.changed(), otherDensity / density.value());
            Freewheeling freewheeling = trial.freewheeling();
            Replay.Result result = watts == null
                    ? replay.withRig(other, part, freewheeling)
                    : replay.with(watts, other, part, freewheeling);
            return new Times(replay.movingSeconds(), counted * result.savedSeconds());
        });
        return Outcome.of(whatIf.answer(distance.lengthM(), null, null, density, otherDensity, false));
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

    /** Both rigs and the density of one computation; the answer itself rests on the central one. */
    private record Trial(
            Rig asItIs, Rig changed, double densityKgPerM3, boolean isCentral, Freewheeling freewheeling) {}

    private record Times(double asItIsSeconds, double savedSeconds) {}

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
        Map<Input, Measure> ranges = new EnumMap<>(Input.class);
        ranges.put(Input.RIDER_MASS, rig.riderKg());
        ranges.put(Input.BICYCLE_MASS, rig.bicycleKg());
        ranges.put(Input.DRAG_AREA, rig.dragAreaM2());
        ranges.put(Input.POSITION_RATIO, ratio);
        OffTogether together = rig.offTogether();
        ranges.put(Input.ROLLING_RESISTANCE, rig.rollingResistance().narrowedTo(together.rollingResistanceAlone()));
        if (densityCounts) {
            ranges.put(Input.AIR_DENSITY, density);
        }
        Rig before = rig.rig();
        Rig after = Rig.of(changedKg(central), changedAreaM2(central), changedRolling(central));
        Times times = ride.apply(new Trial(before, after, density.value(), true, Freewheeling.AS_RECORDED));
        double saved = times.savedSeconds() / SECONDS_PER_MINUTE;
        Uncertainty uncertainty = Uncertainty.of(
                saved, central, ranges, together, brakes(before, after, density.value()), this::savedMinutes);
        return new Answer(
                change,
                rig,
                state(powerW, before, density.value()),
                state(changedW, after, otherDensity),
                distanceM,
                times.asItIsSeconds(),
                times.asItIsSeconds() - times.savedSeconds(),
                saved,
                uncertainty.lowMinutes(),
                uncertainty.highMinutes(),
                uncertainty.influences());
    }

    /** What the brakes do to the answer; nothing where nothing was freewheeled that the other rig would ride faster. */
    private Optional<Influence> brakes(Rig before, Rig after, double density) {
        double never = minutes(new Trial(before, after, density, true, Freewheeling.NEVER_FASTER));
        double least = minutes(new Trial(before, after, density, true, Freewheeling.LEAST_BRAKES));
        Measure share = new Measure(1, 0, 1, Measure.Origin.TYPICAL);
        return never == least ? Optional.empty() : Optional.of(new Influence(Input.BRAKES, share, never, least));
    }

    private double minutes(Trial trial) {
        return ride.apply(trial).savedSeconds() / SECONDS_PER_MINUTE;
    }

    private static State state(@Nullable Double powerW, Rig rig, double density) {
        return new State(powerW, rig.massKg(), rig.dragAreaM2(), rig.rollingResistance(), density);
    }

    private double savedMinutes(Inputs inputs) {
        Trial trial = new Trial(
                possible(inputs.riderKg() + inputs.bicycleKg(), inputs.dragAreaM2(), inputs.rollingResistance()),
                possible(changedKg(inputs), changedAreaM2(inputs), changedRolling(inputs)),
                inputs.densityKgPerM3(),
                false,
                Freewheeling.AS_RECORDED);
        return minutes(trial);
    }

    /** The rig of these numbers, each brought within its bounds: the end of a range may lie beyond them. */
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
        Double saving = change.bunchSaving();
        if (saving != null) {
            return inputs.dragAreaM2() * (1 - saving);
        }
        return area == null
                ? inputs.dragAreaM2() * inputs.positionRatio()
                : area.of(inputs.dragAreaM2(), rig.dragAreaM2());
    }

    private double changedRolling(Inputs inputs) {
        Adjustment rolling = change.rollingResistance();
        return rolling == null
                ? inputs.rollingResistance()
                : rolling.of(inputs.rollingResistance(), rig.rollingResistance());
    }
}
