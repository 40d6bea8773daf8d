package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.ZoneWords;
import io.github.wattledger.load.ZoneTime;
import java.util.ArrayList;
import java.util.List;

/**
 * Time by zone.
 *
 * @param rows the zones; empty when they were not computed
 * @param otherwise why they were not, or empty
 */
public record Zones(List<Row> rows, String otherwise) {
    /**
     * A zone.
     *
     * @param name its name
     * @param bounds its bounds with their unit
     * @param time the time in it
     * @param share its share of the time in all zones
     * @param bar the share as a bar
     */
    public record Row(String name, String bounds, Num time, String share, Markup bar) {}

    static Zones of(List<ZoneTime> zones, String path, String unit, String style, String otherwise) {
        long total = zones.stream().mapToLong(ZoneTime::seconds).sum();
        int most = zones.stream().mapToInt(ZoneTime::seconds).max().orElse(0);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < zones.size(); i++) {
            ZoneTime zone = zones.get(i);
            double share = total == 0 ? 0 : (double) zone.seconds() / total;
            rows.add(new Row(
                    PlainText.capital(PlainText.of(zone.name())),
                    ZoneWords.bounds(zone, unit),
                    Num.of(path + "[" + i + "].seconds", (double) zone.seconds(), Figures::clock),
                    Figures.fractionAsPercent(share),
                    bar(style, most == 0 ? 0 : (double) zone.seconds() / most)));
        }
        return new Zones(rows, rows.isEmpty() ? otherwise : "");
    }

    static Markup bar(String style, double share) {
        Svg bar = new Svg();
        bar.open("svg", "class", "share-bar", "width", "100%", "height", "16", "aria-hidden", "true");
        bar.rect(style, "0", Svg.percent(Math.max(share, 0)), "3", "10");
        return bar.close("svg").done();
    }
}
