package io.github.wattledger.history;

import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Threshold power by date as a rider's own rides show it.
 *
 * @param thresholds the value that was in force first and each rise; none where no ride has 20 minutes of riding
 * @param moves the rises, and the falls that are only proposed
 */
public record ThresholdProposal(ThresholdHistory thresholds, List<ThresholdMove> moves) implements Serializable {
    /** Copies the list. */
    public ThresholdProposal {
        moves = List.copyOf(moves);
    }

    /**
     * From the rider's own last entry on, or from the best effort of the first six weeks where there is none.
     *
     * @param rides the rides in the order of their days
     */
    static ThresholdProposal of(List<PastRide> rides, Rider rider, NamedDays named) {
        Start start = Start.of(rides, rider);
        if (start == null) {
            return new ThresholdProposal(ThresholdHistory.NONE, List.of());
        }
        List<PastRide> counted = rides.stream()
                .filter(ride -> !ride.day().isBefore(start.countedFrom))
                .toList();
        List<ThresholdMove> moves =
                ThresholdMoves.of(start.watts, counted, named).found().orElse(List.of());
        return new ThresholdProposal(dated(start, moves), moves);
    }

    /**
     * What the moves begin with.
     *
     * @param day the day from which the value holds
     * @param watts the value
     * @param countedFrom the first day whose rides can move it
     */
    private record Start(LocalDate day, double watts, LocalDate countedFrom) {
        static @Nullable Start of(List<PastRide> rides, Rider rider) {
            Start last = null;
            for (ThresholdHistory.Entry entry : rider.thresholds().entries()) {
                if (entry.powerW() != null) {
                    last = new Start(entry.from(), entry.powerW(), entry.from());
                }
            }
            return last != null || rides.isEmpty() ? last : ofFirstRides(rides);
        }

        private static @Nullable Start ofFirstRides(List<PastRide> rides) {
            LocalDate first = rides.get(0).day();
            LocalDate end = first.plusDays(ThresholdMoves.RISE_DAYS);
            double implied = 0;
            for (PastRide ride : rides) {
                Double each = ride.day().isBefore(end) ? ride.impliedThresholdW() : null;
                implied = each == null ? implied : Math.max(implied, each);
            }
            return implied > 0 ? new Start(first, OwnThreshold.SHORTFALL * implied, end) : null;
        }
    }

    /** Two rises of one day count as the later one. */
    private static ThresholdHistory dated(Start start, List<ThresholdMove> moves) {
        TreeMap<LocalDate, Double> byDay = new TreeMap<>();
        byDay.put(start.day, start.watts);
        moves.stream().filter(ThresholdMove::isRise).forEach(move -> byDay.put(move.day(), move.toW()));
        List<ThresholdHistory.Entry> entries = new ArrayList<>();
        byDay.forEach((day, watts) -> {
            if (Bounds.THRESHOLD_POWER_W.contains(watts)) {
                entries.add(new ThresholdHistory.Entry(day, watts, null));
            }
        });
        return new ThresholdHistory(entries);
    }
}
