/**
 * What a rider can do: best efforts and sustainable power. Sees {@code ride} and {@code load}.
 */
@NullMarked
package io.github.wattledger.power;

import org.jspecify.annotations.NullMarked;
