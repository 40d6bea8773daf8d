package io.github.wattledger.replay;

import java.util.Arrays;

/**
 * The shelter of each bin of a replay: what a bunch saved when the ride was recorded, and what share of the lone rider's
 * drag is ridden against instead.
 *
 * <p>The saving is a share of the drag area, not a tailwind: drag in the bunch is (1 - saving) times the drag alone at the
 * same speed in the same air. So a bin in which a bunch saved something had more wind than the recorded balance shows, and
 * another power is ridden against that wind. A drag share of 1 - saving is the recorded shelter, and the recorded power
 * then takes the recorded time whatever the saving; a drag share of 1 is no shelter. Immutable and safe for many threads.
 */
public final class Shelter {
    /** The largest saving, a share of the drag: more than any published measurement, and short of a division by nothing. */
    public static final double MOST_SAVING = 0.9;

    private static final double ROUNDING = 1e-12;

    private final double[] saving;
    private final double[] dragShare;
    private final FreeRoll freeRoll;

    private Shelter(double[] saving, double[] dragShare, FreeRoll freeRoll) {
        this.freeRoll = freeRoll;
        this.saving = saving;
        this.dragShare = dragShare;
    }

    /** No bin was sheltered, and none is. */
    static Shelter none(int bins, FreeRoll freeRoll) {
        double[] dragShare = new double[bins];
        Arrays.fill(dragShare, 1);
        return new Shelter(new double[bins], dragShare, freeRoll);
    }

    /** This shelter with other shares in some bins; see {@link Replay#sheltered}. */
    Shelter with(int[] some, double savedShare, double riddenDragShare) {
        if (!(savedShare >= 0 && savedShare <= MOST_SAVING)) {
            throw new IllegalArgumentException("saved share " + savedShare + ", expected 0 to " + MOST_SAVING);
        }
        if (!(riddenDragShare > 0 && riddenDragShare <= 1)) {
            throw new IllegalArgumentException("drag share " + riddenDragShare + ", expected above 0 and at most 1");
        }
        Shelter more = new Shelter(saving.clone(), dragShare.clone(), freeRoll);
        for (int bin : some) {
            more.saving[bin] = savedShare;
            more.dragShare[bin] = riddenDragShare;
        }
        return more;
    }

    /** Which of the freewheeled bins rolled freely. */
    FreeRoll freeRoll() {
        return freeRoll;
    }

    int bins() {
        return saving.length;
    }

    /** Whether a bin is ridden as the recorded balance says, without another look at its air. */
    boolean isAsRecorded(int bin) {
        return saving[bin] == 0 && dragShare[bin] == 1;
    }

    /** Whether a bin is ridden against another drag than the recorded one. */
    boolean isChanged(int bin) {
        return Math.abs(dragShare[bin] - (1 - saving[bin])) > ROUNDING;
    }

    /** What the bunch saved in a bin of the recording, a share of the lone drag. */
    double saving(int bin) {
        return saving[bin];
    }

    /** What a bin is ridden against, a share of the lone drag. */
    double dragShare(int bin) {
        return dragShare[bin];
    }
}
