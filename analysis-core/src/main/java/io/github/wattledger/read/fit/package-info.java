/**
 * The FIT format. The only package that sees the FIT SDK.
 */
@NullMarked
package io.github.wattledger.read.fit;

import org.jspecify.annotations.NullMarked;
