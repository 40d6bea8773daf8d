package io.github.wattledger.cli;

import io.github.wattledger.cli.report.html.HtmlRiders;
import io.github.wattledger.cli.report.html.PageNames;
import io.github.wattledger.cli.report.html.RiderSeason;
import io.github.wattledger.cli.report.words.Units;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ExecutorService;

/** A folder of pages of several riders: one for all of them, and below it a folder for the season of each. */
final class RidersPages {
    private final Path folder;
    private final ExecutorService executor;
    private final Units units;
    private final Set<String> names = new HashSet<>();

    /**
     * Pages to be written.
     *
     * @param folder where; made when it is not there
     * @param executor what rides are reviewed on
     * @param units in which the pages are written
     */
    RidersPages(Path folder, ExecutorService executor, Units units) {
        this.folder = folder;
        this.executor = executor;
        this.units = units;
    }

    /** Writes all of them. */
    void write(RidersSeasons seasons) throws IOException {
        OutputFile.makeFolder(folder);
        Path index = folder.resolve(SeasonPages.INDEX);
        SeasonPages.requireOwn(index);
        List<RiderSeason> riders = new ArrayList<>();
        for (RidersSeasons.OneRider rider : seasons.riders()) {
            String name = rider.standing().name();
            String below = ownName(name);
            new SeasonPages(folder.resolve(below), rider.request(), executor, units, name).write(rider.season());
            riders.add(new RiderSeason(rider.standing(), rider.season(), below + "/" + SeasonPages.INDEX));
        }
        StringBuilder text = new StringBuilder();
        new HtmlRiders().write(riders, seasons.skippedFiles(), text);
        OutputFile.write(index, text);
    }

    /** A name that is safe in every address, and that no other of these riders has, not even in other case. */
    private String ownName(String rider) {
        String safe = PageNames.safe(rider).replaceAll("-$", "");
        String stem = safe.isEmpty() ? "rider" : safe;
        String name = stem;
        for (int again = 2; !names.add(name.toLowerCase(Locale.ROOT)); again++) {
            name = stem + "-" + again;
        }
        return name;
    }
}
