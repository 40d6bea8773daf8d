package io.github.wattledger.pacing;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.course.Climb;
import io.github.wattledger.course.Course;
import io.github.wattledger.pacing.Occasion.Reason;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.simulation.RideTape;
import io.github.wattledger.simulation.SampleRides;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Simulated races of seven hours with two feed stops each are races because they were made as such. */
class OccasionOfSimulatedRacesTest {
    private static final int HOUR_SECONDS = 3600;

    private static KnownThreshold threshold(Recording recording, Ride ride) {
        double watts = requireNonNull(recording.device().thresholdPowerW());
        return KnownThreshold.ofDevice(
                watts,
                new KnownThreshold.Ridden(
                        ride,
                        RacedPart.find(ride, watts).interval(),
                        MeanMaximalCurve.of(ride).bestWatts(HOUR_SECONDS),
                        null));
    }

    private static Reason reason(Ride ride, KnownThreshold threshold) {
        double watts = requireNonNull(threshold.powerW());
        RacedPart part = RacedPart.find(ride, watts);
        double guideW = SustainablePower.guideW(watts, part.movingSeconds(ride));
        return decide(new Circumstances(
                        ride,
                        part.interval(),
                        false,
                        ride.has(Channel.LATITUDE),
                        1,
                        threshold.isKnown(),
                        guideW,
                        Effort.AUTO,
                        false))
                .reason();
    }

    @Test
    void areRacesByTheirTrueThreshold() {
        for (RideTape tape : List.of(SampleRides.evenPaced(), SampleRides.overHardStart())) {
            Recording recording = tape.toRecording();
            Ride ride = Cleaning.clean(recording).ride();
            KnownThreshold threshold = threshold(recording, ride);
            assertThat(threshold.isKnown()).isTrue();
            assertThat(reason(ride, threshold)).isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
        }
    }

    /** Climbs are ridden harder than what lies between them, but no two of them take an equal and round time. */
    @Test
    void staysARaceWithLapsAtTheFootAndTheTopOfEachClimb() {
        Recording recording = SampleRides.evenPaced().toRecording();
        Ride ride = Cleaning.clean(recording).ride();
        List<Climb> climbs = Climb.of(ride, Course.of(ride).orElse(null));
        assertThat(climbs).hasSizeGreaterThan(2);
        List<Interval> laps = new ArrayList<>();
        int from = 0;
        for (Climb climb : climbs) {
            laps.add(new Interval(from, climb.when().fromSecond()));
            laps.add(climb.when());
            from = climb.when().toSecond();
        }
        laps.add(new Interval(from, ride.seconds()));
        Ride.Builder marked = Ride.builder(ride.start(), ride.seconds()).laps(laps);
        ride.channels().forEach(channel -> marked.channel(channel, ride.series(channel)));
        for (int second = 0; second < ride.seconds(); second++) {
            marked.state(second, ride.state(second));
        }
        assertThat(reason(marked.build(), threshold(recording, ride))).isEqualTo(Reason.HARD_FOR_ITS_LENGTH);
    }

    private static Occasion decide(Circumstances circumstances) {
        return OccasionRules.decide(circumstances, JudgementLimits.USUAL);
    }
}
