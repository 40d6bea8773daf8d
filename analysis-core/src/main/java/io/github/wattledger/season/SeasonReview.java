package io.github.wattledger.season;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.load.TrainingStress;
import io.github.wattledger.power.Durability;
import io.github.wattledger.rider.Rider;
import java.io.Serializable;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Everything a report shows of a season.
 *
 * @param asOf the last day, or null when there is no ride with a date that can be believed and none was asked for
 * @param rides the rides in time order, without duplicates, up to the last day. They include rides whose date cannot be
 *     believed ({@link SeasonRide#dateDoubt()}); nothing else of the review does
 * @param load the loads of 7 and of 42 days from the day of the first ride to the last day; without days when no ride has a
 *     date that can be believed
 * @param weeks the weeks, Monday to Sunday
 * @param months the calendar months
 * @param bests the best efforts of the season
 * @param recentBests those of the last 90 days
 * @param threshold the threshold beside what the recent bests imply
 * @param durability best efforts of the last 90 days when fresh and after so much work, by duration and work
 * @param pacing races and long rides
 * @param duplicates rides that were there twice
 * @param skipped files that gave no ride
 * @param rider what the rides say of their rider, or null where no ride has a date that can be believed
 * @param goneFiles files whose rides are still in the season, from the store, though they are gone
 */
public record SeasonReview(
        @Nullable LocalDate asOf,
        List<SeasonRide> rides,
        LoadHistory load,
        List<PeriodTotals> weeks,
        List<PeriodTotals> months,
        @Nullable BestEfforts bests,
        @Nullable BestEfforts recentBests,
        @Nullable ThresholdCheck threshold,
        List<Durability> durability,
        PacingTrend pacing,
        @Nullable RiderFromRides rider,
        List<DuplicateRide> duplicates,
        List<SkippedFile> skipped,
        List<String> goneFiles)
        implements Serializable {
    private static final Comparator<SeasonRide> IN_TIME = Comparator.<SeasonRide, Instant>comparing(
                    ride -> ride.source().start())
            .thenComparing(ride -> ride.source().sha256())
            .thenComparing(ride -> ride.source().sessionIndex());

    /** Copies the lists. */
    public SeasonReview {
        rides = List.copyOf(rides);
        weeks = List.copyOf(weeks);
        months = List.copyOf(months);
        durability = List.copyOf(durability);
        duplicates = List.copyOf(duplicates);
        skipped = List.copyOf(skipped);
        goneFiles = List.copyOf(goneFiles);
    }

    /** What was found, from which the rest is computed. */
    record Found(
            List<SeasonRide> rides, List<DuplicateRide> copies, List<SkippedFile> skipped, List<String> goneFiles) {}

    static SeasonReview of(Found found, Judge judge, @Nullable LocalDate asOf) {
        Duplicates.Result once = Duplicates.remove(found.rides());
        List<DuplicateRide> duplicates = new ArrayList<>(found.copies());
        duplicates.addAll(once.left());
        duplicates.sort(Comparator.comparing(DuplicateRide::file).thenComparing(DuplicateRide::keptFile));
        List<SkippedFile> skipped = new ArrayList<>(found.skipped());
        skipped.sort(Comparator.comparing(SkippedFile::file));
        List<String> gone = found.goneFiles().stream().sorted().toList();
        List<SeasonRide> rides = once.kept().stream()
                .filter(ride ->
                        asOf == null || ride.dateDoubt() != null || !ride.day().isAfter(asOf))
                .sorted(IN_TIME)
                .toList();
        List<SeasonRide> calendar = inCalendar(rides);
        if (calendar.isEmpty()) {
            return new SeasonReview(
                    asOf,
                    rides,
                    new LoadHistory(0, 0, List.of()),
                    List.of(),
                    List.of(),
                    null,
                    null,
                    null,
                    List.of(),
                    PacingTrend.of(calendar, PastRides.of(calendar, judge.rider())),
                    null,
                    duplicates,
                    skipped,
                    gone);
        }
        return of(againstTheSeason(rides), judge, asOf, duplicates, skipped, gone);
    }

    private static SeasonReview of(
            List<SeasonRide> rides,
            Judge judge,
            @Nullable LocalDate asOf,
            List<DuplicateRide> duplicates,
            List<SkippedFile> skipped,
            List<String> gone) {
        List<SeasonRide> calendar = inCalendar(rides);
        List<SeasonRide> byDay =
                calendar.stream().sorted(Comparator.comparing(SeasonRide::day)).toList();
        LocalDate first = byDay.get(0).day();
        LocalDate last = asOf != null ? asOf : byDay.get(byDay.size() - 1).day();
        Map<LocalDate, Double> stressByDay = new TreeMap<>();
        for (SeasonRide ride : byDay) {
            Double stress = ride.judgement().trainingStress();
            if (stress != null) {
                stressByDay.merge(ride.day(), stress, Double::sum);
            }
        }
        LoadHistory load = LoadHistory.of(first, last, stressByDay);
        OwnRides own = PastRides.of(calendar, judge.rider());
        BestEfforts recent = BestEfforts.of(byDay, last.minusDays(BestEfforts.RECENT_DAYS - 1L), last);
        return new SeasonReview(
                last,
                rides,
                load,
                PeriodTotals.weeks(byDay, load),
                PeriodTotals.months(byDay, load),
                BestEfforts.of(byDay, first, last),
                recent,
                ThresholdCheck.of(byDay, recent, judge, last),
                durability(byDay, recent),
                PacingTrend.of(calendar, own),
                RiderFromRides.of(own, judge.rider(), last),
                duplicates,
                skipped,
                gone);
    }

    /** The best fresh effort of any ride beside the best tired one of any ride: one ride need not hold both. */
    private static List<Durability> durability(List<SeasonRide> rides, BestEfforts recent) {
        TreeMap<Integer, TreeMap<Double, Durability>> best = new TreeMap<>();
        for (SeasonRide ride : rides) {
            if (ride.day().isBefore(recent.from()) || ride.day().isAfter(recent.to())) {
                continue;
            }
            for (Durability each : ride.durability()) {
                best.computeIfAbsent(each.seconds(), absent -> new TreeMap<>())
                        .merge(
                                each.afterKJ(),
                                each,
                                (one, other) -> new Durability(
                                        one.seconds(),
                                        one.afterKJ(),
                                        Math.max(one.fresherW(), other.fresherW()),
                                        Math.max(one.tiredW(), other.tiredW())));
            }
        }
        List<Durability> all = new ArrayList<>();
        best.values().forEach(levels -> all.addAll(levels.values()));
        return all;
    }

    /**
     * A threshold estimated from an easy ride is low, and its stress would be too high. Where no threshold is known, the
     * load of a ride is computed against the highest threshold that the rides of the 90 days up to it imply.
     */
    private static List<SeasonRide> againstTheSeason(List<SeasonRide> rides) {
        List<SeasonRide> judged = new ArrayList<>(rides.size());
        for (int i = 0; i < rides.size(); i++) {
            SeasonRide ride = rides.get(i);
            RideJudgement judgement = ride.judgement();
            boolean known = judgement.thresholdSource() != null && judgement.thresholdSource() != Origin.ESTIMATED;
            Double normalizedPowerW = ride.numbers().normalizedPowerW();
            if (known || normalizedPowerW == null || ride.dateDoubt() != null) {
                judged.add(ride);
                continue;
            }
            LocalDate from = ride.day().minusDays(BestEfforts.RECENT_DAYS);
            double threshold = 0;
            for (int j = i; j >= 0 && rides.get(j).day().isAfter(from); j--) {
                threshold = Math.max(threshold, BestEfforts.implied(rides.get(j)));
            }
            judged.add(
                    threshold > 0
                            ? ride.withJudgement(judgement.withEstimate(
                                    threshold,
                                    TrainingStress.intensityFactor(normalizedPowerW, threshold),
                                    TrainingStress.of(ride.numbers().powerSeconds(), normalizedPowerW, threshold)))
                            : ride);
        }
        return judged;
    }

    private static List<SeasonRide> inCalendar(List<SeasonRide> rides) {
        return rides.stream().filter(ride -> ride.dateDoubt() == null).toList();
    }

    /** The rides whose date can be believed, in time order: the loads, weeks and months are made of these. */
    public List<SeasonRide> calendarRides() {
        return inCalendar(rides);
    }

    /** The rides whose date cannot be believed: they are in the list of rides and nowhere else. */
    public List<SeasonRide> ridesOutsideCalendar() {
        return rides.stream().filter(ride -> ride.dateDoubt() != null).toList();
    }

    /**
     * The season's rides as the history of their rider.
     *
     * @param rider what the rider says; that of the season's request for the history by which the season was judged
     */
    public OwnRides ownRides(Rider rider) {
        return PastRides.of(calendarRides(), rider);
    }

    /** How many rides of the calendar have no training stress, and so count as 0 in the load. */
    public int ridesWithoutStress() {
        return (int) calendarRides().stream()
                .filter(ride -> ride.judgement().trainingStress() == null)
                .count();
    }
}
