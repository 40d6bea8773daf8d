/**
 * The GPX format, version 1.1 and what is close to it. Reads elements by their local names, so that it does not matter
 * which add-on a power value was written for.
 */
@NullMarked
package io.github.wattledger.read.gpx;

import org.jspecify.annotations.NullMarked;
