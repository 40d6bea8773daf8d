/**
 * Tables of samples as text: one row a sample, columns found by their names.
 */
@NullMarked
package io.github.wattledger.read.csv;

import org.jspecify.annotations.NullMarked;
