package io.github.wattledger.cli;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.html.HtmlReport;
import io.github.wattledger.cli.report.html.HtmlSeason;
import io.github.wattledger.cli.report.html.PageNames;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.season.SeasonRequest;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;

/** A folder of pages: the season's, and one for each of its rides. */
final class SeasonPages {
    /** The page that leads to the others of its folder. */
    static final String INDEX = "index.html";

    private static final String ALL_RIDERS = "../" + INDEX;

    /** How a page says who made it (HTML standard, metadata name "generator"); it stands in its first lines. */
    private static final String MADE_BY_US = "<meta name=\"generator\" content=\"Wattledger\">";

    private static final int FIRST_BYTES = 1024;

    private final Path folder;
    private final SeasonRequest request;
    private final ExecutorService executor;
    private final Units units;
    private final @Nullable String rider;

    /**
     * Pages to be written.
     *
     * @param folder where; made when it is not there
     * @param request what the season was asked for
     * @param executor what rides are reviewed on
     * @param units in which the pages are written
     */
    SeasonPages(Path folder, SeasonRequest request, ExecutorService executor, Units units) {
        this(folder, request, executor, units, null);
    }

    /**
     * Pages of one of several riders, in a folder below that of the page of all riders.
     *
     * @param rider what the rider is called, or null where there is only one
     */
    SeasonPages(Path folder, SeasonRequest request, ExecutorService executor, Units units, @Nullable String rider) {
        this.rider = rider;
        this.folder = folder;
        this.request = request;
        this.executor = executor;
        this.units = units;
    }

    /**
     * Writes all of them, or none where a file is in the way that this program did not make. A ride whose file is gone
     * or can no longer be read has no page, and its row has no link.
     */
    void write(SeasonReview season) throws IOException {
        OutputFile.makeFolder(folder);
        requireOwn(folder.resolve(INDEX));
        for (SeasonRide ride : season.rides()) {
            requireOwn(folder.resolve(PageNames.nameFor(ride)));
        }
        OwnRides ownRides = season.ownRides(request.rider());
        List<Future<Boolean>> written = new ArrayList<>();
        for (SeasonRide ride : season.rides()) {
            written.add(executor.submit(() -> write(ride, ride.dateDoubt() == null ? ownRides : null)));
        }
        PageNames pages = new PageNames();
        for (int i = 0; i < written.size(); i++) {
            if (isDone(written.get(i))) {
                pages.add(season.rides().get(i));
            }
        }
        StringBuilder text = new StringBuilder();
        new HtmlSeason(units, rider, rider == null ? null : ALL_RIDERS).write(season, pages, text);
        write(INDEX, text);
    }

    /** @throws OutputFailure when there is a file that this program did not make */
    static void requireOwn(Path file) throws IOException {
        if (!Files.exists(file)) {
            return;
        }
        String first = "";
        if (Files.isRegularFile(file)) {
            try (InputStream in = Files.newInputStream(file)) {
                first = new String(in.readNBytes(FIRST_BYTES), StandardCharsets.UTF_8);
            } catch (AccessDeniedException e) {
                throw new OutputFailure("cannot write " + file + ": permission denied", e);
            }
        }
        if (!first.contains(MADE_BY_US)) {
            throw new OutputFailure("cannot write " + file
                    + ": there is a file that this program did not make; name another folder, or move the file away");
        }
    }

    private static boolean isDone(Future<Boolean> page) throws IOException {
        try {
            return page.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new OutputFailure("interrupted while writing the pages", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof IOException failure) {
                throw failure;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    private boolean write(SeasonRide ride, @Nullable OwnRides ownRides) throws IOException {
        Path file = file(ride);
        if (file == null) {
            return false;
        }
        RideReview review;
        try {
            ReviewOptions options = request.reviewOptions()
                    .withSelection(
                            Selection.WHOLE_RIDE.withSessionIndex(ride.source().sessionIndex()))
                    .withNotes(ride.notes())
                    .withOwnRides(ownRides);
            review = Reviewer.review(file, request.rider(), options);
        } catch (UnreadableRideException e) {
            return false;
        }
        StringBuilder text = new StringBuilder();
        new HtmlReport(units, INDEX).write(review, text);
        write(PageNames.nameFor(ride), text);
        return true;
    }

    /** The file of a ride: its name is the path below the one folder, or below the working directory where there are several. */
    private @Nullable Path file(SeasonRide ride) {
        String name = ride.source().file();
        for (Path root : request.folders()) {
            Path below = Files.isDirectory(root) ? root.resolve(name) : root;
            if (Files.isRegularFile(below) && below.endsWith(name)) {
                return below;
            }
        }
        Path named = Path.of(name);
        return Files.isRegularFile(named) ? named : null;
    }

    private void write(String name, StringBuilder text) throws OutputFailure {
        OutputFile.write(folder.resolve(name), text);
    }
}
