package io.github.wattledger.clean;

import io.github.wattledger.clean.Cleaning.Cleaned;

/** What the notes of a cleaned recording count. */
final class NotedSeconds {
    private NotedSeconds() {}

    /** The seconds that the first note of this code names, 1 where it names none; 0 without such a note. */
    static int noted(Cleaned cleaned, String code) {
        return cleaned.quality().notes().stream()
                .filter(note -> note.code().equals(code))
                .mapToInt(note -> note.seconds() == null ? 1 : note.seconds())
                .findFirst()
                .orElse(0);
    }
}
