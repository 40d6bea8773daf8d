package io.github.wattledger.ride;

/** Code that is not this library's own, in words: readers and detectors that a program brings along may fail in any way. */
public final class ForeignCode {
    private static final int LONGEST_REASON = 200;

    private ForeignCode() {}

    /** The simple name of an object's class; of a class without a name, the one that it stands in. */
    public static String name(Object foreign) {
        Class<?> own = foreign.getClass();
        if (own.isHidden() || own.isAnonymousClass()) {
            return "without a name in " + own.getName().replaceAll("[$/].*", "").replaceAll(".*\\.", "");
        }
        return own.getSimpleName();
    }

    /** What went wrong, in one line of some 200 characters at most. */
    public static String reason(Throwable failure) {
        String line = failure.toString().lines().findFirst().orElse("").strip();
        return line.length() > LONGEST_REASON ? line.substring(0, LONGEST_REASON) + "..." : line;
    }
}
