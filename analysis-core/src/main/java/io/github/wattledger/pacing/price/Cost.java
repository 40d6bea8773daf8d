package io.github.wattledger.pacing.price;

import java.io.Serializable;

/** What a finding cost. */
public sealed interface Cost extends Serializable permits Cost.Priced, Cost.NotPriced {
    /**
     * A range of minutes.
     *
     * @param lowMinutes the lower end
     * @param highMinutes the upper end, not below the lower
     * @param how how it was computed, one short clause
     */
    record Priced(double lowMinutes, double highMinutes, String how) implements Cost {
        /** @throws IllegalArgumentException when the ends are out of order or not numbers */
        public Priced {
            if (!(lowMinutes <= highMinutes)) {
                throw new IllegalArgumentException("price " + lowMinutes + " to " + highMinutes + " minutes");
            }
        }
    }

    /**
     * No price, and why.
     *
     * @param reason one short clause
     */
    record NotPriced(String reason) implements Cost {}
}
