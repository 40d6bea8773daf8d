package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.course.GearUse;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.Gears;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The top gear was too short, or the lowest too tall, for minutes of a ride. */
final class GearsThatDidNotReach implements Detector {
    /** Less than this in all is nothing to change gears for, seconds. */
    private static final int LEAST_SECONDS = 120;

    private static final int MODERATE_SECONDS = 600;

    /** A larger chainring, or a smaller one, by so many teeth is asked how it would have served. */
    private static final int OTHER_TEETH = 4;

    private final FindingKind kind;
    private final Gears gears;

    /** @param kind spun out or over-geared */
    GearsThatDidNotReach(FindingKind kind, Gears gears) {
        this.kind = kind;
        this.gears = gears;
    }

    @Override
    public Optional<Finding> detect(Race race) {
        boolean spun = kind == FindingKind.SPUN_OUT;
        Course course = Course.of(race.ride()).orElse(null);
        GearUse use = GearUse.of(race.ride(), course, gears).orElse(null);
        if (use == null) {
            return Optional.empty();
        }
        int seconds = spun ? use.spunOutSeconds() : use.overGearedSeconds();
        Integer first = spun ? use.firstSpunOutSecond() : use.firstOverGearedSecond();
        if (seconds < LEAST_SECONDS || first == null) {
            return Optional.empty();
        }
        GearUse.Gear gear = spun ? use.top() : use.lowest();
        Gears other = otherGears(spun);
        int would = GearUse.served(race.ride(), course, other)
                .map(served -> spun ? served.spunOutSeconds() : served.overGearedSeconds())
                .orElse(0);
        Evidence evidence = Evidence.none()
                .with("totalSeconds", seconds)
                .with("chainringTeeth", gear.chainringTeeth())
                .with("cogTeeth", gear.cogTeeth())
                .with("otherChainringTeeth", other.chainrings().get(0))
                .with("secondsWithOtherChainring", would);
        return Optional.of(race.finding(
                kind,
                seconds >= MODERATE_SECONDS ? Severity.MODERATE : Severity.MINOR,
                new Interval(first, race.ride().seconds()),
                evidence,
                race.notPriced(),
                new Advice(advice(spun, race), null, null)));
    }

    private static String advice(boolean spun, Race race) {
        if (spun) {
            return "Where the top gear spins out, tuck in and roll: more pedalling wins little there. If it happens often,"
                    + " a larger chainring or a smaller cog helps.";
        }
        double rpm = race.mean(Channel.CADENCE, new Interval(0, race.ride().seconds()));
        return String.format(
                Locale.ROOT,
                "Grinding uphill costs the legs; with a smaller chainring or a larger cog you could climb nearer to your"
                        + " usual %.0f rpm.",
                rpm);
    }

    /** The same bicycle with one other chainring. */
    private Gears otherGears(boolean spun) {
        int at = spun ? gears.chainrings().size() - 1 : 0;
        int teeth = gears.chainrings().get(at) + (spun ? OTHER_TEETH : -OTHER_TEETH);
        int within = (int) Math.max(Bounds.CHAINRING_TEETH.low(), Math.min(Bounds.CHAINRING_TEETH.high(), teeth));
        return new Gears(List.of(within), gears.cogs(), gears.wheelCircumferenceM());
    }
}
