package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.LastRaceWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.RiderPacingWords;
import io.github.wattledger.season.RacePacing;
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
 * @param races how the last races of the riders were paced
 * @param worthALook what to look at, a sentence each
 * @param skippedFiles how many files gave no ride
 */
public record RidersPage(
        Frame frame,
        String title,
        @Nullable LocalDate asOf,
        List<Row> rows,
        List<Race> races,
        List<String> worthALook,
        int skippedFiles) {
    /**
     * A rider.
     *
     * @param name what the rider is called
     * @param page the address of the season's page, or null where it has none
     * @param pacing how the rider paces
     */
    public record Row(
            String name,
            @Nullable String page,
            RiderPacingWords pacing,
            Num load42Days,
            Num load7Days,
            Num loadDifference,
            Num loadChange,
            Num weekStress,
            Num sinceRide,
            Num sinceLongRide) {}

    /**
     * A race of a rider.
     *
     * @param rider the rider
     * @param verdict how it was paced
     * @param cost what the mistakes cost, in words
     * @param low the lower end of that cost, or null
     * @param high the upper end, or null
     * @param opening normalized power of the opening over the target
     * @param fade effort lost from early to late
     * @param lastCap the cap of an earlier race, and whether the opening stayed within it
     */
    public record Race(
            String rider,
            LocalDate day,
            String verdict,
            String cost,
            @Nullable Num low,
            @Nullable Num high,
            Num opening,
            Num fade,
            Num lastCap) {}

    static RidersPage of(List<RiderSeason> riders, int skippedFiles) {
        String title = Figures.counted(riders.size(), "rider");
        List<Row> rows = new ArrayList<>();
        List<Race> races = new ArrayList<>();
        List<String> worthALook = new ArrayList<>();
        for (int i = 0; i < riders.size(); i++) {
            RiderStanding standing = riders.get(i).standing();
            rows.add(row(riders.get(i), "riders[" + i + "]."));
            races.addAll(races(standing, "riders[" + i + "].lastRaces["));
            for (RiderStanding.Warning warning : standing.warnings()) {
                worthALook.add(PlainText.of(standing.name()) + ": " + PlainText.sentence(warning.reason()));
            }
        }
        LocalDate asOf = riders.isEmpty() ? null : riders.get(0).standing().asOf();
        return new RidersPage(Frame.still(title), title, asOf, rows, races, worthALook, skippedFiles);
    }

    private static Row row(RiderSeason rider, String path) {
        RiderStanding standing = rider.standing();
        return new Row(
                PlainText.of(standing.name()),
                rider.page(),
                RiderPacingWords.of(rider.season().pacing()),
                Num.tenths(path + "load42Days", standing.load42Days()),
                Num.tenths(path + "load7Days", standing.load7Days()),
                Num.signed(path + "loadDifference", standing.loadDifference()),
                Num.signed(path + "loadChangeInWeek", standing.loadChange()),
                Num.rounded(path + "sevenDayStress", standing.weekStress(), ""),
                days(path + "daysSinceRide", standing.daysSinceRide()),
                days(path + "daysSinceLongRide", standing.daysSinceLongRide()));
    }

    private static List<Race> races(RiderStanding standing, String list) {
        List<Race> races = new ArrayList<>();
        for (int i = 0; i < standing.races().size(); i++) {
            RacePacing race = standing.races().get(i);
            String path = list + i + "].";
            Double low = race.costMinutesLow();
            Double high = race.costMinutesHigh();
            races.add(new Race(
                    PlainText.of(standing.name()),
                    race.day(),
                    PlainText.capital(race.verdict().words()),
                    LastRaceWords.cost(race),
                    low == null ? null : Num.tenths(path + "costMinutesLow", low),
                    high == null ? null : Num.tenths(path + "costMinutesHigh", high),
                    Num.of(path + "openingOverTarget", race.openingOverTarget(), Figures::fractionAsPercent),
                    Num.of(path + "fadePercent", race.fadePercent(), Figures::percent),
                    Num.of(path + "lastCapW", race.lastCapW(), watts -> lastCap(watts, race), "none given")));
        }
        return races;
    }

    private static String lastCap(double watts, RacePacing race) {
        String kept = LastRaceWords.lastCap(race, "");
        return Figures.watts(watts) + (kept.isEmpty() ? "" : ", " + kept);
    }

    private static Num days(String path, @Nullable Integer days) {
        return Num.of(path, days == null ? null : days.doubleValue(), each -> Figures.decimal(each, 0) + " d", "none");
    }
}
