/**
 * From a result to characters. A report computes nothing beyond the formatting, and knows nothing of the command line.
 *
 * <ul>
 *   <li>{@code text}: for people, 80 columns
 *   <li>{@code csv}: the cleaned recording for spreadsheets and programs, one row a second
 *   <li>{@code html}: pages for people, one file each
 *   <li>{@code words}: the sentences that {@code text} and {@code html} share
 * </ul>
 *
 * <p>JSON, the report for programs, is the library's: {@link io.github.wattledger.json.JsonDocument}.
 */
@NullMarked
package io.github.wattledger.cli.report;

import org.jspecify.annotations.NullMarked;
