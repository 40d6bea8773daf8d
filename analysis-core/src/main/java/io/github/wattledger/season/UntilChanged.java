package io.github.wattledger.season;

import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/**
 * An answer of a store, for which the store is asked again only when it has changed since.
 *
 * @param <T> the answer, which must be immutable
 */
final class UntilChanged<T> {
    private final StoreDatabase database;
    private final StoreDatabase.Answer<T> question;
    private @Nullable T answer;
    private StoreDatabase.@Nullable Changes asOf;

    UntilChanged(StoreDatabase database, StoreDatabase.Answer<T> question) {
        this.database = database;
        this.question = question;
    }

    /** The answer as the store is now. */
    T get() throws SQLException {
        // Before the question: what changes in between makes the next call ask again.
        StoreDatabase.Changes now = database.changes();
        T known = answer;
        if (known == null || !now.equals(asOf)) {
            known = question.get();
            answer = known;
            asOf = now;
        }
        return known;
    }
}
