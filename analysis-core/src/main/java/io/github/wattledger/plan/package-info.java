/**
 * A plan for a course before it is ridden: what power to ride where, within which range of time, and what the usual mistakes
 * would cost on it.
 */
@NullMarked
package io.github.wattledger.plan;

import org.jspecify.annotations.NullMarked;
