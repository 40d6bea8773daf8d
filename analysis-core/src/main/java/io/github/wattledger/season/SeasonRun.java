package io.github.wattledger.season;

import io.github.wattledger.read.UnreadableRideException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionService;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;

/**
 * From folders of recordings to a season. What a file gave is kept in the store by its content and by the version of the
 * analysis; a file whose size and time of change are as they were is not opened again. Another threshold is applied to
 * what the store has, without the files.
 *
 * <p>The result depends on the files, the rider and the request alone: not on the order of files, the number of threads,
 * the locale, the time zone of the machine or the clock.
 */
public final class SeasonRun {
    private final SeasonRequest request;
    private final Judge judge;
    private final Executor executor;
    private final int inFlight;
    private final SeasonListener listener;

    private SeasonRun(SeasonRequest request, Executor executor, int inFlight, SeasonListener listener) {
        this.request = request;
        this.judge = new Judge(request.rider(), request.limits(), request.zone());
        this.executor = executor;
        this.inFlight = inFlight;
        this.listener = listener;
    }

    /**
     * Looks at a season.
     *
     * @param request what to look at
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

    /** {@link #run(SeasonRequest, Executor, int, SeasonListener)} without a listener. */
    public static SeasonReview run(SeasonRequest request, Executor executor, int parallelism)
            throws UnreadableRideException, SeasonStoreException {
        return run(request, executor, parallelism, SeasonListener.SILENT);
    }

    /** On the caller's thread alone, without a listener. */
    public static SeasonReview run(SeasonRequest request) throws UnreadableRideException, SeasonStoreException {
        return run(request, Runnable::run, 1, SeasonListener.SILENT);
    }

    private SeasonReview run() throws UnreadableRideException, SeasonStoreException {
        RideFinder.Found found = RideFinder.find(request.folders());
        List<FoundFile> files = withoutStore(found.files());
        try (RideStore store = RideStore.open(request.store())) {
            Map<String, RideStore.FileRow> rows = store.files();
            List<SkippedFile> unread = read(store, files, rows);
            List<RideStore.FileRow> gone = gone(store, files, rows);
            List<RideStore.RideRow> rides = store.rides();
            Map<StoredRide.Key, Judge.Judged> judgedAnew = judgeAnew(store, rows, rides);
            return review(files, rows, gone, rides, judgedAnew, join(found.skipped(), unread));
        }
    }

    private List<FoundFile> withoutStore(List<FoundFile> files) {
        Path store = request.store().toAbsolutePath().normalize();
        Set<String> own = Set.of(store.toString(), store + "-wal", store + "-shm", store + "-journal");
        return files.stream()
                .filter(file -> !own.contains(file.path().toString()))
                .toList();
    }

    /** Reads what is new or changed, puts it into the store, and brings the rows up to date. */
    private List<SkippedFile> read(RideStore store, List<FoundFile> files, Map<String, RideStore.FileRow> rows)
            throws SeasonStoreException {
        List<FoundFile> toRead = new ArrayList<>();
        Set<String> outdated = contentsOfAnotherMass(store);
        Set<String> outdatedToRead = new HashSet<>();
        for (FoundFile file : files) {
            RideStore.FileRow row = rows.get(file.path().toString());
            if (row == null
                    || !row.isStillOf(file)
                    || (outdated.contains(row.sha256()) && outdatedToRead.add(row.sha256()))) {
                toRead.add(file);
            } else if (!row.name().equals(file.name())) {
                // The same file seen from another folder above it.
                rows.put(row.path(), RideStore.FileRow.of(file, row.sha256(), row.problem()));
            }
        }
        listener.found(files.size(), toRead.size());
        Set<String> known = new HashSet<>();
        Map<String, String> problems = new HashMap<>();
        for (RideStore.FileRow row : rows.values()) {
            if (row.analysisVersion() == RideStore.ANALYSIS_VERSION) {
                known.add(row.sha256());
                if (row.problem() != null) {
                    problems.put(row.sha256(), row.problem());
                }
            }
        }
        known.removeAll(outdated);
        Set<String> knownContents = Set.copyOf(known);
        List<SkippedFile> unread = new ArrayList<>();
        Iterator<FoundFile> remaining = toRead.iterator();
        work(
                toRead.size(),
                () -> {
                    if (!remaining.hasNext()) {
                        return null;
                    }
                    FoundFile next = remaining.next();
                    return () -> RideIntake.take(next, knownContents, judge);
                },
                taken -> {
                    String sha256 = taken.sha256();
                    if (sha256 == null) {
                        unread.add(new SkippedFile(taken.file().name(), String.valueOf(taken.problem())));
                        rows.remove(taken.file().path().toString());
                        return;
                    }
                    String problem = taken.isKnown() ? problems.get(sha256) : taken.problem();
                    RideStore.FileRow row = RideStore.FileRow.of(taken.file(), sha256, problem);
                    store.put(row, taken.rides());
                    rows.put(row.path(), row);
                });
        return unread;
    }

