package io.github.wattledger.cli.report.html;

import io.github.wattledger.season.PeriodTotals;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Weeks in a row without a ride, which a table shows as one row.
 *
 * @param from its first day
 * @param to its last day
 */
public record Spell(LocalDate from, LocalDate to) {
    /** Shorter ones are shown week by week: they are a rest, not a season's end. */
    private static final int LEAST_WEEKS = 4;

    /** All of a season, in their order; none begins a season. */
    static List<Spell> of(List<PeriodTotals> weeks) {
        List<Spell> spells = new ArrayList<>();
        int begin = 0;
        for (int i = 0; i <= weeks.size(); i++) {
            if (i == weeks.size() || weeks.get(i).rideCount() > 0) {
                if (i - begin >= LEAST_WEEKS && begin > 0) {
                    LocalDate from = weeks.get(begin).from();
                    spells.add(new Spell(from, weeks.get(i - 1).to().minusDays(1)));
                }
                begin = i + 1;
            }
        }
        return spells;
    }

    /** The one that holds a day, or null. */
    static @Nullable Spell holding(List<Spell> spells, LocalDate day) {
        for (Spell spell : spells) {
            if (!day.isBefore(spell.from) && !day.isAfter(spell.to)) {
                return spell;
            }
        }
        return null;
    }
}
