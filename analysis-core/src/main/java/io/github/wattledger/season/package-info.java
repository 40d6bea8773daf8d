/**
 * A season of rides: load by day, weeks and months, best efforts, and whether pacing improves. The door is
 * {@link io.github.wattledger.season.SeasonRun}; what it finds is kept in a store of its own, so that the next run reads
 * only what is new. Only this package knows of databases.
 */
@NullMarked
package io.github.wattledger.season;

import org.jspecify.annotations.NullMarked;