    /**
     * Contents with a ride whose drag area and rolling resistance were estimated when rider and bicycle weighed
     * otherwise: only their files can tell what they are now.
     */
    private Set<String> contentsOfAnotherMass(RideStore store) throws SeasonStoreException {
        Set<String> contents = new HashSet<>();
        for (RideStore.EstimatedRide ride : store.estimatedRides()) {
            double massKg = judge.totalMassKg(ride.device(), ride.start(), ride.utcOffsetSeconds());
            if (massKg != ride.totalMassKg()) {
                contents.add(ride.sha256());
            }
        }
        return contents;
    }

    /** Files of these folders that are no longer there, and whose content is nowhere else. */
    private List<RideStore.FileRow> gone(RideStore store, List<FoundFile> files, Map<String, RideStore.FileRow> rows)
            throws SeasonStoreException {
        Set<String> there = new HashSet<>();
        Set<String> contents = new HashSet<>();
        for (FoundFile file : files) {
            String path = file.path().toString();
            there.add(path);
            RideStore.FileRow row = rows.get(path);
            if (row != null) {
                contents.add(row.sha256());
            }
        }
        List<RideStore.FileRow> gone = new ArrayList<>();
        List<RideStore.FileRow> forgotten = new ArrayList<>();
        for (RideStore.FileRow row : new TreeMap<>(rows).values()) {
            if (there.contains(row.path())) {
                continue;
            }
            boolean ours = request.folders().stream().anyMatch(folder -> isBelow(row.path(), folder));
            boolean stays = row.problem() == null && !contents.contains(row.sha256()) && !request.forgetGone();
            if (!ours || Path.of(row.path()).toFile().exists()) {
                rows.remove(row.path());
            } else if (stays) {
                gone.add(row);
            } else {
                forgotten.add(row);
                rows.remove(row.path());
            }
        }
        if (!forgotten.isEmpty()) {
            store.forget(forgotten);
        }
        return gone;
    }

    private static boolean isBelow(String path, Path folder) {
        return Path.of(path).startsWith(folder.toAbsolutePath().normalize());
    }

    /**
     * Judges rides whose judgement rests on another threshold, from what the store has of them, and works out anew the
     * numbers of those that an earlier version of the analysis left and whose files are gone.
     */
    private Map<StoredRide.Key, Judge.Judged> judgeAnew(
            RideStore store, Map<String, RideStore.FileRow> rows, List<RideStore.RideRow> rides)
            throws SeasonStoreException {
        Set<String> contents = contents(rows);
        List<RideStore.RideRow> stale = new ArrayList<>();
        for (RideStore.RideRow ride : rides) {
            String key = judge.key(ride.device(), ride.start(), ride.utcOffsetSeconds());
            if (contents.contains(ride.key().sha256())
                    && !(ride.isCurrent() && key.equals(ride.judged().key()))) {
                stale.add(ride);
            }
        }
        Map<StoredRide.Key, Judge.Judged> judged = new HashMap<>();
        Iterator<RideStore.RideRow> remaining = stale.iterator();
        work(
                stale.size(),
                () -> {
                    if (!remaining.hasNext()) {
                        return null;
                    }
                    RideStore.RideRow next = remaining.next();
                    // Empty when another process has just taken it out of the store; then the old judgement is shown.
                    Optional<StoredRide> stored = store.stored(next.key());
                    return () -> new Rejudged(
                            next,
                            stored.orElse(null),
                            stored.map(each -> judge.judge(
                                            each.unpack(), each.device(), each.utcOffsetSeconds(), each.estimate()))
                                    .orElse(next.judged()));
                },
                each -> {
                    StoredRide.Key key = each.row().key();
                    if (each.ride() != null && !each.row().isCurrent()) {
                        store.renew(new RideIntake.NewRide(each.ride(), each.judged()));
                    } else {
                        store.putJudgement(key, each.judged());
                    }
                    judged.put(key, each.judged());
                });
        return judged;
    }

