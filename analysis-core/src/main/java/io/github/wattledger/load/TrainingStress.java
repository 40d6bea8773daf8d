package io.github.wattledger.load;

/** Training stress. */
public final class TrainingStress {
    private TrainingStress() {}
}
