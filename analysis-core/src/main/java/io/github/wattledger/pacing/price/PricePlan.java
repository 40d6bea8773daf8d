package io.github.wattledger.pacing.price;

/** What a finding says about its own price: how its mistake is repaired, what it cost, or why it has no price. */
public sealed interface PricePlan permits Repair, PricePlan.Known, PricePlan.None {
    /**
     * A price that needs no replay.
     *
     * @param price the price
     */
    record Known(Price price) implements PricePlan {}

    /**
     * No price, even where the race can be replayed.
     *
     * @param reason why there is none, one short clause
     */
    record None(String reason) implements PricePlan {}
}
