package io.github.wattledger.cli.report;

/** Where a part of a report puts its words. */
public interface Lines {
    /** The heading of a part. */
    void heading(String title);

    /** A line of a part: one thought, one or more sentences. */
    void line(String words);
}
