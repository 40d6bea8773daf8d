package io.github.wattledger.season;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.RideNotes;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;

/**
 * Judges the rides of a season in the order of their days, each by what the rider's rides of earlier days say. Only those are
 * judged whose judgement rests on something else than before.
 *
 * <p>What a ride says to later ones depends on its own judgement in one point alone: whether it shows that the rider had no more
 * to give. So rides are judged some at a time, and those of them once more for which a judgement of the same batch has changed
 * that. The earliest ride of a batch whose judgement does not fit is right after each pass, so that this ends, and with the
 * same judgements in whatever order the pieces of work are done.
 */
final class DatedJudging {
    /** Enough to keep all cores busy, and few enough that little is judged twice. */
    private static final int BATCH = 96;

    private final RideStore store;
    private final Judge judge;
    private final WorkLoop loop;
    private final @Nullable LocalDate today;
    private final Map<String, RideNotes> notes;
    private final SortedMap<StoredRide.Key, RideRow> rides;
    private final Map<StoredRide.Key, RideRow> unreadable = new TreeMap<>();
    private final Set<StoredRide.Key> counted = new HashSet<>();
    private OwnRides ownRides;
    private int done;
    private int total;

    private DatedJudging(
            RideStore store,
            Judge judge,
            WorkLoop loop,
            @Nullable LocalDate today,
            Map<String, RideNotes> notes,
            SortedMap<StoredRide.Key, RideRow> all,
            Set<String> contents) {
        this.store = store;
        this.judge = judge;
        this.loop = loop;
        this.today = today;
        this.notes = notes;
        this.rides = new TreeMap<>(all);
        List<SeasonRide> ours = all.values().stream()
                .filter(row -> contents.contains(row.key().sha256()))
                .map(row -> row.seasonRide("", day(row), today))
                .toList();
        for (SeasonRide ride : Duplicates.remove(ours).kept()) {
            if (ride.dateDoubt() == null) {
                counted.add(
                        new StoredRide.Key(ride.source().sha256(), ride.source().sessionIndex()));
            }
        }
        this.ownRides = ownRides();
    }

    /**
     * Rides as they are judged now.
     *
     * @param rides all rides of the store
     * @param unreadable those that had to be judged anew, and of which the store does not have the seconds
     */
    record Result(Map<StoredRide.Key, RideRow> rides, List<RideRow> unreadable) {}

    /**
     * Judges what has to be judged, and keeps it in the store.
     *
     * @param contents the contents of the season's files; rides of others are left as they are, and say nothing
     * @param today the day of the review, or null; a ride with a later date says nothing
     * @param notes what the rider wrote down about the rides of a content; contents without notes need not be in it
     */
    static Result run(
            RideStore store,
            Judge judge,
            WorkLoop loop,
            @Nullable LocalDate today,
            Set<String> contents,
            Map<String, RideNotes> notes)
            throws SeasonStoreException {
        SortedMap<StoredRide.Key, RideRow> all = new TreeMap<>();
        store.rides().forEach(row -> all.put(row.key(), row));
        JudgementBasis basis = new JudgementBasis(judge, today, contents, notes);
        Optional<String> before = store.basis();
        if (before.isPresent() && before.get().equals(basis.of(all))) {
            return new Result(all, List.of());
        }
        DatedJudging judging = new DatedJudging(store, judge, loop, today, notes, all, contents);
        judging.judgeInOrder(all.values().stream()
                .filter(row -> contents.contains(row.key().sha256()))
                .sorted(Comparator.comparing(judging::day).thenComparing(RideRow::key))
                .map(RideRow::key)
                .toList());
        // Of the rows as they were read and written here: what another process makes of them meanwhile has other sums.
        String now = judging.unreadable.isEmpty() ? basis.of(judging.rides) : null;
        if (now != null) {
            store.putBasis(now);
        }
        return new Result(judging.rides, List.copyOf(judging.unreadable.values()));
    }

    private void judgeInOrder(List<StoredRide.Key> order) throws SeasonStoreException {
        total = stale(order).size();
        for (int from = 0; from < order.size() && total > 0; from += BATCH) {
            List<StoredRide.Key> batch = order.subList(from, Math.min(from + BATCH, order.size()));
            List<RideRow> stale = stale(batch);
            while (!stale.isEmpty()) {
                judge(stale);
                stale = stale(batch);
            }
        }
    }

    private List<RideRow> stale(List<StoredRide.Key> keys) {
        List<RideRow> stale = new ArrayList<>();
        for (StoredRide.Key key : keys) {
            RideRow row = Objects.requireNonNull(rides.get(key));
            String now = judge.key(row.device(), row.start(), row.utcOffsetSeconds(), ownRidesFor(row), notes(row));
            if (!unreadable.containsKey(key)
                    && !(row.isCurrent() && now.equals(row.judged().key()))) {
                stale.add(row);
            }
        }
        return stale;
    }

    private void judge(List<RideRow> stale) throws SeasonStoreException {
        total = Math.max(total, done + stale.size());
        boolean[] saysOtherwise = {false};
        loop.run(stale, done, total, this::prepare, each -> {
            RideRow row = each.row();
            RideIntake.NewRide anew = each.anew();
            if (anew == null) {
                unreadable.put(row.key(), row);
                return;
            }
            RideRow.Written written = row.isCurrent() ? store.putJudgement(row, anew.judged()) : store.renew(row, anew);
            saysOtherwise[0] |= !row.isCurrent()
                    || row.judged().showsLimit() != anew.judged().showsLimit();
            rides.put(row.key(), row.judgedAs(written, anew.judged()));
        });
        done += stale.size();
        if (saysOtherwise[0]) {
            ownRides = ownRides();
        }
    }

    /** A ride and what it comes to now; null where the store does not have its seconds. */
    private record Rejudged(RideRow row, RideIntake.@Nullable NewRide anew) {}

    private Callable<Rejudged> prepare(RideRow row) throws SeasonStoreException {
        Optional<StoredRide> stored = store.stored(row);
        OwnRides before = ownRidesFor(row);
        return () ->
                new Rejudged(row, stored.map(ride -> anew(row, ride, before)).orElse(null));
    }

    private RideIntake.NewRide anew(RideRow row, StoredRide stored, @Nullable OwnRides before) {
        Ride ride = stored.unpack();
        Judge.Judged measured = row.isCurrent() ? row.judged() : Judge.measure(ride);
        return new RideIntake.NewRide(
                stored,
                judge.judge(
                        ride,
                        measured,
                        stored.device(),
                        stored.setting(),
                        stored.utcOffsetSeconds(),
                        stored.estimate(),
                        before,
                        notes(row)));
    }

    private RideNotes notes(RideRow row) {
        return notes.getOrDefault(row.key().sha256(), RideNotes.NONE);
    }

    private LocalDate day(RideRow row) {
        return judge.day(row.start(), row.utcOffsetSeconds());
    }

    /** The rides that say something on the day of a ride; null where that day cannot be believed. */
    private @Nullable OwnRides ownRidesFor(RideRow row) {
        return DateDoubt.of(row.start(), day(row), today) == null ? ownRides : null;
    }

    private OwnRides ownRides() {
        return OwnRides.of(
                counted.stream()
                        .map(key -> Objects.requireNonNull(rides.get(key)))
                        .map(row -> PastRides.of(row.seasonRide("", day(row), today)))
                        .toList(),
                judge.rider());
    }
}
