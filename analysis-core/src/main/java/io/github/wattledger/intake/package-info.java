/**
 * How a ride comes in: a file, its bytes, a stream or a recording becomes an opened ride, once and for every command, and
 * what is known about the rider is settled for the day of that ride. Sees {@code ride}, {@code rider}, {@code read},
 * {@code clean}, {@code load}, {@code power} and {@code rig}.
 */
@NullMarked
package io.github.wattledger.intake;

import org.jspecify.annotations.NullMarked;
