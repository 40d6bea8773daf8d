package io.github.wattledger.cli.report.words;

import static io.github.wattledger.testing.SampleReviews.everyKind;
import static io.github.wattledger.testing.SampleReviews.finding;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Remark;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
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

    /** Decoupling compares the halves of a ride, drift late and early seconds of equal power: they can disagree. */
    @Test
    void decouplingThatPointsTheOtherWayIsExplained() {
        String why =
                "Decoupling was -12 %: it points the other way, since it compares the halves of all riding, easy and"
                        + " hard, and drift compares heart rate at equal power.";
        assertThat(FindingSentences.of(
                        finding(FindingKind.DRIFT, Evidence.none().with("decouplingPercent", -12)), Units.METRIC))
                .isEqualTo(why);
        assertThat(FindingSentences.of(
                        finding(FindingKind.DRIFT, Evidence.none().with("decouplingPercent", 12)), Units.METRIC))
                .isEqualTo("Decoupling was 12 %.");
    }

    @Test
    void withoutDistanceNothingIsSaidOfTheGround() {
        Evidence evidence = Evidence.none().with("latePowerW", 169).with("earlyPowerW", 233);
        assertThat(FindingSentences.of(remark(evidence, 0.0), Units.METRIC))
                .isEqualTo("On like ground power was 169 W late against 233 W early.");
        assertThat(FindingSentences.of(remark(evidence, null), Units.METRIC))
                .isEqualTo("Power was 169 W late against 233 W early.");
    }

    private static Remark remark(Evidence evidence, @Nullable Double startM) {
        return new Remark(FindingKind.FADE, new Interval(0, 60), startM, startM, evidence);
    }
}
