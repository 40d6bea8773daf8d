package io.github.wattledger.read;

import io.github.wattledger.cancel.Cancellation;

/**
 * What a format is told when it reads a content.
 *
 * @param limits how much may be read
 * @param csvColumns which columns of a CSV file to take for what; other formats ignore it
 * @param cancellation when to end early; a reader asks it once for each sample or so
 */
public record ReadRequest(ReadLimits limits, CsvColumns csvColumns, Cancellation cancellation) {
    /** The usual limits; columns are found by their names; an interrupt ends the reading. */
    public static final ReadRequest DEFAULT =
            new ReadRequest(ReadLimits.DEFAULT, CsvColumns.BY_NAME, Cancellation.ON_INTERRUPT);

    /** This request with other limits. */
    public ReadRequest withLimits(ReadLimits other) {
        return new ReadRequest(other, csvColumns, cancellation);
    }

    /** This request with other columns. */
    public ReadRequest withCsvColumns(CsvColumns other) {
        return new ReadRequest(limits, other, cancellation);
    }

    /** This request with another answer to when to end early. */
    public ReadRequest withCancellation(Cancellation other) {
        return new ReadRequest(limits, csvColumns, other);
    }
}
