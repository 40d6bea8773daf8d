package io.github.wattledger;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.course.ClimbReview;
import io.github.wattledger.course.GearUse;
import io.github.wattledger.energy.FuelReview;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.RideNotes;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything a report shows about one ride.
 *
 * @param source where the numbers come from
 * @param rider what holds of the rider on the day of the ride
 * @param quality how good the recording was, and what was changed in it
 * @param load how hard the reviewed part was
 * @param deviceTotals what the device computed for the whole session, or null; without power, none that rests on it
 * @param curve best mean power over any duration within the reviewed part
 * @param ability what the rider could be expected to hold
 * @param pacing how well it was paced
 * @param ride the cleaned one-second recording, whole
 * @param reviewed the seconds of it that were asked for; load, curve and climbs are of them
 * @param climbs its climbs in the order in which they were ridden, or null without altitude or distance
 * @param gearUse which gears the reviewed part was ridden in, or null without gears, speed or cadence
 * @param fuel what the reviewed part asked of the body, or null without power or a threshold power that can be
 *     relied on, and for a rider who may be under 18: its numbers are of adults
 * @param notes what the rider wrote down about the ride, as far as it lies within the recording
 */
public record RideReview(
        RideSource source,
        RiderOnDay rider,
        QualityReport quality,
        RideLoad load,
        @Nullable DeviceTotals deviceTotals,
        MeanMaximalCurve curve,
        Ability ability,
        PacingReview pacing,
        Ride ride,
        Interval reviewed,
        @Nullable List<ClimbReview> climbs,
        @Nullable GearUse gearUse,
        @Nullable FuelReview fuel,
        RideNotes notes)
        implements Serializable {
    /** Copies the list. */
    public RideReview {
        climbs = climbs == null ? null : List.copyOf(climbs);
    }

    /** Whether a threshold power that somebody or something named is not believed; a note on the quality says why. */
    public boolean isThresholdDoubtful() {
        return thresholdDoubt() != null;
    }

    /** Why a threshold power that somebody or something named is not believed, a sentence or two; null where it is. */
    public @Nullable String thresholdDoubt() {
        return quality.notes().stream()
                .filter(note -> note.code().equals(ReviewNotes.THRESHOLD_DOUBTFUL))
                .map(QualityNote::text)
                .findFirst()
                .orElse(null);
    }

    /**
     * This review without its seconds, for a cache: tens of kilobytes where a long ride takes megabytes. It keeps no best
     * but those of about 40 durations, and nothing that a drawing needs ({@link RideDetail}).
     */
    public ReviewSummary withoutSeconds() {
        AbilityEvidence evidence = ability.evidence();
        return new ReviewSummary(
                source,
                rider,
                quality,
                load,
                deviceTotals,
                curve.logSpacedSeconds().stream().map(curve::bestWindow).toList(),
                ability.withoutBalance(),
                evidence == null ? null : evidence.spending(),
                pacing.withoutSeconds(),
                ride.seconds(),
                reviewed,
                climbs,
                gearUse,
                fuel,
                notes);
    }
}
