/**
 * The report for programs. The door is {@link io.github.wattledger.cli.report.json.JsonReport}; nothing else in the
 * command line sees the JSON library.
 */
@NullMarked
package io.github.wattledger.cli.report.json;

import org.jspecify.annotations.NullMarked;
