package io.github.wattledger.cli.profile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects what is wrong with a profile, so that all of it can be reported at once. */
final class Problems {
    /** More lines than this help nobody: a file that is no profile at all would fill the screen. */
    private static final int MOST_LINES = 20;

    private record Problem(int line, String text) {}

    private final String file;
    private final List<Problem> problems = new ArrayList<>();

    /** For the file of this name. */
    Problems(String file) {
        this.file = file;
    }

    void add(int line, String text) {
        problems.add(new Problem(line, text));
    }

    /** What is wrong, in the order of the file's lines; empty where nothing is. */
    List<String> lines() {
        problems.sort(Comparator.comparingInt(Problem::line));
        List<String> lines = new ArrayList<>();
        for (Problem problem : problems.subList(0, Math.min(MOST_LINES, problems.size()))) {
            lines.add(file + ":" + problem.line() + ": " + problem.text());
        }
        if (problems.size() > MOST_LINES) {
            lines.add(file + ": and " + (problems.size() - MOST_LINES) + " more problems");
        }
        return lines;
    }

    /** @throws UnreadableProfileException when there is any, in the order of the file's lines */
    void throwIfAny() throws UnreadableProfileException {
        if (!problems.isEmpty()) {
            throw new UnreadableProfileException(lines());
        }
    }
}
