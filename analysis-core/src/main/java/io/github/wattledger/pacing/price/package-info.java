/**
 * What a mistake cost in minutes: the race is ridden again with the mistake repaired. The door is
 * {@link io.github.wattledger.pacing.price.Pricing}. This package knows repairs and no kind of finding.
 */
@NullMarked
package io.github.wattledger.pacing.price;

import org.jspecify.annotations.NullMarked;
