package io.github.wattledger.read;

import java.io.Serializable;

/**
 * How to read a file.
 *
 * @param limits how much may be read
 * @param csvColumns which columns of a CSV file to take for what; other formats pass it over
 * @param digest whether {@code Reviewer}, {@code Comparer} and {@code Replayer} also work out the SHA-256 digest of the
 *     file; without it {@code RideSource.sha256} is null. {@code Inspector} always does
 */
public record ReadOptions(ReadLimits limits, CsvColumns csvColumns, boolean digest) implements Serializable {
    /** The usual limits; columns are found by their names; with the digest. */
    public static final ReadOptions DEFAULT = new ReadOptions(ReadLimits.DEFAULT, CsvColumns.BY_NAME, true);

    /** These options with other limits. */
    public ReadOptions withLimits(ReadLimits other) {
        return new ReadOptions(other, csvColumns, digest);
    }

    /** These options with other columns. */
    public ReadOptions withCsvColumns(CsvColumns other) {
        return new ReadOptions(limits, other, digest);
    }

    /** These options with the digest or without it. To leave it out saves a twentieth of a review that is started cold. */
    public ReadOptions withDigest(boolean other) {
        return new ReadOptions(limits, csvColumns, other);
    }
}
