package io.github.wattledger.cli.report.words;

import io.github.wattledger.course.GearUse;
import java.util.List;

/** Which gears a ride was ridden in, in words. */
public final class GearWords {
    /** What is said where gears are known and none was used. */
    public static final String NONE_FITS = "No pedalled second fits a gear.";

    private GearWords() {}

    /**
     * What was ridden in a gear.
     *
     * @param gear chainring and cog
     * @param time how long, as a clock
     * @param distance how far, without the unit
     * @param share of the pedalled time
     */
    public record InGear(String gear, String time, String distance, String share) {}

    /** Each gear that was used, the highest first. */
    public static List<InGear> gears(GearUse use, Units units) {
        return use.gears().stream()
                .map(each -> new InGear(
                        each.gear().chainringTeeth() + " x " + each.gear().cogTeeth(),
                        Figures.clock(each.seconds()),
                        units.distance(each.distanceM()),
                        Figures.fractionAsPercent(
                                use.pedalledSeconds() == 0 ? 0 : (double) each.seconds() / use.pedalledSeconds())))
                .toList();
    }

    /** How much of the time fits no gear, and how long the gears did not reach. */
    public static List<String> notes(GearUse use) {
        return List.of(
                "Of " + Figures.clock(use.pedalledSeconds()) + " pedalled, " + Figures.span(use.unmatchedSeconds())
                        + " fit no gear: shifts, bends, a slipping wheel.",
                "In the highest gear above " + Figures.decimal(GearUse.SPINNING_RPM, 0) + " rpm for "
                        + Figures.span(use.spunOutSeconds()) + "; in the lowest under "
                        + Figures.decimal(GearUse.GRINDING_RPM, 0) + " rpm on climbs for "
                        + Figures.span(use.overGearedSeconds()) + ".");
    }
}
