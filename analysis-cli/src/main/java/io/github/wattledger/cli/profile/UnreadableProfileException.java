package io.github.wattledger.cli.profile;

import java.io.Serial;
import java.util.ArrayList;
import java.util.List;

/** A rider profile could not be taken: everything that is wrong with it, one line each, each beginning with the file. */
public final class UnreadableProfileException extends Exception {
    @Serial
    private static final long serialVersionUID = 1L;

    private final ArrayList<String> lines;

    UnreadableProfileException(List<String> lines) {
        super(String.join("\n", lines));
        this.lines = new ArrayList<>(lines);
    }

    UnreadableProfileException(String line, Throwable cause) {
        super(line, cause);
        this.lines = new ArrayList<>(List.of(line));
    }

    /** The lines for people, at least one. */
    public List<String> lines() {
        return List.copyOf(lines);
    }
}
