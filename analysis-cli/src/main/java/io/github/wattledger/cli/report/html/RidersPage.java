package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.RiderPacingWords;
import io.github.wattledger.season.RiderStanding;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything the template of several riders shows.
 *
 * @param frame what every page has
 * @param title how many riders
 * @param asOf the day on which all of them are compared, or null without any ride
 * @param rows the riders
 * @param worthALook what to look at, a sentence each
 * @param skippedFiles how many files gave no ride
 */
public record RidersPage(
        Frame frame,
        String title,
        @Nullable LocalDate asOf,
        List<Row> rows,
        List<String> worthALook,
        int skippedFiles) {
    /**
     * A rider.
     *
     * @param name what the rider is called
     * @param page the address of the season's page
     * @param pacing how the rider paces
     */
    public record Row(
            String name,
            String page,
            RiderPacingWords pacing,
            Num chronic,
            Num acute,
            Num balance,
            Num ramp,
            Num weekStress,
            Num sinceRide,
            Num sinceLongRide) {}

    static RidersPage of(List<RiderSeason> riders, int skippedFiles) {
        String title = Figures.counted(riders.size(), "rider");
        List<Row> rows = new ArrayList<>();
        List<String> worthALook = new ArrayList<>();
        for (int i = 0; i < riders.size(); i++) {
            RiderStanding standing = riders.get(i).standing();
            rows.add(row(riders.get(i), "riders[" + i + "]."));
            for (RiderStanding.Warning warning : standing.warnings()) {
                worthALook.add(PlainText.of(standing.name()) + ": " + PlainText.sentence(warning.reason()));
            }
        }
        LocalDate asOf = riders.isEmpty() ? null : riders.get(0).standing().asOf();
        return new RidersPage(Frame.still(title), title, asOf, rows, worthALook, skippedFiles);
    }

    private static Row row(RiderSeason rider, String path) {
        RiderStanding standing = rider.standing();
        return new Row(
                PlainText.of(standing.name()),
                rider.page(),
                RiderPacingWords.of(rider.season().pacing()),
                Num.tenths(path + "load42Days", standing.chronic()),
                Num.tenths(path + "load7Days", standing.acute()),
                Num.signed(path + "loadDifference", standing.balance()),
                Num.signed(path + "loadChangeInWeek", standing.ramp()),
                Num.rounded(path + "sevenDayStress", standing.weekStress(), ""),
                days(path + "daysSinceRide", standing.daysSinceRide()),
                days(path + "daysSinceLongRide", standing.daysSinceLongRide()));
    }

    private static Num days(String path, @Nullable Integer days) {
        return Num.rounded(path, days == null ? null : days.doubleValue(), " d");
    }
}
