package io.github.wattledger.season;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Brings a store up to date with the files of a season: reads what is new or changed, forgets what is gone, and judges
 * anew what rests on another threshold. To be used in this order, once.
 */
final class StoreUpdate {
    private final RideStore store;
    private final SeasonRequest request;
    private final Judge judge;
    private final WorkLoop loop;
    private final List<FoundFile> files;

    /** The files that the store knows, by path; those that this season does not show are taken out. */
    private final Map<String, RideStore.FileRow> rows;

    /**
     * An update.
     *
     * @param files the files of the season that are there
     * @param loop what the files are read on
     * @throws SeasonStoreException when the store cannot be read
     */
    StoreUpdate(RideStore store, SeasonRequest request, Judge judge, WorkLoop loop, List<FoundFile> files)
            throws SeasonStoreException {
        this.store = store;
        this.request = request;
        this.judge = judge;
        this.loop = loop;
        this.files = files;
        this.rows = store.files();
    }

    /** What the store has of a file; null where it could not be read. */
    RideStore.@Nullable FileRow row(FoundFile file) {
        return rows.get(file.path().toString());
    }

    /**
     * Reads what is new or changed, and puts it into the store.
     *
     * @param listener hears how many files there are, and how many of them are read
     * @return the files that could not be read
     */
    List<SkippedFile> read(SeasonListener listener) throws SeasonStoreException {
        Set<String> outdated = contentsOfAnotherMass();
        List<FoundFile> toRead = toRead(outdated);
        listener.found(files.size(), toRead.size());
        Map<String, @Nullable String> problems = new HashMap<>();
        for (RideStore.FileRow row : rows.values()) {
            if (row.analysisVersion() == RideStore.ANALYSIS_VERSION && !outdated.contains(row.sha256())) {
                problems.put(row.sha256(), row.problem());
            }
        }
        Set<String> known = Set.copyOf(problems.keySet());
        List<SkippedFile> unread = new ArrayList<>();
        loop.run(toRead, file -> () -> RideIntake.take(file, known, judge), taken -> {
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

    /** The files that are new or changed, and one file of each outdated content. */
    private List<FoundFile> toRead(Set<String> outdated) {
        List<FoundFile> toRead = new ArrayList<>();
        Set<String> outdatedToRead = new HashSet<>();
        for (FoundFile file : files) {
            RideStore.FileRow row = row(file);
            if (row == null
                    || !row.isStillOf(file)
                    || (outdated.contains(row.sha256()) && outdatedToRead.add(row.sha256()))) {
                toRead.add(file);
            } else if (!row.name().equals(file.name())) {
                // The file was found from another folder above it.
                rows.put(row.path(), RideStore.FileRow.of(file, row.sha256(), row.problem()));
            }
        }
        return toRead;
    }

    /**
     * Contents with a ride whose drag area and rolling resistance were estimated for another mass of rider and bicycle.
     * Their files must be read again: the store does not keep the positions that the estimate needs.
     */
    private Set<String> contentsOfAnotherMass() throws SeasonStoreException {
        Set<String> contents = new HashSet<>();
        for (RideStore.EstimatedRide ride : store.estimatedRides()) {
            double massKg = judge.totalMassKg(ride.device(), ride.start(), ride.utcOffsetSeconds());
            if (massKg != ride.totalMassKg()) {
                contents.add(ride.sha256());
            }
        }
        return contents;
    }

    /**
     * Forgets files that are gone and give no ride of their own, and all that are gone where the request says so.
     *
     * @return the other files of these folders that are gone; their rides live on in the store
     */
    List<RideStore.FileRow> gone() throws SeasonStoreException {
        Set<String> there = new HashSet<>();
        Set<String> contents = new HashSet<>();
        for (FoundFile file : files) {
            there.add(file.path().toString());
            RideStore.FileRow row = row(file);
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
     * Gives the rides of the store as they are judged now. A ride whose judgement rests on another threshold is judged
     * again from the seconds that the store keeps, and so is a ride whose numbers an earlier version of the analysis
     * left.
     */
    List<RideStore.RideRow> rides() throws SeasonStoreException {
        Set<String> contents = contents(rows.values());
        Map<StoredRide.Key, RideStore.RideRow> rides = new TreeMap<>();
        List<RideStore.RideRow> stale = new ArrayList<>();
        for (RideStore.RideRow ride : store.rides()) {
            rides.put(ride.key(), ride);
            String key = judge.key(ride.device(), ride.start(), ride.utcOffsetSeconds());
            if (contents.contains(ride.key().sha256())
                    && !(ride.isCurrent() && key.equals(ride.judged().key()))) {
                stale.add(ride);
            }
        }
        loop.run(
                stale,
                row -> {
                    // Empty when another process has just taken it out of the store; the old judgement is shown then.
                    Optional<StoredRide> stored = store.stored(row.key());
                    return () -> new Rejudged(row, stored.map(this::judge).orElse(null));
                },
                each -> {
                    if (each.anew() != null) {
                        keep(each.row(), each.anew());
                        rides.put(
                                each.row().key(),
                                each.row().judgedAs(each.anew().judged()));
                    }
                });
        return List.copyOf(rides.values());
    }

    /** A ride and what it comes to now; null where the store no longer has its seconds. */
    private record Rejudged(RideStore.RideRow row, RideIntake.@Nullable NewRide anew) {}

    private RideIntake.NewRide judge(StoredRide ride) {
        return new RideIntake.NewRide(
                ride,
                judge.judge(ride.unpack(), ride.device(), ride.setting(), ride.utcOffsetSeconds(), ride.estimate()));
    }

    private void keep(RideStore.RideRow row, RideIntake.NewRide anew) throws SeasonStoreException {
        if (row.isCurrent()) {
            store.putJudgement(row.key(), anew.judged());
        } else {
            store.renew(anew);
        }
    }

    private static Set<String> contents(Collection<RideStore.FileRow> rows) {
        Set<String> contents = new HashSet<>();
        rows.forEach(row -> contents.add(row.sha256()));
        return contents;
    }
}
