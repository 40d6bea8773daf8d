/**
 * From a file's bytes to recordings. The door is {@link io.github.wattledger.read.RideFiles}; a format of one's own
 * implements {@link io.github.wattledger.read.RideFormat}. Sees only {@code ride}.
 */
@NullMarked
package io.github.wattledger.read;

import org.jspecify.annotations.NullMarked;
