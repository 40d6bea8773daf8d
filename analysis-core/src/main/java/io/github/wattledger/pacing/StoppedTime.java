package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.Price;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rider.StopNotChosen;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Stops that took longer than {@link JudgementLimit#STOP_SECONDS}. A stop costs what it takes, without a replay. What the
 * rider's notes explain of a stop is no mistake.
 */
final class StoppedTime implements Detector {
    private static final double MODERATE_SHARE = 0.03;
    private static final double MAJOR_SHARE = 0.08;
    private static final double SECONDS_PER_MINUTE = 60;

    /** What slowing down and getting going again cost beside the standing still, seconds a stop; set on simulated races. */
    private static final double BRAKING_SECONDS = 12;

    @Override
    public Optional<Found> detect(Race race) {
        List<Interval> stops = chosen(race);
        if (stops.isEmpty()) {
            return Optional.empty();
        }
        int total = 0;
        int longest = 0;
        List<Interval> inRecording = new ArrayList<>();
        for (Interval stop : stops) {
            total += stop.seconds();
            longest = Math.max(longest, stop.seconds());
            inRecording.add(stop.shifted(race.offsetSeconds()));
        }
        double share = total / (double) race.ride().seconds();
        Severity severity =
                share >= MAJOR_SHARE ? Severity.MAJOR : share >= MODERATE_SHARE ? Severity.MODERATE : Severity.MINOR;
        double minutes = total / SECONDS_PER_MINUTE;
        Evidence evidence = Evidence.none()
                .with("stopCount", stops.size())
                .with("longerThanSeconds", race.limitSeconds(JudgementLimit.STOP_SECONDS))
                .with("totalMinutes", minutes)
                .with("longestMinutes", longest / SECONDS_PER_MINUTE);
        return Optional.of(new Found(
                severity,
                new Interval(
                        stops.get(0).fromSecond(), stops.get(stops.size() - 1).toSecond()),
                evidence,
                new Advice(
                        "Plan each stop before the start: what to take on, in which order, and when to be back on the"
                                + " bike. What the body needs comes first.",
                        null,
                        null),
                new PricePlan.Known(new Price(
                        new Cost.Priced(
                                minutes,
                                minutes + stops.size() * BRAKING_SECONDS / SECONDS_PER_MINUTE,
                                "measured, not ridden again"),
                        new PriceSteps.Stops(inRecording)))));
    }

    /** The stops of the rider's choice that are longer than the limit: what the notes leave of each stop. */
    private static List<Interval> chosen(Race race) {
        int limitSeconds = race.limitSeconds(JudgementLimit.STOP_SECONDS);
        List<Interval> chosen = longStops(race);
        for (StopNotChosen note : race.notes().stopsNotChosen()) {
            chosen = chosen.stream()
                    .flatMap(stop -> without(explained(race, note, stop), stop))
                    .filter(rest -> rest.seconds() > limitSeconds)
                    .toList();
        }
        return chosen;
    }

    /** Seconds of the stops longer than the limit that the notes explain. */
    static int notChosenSeconds(Race race) {
        BitSet explained = new BitSet();
        for (Interval stop : longStops(race)) {
            for (StopNotChosen note : race.notes().stopsNotChosen()) {
                Interval part = explained(race, note, stop);
                explained.set(part.fromSecond(), part.toSecond());
            }
        }
        return explained.cardinality();
    }

    private static Interval explained(Race race, StopNotChosen note, Interval stop) {
        return note.within(stop.shifted(race.offsetSeconds())).shifted(-race.offsetSeconds());
    }

    private static Stream<Interval> without(Interval part, Interval stop) {
        return part.isEmpty()
                ? Stream.of(stop)
                : Stream.of(
                        new Interval(stop.fromSecond(), part.fromSecond()),
                        new Interval(part.toSecond(), stop.toSecond()));
    }

    /** Stretches between the first and the last moving second in which nothing moved for longer than the limit. */
    private static List<Interval> longStops(Race race) {
        int limitSeconds = race.limitSeconds(JudgementLimit.STOP_SECONDS);
        List<Interval> stops = new ArrayList<>();
        int lastMoving = -1;
        for (int second = 0; second < race.ride().seconds(); second++) {
            SecondState state = race.ride().state(second);
            if (state == SecondState.STOPPED || state == SecondState.PAUSED) {
                continue;
            }
            if (lastMoving >= 0 && second - lastMoving - 1 > limitSeconds) {
                stops.add(new Interval(lastMoving + 1, second));
            }
            lastMoving = second;
        }
        return stops;
    }
}
