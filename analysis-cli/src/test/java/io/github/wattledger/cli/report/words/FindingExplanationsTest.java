package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.JudgementLimit;
import io.github.wattledger.pacing.JudgementLimits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FindingExplanationsTest {
    /** A limit that the profile moves is named with its value, not with the usual one. */
    @Test
    void theLimitInForceIsNamed() {
        JudgementLimits limits = JudgementLimits.USUAL
                .with(JudgementLimit.NEAR_THRESHOLD_SECONDS, 420)
                .with(JudgementLimit.NEAR_THRESHOLD_FRACTION, 0.9);
        assertThat(FindingExplanations.of(FindingKind.THRESHOLD_RIDING_EARLY, limits))
                .contains("windows of 7 min whose mean power is at least 0.9 times threshold power");
        assertThat(FindingExplanations.of(FindingKind.THRESHOLD_RIDING_EARLY, JudgementLimits.USUAL))
                .contains("windows of 8 min whose mean power is at least 0.95 times threshold power");
    }

    @ParameterizedTest
    @EnumSource(FindingKind.class)
    void everyRuleEndsAsASentence(FindingKind kind) {
        assertThat(FindingExplanations.of(kind, JudgementLimits.USUAL))
                .endsWith(".")
                .doesNotContain("  ");
    }
}
