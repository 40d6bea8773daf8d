package io.github.wattledger.road;

import io.github.wattledger.ride.Gears;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The rig that a replay is computed with, and where each of its numbers comes from: what the rider gave, else what the
 * ride itself tells, else typical values.
 *
 * @param rig rider and bicycle
 * @param words where the numbers come from, a sentence
 * @param gears the gears, or null where they are not known
 */
public record RigChoice(Rig rig, String words, @Nullable Gears gears) implements Serializable {
    /**
     * Chooses a rig for a ride.
     *
     * @param riderMassKg mass of the rider, or null
     * @param bicycleMassKg mass of the bicycle with all that is on it, or null
     * @param dragAreaM2 drag area, m2, or null
     * @param rollingResistance coefficient of rolling resistance, or null
     */
    public static RigChoice of(
            Ride ride,
            @Nullable Double riderMassKg,
            @Nullable Double bicycleMassKg,
            @Nullable Double dragAreaM2,
            @Nullable Double rollingResistance) {
        double rider = riderMassKg == null ? Rig.TYPICAL_RIDER_KG : riderMassKg;
        double bicycle = bicycleMassKg == null ? Rig.TYPICAL_BICYCLE_KG : bicycleMassKg;
        List<String> given = new ArrayList<>();
        List<String> typical = new ArrayList<>();
        List<String> estimated = new ArrayList<>();
        (riderMassKg == null ? typical : given).add(String.format(java.util.Locale.ROOT, "rider %.0f kg", rider));
        (bicycleMassKg == null ? typical : given).add(String.format(java.util.Locale.ROOT, "bicycle %.0f kg", bicycle));
        double area = Position.HOODS.dragAreaM2();
        double rolling = Rig.TYPICAL_ROLLING_RESISTANCE;
        List<String> areaFrom = typical;
        List<String> rollingFrom = typical;
        if (dragAreaM2 == null || rollingResistance == null) {
            RigEstimate estimate = RigEstimate.of(ride, rider + bicycle);
            if (estimate.isAccepted()) {
                area = estimate.dragAreaM2();
                rolling = estimate.rollingResistance();
                areaFrom = estimated;
                rollingFrom = estimated;
            }
        }
        if (dragAreaM2 != null) {
            area = dragAreaM2;
            areaFrom = given;
        }
        if (rollingResistance != null) {
            rolling = rollingResistance;
            rollingFrom = given;
        }
        areaFrom.add(String.format(java.util.Locale.ROOT, "drag area %.2f m2", area));
        rollingFrom.add(String.format(java.util.Locale.ROOT, "rolling resistance %.4f", rolling));
        return new RigChoice(Rig.of(rider + bicycle, area, rolling), words(given, estimated, typical), null);
    }

    /** The same with other gears. */
    public RigChoice withGears(@Nullable Gears other) {
        return new RigChoice(rig, words, other);
    }

    private static String words(List<String> given, List<String> estimated, List<String> typical) {
        List<String> parts = new ArrayList<>();
        add(parts, given, "as given");
        add(parts, estimated, "estimated from this ride");
        add(parts, typical, "typical values");
        return "The prices rest on " + String.join("; ", parts) + ".";
    }

    private static void add(List<String> parts, List<String> numbers, String source) {
        if (!numbers.isEmpty()) {
            parts.add(String.join(", ", numbers) + " (" + source + ")");
        }
    }
}
