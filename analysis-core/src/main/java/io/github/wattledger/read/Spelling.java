package io.github.wattledger.read;

import java.util.Collection;
import org.jspecify.annotations.Nullable;

/** Guesses what a mistyped word was meant to be. */
public final class Spelling {
    private Spelling() {}

    /**
     * The known word that takes the fewest changed letters; null where all of them take more than two letters and more than
     * a third of the word. Of equally near words the first one.
     */
    public static @Nullable String nearest(String word, Collection<String> known) {
        String nearest = null;
        int fewest = Math.max(2, word.length() / 3) + 1;
        for (String each : known) {
            int changes = changes(word, each);
            if (changes < fewest) {
                fewest = changes;
                nearest = each;
            }
        }
        return nearest;
    }

    /** Letters to put in, leave out or replace to make one word of the other (Levenshtein 1966). */
    static int changes(String from, String to) {
        int[] row = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int replaced = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[to.length()];
    }
}
