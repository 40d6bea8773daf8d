package io.github.wattledger.rig;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.Gears;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The rig that a replay is computed with, and where each of its numbers comes from: what the rider gave, otherwise what
 * the ride itself shows, otherwise typical values.
 *
 * @param riderKg mass of the rider, kg
 * @param bicycleKg mass of the bicycle with all that is on it, kg
 * @param dragAreaM2 drag area, m2
 * @param rollingResistance coefficient of rolling resistance
 * @param position how the rider sits
 * @param gears the gears, or null where they are not known
 * @param estimate what the ride itself shows, or why it shows nothing; null where it was not asked
 */
public record RigChoice(
        Measure riderKg,
        Measure bicycleKg,
        Measure dragAreaM2,
        Measure rollingResistance,
        Position position,
        @Nullable Gears gears,
        @Nullable Outcome<RigEstimate> estimate)
        implements Serializable {
    // Ranges of what nobody measured. Common practice, no source; drag area as Position says.
    private static final double LIGHT_RIDER_KG = 60;
    private static final double HEAVY_RIDER_KG = 90;
    private static final double LIGHT_BICYCLE_KG = 8;
    private static final double LOADED_BICYCLE_KG = 16;
    private static final double TYPICAL_DRAG_FRACTION = 0.25;

    /** Good asphalt and hard gravel; from memory, as {@link Rig#TYPICAL_ROLLING_RESISTANCE}. */
    private static final double SMOOTH_ROLLING_RESISTANCE = 0.004;

    private static final double GRAVEL_ROLLING_RESISTANCE = 0.012;

    /** From here on the ground counts as unpaved, between rough asphalt and gravel. Own choice. */
    private static final double UNPAVED_ROLLING_RESISTANCE = 0.009;

    // How far a number that the rider gave can be off. A field test repeats to some percent, and how well a tyre rolls
    // depends on road and weather.
    private static final double GIVEN_DRAG_FRACTION = 0.05;
    private static final double GIVEN_ROLLING_FRACTION = 0.10;

    // How far the middle of several rides can be off on the next road. Own choices.
    private static final double OWN_DRAG_FRACTION = 0.08;
    private static final double OWN_ROLLING_RANGE = 0.002;

    /** The range of an estimate in standard errors: it holds 19 times in 20 as far as the errors are chance. */
    private static final double STANDARD_ERRORS = 2;

    /**
     * Chooses a rig without a ride.
     *
     * @param riderMassKg mass of the rider, kg, or null
     * @param bicycleMassKg mass of the bicycle with all that is on it, kg, or null
     * @param dragAreaM2 drag area, m2, or null for the typical one of the position
     * @param rollingResistance coefficient of rolling resistance, or null
     * @param position how the rider sits
     * @throws IllegalArgumentException when a number lies outside its range
     */
    public static RigChoice ofNoRide(
            @Nullable Double riderMassKg,
            @Nullable Double bicycleMassKg,
            @Nullable Double dragAreaM2,
            @Nullable Double rollingResistance,
            Position position) {
        return new RigChoice(
                riderMassKg == null
                        ? new Measure(Rig.TYPICAL_RIDER_KG, LIGHT_RIDER_KG, HEAVY_RIDER_KG, Measure.Origin.TYPICAL)
                        : Measure.exactly(riderMassKg, Measure.Origin.GIVEN),
                bicycleMassKg == null
                        ? new Measure(
                                Rig.TYPICAL_BICYCLE_KG, LIGHT_BICYCLE_KG, LOADED_BICYCLE_KG, Measure.Origin.TYPICAL)
                        : Measure.exactly(bicycleMassKg, Measure.Origin.GIVEN),
                dragAreaM2 == null
                        ? area(position.dragAreaM2(), TYPICAL_DRAG_FRACTION, Measure.Origin.TYPICAL)
                        : area(dragAreaM2, GIVEN_DRAG_FRACTION, Measure.Origin.GIVEN),
                rollingResistance == null
                        ? new Measure(
                                Rig.TYPICAL_ROLLING_RESISTANCE,
                                SMOOTH_ROLLING_RESISTANCE,
                                GRAVEL_ROLLING_RESISTANCE,
                                Measure.Origin.TYPICAL)
                        : rolling(rollingResistance, GIVEN_ROLLING_FRACTION, Measure.Origin.GIVEN),
                position,
                null,
                null);
    }

    private static Measure area(double areaM2, double fraction, Measure.Origin origin) {
        Bounds.DRAG_AREA_M2.require("dragAreaM2", areaM2);
        return Measure.within(areaM2, fraction, origin).boundedBy(Bounds.DRAG_AREA_M2);
    }

    private static Measure rolling(double coefficient, double fraction, Measure.Origin origin) {
        Bounds.ROLLING_RESISTANCE.require("rollingResistance", coefficient);
        return Measure.within(coefficient, fraction, origin).boundedBy(Bounds.ROLLING_RESISTANCE);
    }

    /**
     * This choice with drag area and rolling resistance estimated from a ride where they were not given and the ride
     * shows them.
     *
     * @param course the course of this ride, or null where it leads nowhere
     */
    public RigChoice estimatedFrom(Ride ride, @Nullable Course course) {
        return isOpen() ? estimatedBy(RigEstimate.of(ride, course, totalKg())) : this;
    }

    /**
     * This choice with what the rider's own earlier rides show where nothing was given.
     *
     * @param ownDragAreaM2 drag area, m2, or null
     * @param ownRollingResistance coefficient of rolling resistance, or null
     */
    public RigChoice fromOwnRides(@Nullable Double ownDragAreaM2, @Nullable Double ownRollingResistance) {
        return new RigChoice(
                riderKg,
                bicycleKg,
                ownDragAreaM2 == null || !isOpen(dragAreaM2)
                        ? dragAreaM2
                        : area(ownDragAreaM2, OWN_DRAG_FRACTION, Measure.Origin.OWN_RIDES),
                ownRollingResistance == null || !isOpen(rollingResistance)
                        ? rollingResistance
                        : new Measure(
                                        ownRollingResistance,
                                        ownRollingResistance - OWN_ROLLING_RANGE,
                                        ownRollingResistance + OWN_ROLLING_RANGE,
                                        Measure.Origin.OWN_RIDES)
                                .boundedBy(Bounds.ROLLING_RESISTANCE),
                position,
                gears,
                estimate);
    }

    /**
     * This choice with the numbers of an estimate where they were not given.
     *
     * @param outcome made with {@link #totalKg()}; a refusal leaves the typical numbers and is named in {@link #words()}
     */
    public RigChoice estimatedBy(Outcome<RigEstimate> outcome) {
        if (!isOpen()) {
            return this;
        }
        RigEstimate found = outcome.found().orElse(null);
        return new RigChoice(
                riderKg,
                bicycleKg,
                found == null || !isOpen(dragAreaM2)
                        ? dragAreaM2
                        : area(
                                found.dragAreaM2(),
                                share(found.dragAreaErrorM2(), found.dragAreaM2()),
                                Measure.Origin.ESTIMATED),
                found == null || !isOpen(rollingResistance)
                        ? rollingResistance
                        : rolling(
                                found.rollingResistance(),
                                share(found.rollingResistanceError(), found.rollingResistance()),
                                Measure.Origin.ESTIMATED),
                position,
                gears,
                outcome);
    }

    /** What of the numbers is off together, because one ride gave them. */
    public OffTogether offTogether() {
        RigEstimate found = estimate == null ? null : estimate.found().orElse(null);
        if (found == null) {
            return OffTogether.NOTHING;
        }
        boolean areaIsFound = dragAreaM2.origin() == Measure.Origin.ESTIMATED;
        boolean rollingIsFound = rollingResistance.origin() == Measure.Origin.ESTIMATED;
        OffTogether pair = found.together();
        return areaIsFound && rollingIsFound
                ? pair
                : new OffTogether(
                        areaIsFound ? pair.dragAreaM2PerKg() : 0,
                        rollingIsFound ? pair.rollingResistancePerKg() : 0,
                        0,
                        1);
    }

    private boolean isOpen() {
        return isOpen(dragAreaM2) || isOpen(rollingResistance);
    }

    private static boolean isOpen(Measure number) {
        return number.origin() == Measure.Origin.TYPICAL;
    }

    private static double share(double standardError, double of) {
        return STANDARD_ERRORS * standardError / of;
    }

    /** This choice with other gears. */
    public RigChoice withGears(@Nullable Gears other) {
        return new RigChoice(riderKg, bicycleKg, dragAreaM2, rollingResistance, position, other, estimate);
    }

    /** This choice with another origin of the rider's mass. */
    public RigChoice withRiderFrom(Measure.Origin origin) {
        Measure rider = new Measure(riderKg.value(), riderKg.low(), riderKg.high(), origin);
        return new RigChoice(rider, bicycleKg, dragAreaM2, rollingResistance, position, gears, estimate);
    }

    /** Whether the rolling resistance is that of unpaved ground. */
    public boolean isUnpaved() {
        return rollingResistance.value() >= UNPAVED_ROLLING_RESISTANCE;
    }

    /** Rider and bicycle together, kg. */
    public double totalKg() {
        return riderKg.value() + bicycleKg.value();
    }

    /**
     * Rider and bicycle as the road feels them.
     *
     * @throws IllegalArgumentException when both masses together lie outside what a rig can have
     */
    public Rig rig() {
        return Rig.of(totalKg(), dragAreaM2.value(), rollingResistance.value());
    }

    /** Where the numbers come from, a sentence, and a second one where the ride itself gave no drag and rolling. */
    public String words() {
        return "The prices rest on " + numbers() + "."
                + refusal().map(reason -> " " + reason).orElse("");
    }

    /** Why drag area and rolling resistance are not those of the ride, a sentence; empty where nothing was refused. */
    public Optional<String> refusal() {
        Optional<String> reason = estimate == null ? Optional.empty() : estimate.refusal();
        return reason.map(
                each -> "Drag area and rolling resistance could not be estimated from the ride: " + each + ".");
    }

    /** The numbers with their origins, a clause. */
    public String numbers() {
        Map<Measure.Origin, List<String>> byOrigin = new EnumMap<>(Measure.Origin.class);
        add(byOrigin, riderKg, "rider", 0, " kg");
        add(byOrigin, bicycleKg, "bicycle", 0, " kg");
        add(byOrigin, dragAreaM2, "drag area", 2, " m2");
        add(byOrigin, rollingResistance, "rolling resistance", 4, "");
        List<String> parts = new ArrayList<>();
        byOrigin.forEach((origin, numbers) -> parts.add(String.join(", ", numbers) + " (" + origin.words() + ")"));
        return String.join("; ", parts);
    }

    private static void add(
            Map<Measure.Origin, List<String>> byOrigin, Measure number, String name, int decimals, String unit) {
        byOrigin.computeIfAbsent(number.origin(), none -> new ArrayList<>())
                .add(name + " " + Decimals.of(number.value(), decimals) + unit);
    }
}
