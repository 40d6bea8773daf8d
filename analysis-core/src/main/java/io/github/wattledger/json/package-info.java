/**
 * Results as JSON documents for programs. {@link io.github.wattledger.json.JsonDocument} writes them, and
 * {@link io.github.wattledger.json.JsonSchema} says what stands in them. Only this package knows of the JSON library, and
 * nothing else of the core needs this package.
 */
@NullMarked
package io.github.wattledger.json;

import org.jspecify.annotations.NullMarked;
