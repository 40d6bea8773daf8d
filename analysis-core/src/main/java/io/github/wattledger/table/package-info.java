/**
 * Rides and seasons as tables, for further computation. Only this package knows of the table
 * library, and nothing else of the project needs this package.
 */
@NullMarked
package io.github.wattledger.table;

import org.jspecify.annotations.NullMarked;
