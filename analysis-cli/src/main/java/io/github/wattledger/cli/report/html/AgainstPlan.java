package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlanReviewWords;
import io.github.wattledger.cli.report.words.PlanWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.plan.SectionReview;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A ride held against its plan, on its page.
 *
 * @param sentences the whole, the opening, and whether each cap was kept
 * @param sections section by section, planned and ridden
 */
public record AgainstPlan(List<String> sentences, List<Section> sections) {
    /** A section: where it ends, its times, and what the difference is made of. */
    public record Section(String to, Num planned, Num ridden, Num power, Num day, Num stops, Num difference) {}

    static @Nullable AgainstPlan of(@Nullable PlanReview plan, Units units) {
        if (plan == null) {
            return null;
        }
        List<String> sentences = new ArrayList<>();
        sentences.add(PlanReviewWords.whole(plan));
        sentences.add(PlanReviewWords.opening(plan));
        sentences.addAll(PlanReviewWords.caps(plan));
        sentences.addAll(PlanReviewWords.capRule(plan));
        List<Section> sections = new ArrayList<>();
        for (int i = 0; i < plan.sections().size(); i++) {
            sections.add(section(plan.sections().get(i), "againstPlan.sections[" + i + "].", units));
        }
        return new AgainstPlan(sentences, sections);
    }

    private static Section section(SectionReview each, String path, Units units) {
        return new Section(
                PlanWords.sectionEnd(each.name(), each.toM(), units),
                Num.of(path + "plannedSeconds", each.plannedSeconds(), Figures::clock),
                Num.of(path + "riddenSeconds", (double) each.riddenSeconds(), Figures::clock),
                minutes(path + "powerSeconds", each.powerSeconds()),
                minutes(path + "daySeconds", each.daySeconds()),
                minutes(path + "stopSeconds", each.stopSeconds()),
                minutes(path + "differenceSeconds", each.differenceSeconds()));
    }

    private static Num minutes(String path, double seconds) {
        return Num.of(path, seconds, PlanReviewWords::minutes);
    }
}
