package io.github.wattledger.cli;

import io.github.wattledger.season.SeasonListener;
import java.io.Console;
import java.io.PrintStream;
import java.util.Map;

/**
 * A line on the terminal that says how a season gets on: done, rate, time left. It shows itself only where a person
 * looks on; elsewhere nothing is written.
 */
final class SeasonProgress implements SeasonListener {
    private static final int BAR_COLUMNS = 24;
    private static final long BETWEEN_FRAMES_NS = 200_000_000L;
    private static final double NS_PER_SECOND = 1e9;

    private final PrintStream err;
    private final boolean isShown;
    private long startNs;
    private long lastFrameNs;
    private int total;
    private int width;

    SeasonProgress(PrintStream err, boolean isShown) {
        this.err = err;
        this.isShown = isShown;
        this.startNs = System.nanoTime();
        this.lastFrameNs = startNs - BETWEEN_FRAMES_NS;
    }

    /** Whether a person looks on: both ends of the program at a terminal that can go back within a line. */
    static boolean hasWatcher(Map<String, String> environment) {
        return isAtTerminal() && !"dumb".equals(environment.get("TERM")) && !environment.containsKey("CI");
    }

    @SuppressWarnings("SystemConsoleNull") // where a console may be no terminal, it is asked
    private static boolean isAtTerminal() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return Boolean.TRUE.equals(Console.class.getMethod("isTerminal").invoke(console));
        } catch (ReflectiveOperationException e) {
            // Before JDK 22 there is no such method, and a console only at a terminal.
            return true;
        }
    }

    @Override
    public void progressed(int done, int newTotal) {
        if (!isShown) {
            return;
        }
        long now = System.nanoTime();
        if (done == 1 || newTotal != total) {
            startNs = done == 1 ? now : startNs;
            total = newTotal;
        }
        if (done < newTotal && now - lastFrameNs < BETWEEN_FRAMES_NS) {
            return;
        }
        lastFrameNs = now;
        String frame = frame(done, newTotal, (now - startNs) / NS_PER_SECOND);
        err.print("\r" + frame + " ".repeat(Math.max(0, width - frame.length())));
        err.flush();
        width = frame.length();
    }

    /** Takes the line away. */
    void end() {
        if (width > 0) {
            err.print("\r" + " ".repeat(width) + "\r");
            err.flush();
            width = 0;
        }
    }

    /** One state of the line, for instance {@code [######------]  500 of 1000  31/s  0:16 left}. */
    static String frame(int done, int total, double seconds) {
        int filled = total == 0 ? BAR_COLUMNS : (int) ((long) BAR_COLUMNS * done / total);
        StringBuilder line = new StringBuilder("[")
                .append("#".repeat(filled))
                .append("-".repeat(BAR_COLUMNS - filled))
                .append("]  ")
                .append(done)
                .append(" of ")
                .append(total);
        if (seconds > 0 && done > 0) {
            double rate = done / seconds;
            long left = Math.round((total - done) / rate);
            line.append("  ").append(Math.round(rate)).append("/s  ");
            line.append(left / 60)
                    .append(left % 60 < 10 ? ":0" : ":")
                    .append(left % 60)
                    .append(" left");
        }
        return line.toString();
    }
}
