/**
 * How a piece of work ends before it is done: by an interrupt of its thread, or at a deadline. Sees nothing, so that a
 * reader of one's own and every long loop of the library may ask it.
 */
@NullMarked
package io.github.wattledger.cancel;

import org.jspecify.annotations.NullMarked;
