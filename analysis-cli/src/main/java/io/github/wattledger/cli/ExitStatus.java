package io.github.wattledger.cli;

/** How the process ended, for its caller. */
enum ExitStatus {
    /** Done. */
    DONE(0),
    /** A failure of this program or of its output. */
    INTERNAL_FAILURE(1),
    /** The command line, or an option that does not fit the ride. */
    WRONG_USAGE(2),
    /** The input could not be read. */
    UNREADABLE_INPUT(3),
    /** A season was finished, but some files were skipped. */
    FILES_SKIPPED(4);

    private final int code;

    ExitStatus(int code) {
        this.code = code;
    }

    int code() {
        return code;
    }
}
