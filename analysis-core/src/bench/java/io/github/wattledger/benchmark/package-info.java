/**
 * What the library's computations cost, measured with JMH in the Maven profile {@code bench}; see docs/benchmarks.md. A
 * new benchmark is a class whose name ends in {@code Benchmark}; it takes its ride from {@link
 * io.github.wattledger.benchmark.SeededRide}. Only our own code is measured here, no decoder of others.
 */
@NullMarked
package io.github.wattledger.benchmark;

import org.jspecify.annotations.NullMarked;
