/** A ride as a table for spreadsheets and programs; no other package sees the CSV library. */
@NullMarked
package io.github.wattledger.cli.report.csv;

import org.jspecify.annotations.NullMarked;
