package io.github.wattledger.read;

import io.github.wattledger.ride.RouteLine;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What could be read of a file of routes.
 *
 * @param format the format's name, for instance {@code GPX}
 * @param sha256 SHA-256 of the unpacked bytes, lower-case hexadecimal
 * @param lines the routes in the file's order, at least one
 * @param notes damage survived and values left out
 */
public record RouteResult(String format, String sha256, List<RouteLine> lines, List<ReadNote> notes)
        implements Serializable {
    /** Copies the lists. */
    public RouteResult {
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("no route; expected at least one");
        }
    }

    /**
     * The route with a number.
     *
     * @param number counted from 1, or null where the file is expected to hold one
     * @throws UnreadableRideException when there is no such route, or there are several and none was asked for
     */
    public RouteLine line(@Nullable Integer number) throws UnreadableRideException {
        if (number == null && lines.size() > 1) {
            throw new UnreadableRideException(
                    UnreadableRideException.Reason.NO_SUCH_SESSION,
                    "holds " + lines.size() + " routes (" + names() + "); name one by its number");
        }
        int index = number == null ? 0 : number - 1;
        if (index < 0 || index >= lines.size()) {
            throw new UnreadableRideException(
                    UnreadableRideException.Reason.NO_SUCH_SESSION,
                    "has no route " + number + "; it holds " + lines.size() + " (" + names() + ")");
        }
        return lines.get(index);
    }

    private String names() {
        StringBuilder names = new StringBuilder();
        int shown = Math.min(lines.size(), 8);
        for (int i = 0; i < shown; i++) {
            String name = lines.get(i).name();
            names.append(i == 0 ? "" : ", ").append(i + 1).append(": ").append(name == null ? "without a name" : name);
        }
        return names.append(shown < lines.size() ? ", ..." : "").toString();
    }
}
