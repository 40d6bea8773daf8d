package io.github.wattledger.table;

import io.github.wattledger.season.SeasonReview;
import tech.tablesaw.api.Table;

/**
 * A season as tables. Columns are named as in the JSON report, units last; what is not known is missing.
 *
 * <p>Tablesaw is an optional dependency: without it each method throws an {@link IllegalStateException} whose message says
 * what to add.
 */
public final class SeasonTables {
    private SeasonTables() {}

    /** One row a ride, in time order. */
    public static Table rides(SeasonReview season) {
        TableLibrary.require();
        return TableMaking.of(SeasonLayout.RIDES, season);
    }

    /** One row a calendar day, from the first ride to the season's last day. */
    public static Table days(SeasonReview season) {
        TableLibrary.require();
        return TableMaking.of(SeasonLayout.DAYS, season);
    }

    /** One row a duration: the best effort of the season. */
    public static Table bests(SeasonReview season) {
        TableLibrary.require();
        return TableMaking.of(SeasonLayout.BESTS, season);
    }
}
