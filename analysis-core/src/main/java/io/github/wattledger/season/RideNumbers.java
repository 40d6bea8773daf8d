package io.github.wattledger.season;

import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What a ride's load comes to without regard to a threshold; null where the recording cannot give it.
 *
 * @param elapsedSeconds from the first second to the last
 * @param timerSeconds while the timer ran
 * @param movingSeconds under way
 * @param powerSeconds timer seconds that carry power
 * @param distanceM distance, metres
 * @param ascentM sum of the ascents, metres
 * @param workKJ work, kilojoules
 * @param averagePowerW mean power, watts
 * @param normalizedPowerW normalized power, watts
 * @param averageHeartRateBpm mean heart rate
 * @param maximumHeartRateBpm highest heart rate
 * @param efficiencyWPerBeat normalized power over mean heart rate
 * @param decouplingPercent aerobic decoupling, percent
 */
public record RideNumbers(
        int elapsedSeconds,
        int timerSeconds,
        int movingSeconds,
        int powerSeconds,
        @Nullable Double distanceM,
        @Nullable Double ascentM,
        @Nullable Double workKJ,
        @Nullable Double averagePowerW,
        @Nullable Double normalizedPowerW,
        @Nullable Double averageHeartRateBpm,
        @Nullable Double maximumHeartRateBpm,
        @Nullable Double efficiencyWPerBeat,
        @Nullable Double decouplingPercent)
        implements Serializable {
    static RideNumbers of(Ride ride, RideLoad load) {
        int powerSeconds = 0;
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) != SecondState.PAUSED
                    && ride.series(Channel.POWER).isMeasured(second)) {
                powerSeconds++;
            }
        }
        return new RideNumbers(
                load.elapsedSeconds(),
                load.timerSeconds(),
                load.movingSeconds(),
                powerSeconds,
                load.distanceM(),
                load.ascentM(),
                load.workKJ(),
                load.averagePowerW(),
                load.normalizedPowerW(),
                load.averageHeartRateBpm(),
                load.maximumHeartRateBpm(),
                load.efficiencyWPerBeat(),
                load.decouplingPercent());
    }
}
