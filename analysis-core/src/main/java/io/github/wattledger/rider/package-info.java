/**
 * What is known about a rider and the bicycle, and within which bounds a number about them is believed: values only.
 * Sees {@code ride}.
 */
@NullMarked
package io.github.wattledger.rider;

import org.jspecify.annotations.NullMarked;
