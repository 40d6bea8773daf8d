package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;

/** How a stretch of falling effort is repaired. */
final class EffortRepair {
    private static final int PARTS = 12;

    private EffortRepair() {}

    /**
     * Brings a stretch that was ridden too easily to the effort of an earlier one, twelfth by twelfth, since most falls grow.
     * What was as hard as before stays as it is.
     */
    static Repair of(Race race, Interval reference, Interval stretch) {
        List<Interval> compared = new ArrayList<>();
        compared.add(reference);
        for (Interval part : race.parts(PARTS)) {
            int from = Math.max(stretch.fromSecond(), Math.max(part.fromSecond(), reference.toSecond()));
            int to = Math.min(stretch.toSecond(), part.toSecond());
            if (from < to) {
                compared.add(new Interval(from, to));
            }
        }
        GroundAndTime efforts = race.ground().compare(compared);
        double whole = race.ground()
                .ratio(
                        new Interval(Math.max(stretch.fromSecond(), reference.toSecond()), stretch.toSecond()),
                        reference);
        List<Repair.Stretch> changes = new ArrayList<>();
        for (int k = 1; k < compared.size(); k++) {
            double kept = Double.isNaN(efforts.ratio(k, 0)) ? whole : efforts.ratio(k, 0);
            double meanW = race.ground().meanW(compared.get(k));
            if (kept < 1 && !Double.isNaN(meanW)) {
                changes.add(new Repair.Stretch(compared.get(k), StretchChange.TO_EARLIER_POWER, meanW, meanW / kept));
            }
        }
        return new Repair(Repair.Turn.FACTORS, changes, 0);
    }
}
