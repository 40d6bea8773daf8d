package io.github.wattledger.season;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.history.PastRide;
import io.github.wattledger.power.BestEffort;
import io.github.wattledger.power.CriticalPower;
import io.github.wattledger.power.RidingBest;
import io.github.wattledger.power.ThresholdEstimate;
import io.github.wattledger.rider.Rider;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rides of a season as the history of their rider sees them. */
final class PastRides {
    private static final double SECONDS_PER_HOUR = 3600;
    private static final int HOUR = 3600;

    private PastRides() {}

    /** The rides of a rider whose dates can be believed, each once. */
    static OwnRides of(List<SeasonRide> rides, Rider rider) {
        return OwnRides.of(rides.stream().map(PastRides::of).toList(), rider);
    }

    static PastRide of(SeasonRide ride) {
        RideNumbers numbers = ride.numbers();
        return new PastRide(
                ride.day(),
                ride.source().file(),
                numbers.elapsedSeconds() / SECONDS_PER_HOUR,
                numbers.movingSeconds() / SECONDS_PER_HOUR,
                numbers.normalizedPowerW(),
                over(ride.ridingBests(), ThresholdEstimate.TWENTY_MINUTES),
                over(ride.ridingBests(), HOUR),
                trialEfforts(ride.bests()),
                ride.showsLimit(),
                ride.traits(),
                ride.notes().agreed());
    }

    private static @Nullable Double over(List<RidingBest> bests, int seconds) {
        for (RidingBest best : bests) {
            if (best.seconds() == seconds && best.watts() > 0) {
                return best.watts();
            }
        }
        return null;
    }

    /** The bests over those durations that a trial for critical power can have. */
    private static List<BestEffort> trialEfforts(List<Best> bests) {
        List<BestEffort> efforts = new ArrayList<>();
        for (Best best : bests) {
            if (best.seconds() >= CriticalPower.SHORTEST_SECONDS
                    && best.seconds() <= CriticalPower.LONGEST_SECONDS
                    && best.watts() > 0) {
                efforts.add(new BestEffort(best.seconds(), best.watts()));
            }
        }
        return efforts;
    }
}