    private record Rejudged(RideStore.RideRow row, @Nullable StoredRide ride, Judge.Judged judged) {}

    private SeasonReview review(
            List<FoundFile> files,
            Map<String, RideStore.FileRow> rows,
            List<RideStore.FileRow> gone,
            List<RideStore.RideRow> stored,
            Map<StoredRide.Key, Judge.Judged> judgedAnew,
            List<SkippedFile> unread) {
        TreeMap<String, RideStore.FileRow> byName = new TreeMap<>();
        for (FoundFile file : files) {
            RideStore.FileRow row = rows.get(file.path().toString());
            if (row != null) {
                byName.put(file.name(), row);
            }
        }
        gone.forEach(row -> byName.putIfAbsent(row.name(), row));
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
                copies.add(new DuplicateRide(name, first, true));
            }
        });
        List<SeasonRide> rides = new ArrayList<>();
        for (RideStore.RideRow row : stored) {
            String name = nameOf.get(row.key().sha256());
            if (name != null) {
                rides.add(ride(row, name, judgedAnew.getOrDefault(row.key(), row.judged())));
            }
        }
        List<String> goneNames = gone.stream().map(RideStore.FileRow::name).toList();
        return SeasonReview.of(new SeasonReview.Found(rides, copies, skipped, goneNames), judge, request.asOf());
    }

    private SeasonRide ride(RideStore.RideRow row, String name, Judge.Judged judged) {
        LocalDate day = judge.day(row.start(), row.utcOffsetSeconds());
        SeasonRide.Source source = new SeasonRide.Source(
                name,
                row.key().sha256(),
                row.key().sessionIndex(),
                row.format(),
                row.device().name(),
                row.start(),
                row.utcOffsetSeconds(),
                row.channelCount());
        return new SeasonRide(source, day, judged.numbers(), judged.judgement(), judged.bests(), judged.durability());
    }

    private static Set<String> contents(Map<String, RideStore.FileRow> rows) {
        Set<String> contents = new HashSet<>();
        rows.values().forEach(row -> contents.add(row.sha256()));
        return contents;
    }

    private static <T> List<T> join(List<T> first, List<T> second) {
        List<T> all = new ArrayList<>(first);
        all.addAll(second);
        return all;
    }

    /** Gives the next piece of work, or null when there is none left. */
    @FunctionalInterface
    private interface Supply<T> {
        @Nullable Callable<T> next() throws SeasonStoreException;
    }

    @FunctionalInterface
    private interface Sink<T> {
        void accept(T result) throws SeasonStoreException;
    }

    /** Keeps so many pieces of work going, and takes results one by one on this thread, which alone uses the store. */
    private <T> void work(int total, Supply<T> supply, Sink<T> sink) throws SeasonStoreException {
        CompletionService<T> service = new ExecutorCompletionService<>(executor);
        List<Future<T>> submitted = new ArrayList<>();
        int running = 0;
        try {
            int done = 0;
            boolean more = true;
            while (more || running > 0) {
                while (more && running < inFlight) {
                    requireGoingOn();
                    Callable<T> next = supply.next();
                    if (next == null) {
                        more = false;
                    } else {
                        submitted.add(service.submit(next));
                        running++;
                    }
                }
                if (running > 0) {
                    Future<T> finished = service.take();
                    running--;
                    submitted.removeIf(Future::isDone);
                    sink.accept(finished.get());
                    listener.progressed(++done, total);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw cancelled();
        } catch (ExecutionException e) {
            throw new IllegalStateException("a piece of the season failed: " + e.getCause(), e.getCause());
        } finally {
            submitted.forEach(future -> future.cancel(true));
        }
    }

    private void requireGoingOn() {
        if (listener.isCancelled() || Thread.currentThread().isInterrupted()) {
            throw cancelled();
        }
    }

    private static CancellationException cancelled() {
        return new CancellationException("the season was cancelled; what was done is kept in the store");
    }
}
