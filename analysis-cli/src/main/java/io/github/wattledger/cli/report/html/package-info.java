/**
 * Pages for people: one file each that holds everything it needs, opens without a network and prints. {@link
 * io.github.wattledger.cli.report.html.HtmlReport}, {@link io.github.wattledger.cli.report.html.HtmlSeason}, {@code
 * HtmlComparison} and {@code HtmlWhatIf} are the doors. Sentences come from {@code cli.report.words}; headings and legends stand in the templates of {@code src/main/jte},
 * which escape whatever they are given; only {@link
 * io.github.wattledger.cli.report.html.Markup}, which this package alone can make, passes through them as it is.
 */
@NullMarked
package io.github.wattledger.cli.report.html;

import org.jspecify.annotations.NullMarked;
