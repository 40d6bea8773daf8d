package io.github.wattledger.season;

import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;

/**
 * Makes a season from folders of recordings. What a file gave is kept in the store by its content and by the version of the
 * analysis; a file whose size and time of change are as they were is not opened again. Another threshold is applied to
 * what the store has, without the files.
 *
 * <p>The result depends on the files, the rider and the request alone: not on the order of files, the number of threads,
 * the locale, the time zone of the machine or the clock.
 */
public final class SeasonRun {
    private final SeasonRequest request;
    private final Judge judge;
    private final WorkLoop loop;
    private final SeasonListener listener;

    private SeasonRun(SeasonRequest request, Executor executor, int inFlight, SeasonListener listener) {
        this.request = request;
        this.judge = new Judge(request);
        this.loop = new WorkLoop(executor, inFlight, listener);
        this.listener = listener;
    }

    /**
     * Reviews a season.
     *
     * @param request which season
     * @param executor what files are read and judged on; not shut down. {@code Runnable::run} works on the caller's thread
     * @param parallelism how many threads it has, at least 1: so many files and a few more are in memory at once
     * @param listener hears of progress, and may cancel
     * @throws UnreadableRideException when a folder is not there, with one line for people
     * @throws SeasonStoreException when the store cannot be used, with one line for people
     * @throws CancellationException when the listener or an interrupt of the calling thread cancelled it; the store keeps
     *     what was done
     */
    public static SeasonReview run(SeasonRequest request, Executor executor, int parallelism, SeasonListener listener)
            throws UnreadableRideException, SeasonStoreException {
        if (parallelism < 1) {
            throw new IllegalArgumentException("parallelism " + parallelism + ", expected 1 or more");
        }
        Objects.requireNonNull(listener, "listener; SeasonListener.SILENT hears nothing");
        return new SeasonRun(request, executor, parallelism + 1, listener).run();
    }

    /** How the names of the files end that a folder is searched for, in lower case without the point. */
    public static Set<String> fileEndings() {
        return RideFiles.fileEndings();
    }

    /** {@link #run(SeasonRequest, Executor, int, SeasonListener)} without a listener. */
    public static SeasonReview run(SeasonRequest request, Executor executor, int parallelism)
            throws UnreadableRideException, SeasonStoreException {
        return run(request, executor, parallelism, SeasonListener.SILENT);
    }

    /** {@link #run(SeasonRequest, Executor, int, SeasonListener)} on the caller's thread alone, without a listener. */
    public static SeasonReview run(SeasonRequest request) throws UnreadableRideException, SeasonStoreException {
        return run(request, Runnable::run, 1, SeasonListener.SILENT);
    }

    private SeasonReview run() throws UnreadableRideException, SeasonStoreException {
        RideFinder.Found found = RideFinder.find(request.folders());
        List<FoundFile> files = withoutStore(found.files());
        try (RideStore store = RideStore.open(request.store())) {
            StoreUpdate update = new StoreUpdate(store, request, judge, loop, files);
            List<SkippedFile> skipped = new ArrayList<>(found.skipped());
            skipped.addAll(update.read(listener));
            List<FileRow> gone = update.gone();
            List<RideRow> rides = update.rides();
            update.lost().forEach(lost -> {
                // The walk has named it, too, with a mark in the place of each byte that it could not express.
                skipped.remove(new SkippedFile(marked(lost.file()), RideFinder.INEXPRESSIBLE));
                skipped.add(lost);
            });
            return review(byName(files, update, gone), gone, rides, skipped);
        }
    }

    /** A name as a run sees it whose locale is ASCII: each byte of another letter is replaced by a mark. */
    private static String marked(String name) {
        StringBuilder marked = new StringBuilder();
        for (byte each : name.getBytes(StandardCharsets.UTF_8)) {
            marked.append(each >= 0 ? (char) each : '\uFFFD');
        }
        return marked.toString();
    }

    private List<FoundFile> withoutStore(List<FoundFile> files) {
        Path store = request.store().toAbsolutePath().normalize();
        Set<String> own = Set.of(store.toString(), store + "-wal", store + "-shm", store + "-journal");
        return files.stream()
                .filter(file -> !own.contains(file.path().toString()))
                .toList();
    }

    /** The files of the season that the store knows, in the order of their names below its folders. */
    private static Map<String, FileRow> byName(List<FoundFile> files, StoreUpdate update, List<FileRow> gone) {
        Map<String, FileRow> byName = new TreeMap<>();
        for (FoundFile file : files) {
            FileRow row = update.row(file);
            if (row != null) {
                byName.put(file.name(), row);
            }
        }
        gone.forEach(row -> byName.putIfAbsent(row.name(), row));
        return byName;
    }

    private SeasonReview review(
            Map<String, FileRow> byName, List<FileRow> gone, List<RideRow> stored, List<SkippedFile> unread) {
        List<SkippedFile> skipped = new ArrayList<>(unread);
        List<DuplicateRide> copies = new ArrayList<>();
        Map<String, String> nameOf = new HashMap<>();
        byName.forEach((name, row) -> {
            if (row.problem() != null) {
                skipped.add(new SkippedFile(name, row.problem()));
                return;
            }
            String first = nameOf.putIfAbsent(row.sha256(), name);
            if (first != null) {
                copies.add(new DuplicateRide(name, first, DuplicateRide.Reason.COPY));
            }
        });
        List<SeasonRide> rides = new ArrayList<>();
        for (RideRow row : stored) {
            String name = nameOf.get(row.key().sha256());
            if (name != null) {
                rides.add(ride(row, name));
            }
        }
        List<String> goneNames = gone.stream().map(FileRow::name).toList();
        return SeasonReview.of(new SeasonReview.Found(rides, copies, skipped, goneNames), judge, request.asOf());
    }

    private SeasonRide ride(RideRow row, String name) {
        return row.seasonRide(name, judge.day(row.start(), row.utcOffsetSeconds()), request.today());
    }
}
