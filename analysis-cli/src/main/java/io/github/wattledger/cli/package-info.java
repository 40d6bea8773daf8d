/**
 * The command line: parses arguments, calls {@link io.github.wattledger.Reviewer}, chooses a report. It computes nothing.
 * The door is {@link io.github.wattledger.cli.Main}; it sees the values of the core and the reports.
 */
@NullMarked
package io.github.wattledger.cli;

import org.jspecify.annotations.NullMarked;
