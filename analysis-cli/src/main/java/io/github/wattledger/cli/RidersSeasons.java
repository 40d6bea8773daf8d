package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.season.RiderStanding;
import io.github.wattledger.season.SeasonRequest;
import io.github.wattledger.season.SeasonReview;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The seasons of several riders, each with a folder and a profile of its own.
 *
 * @param riders one for each, all of them on one day: the last on which any of them rode, unless another was asked for
 * @param skippedFiles how many files gave no ride
 */
record RidersSeasons(List<OneRider> riders, int skippedFiles) {
    /** A rider with what was asked for and what came out. */
    record OneRider(RiderStanding standing, SeasonReview season, SeasonRequest request) {}

    /** How the season of a rider is made. */
    interface Seasons {
        SeasonRequest request(Path rider) throws UnreadableProfileException;

        SeasonReview run(SeasonRequest request) throws UnreadableRideException, IOException;
    }

    RidersSeasons {
        riders = List.copyOf(riders);
    }

    /**
     * The seasons of all riders below some folders.
     *
     * @param asOf the day on which they are compared, or null for the last on which any of them rode
     */
    static RidersSeasons of(List<Path> roots, @Nullable LocalDate asOf, Seasons seasons)
            throws UnreadableRideException, UnreadableProfileException, IOException {
        List<Path> folders = folders(roots);
        List<SeasonRequest> requests = new ArrayList<>();
        List<SeasonReview> reviews = new ArrayList<>();
        LocalDate last = asOf;
        for (Path folder : folders) {
            SeasonRequest request = seasons.request(folder);
            requests.add(request);
            SeasonReview season = seasons.run(request);
            reviews.add(season);
            LocalDate day = season.asOf();
            last = day != null && (last == null || day.isAfter(last)) ? day : last;
        }
        List<OneRider> riders = new ArrayList<>();
        int skipped = 0;
        for (int i = 0; i < folders.size(); i++) {
            SeasonRequest request = requests.get(i);
            SeasonReview season = reviews.get(i);
            // The store has it all by now.
            if (last != null && !last.equals(season.asOf())) {
                request = request.withAsOf(last);
                season = seasons.run(request);
            }
            skipped += season.skipped().size();
            String name = String.valueOf(folders.get(i).getFileName());
            riders.add(new OneRider(RiderStanding.of(name, season), season, request));
        }
        return new RidersSeasons(riders, skipped);
    }

    /** Where they stand. */
    List<RiderStanding> standings() {
        return riders.stream().map(OneRider::standing).toList();
    }

    private static List<Path> folders(List<Path> roots) throws UnreadableRideException {
        List<Path> folders = new ArrayList<>();
        for (Path root : roots) {
            try (Stream<Path> below = Files.list(root)) {
                below.filter(folder -> Files.isRegularFile(folder.resolve(RiderOptions.PROFILE)))
                        .sorted()
                        .forEach(folders::add);
            } catch (IOException e) {
                throw new UnreadableRideException(
                        Reason.NO_SUCH_FILE, root + ": is no folder that can be read; check the path", e);
            }
        }
        if (folders.isEmpty()) {
            throw new UnreadableRideException(
                    Reason.NOT_SUITABLE,
                    roots.get(0) + ": holds no folder with a " + RiderOptions.PROFILE
                            + "; --riders needs one for each rider");
        }
        return folders;
    }
}
