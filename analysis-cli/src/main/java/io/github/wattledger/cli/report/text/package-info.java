/** The report for people. The door is {@link io.github.wattledger.cli.report.text.TextReport}. */
@NullMarked
package io.github.wattledger.cli.report.text;

import org.jspecify.annotations.NullMarked;
