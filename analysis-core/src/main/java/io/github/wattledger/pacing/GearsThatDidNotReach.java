package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.course.GearUse;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.Gears;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The top gear was too short, or the lowest too tall, for minutes of a ride. */
final class GearsThatDidNotReach implements Detector {
    /** Less time than this in all is no reason to change gears, seconds. */
    private static final int LEAST_SECONDS = 120;

    private static final int MODERATE_SECONDS = 600;

    /** It is asked how a chainring with this many teeth more, or fewer, would have served. */
    private static final int OTHER_TEETH = 4;

    /** Which end of the gears did not reach. */
    enum End {
        TOP,
        LOWEST
    }

    private final End end;

    GearsThatDidNotReach(End end) {
        this.end = end;
    }

    @Override
    public Optional<Found> detect(Race race) {
        Gears gears = race.gears();
        if (gears == null) {
            return Optional.empty();
        }
        Course course = race.course();
        return GearUse.of(race.ride(), course, gears).flatMap(use -> detect(race, course, gears, use));
    }

    private Optional<Found> detect(Race race, @Nullable Course course, Gears gears, GearUse use) {
        boolean spun = end == End.TOP;
        int seconds = spun ? use.spunOutSeconds() : use.overGearedSeconds();
        Integer first = spun ? use.firstSpunOutSecond() : use.firstOverGearedSecond();
        if (seconds < LEAST_SECONDS || first == null) {
            return Optional.empty();
        }
        GearUse.Gear gear = spun ? use.top() : use.lowest();
        Gears other = otherGears(gears, spun);
        int would = GearUse.served(race.ride(), course, other)
                .map(served -> spun ? served.spunOutSeconds() : served.overGearedSeconds())
                .orElse(0);
        Evidence evidence = Evidence.none()
                .with("totalSeconds", seconds)
                .with("chainringTeeth", gear.chainringTeeth())
                .with("cogTeeth", gear.cogTeeth())
                .with("otherChainringTeeth", other.chainrings().get(0))
                .with("secondsWithOtherChainring", would);
        return Optional.of(new Found(
                seconds >= MODERATE_SECONDS ? Severity.MODERATE : Severity.MINOR,
                new Interval(first, race.ride().seconds()),
                evidence,
                new Advice(advice(spun, race), null, null),
                new PricePlan.None("gears are not replayed")));
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

    /** The bicycle with a larger chainring in place of its largest, or a smaller one in place of its smallest. */
    private static Gears otherGears(Gears gears, boolean spun) {
        int at = spun ? gears.chainrings().size() - 1 : 0;
        int teeth = gears.chainrings().get(at) + (spun ? OTHER_TEETH : -OTHER_TEETH);
        int within = (int) Math.max(Bounds.CHAINRING_TEETH.low(), Math.min(Bounds.CHAINRING_TEETH.high(), teeth));
        return new Gears(List.of(within), gears.cogs(), gears.wheelCircumferenceM());
    }
}
