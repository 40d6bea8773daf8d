package io.github.wattledger;

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
import io.github.wattledger.rider.RideNotes;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A review without its seconds, small enough to be kept by the thousand: all numbers, findings and notes, but neither the
 * recording second by second nor the best of every duration. {@link RideReview#withoutSeconds()} makes one.
 *
 * @param source where the numbers come from
 * @param rider what holds of the rider on the day of the ride
 * @param quality how good the recording was, and what was changed in it
 * @param load how hard the reviewed part was
 * @param deviceTotals what the device computed for the whole session, or null; without power, none that rests on it
 * @param bests best mean power over the durations of {@link MeanMaximalCurve#logSpacedSeconds()}, ascending; empty without
 *     power
 * @param ability what the rider could be expected to hold; its evidence has no {@link AbilityEvidence#balance()}
 * @param spending how the ride spent its rider's W′, or null while W′ is not known
 * @param pacing how well it was paced
 * @param recordedSeconds length of the whole recording, seconds
 * @param reviewed the seconds of it that were asked for; load, bests and climbs are of them
 * @param climbs its climbs in the order in which they were ridden, or null without altitude or distance
 * @param gearUse which gears the reviewed part was ridden in, or null without gears, speed or cadence
 * @param fuel what the reviewed part asked of the body, or null without power or a threshold power that can be relied on
 * @param notes what the rider wrote down about the ride
 */
public record ReviewSummary(
        RideSource source,
        RiderOnDay rider,
        QualityReport quality,
        RideLoad load,
        @Nullable DeviceTotals deviceTotals,
        List<MeanMaximalCurve.Window> bests,
        Ability ability,
        AbilityEvidence.@Nullable Spending spending,
        PacingReview pacing,
        int recordedSeconds,
        Interval reviewed,
        @Nullable List<ClimbReview> climbs,
        @Nullable GearUse gearUse,
        @Nullable FuelReview fuel,
        RideNotes notes)
        implements Serializable {
    /** Copies the lists. */
    public ReviewSummary {
        bests = List.copyOf(bests);
        climbs = climbs == null ? null : List.copyOf(climbs);
    }
}
