package io.github.wattledger.season;

import io.github.wattledger.history.HeartRateOnPower;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.history.RiderHistory;
import io.github.wattledger.history.RiderTraits;
import io.github.wattledger.history.ThresholdMove;
import io.github.wattledger.history.ThresholdProposal;
import io.github.wattledger.intake.Known;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a season's rides say of their rider on the day after its last one.
 *
 * @param onDay the rider on that day: thresholds with their origin, and what speaks against them
 * @param history what the rides say about what the rider can do
 * @param traits what they tell beside that
 * @param sustainable what the rider can be expected to hold over 2, 5 and 10 hours; empty without a threshold
 * @param thresholds threshold power by date as the rides show it, from the rider's own last entry on, or from the first rides
 *     where there is none
 * @param moves what moved it, and proposed falls, which are not among the thresholds
 */
public record RiderFromRides(
        RiderOnDay onDay,
        RiderHistory history,
        RiderTraits traits,
        List<OverHours> sustainable,
        ThresholdHistory thresholds,
        List<ThresholdMove> moves)
        implements Serializable {
    /** The durations that are said, hours. */
    private static final List<Integer> HOURS = List.of(2, 5, 10);

    /** The share of threshold power at which heart rate is said: riding for hours. Own choice. */
    public static final double EASY_SHARE = 0.70;

    private static final int SECONDS_PER_HOUR = 3600;

    /**
     * What can be held for so long.
     *
     * @param hours how long, hours
     * @param power the power, with its range and origin
     */
    public record OverHours(int hours, SustainablePower power) implements Serializable {}

    /** Copies the lists. */
    public RiderFromRides {
        sustainable = List.copyOf(sustainable);
        moves = List.copyOf(moves);
    }

    /**
     * What rides say.
     *
     * @param own the rides
     * @param rider what the rider says
     * @param last the last day of the season
     */
    static RiderFromRides of(OwnRides own, Rider rider, LocalDate last) {
        LocalDate day = last.plusDays(1);
        RiderOnDay onDay = RiderOnDay.of(rider, RecordingDevice.UNKNOWN, day, own);
        RiderHistory history = own.on(day);
        ThresholdProposal proposal = own.proposedThresholds();
        return new RiderFromRides(
                onDay,
                history,
                own.traitsOn(day),
                sustainable(onDay, history),
                proposal.thresholds(),
                proposal.moves());
    }

    private static List<OverHours> sustainable(RiderOnDay onDay, RiderHistory history) {
        Known threshold = onDay.thresholdPower();
        List<OverHours> powers = new ArrayList<>();
        if (threshold == null) {
            return powers;
        }
        OwnEndurance endurance = history.endurance().found().orElse(null);
        for (int hours : HOURS) {
            int seconds = SECONDS_PER_HOUR * hours;
            SustainablePower guide = SustainablePower.guide(threshold.value(), seconds, onDay.thresholdBasis());
            SustainablePower power = endurance == null
                    ? guide
                    : endurance.over(threshold.value(), seconds).orElse(guide);
            powers.add(new OverHours(hours, power));
        }
        return powers;
    }

    /** Heart rate at {@link #EASY_SHARE} of threshold power, or why it is not known. */
    public Outcome<HeartRateOnPower> easyHeartRate() {
        Double thresholdW = onDay.thresholdPowerW();
        return thresholdW == null
                ? Outcome.refused("no threshold power is known")
                : traits.heartRateAt(EASY_SHARE * thresholdW);
    }

    /** The newest fall that is proposed since the threshold last rose; null where there is none. */
    public @Nullable ThresholdMove proposedFall() {
        ThresholdMove newest = moves.isEmpty() ? null : moves.get(moves.size() - 1);
        return newest == null || newest.isRise() ? null : newest;
    }
}
