/**
 * What a rider can do: best efforts ({@link io.github.wattledger.power.MeanMaximalCurve}), critical power ({@link
 * io.github.wattledger.power.RideCriticalPower}), the balance of W′, and sustainable power. Sees {@code ride} and {@code
 * load}.
 */
@NullMarked
package io.github.wattledger.power;

import org.jspecify.annotations.NullMarked;
