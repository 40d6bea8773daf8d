package io.github.wattledger.read.gpx;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The sport that a track's {@code type} names: GPX leaves its wording free. */
final class GpxSport {
    private GpxSport() {}

    /** The sport in a word of the public FIT profile, or null when the text names none that is known. */
    static @Nullable String of(String type) {
        String lower = type.toLowerCase(Locale.ROOT);
        if (containsAny(lower, "cycl", "bik", "ride", "gravel", "mtb")) {
            return "cycling";
        }
        if (containsAny(lower, "run", "jog")) {
            return "running";
        }
        if (containsAny(lower, "walk", "hik")) {
            return "walking";
        }
        return containsAny(lower, "swim") ? "swimming" : null;
    }

    private static boolean containsAny(String type, String... parts) {
        for (String part : parts) {
            if (type.contains(part)) {
                return true;
            }
        }
        return false;
    }
}
