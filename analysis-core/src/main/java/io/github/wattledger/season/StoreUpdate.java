package io.github.wattledger.season;

import io.github.wattledger.rider.RideNotes;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Brings a store up to date with the files of a season: reads what is new or changed, forgets what is gone, and judges
 * anew what rests on another threshold. To be used in this order, once.
 */
final class StoreUpdate {
    private static final String LOST =
            "what the store has of it is damaged, and the file is gone; put the file back, or"
                    + " let the season forget files that are gone";

    private final RideStore store;
    private final SeasonRequest request;
    private final Judge judge;
    private final WorkLoop loop;
    private final List<FoundFile> files;

    /** The files that the store knows, by path; those that this season does not show are taken out. */
    private final Map<String, FileRow> rows;

    /** What the store has lost, and the contents of the files that it knew before anything was read. */
    private final StoreDamage damage;

    private final Set<String> contentsBefore;

    /** What the rider wrote down about the rides of a content. That of files that are gone is in the store alone. */
    private final Map<String, RideNotes> notes;

    private final List<SkippedFile> lost = new ArrayList<>();

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
        this.damage = store.takeOutDamage();
        this.rows = store.files();
        this.contentsBefore = contents(rows.values());
        this.notes = store.notes();
    }

    /** What the store has of a file; null where it could not be read. */
    @Nullable FileRow row(FoundFile file) {
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
        outdated.addAll(contentsWithLostRides());
        List<FoundFile> toRead = toRead(outdated);
        listener.found(files.size(), toRead.size());
        Map<String, FileRow> known = new HashMap<>();
        for (FileRow row : rows.values()) {
            if (row.analysisVersion() == StoreDatabase.ANALYSIS_VERSION && !outdated.contains(row.sha256())) {
                known.put(row.sha256(), row);
            }
        }
        List<SkippedFile> unread = take(toRead, known);
        readNotes();
        return unread;
    }

    /** Of several copies of a file the first by name that has notes counts. */
    private void readNotes() {
        Function<Path, RideNotes> reader = request.notes();
        if (reader == null) {
            return;
        }
        Map<String, RideNotes> found = new HashMap<>();
        files.stream().sorted(Comparator.comparing(FoundFile::name)).forEach(file -> {
            FileRow row = row(file);
            if (row != null && row.problem() == null) {
                found.merge(row.sha256(), reader.apply(file.path()), (one, other) -> one.isEmpty() ? other : one);
            }
        });
        notes.putAll(found);
    }

    /** Reads files, and puts them into the store; what it has of a known content is not read again. */
    private List<SkippedFile> take(List<FoundFile> toRead, Map<String, FileRow> known) throws SeasonStoreException {
        Set<String> knownContents = Set.copyOf(known.keySet());
        List<SkippedFile> unread = new ArrayList<>();
        loop.run(toRead, file -> () -> RideIntake.take(file, knownContents, judge), taken -> {
            String sha256 = taken.sha256();
            if (sha256 == null) {
                unread.add(new SkippedFile(taken.file().name(), String.valueOf(taken.problem())));
                rows.remove(taken.file().path().toString());
                return;
            }
            FileRow same = taken.isKnown() ? known.get(sha256) : null;
            FileRow row = same != null
                    ? FileRow.of(taken.file(), sha256, same.problem(), same.rideCount())
                    : FileRow.of(
                            taken.file(), sha256, taken.problem(), taken.rides().size());
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
            FileRow row = row(file);
            if (row == null
                    || !row.isStillOf(file)
                    || (outdated.contains(row.sha256()) && outdatedToRead.add(row.sha256()))) {
                toRead.add(file);
            } else if (!row.name().equals(file.name())) {
                // The file was found from another folder above it.
                rows.put(row.path(), FileRow.of(file, row.sha256(), row.problem(), row.rideCount()));
            }
        }
        return toRead;
    }

    /** Contents of which the store has fewer rides than it had. */
    private Set<String> contentsWithLostRides() {
        Set<String> contents = new HashSet<>();
        for (FileRow row : rows.values()) {
            if (!damage.hasAllRidesOf(row)) {
                contents.add(row.sha256());
            }
        }
        return contents;
    }

    /**
     * Contents with a ride whose drag area and rolling resistance were estimated for another mass of rider and bicycle.
     * Their files must be read again: the store does not keep the positions that the estimate needs.
     */
    private Set<String> contentsOfAnotherMass() throws SeasonStoreException {
        Set<String> contents = new HashSet<>();
        for (RideRow ride : store.rides()) {
            Double estimateMassKg = ride.estimateMassKg();
            if (ride.isCurrent()
                    && estimateMassKg != null
                    && estimateMassKg != judge.totalMassKg(ride.device(), ride.start(), ride.utcOffsetSeconds())) {
                contents.add(ride.key().sha256());
            }
        }
        return contents;
    }

    /**
     * Forgets files that are gone and give no ride of their own, and all that are gone where the request says so.
     *
     * @return the other files of these folders that are gone; their rides live on in the store
     */
    List<FileRow> gone() throws SeasonStoreException {
        Set<String> there = new HashSet<>();
        Set<String> contents = new HashSet<>();
        for (FoundFile file : files) {
            there.add(file.path().toString());
            FileRow row = row(file);
            if (row != null) {
                contents.add(row.sha256());
            }
        }
        List<FileRow> gone = new ArrayList<>();
        List<FileRow> forgotten = new ArrayList<>();
        for (FileRow row : new TreeMap<>(rows).values()) {
            if (there.contains(row.path())) {
                continue;
            }
            boolean ours = request.folders().stream().anyMatch(folder -> isBelow(row.path(), folder));
            Path path = path(row);
            if (path == null) {
                // In this locale nobody can know whether the file is gone.
                rows.remove(row.path());
                if (ours) {
                    lost.add(new SkippedFile(row.name(), RideFinder.INEXPRESSIBLE));
                }
                continue;
            }
            boolean stays = row.problem() == null && !contents.contains(row.sha256()) && !request.forgetGone();
            if (!ours || Files.exists(path)) {
                rows.remove(row.path());
            } else if (stays) {
                if (damage.hasAllRidesOf(row)) {
                    gone.add(row);
                } else {
                    lost.add(new SkippedFile(row.name(), LOST));
                }
            } else {
                forgotten.add(row);
                rows.remove(row.path());
            }
        }
        if (!forgotten.isEmpty()) {
            store.forget(forgotten);
        }
        forgetOrNameRidesWithoutFile(contents);
        return gone;
    }

    /** A store has such rides only where damage has taken the row of their file. */
    private void forgetOrNameRidesWithoutFile(Set<String> contentsNow) throws SeasonStoreException {
        for (Map.Entry<String, Instant> each : new TreeMap<>(damage.starts()).entrySet()) {
            String content = each.getKey();
            if (!contentsBefore.contains(content) && !contentsNow.contains(content)) {
                if (request.forgetGone()) {
                    store.forgetRidesOf(content);
                } else {
                    lost.add(new SkippedFile("a ride that began at " + each.getValue(), LOST));
                }
            }
        }
    }

    /** The rides that were lost, since the store is damaged and their files are gone; complete after the other steps. */
    List<SkippedFile> lost() {
        return List.copyOf(lost);
    }

    private static boolean isBelow(String path, Path folder) {
        String above = folder.toAbsolutePath().normalize().toString();
        String separator = folder.getFileSystem().getSeparator();
        return path.equals(above) || path.startsWith(above.endsWith(separator) ? above : above + separator);
    }

    /** The path of a file; null where the locale of this run cannot express it, unlike that of the run that wrote it. */
    private static @Nullable Path path(FileRow row) {
        try {
            return Path.of(row.path());
        } catch (InvalidPathException e) {
            return null;
        }
    }

    /**
     * Gives the rides of the store as they are judged now. A ride whose judgement rests on another threshold, or on other
     * rides of earlier days, is judged again from the seconds that the store keeps, and so is a ride whose numbers an earlier version of the analysis
     * left. Where these seconds are damaged, its file is read again.
     */
    List<RideRow> rides() throws SeasonStoreException {
        DatedJudging.Result first = judged();
        if (first.unreadable().isEmpty()) {
            return List.copyOf(first.rides().values());
        }
        Set<String> damaged = new HashSet<>();
        first.unreadable().forEach(ride -> damaged.add(ride.key().sha256()));
        Set<String> once = new HashSet<>(damaged);
        List<FoundFile> toRead = files.stream()
                .filter(file -> row(file) != null
                        && once.remove(Objects.requireNonNull(row(file)).sha256()))
                .toList();
        lost.addAll(take(toRead, Map.of()));
        DatedJudging.Result second = judged();
        for (RideRow ride : second.unreadable()) {
            second.rides().remove(ride.key());
            rows.values().stream()
                    .filter(row -> row.sha256().equals(ride.key().sha256()))
                    .map(FileRow::name)
                    .min(Comparator.naturalOrder())
                    .ifPresent(name -> lost.add(new SkippedFile(name, LOST)));
        }
        return List.copyOf(second.rides().values());
    }

    private DatedJudging.Result judged() throws SeasonStoreException {
        return DatedJudging.run(store, judge, loop, request.today(), contents(rows.values()), notes);
    }

    private static Set<String> contents(Collection<FileRow> rows) {
        Set<String> contents = new HashSet<>();
        rows.forEach(row -> contents.add(row.sha256()));
        return contents;
    }
}
