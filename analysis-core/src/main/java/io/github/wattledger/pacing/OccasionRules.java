package io.github.wattledger.pacing;

import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.pacing.Occasion.Reason;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The rules that decide what a ride was, in their order: the first that applies counts. All limits are this project's own;
 * {@code docs/methods.md} says which were set on real rides and which on simulated races, and how often they err.
 */
public final class OccasionRules {
    /** A ride is judged from here on: a guide for less is hardly one, and the opening alone is 20 minutes. */
    static final int SHORTEST_SECONDS = Race.SHORTEST_JUDGED_SECONDS;

    /** A file with this many sports is a triathlon or the like. Two can be a ride and a run on one day. */
    static final int SPORTS_OF_A_RACE = 3;

    /**
     * Share of the time stopped above which a ride is an outing. Two real races have 0 and 0.5 %, real endurance rides 1
     * to 12 %, outings 6 to 59 %; one of 332 simulated races has more than 15 %.
     */
    static final double OUTING_STOPPED_SHARE = 0.15;

    /** From this riding time on a long stop is no sign of an outing: riders of races over a night sleep. Untested. */
    static final int OVERNIGHT_SECONDS = 12 * 3600;

    /**
     * Stops of ten seconds for each hour ridden from which a ride is an outing. Two real races have 0 and 0.9, simulated
     * races at most 2.7, real rides on open roads 3 to 12.
     */
    static final double OUTING_STOPS_PER_HOUR = 4;

    /** Altitude that a device indoors can seem to gain, metres, as the pressure of the air changes. */
    static final double INDOOR_ALTITUDE_RANGE_M = 10;

    /**
     * Normalized power over guide from which a few stops do not matter, and which a first half must reach to look like a
     * race. Two real training rides of 6 and 7 hours with 4 % of stops lie at 0.917 and 0.87.
     */
    static final double RACE_SHARE_OF_GUIDE = 0.94;

    /** Share of the time stopped above which a ride between the two limits above may be training. */
    static final double RACE_STOPPED_SHARE = 0.02;

    private static final double SECONDS_PER_HOUR = 3600;
    private static final double PERCENT = 100;

    private final Circumstances circumstances;
    private final Ride ride;
    private final Interval judged;
    private final int ridingSeconds;
    private final Stops stops;
    private final double normalizedPowerW;
    /** The guide where it rests on a known threshold, otherwise {@code NaN}. */
    private final double guideW;

    private final double raceEffortFraction;

    private OccasionRules(Circumstances circumstances, JudgementLimits limits) {
        this.circumstances = circumstances;
        raceEffortFraction = limits.get(JudgementLimit.RACE_EFFORT_FRACTION);
        ride = circumstances.ride();
        judged = circumstances.judged();
        ridingSeconds = ride.countSeconds(SecondState.RIDING, judged);
        stops = Stops.of(ride, judged);
        normalizedPowerW = NormalizedPower.of(ride, judged).orElse(Double.NaN);
        Double guide = circumstances.thresholdIsKnown() ? circumstances.guideW() : null;
        guideW = guide == null ? Double.NaN : guide;
    }

    /**
     * Decides what a ride was.
     *
     * @param limits the limits of the judgement, of which {@link JudgementLimit#RACE_EFFORT_FRACTION} is asked for here
     */
    public static Occasion decide(Circumstances circumstances, JudgementLimits limits) {
        return new OccasionRules(circumstances, limits).occasion();
    }

    private Occasion occasion() {
        List<Supplier<@Nullable Occasion>> rules = List.of(
                this::asAskedFor,
                this::tooShort,
                this::onARaceDay,
                this::amongSeveralSports,
                this::lapsOfWorkAndRest,
                this::indoors,
                this::longOrManyStops,
                this::levelNotKnown,
                this::easyForItsLength,
                this::betweenRaceAndTraining);
        for (Supplier<@Nullable Occasion> rule : rules) {
            Occasion occasion = rule.get();
            if (occasion != null) {
                return occasion;
            }
        }
        return because(Reason.HARD_FOR_ITS_LENGTH);
    }

    private @Nullable Occasion asAskedFor() {
        return switch (circumstances.effort()) {
            case RACE -> because(Reason.ASKED_AS_RACE);
            case TRAINING -> because(Reason.ASKED_AS_TRAINING);
            case AUTO -> null;
        };
    }

    private @Nullable Occasion tooShort() {
        return ridingSeconds < SHORTEST_SECONDS ? because(Reason.UNDER_FORTY_MINUTES) : null;
    }

    private @Nullable Occasion onARaceDay() {
        return circumstances.isRaceDay() ? because(Reason.RACE_DAY) : null;
    }

