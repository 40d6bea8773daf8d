package io.github.wattledger.cli.report.words;

import static io.github.wattledger.testing.SampleReviews.everyKind;
import static io.github.wattledger.testing.SampleReviews.finding;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FindingSentencesTest {
    /** Where evidence has a number for every name that a detector gives, no name is left untranslated. */
    @Test
    void everyKindHasItsSentences() {
        for (Finding finding : everyKind()) {
            String sentences = FindingSentences.of(finding, Units.METRIC);
            for (Evidence.Entry entry : finding.evidence().entries()) {
                assertThat(sentences).doesNotContain(entry.name() + " ");
            }
            assertThat(sentences).endsWith(".").doesNotContain("..", "  ", "%%");
        }
    }

    @Test
    void aFindingCanLackAnyOfItsNumbers() {
        for (Finding finding : everyKind()) {
            List<Evidence.Entry> entries = finding.evidence().entries();
            for (int left = 0; left < entries.size(); left++) {
                List<Evidence.Entry> fewer = new ArrayList<>(entries);
                fewer.remove(left);
                assertThat(FindingSentences.of(finding(finding.kind(), new Evidence(fewer)), Units.METRIC))
                        .endsWith(".")
                        .doesNotContain("..", "  ", "NaN");
            }
            assertThat(FindingSentences.of(finding(finding.kind(), Evidence.none()), Units.METRIC))
                    .isEmpty();
        }
    }

    @Test
    void aNumberThatNoSentenceKnowsIsStillShown() {
        Evidence evidence = Evidence.none().with("lossPercent", 12).with("newThingW", 31.25);
        assertThat(FindingSentences.of(finding(FindingKind.FADE, evidence), Units.METRIC))
                .isEqualTo("lossPercent 12. newThingW 31.");
    }
}
