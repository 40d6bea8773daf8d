package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.LibraryWords;
import io.github.wattledger.cli.report.words.PlanWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.plan.ClimbCap;
import io.github.wattledger.plan.GroundCap;
import io.github.wattledger.plan.RacePlan;
import io.github.wattledger.plan.Section;
import java.io.IOException;
import java.util.List;

/** A plan for people: what to ride comes first, what it rests on comes last; at most 80 columns. */
public final class TextPlan {
    private final Units units;

    /** A plan in these units. */
    public TextPlan(Units units) {
        this.units = units;
    }

    /**
     * Writes a plan.
     *
     * @param plan what to show
     * @param notes what has to be said about the course file
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(RacePlan plan, List<String> notes, Appendable out) throws IOException {
        Page page = new Page();
        page.paragraph(PlanWords.course(plan, units));
        page.blank();
        page.paragraph(PlanWords.time(plan));
        page.paragraph(PlanWords.target(plan));
        page.heading("HOW TO BEGIN");
        page.line(PlanWords.opening(plan));
        caps(page, plan);
        climbs(page, plan);
        sections(page, plan);
        page.heading("WHAT THE USUAL MISTAKES WOULD COST HERE");
        PlanWords.mistakes(plan).forEach(page::line);
        page.line(PlanWords.worth(plan));
        page.heading("WHAT WIDENS THE TIME MOST");
        PlanWords.influences(plan, units).forEach(page::line);
        page.heading("WHAT IT RESTS ON");
        PlanWords.basis(plan, units).forEach(page::line);
        notes.forEach(note -> page.line(LibraryWords.of(note, units)));
        page.blank();
        PlanWords.cautions(plan).forEach(page::paragraph);
        out.append(page.toString());
    }

    private void caps(Page page, RacePlan plan) {
        page.heading("CAPS BY GROUND");
        Table table = new Table(
                1, List.of("ground", "cap", "heart rate", units.distance().symbol(), "time"));
        for (GroundCap cap : plan.caps()) {
            table.row(List.of(
                    PlanWords.ground(cap.ground()),
                    PlanWords.cap(cap),
                    PlanWords.beats(cap.capBpm()),
                    units.distance(cap.lengthM()),
                    Figures.clock(cap.seconds())));
        }
        table.write(page);
    }

    private void climbs(Page page, RacePlan plan) {
        if (plan.climbs().isEmpty()) {
            return;
        }
        page.heading("CLIMBS");
        Table table = new Table(1, List.of("climb", "grade", "minutes", "cap", "heart rate"));
        for (ClimbCap each : plan.climbs()) {
            table.row(List.of(
                    PlanWords.climb(each, units),
                    PlanWords.grade(each),
                    Figures.decimal(each.seconds() / 60, 0),
                    Figures.watts(each.capW()),
                    PlanWords.beats(each.capBpm())));
        }
        table.write(page);
    }

    private void sections(Page page, RacePlan plan) {
        page.heading("WHEN TO BE WHERE, time since the start");
        Table table = new Table(1, List.of("to", units.distance().symbol(), "power", "between"));
        for (Section each : plan.sections()) {
            table.row(List.of(
                    PlanWords.sectionEnd(each.name(), each.toM(), units),
                    units.distance(each.toM()),
                    Figures.watts(each.powerW()),
                    PlanWords.between(each.arrival())));
        }
        table.write(page);
    }
}
