package io.github.wattledger.intake;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.history.OwnThreshold;
import io.github.wattledger.history.RiderHistory;
import io.github.wattledger.power.ThresholdBasis;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.rider.ThresholdHistory;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What speaks against the threshold power that a rider profile gives for a day. */
final class ProfileNotes {
    /** From this share of the threshold on, efforts contradict it; less lies within the accuracy of a meter. */
    private static final double CONTRADICTED_FROM = 1.03;

    private ProfileNotes() {}

    static List<QualityNote> of(
            ThresholdHistory thresholds, double watts, LocalDate day, @Nullable RiderHistory history) {
        List<QualityNote> notes = new ArrayList<>();
        if (thresholds.isBeforeFirstPower(day)) {
            notes.add(new QualityNote(
                    "threshold-later-than-ride",
                    null,
                    "The rider profile knows no threshold power of " + day
                            + ": its first one, of a later day, was taken."));
        }
        if (history == null) {
            return notes;
        }
        LocalDate since = thresholds.powerSince(day);
        if (since != null && since.isBefore(day.minusDays(ThresholdBasis.RECENT_DAYS))) {
            notes.add(new QualityNote(
                    "threshold-old",
                    null,
                    "The threshold power of the rider profile was " + ChronoUnit.DAYS.between(since, day)
                            + " days old: ranges that rest on it are wider."));
        }
        OwnThreshold own = history.threshold();
        if (own != null && own.impliedW() > CONTRADICTED_FROM * watts) {
            notes.add(new QualityNote(
                    "threshold-below-own-rides",
                    null,
                    "An effort of " + own.day() + " implies a threshold power of " + Decimals.of(own.impliedW(), 0)
                            + " W, more than the " + Decimals.of(watts, 0)
                            + " W of the rider profile. The profile's value was used; check it."));
        }
        return notes;
    }
}
