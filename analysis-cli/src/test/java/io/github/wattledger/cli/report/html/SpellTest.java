package io.github.wattledger.cli.report.html;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.season.PeriodTotals;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SpellTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 1, 5);

    private static List<PeriodTotals> weeks(int... rides) {
        List<PeriodTotals> weeks = new ArrayList<>();
        for (int i = 0; i < rides.length; i++) {
            LocalDate from = MONDAY.plusWeeks(i);
            weeks.add(new PeriodTotals(from, from.plusWeeks(1), rides[i], 0, rides[i] * 3600L, null, 0.0, 1.0, 0.0));
        }
        return weeks;
    }

    @Test
    void fourWeeksWithoutARideAreOneRow() {
        assertThat(Spell.of(weeks(2, 0, 0, 0, 0, 1)))
                .containsExactly(new Spell(LocalDate.of(2026, 1, 12), LocalDate.of(2026, 2, 8)));
    }

    @Test
    void threeAreNot() {
        assertThat(Spell.of(weeks(2, 0, 0, 0, 1, 0, 0, 0))).isEmpty();
    }

    @Test
    void severalAndOneAtTheEnd() {
        assertThat(Spell.of(weeks(1, 0, 0, 0, 0, 0, 3, 1, 0, 0, 0, 0)))
                .containsExactly(
                        new Spell(MONDAY.plusWeeks(1), MONDAY.plusWeeks(6).minusDays(1)),
                        new Spell(MONDAY.plusWeeks(8), MONDAY.plusWeeks(12).minusDays(1)));
    }

    @Test
    void aDayIsFoundInIts() {
        Spell spell = new Spell(MONDAY, MONDAY.plusDays(27));
        assertThat(Spell.holding(List.of(spell), MONDAY.minusDays(1))).isNull();
        assertThat(Spell.holding(List.of(spell), MONDAY)).isSameAs(spell);
        assertThat(Spell.holding(List.of(spell), MONDAY.plusDays(27))).isSameAs(spell);
        assertThat(Spell.holding(List.of(spell), MONDAY.plusDays(28))).isNull();
    }
}
