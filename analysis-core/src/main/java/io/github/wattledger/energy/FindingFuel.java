package io.github.wattledger.energy;

import io.github.wattledger.pacing.FindingKind;
import java.io.Serializable;

/**
 * Whether the rider can have been short of carbohydrate where a finding begins.
 *
 * @param kind the kind of the finding
 * @param fromSecond the finding's first second, counted from the first second of the whole recording
 * @param balance the balance at that second
 */
public record FindingFuel(FindingKind kind, int fromSecond, CarbohydrateBalance balance) implements Serializable {}
