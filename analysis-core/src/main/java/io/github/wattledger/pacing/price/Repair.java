package io.github.wattledger.pacing.price;

import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * How a mistake is repaired. Work that a repair takes out of the race or puts into it is made up for by other pedalled
 * seconds, so that the repaired race is as hard as the recorded one. Seconds are counted from the start of the race.
 *
 * @param turn when it applies among the repairs of other mistakes
 * @param stretches what is changed, by rising time; empty where there is nothing to compare with
 * @param madeUpFromSecond no second before this one makes up for the repair: what was ridden before the mistake cannot be
 *     ridden again; 0 where the whole race may
 */
public record Repair(Turn turn, List<Stretch> stretches, int madeUpFromSecond) implements PricePlan {
    /** When a repair applies among others. */
    public enum Turn {
        /** Power is multiplied by a factor. */
        FACTORS,
        /** Power is capped. A cap comes last, so that no factor lowers it once more. */
        CAPS
    }

    /**
     * A change of one stretch.
     *
     * @param when the stretch
     * @param change how its power is changed
     * @param fromW its power as ridden, watts; {@code NaN} where seconds are capped one by one
     * @param toW its power once repaired, or the cap, watts
     */
    public record Stretch(Interval when, StretchChange change, double fromW, double toW) {
        double factor() {
            return toW / fromW;
        }
    }

    /** Copies the list. */
    public Repair {
        stretches = List.copyOf(stretches);
    }

    /**
     * The same repair but for some seconds, which stay as they were ridden and make up for nothing.
     *
     * @param kept these seconds, by rising time, none of them twice
     */
    public Repair keeping(List<Interval> kept) {
        List<Stretch> parts = new ArrayList<>();
        for (Stretch stretch : stretches) {
            int from = stretch.when().fromSecond();
            for (Interval each : kept) {
                Interval common = stretch.when().common(each).orElse(null);
                if (common != null) {
                    addPart(parts, stretch, from, common.fromSecond());
                    parts.add(new Stretch(common, StretchChange.AS_RIDDEN, stretch.fromW(), stretch.fromW()));
                    from = common.toSecond();
                }
            }
            addPart(parts, stretch, from, stretch.when().toSecond());
        }
        return new Repair(turn, parts, madeUpFromSecond);
    }

    private static void addPart(List<Stretch> parts, Stretch whole, int from, int to) {
        if (from < to) {
            parts.add(new Stretch(new Interval(from, to), whole.change(), whole.fromW(), whole.toW()));
        }
    }

    /** The seconds of all stretches. */
    public int seconds() {
        return stretches.stream().mapToInt(each -> each.when().seconds()).sum();
    }

    /** The seconds of those stretches that do not stay as they were ridden. */
    public int changedSeconds() {
        return stretches.stream()
                .filter(each -> each.change() != StretchChange.AS_RIDDEN)
                .mapToInt(each -> each.when().seconds())
                .sum();
    }
}
