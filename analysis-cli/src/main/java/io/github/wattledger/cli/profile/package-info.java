/**
 * From a rider profile, a TOML file, to the values the core asks for. The door is {@link
 * io.github.wattledger.cli.profile.RiderFile}; no other package sees the TOML parser.
 */
@NullMarked
package io.github.wattledger.cli.profile;

import org.jspecify.annotations.NullMarked;
