package io.github.wattledger.season;

/** Hears of the progress of a run, and may stop it. All calls come from the thread that runs the season. */
public interface SeasonListener {
    /** Hears nothing and stops nothing. */
    SeasonListener SILENT = new SeasonListener() {};

    /**
     * The folders were walked.
     *
     * @param files files found
     * @param toRead how many of them are new or changed
     */
    default void found(int files, int toRead) {}

    /**
     * A piece of work is done.
     *
     * @param done pieces of work done so far: files read and rides judged anew
     * @param total how many pieces are known so far
     */
    default void progressed(int done, int total) {}

    /** Asked before each piece of work; true ends the run. What is in the store by then stays. */
    default boolean isCancelled() {
        return false;
    }
}
