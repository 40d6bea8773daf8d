package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.ArrayList;
import java.util.List;

/** What was not looked at in a ride, and why, a sentence each. */
final class LeftOut {
    private LeftOut() {}

    /** The sentences, in the order in which they are reported. */
    static List<String> of(Race race, boolean isRace, Company company) {
        List<String> leftOut = new ArrayList<>();
        if (!isRace && company.isSaid()) {
            leftOut.add(PacingReview.BUNCH_CHANGES_NOTHING);
        }
        Ride ride = race.ride();
        if (!ride.has(Channel.POWER)) {
            leftOut.add("No power: pacing, surges, fade and drift were not looked at.");
            return leftOut;
        }
        if (Double.isNaN(race.thresholdPowerW())) {
            leftOut.add("No threshold power to go by: " + (race.plannedOpeningCapW() == null ? "the start, " : "")
                    + "surges and drift were not looked at.");
        } else if (race.thresholdIsEstimated()) {
            leftOut.add("The threshold is estimated from this ride itself: riding near threshold early, surges and"
                    + " under-pacing were not looked at. Give a threshold to have them judged.");
        }
        int notChosenSeconds = isRace ? StoppedTime.notChosenSeconds(race) : 0;
        if (notChosenSeconds > 0) {
            leftOut.add("Stops that by the rider's notes were not the rider's choice, "
                    + Interval.clock(notChosenSeconds) + " in all, are no pacing mistake.");
        }
        if (race.wPrimeIsRefuted()) {
            leftOut.add(
                    "W' balance falls far below empty, so critical power or W' is set too low: surges were weighed by"
                            + " their work above threshold power alone.");
        }
        if (!isRace) {
            leftOut.add("Mistakes and their prices are looked for in races only.");
        }
        if (!ride.has(Channel.HEART_RATE)) {
            leftOut.add("No heart rate: drift was not looked at.");
        } else if (!race.heartRateModel().isUsable()) {
            leftOut.add("Heart rate does not follow power clearly enough, or for long enough, to look for drift.");
        }
        if (!ride.has(Channel.ALTITUDE) || !ride.has(Channel.DISTANCE)) {
            leftOut.add("No altitude or no distance: fade was looked for without regard to climbs.");
        }
        return leftOut;
    }
}
