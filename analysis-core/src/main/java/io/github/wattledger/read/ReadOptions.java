package io.github.wattledger.read;

import java.io.Serializable;

/**
 * How to read a file.
 *
 * @param limits how much may be read
 * @param csvColumns which columns of a CSV file to take for what; other formats ignore it
 */
public record ReadOptions(ReadLimits limits, CsvColumns csvColumns) implements Serializable {
    /** The usual limits; columns are found by their names. */
    public static final ReadOptions DEFAULT = new ReadOptions(ReadLimits.DEFAULT, CsvColumns.BY_NAME);

    /** These options with other limits. */
    public ReadOptions withLimits(ReadLimits other) {
        return new ReadOptions(other, csvColumns);
    }

    /** These options with other columns. */
    public ReadOptions withCsvColumns(CsvColumns other) {
        return new ReadOptions(limits, other);
    }
}
