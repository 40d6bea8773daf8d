/**
 * Rides and seasons as tables, for those who want to reckon further themselves. Only this package knows of the table
 * library, and nothing else of the project needs this package.
 */
@NullMarked
package io.github.wattledger.table;

import org.jspecify.annotations.NullMarked;
