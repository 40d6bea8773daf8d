package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlanWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.plan.ClimbCap;
import io.github.wattledger.plan.GroundCap;
import io.github.wattledger.plan.RacePlan;
import io.github.wattledger.plan.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Everything the template of a plan's card shows.
 *
 * @param frame what every page has
 * @param course the course in a line
 * @param earliest the shortest time that is plausible
 * @param latest the longest time that is plausible
 * @param likeliest the time in between that is the most likely one
 * @param target normalized power of the whole
 * @param stops time standing
 * @param openingTime how long the opening is
 * @param openingCap its cap
 * @param openingByCaps the power that the caps come to in it
 * @param openingBeats the heart rate beside it, or null
 * @param hasBeats whether the caps have heart rates
 * @param caps a cap for each kind of ground
 * @param climbsTitle what the table of climbs is called
 * @param climbs the climbs, or the highest of them
 * @param hasClimbBeats whether they have heart rates
 * @param distanceUnit the unit of distances
 * @param stopsAlong when to be where
 * @param cautions what has to be said before anybody rides by it
 */
public record PlanCard(
        Frame frame,
        String course,
        Num earliest,
        Num latest,
        Num likeliest,
        Num target,
        Num stops,
        Num openingTime,
        Num openingCap,
        Num openingByCaps,
        @Nullable Num openingBeats,
        boolean hasBeats,
        List<Cap> caps,
        String climbsTitle,
        List<Climb> climbs,
        boolean hasClimbBeats,
        String distanceUnit,
        List<Stop> stopsAlong,
        List<String> cautions) {
    /** More rows do not fit on the card. */
    private static final int MOST_ROWS = 8;

    /** So many cautions fit below so many rows; each further one takes the place of two climbs. */
    private static final int USUAL_CAUTIONS = 2;

    private static final int ROWS_OF_A_CAUTION = 2;

    /** The cap of one kind of ground. */
    public record Cap(String ground, Num cap, Num beats) {}

    /** One climb. */
    public record Climb(String name, String grade, Num time, Num cap, Num beats) {}

    /** One place to look at the clock. */
    public record Stop(String name, Num distance, Num earliest, Num latest) {}

    static PlanCard of(RacePlan plan, Units units) {
        Double beats = plan.opening().capBpm();
        List<String> cautions = Stream.concat(
                        PlanWords.altitude(plan, units).stream(), PlanWords.cautions(plan).stream())
                .toList();
        int most = MOST_ROWS - ROWS_OF_A_CAUTION * Math.max(0, cautions.size() - USUAL_CAUTIONS);
        List<Climb> climbs = climbs(plan, units, most);
        return new PlanCard(
                Frame.card(PlanWords.course(plan, units)),
                PlanWords.course(plan, units),
                clock("totalSeconds.low", plan.total().lowSeconds()),
                clock("totalSeconds.high", plan.total().highSeconds()),
                clock("totalSeconds.value", plan.total().seconds()),
                Num.of("target.powerW", plan.target().watts(), Figures::watts),
                Num.of("stoppedSeconds", plan.stoppedSeconds(), PlanWords::stopped),
                Num.of("opening.seconds", plan.opening().seconds(), PlanWords::wholeMinutes),
                Num.of("opening.capW", plan.opening().capW(), Figures::watts),
                Num.of("opening.byCapsW", plan.opening().byCapsW(), Figures::watts),
                beats == null ? null : Num.of("opening.capBpm", beats, Figures::beats),
                beats != null,
                caps(plan),
                climbs.size() < plan.climbs().size()
                        ? "The " + climbs.size() + " highest of "
                                + plan.climbs().size() + " climbs"
                        : "Climbs",
                climbs,
                plan.climbs().stream().anyMatch(each -> each.capBpm() != null),
                units.distance().symbol(),
                stopsAlong(plan, units),
                cautions);
    }

    private static List<Cap> caps(RacePlan plan) {
        List<Cap> caps = new ArrayList<>();
        for (int i = 0; i < plan.caps().size(); i++) {
            GroundCap each = plan.caps().get(i);
            caps.add(new Cap(
                    PlanWords.ground(each.ground()),
                    Num.of("caps[" + i + "].capW", each.capW(), watts -> PlanWords.cap(each)),
                    Num.of("caps[" + i + "].capBpm", each.capBpm(), Figures::beats, "-")));
        }
        return caps;
    }

    private static List<Climb> climbs(RacePlan plan, Units units, int most) {
        List<Double> gains = new ArrayList<>();
        plan.climbs().forEach(each -> gains.add(each.climb().gainM()));
        gains.sort(null);
        double least = gains.size() <= most ? 0 : gains.get(gains.size() - most);
        List<Climb> climbs = new ArrayList<>();
        for (int i = 0; i < plan.climbs().size() && climbs.size() < most; i++) {
            ClimbCap each = plan.climbs().get(i);
            if (each.climb().gainM() >= least) {
                climbs.add(new Climb(
                        PlanWords.climb(each, units),
                        PlanWords.grade(each),
                        Num.of("climbs[" + i + "].seconds", each.seconds(), PlanWords::wholeMinutes),
                        Num.of("climbs[" + i + "].capW", each.capW(), Figures::watts),
                        Num.of("climbs[" + i + "].capBpm", each.capBpm(), Figures::beats, "-")));
            }
        }
        return climbs;
    }

    /** Where there are too many places, every second, third and so on, and the finish. */
    private static List<Stop> stopsAlong(RacePlan plan, Units units) {
        int size = plan.sections().size();
        int step = (size + MOST_ROWS - 1) / MOST_ROWS;
        List<Stop> stops = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            if ((size - 1 - i) % step == 0) {
                Section each = plan.sections().get(i);
                String path = "sections[" + i + "].";
                stops.add(new Stop(
                        PlanWords.sectionEnd(each.name(), each.toM(), units),
                        Num.of(path + "toM", each.toM(), units::distance),
                        clock(path + "arrivalSeconds.low", each.arrival().lowSeconds()),
                        clock(path + "arrivalSeconds.high", each.arrival().highSeconds())));
            }
        }
        return stops;
    }

    private static Num clock(String path, double seconds) {
        return Num.of(path, seconds, PlanWords::clock);
    }
}
