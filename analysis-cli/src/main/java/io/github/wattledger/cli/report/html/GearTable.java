package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.GearWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.course.GearUse;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;

/**
 * The gears that were used.
 *
 * @param rows each gear, the highest first
 * @param notes what stands out
 * @param otherwise why there are none, or empty
 */
public record GearTable(List<Row> rows, List<String> notes, String otherwise) {
    /**
     * A gear.
     *
     * @param gear chainring and cog
     * @param time pedalled time
     * @param distance pedalled distance
     * @param share share of the pedalled time
     * @param bar the share as a bar
     */
    public record Row(String gear, String time, String distance, String share, Markup bar) {}

    static GearTable of(RideReview review, Units units) {
        GearUse use = review.gearUse();
        if (use == null) {
            boolean hasRoad = review.ride().has(Channel.SPEED) && review.ride().has(Channel.CADENCE);
            return new GearTable(
                    List.of(),
                    List.of(),
                    hasRoad
                            ? "Not known: give chainrings, cogs and wheel in the rider profile to see them."
                            : "Not computed: it needs speed and cadence.");
        }
        int most = use.gears().stream().mapToInt(GearUse.InGear::seconds).max().orElse(0);
        List<Row> rows = new ArrayList<>();
        for (GearUse.InGear each : use.gears()) {
            double share = use.pedalledSeconds() == 0 ? 0 : (double) each.seconds() / use.pedalledSeconds();
            rows.add(new Row(
                    each.gear().chainringTeeth() + " \u00D7 " + each.gear().cogTeeth(),
                    Figures.clock(each.seconds()),
                    units.distanceWords(each.distanceM()),
                    Figures.fractionAsPercent(share),
                    Zones.bar("gear", most == 0 ? 0 : (double) each.seconds() / most)));
        }
        return new GearTable(rows, GearWords.notes(use), rows.isEmpty() ? GearWords.NONE_FITS : "");
    }
}
