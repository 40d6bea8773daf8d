package io.github.wattledger.cli.report.html;

import io.github.wattledger.season.SeasonRide;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Which rides of a season have a page, and under which name. */
public final class PageNames {
    private static final int MOST_CHARACTERS = 60;
    private static final int DIGEST_CHARACTERS = 8;

    private final Map<String, String> names = new HashMap<>();

    /** Remembers that a ride has a page. */
    public void add(SeasonRide ride) {
        names.put(key(ride), nameFor(ride));
    }

    /** The name of a ride's page, or null when it has none. */
    public @Nullable String of(SeasonRide ride) {
        return names.get(key(ride));
    }

    /**
     * A name for the page of a ride: its day, what of its file's name is safe on every system and in every address, and
     * the beginning of the file's digest, so that no two are alike.
     */
    public static String nameFor(SeasonRide ride) {
        String file = ride.source().file();
        String last = file.substring(file.lastIndexOf('/') + 1);
        String digest = ride.source().sha256();
        return ride.day() + "-" + safe(last) + "-" + digest.substring(0, Math.min(DIGEST_CHARACTERS, digest.length()))
                + (ride.source().sessionIndex() == 0 ? "" : "-" + (ride.source().sessionIndex() + 1)) + ".html";
    }

    /** What of a name is safe on every system and in every address; empty where nothing is. */
    public static String safe(String name) {
        StringBuilder stem = new StringBuilder();
        for (int i = 0; i < name.length() && stem.length() < MOST_CHARACTERS; i++) {
            char c = name.charAt(i);
            boolean safe = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
            if (safe) {
                stem.append(c);
            } else if (stem.length() > 0 && stem.charAt(stem.length() - 1) != '-') {
                stem.append('-');
            }
        }
        return stem.toString();
    }

    private static String key(SeasonRide ride) {
        return ride.source().sha256() + " " + ride.source().sessionIndex();
    }
}