    private @Nullable Occasion amongSeveralSports() {
        return circumstances.sports() >= SPORTS_OF_A_RACE ? because(Reason.SEVERAL_SPORTS) : null;
    }

    private @Nullable Occasion lapsOfWorkAndRest() {
        List<Occasion.WorkLap> laps = LapsOfWork.of(ride);
        if (laps.isEmpty()) {
            return null;
        }
        Evidence evidence = measured()
                .with("lapsOfWork", laps.size())
                .with("lapSeconds", laps.get(0).seconds());
        return new Occasion(Reason.LAPS_OF_WORK_AND_REST, evidence, laps);
    }

    private @Nullable Occasion indoors() {
        if (circumstances.isIndoorBySport()) {
            return because(Reason.INDOOR_SPORT);
        }
        if (circumstances.hasPositions()) {
            return null;
        }
        if (!isMeasured(Channel.SPEED) && !isMeasured(Channel.DISTANCE)) {
            return because(Reason.NOTHING_MOVED);
        }
        double range = altitudeRangeM();
        // Without any altitude the range is NaN, which is not within any limit.
        return range <= INDOOR_ALTITUDE_RANGE_M
                ? new Occasion(Reason.NO_POSITION_AND_LEVEL, measured().with("altitudeRangeM", range), List.of())
                : null;
    }

    private @Nullable Occasion longOrManyStops() {
        if (stops.shareStopped() > OUTING_STOPPED_SHARE && ridingSeconds < OVERNIGHT_SECONDS) {
            return because(Reason.LONG_STOPS);
        }
        return stopsPerHour() >= OUTING_STOPS_PER_HOUR ? because(Reason.MANY_STOPS) : null;
    }

    private @Nullable Occasion levelNotKnown() {
        if (Double.isNaN(normalizedPowerW)) {
            return because(Reason.NO_POWER);
        }
        return Double.isNaN(guideW) ? because(Reason.THRESHOLD_NOT_KNOWN) : null;
    }

    private @Nullable Occasion easyForItsLength() {
        if (shareOfGuide() >= raceEffortFraction) {
            return null;
        }
        return because(
                firstHalfShareOfGuide() >= RACE_SHARE_OF_GUIDE ? Reason.HARD_FIRST_HALF_ONLY : Reason.BELOW_GUIDE);
    }

    private @Nullable Occasion betweenRaceAndTraining() {
        boolean stopped = stops.shareStopped() > RACE_STOPPED_SHARE;
        return stopped && shareOfGuide() < RACE_SHARE_OF_GUIDE ? because(Reason.BETWEEN_RACE_AND_TRAINING) : null;
    }

    private Occasion because(Reason reason) {
        return new Occasion(reason, measured(), List.of());
    }

    private Evidence measured() {
        return Evidence.none()
                .with("ridingHours", ridingSeconds / SECONDS_PER_HOUR)
                .with("stoppedSharePercent", PERCENT * stops.shareStopped())
                .with("stopsOfTenSeconds", stops.ofTenSeconds())
                .with("stopsOfAMinute", stops.ofAMinute())
                .with("stopsPerHour", stopsPerHour())
                .with("normalizedPowerW", normalizedPowerW)
                .with("guideW", guideW)
                .with("shareOfGuide", shareOfGuide())
                .with("firstHalfShareOfGuide", firstHalfShareOfGuide());
    }

    private double stopsPerHour() {
        return stops.ofTenSeconds() * SECONDS_PER_HOUR / ridingSeconds;
    }

    private double shareOfGuide() {
        return normalizedPowerW / guideW;
    }

    private double firstHalfShareOfGuide() {
        int ridden = 0;
        int second = judged.fromSecond();
        while (2 * ridden < ridingSeconds) {
            if (ride.state(second) == SecondState.RIDING) {
                ridden++;
            }
            second++;
        }
        Interval firstHalf = new Interval(judged.fromSecond(), second);
        return NormalizedPower.of(ride, firstHalf).orElse(Double.NaN) / guideW;
    }

    private boolean isMeasured(Channel channel) {
        return ride.series(channel).measuredCount(judged.fromSecond(), judged.toSecond()) > 0;
    }

    private double altitudeRangeM() {
        Series altitude = ride.series(Channel.ALTITUDE);
        double lowest = Double.NaN;
        double highest = Double.NaN;
        for (int second = judged.fromSecond(); second < judged.toSecond(); second++) {
            double metres = altitude.get(second);
            // NaN compares false: what was not measured is passed over.
            lowest = metres >= lowest || Double.isNaN(metres) ? lowest : metres;
            highest = metres <= highest || Double.isNaN(metres) ? highest : metres;
        }
        return highest - lowest;
    }
}
