package io.github.wattledger.read;

import io.github.wattledger.cancel.Cancellation;
import java.io.Serializable;
import java.util.List;

/**
 * How to read a file. The options can be serialized when the formats given with them can.
 *
 * @param limits how much may be read
 * @param csvColumns which columns of a CSV file to take for what; other formats ignore it
 * @param formats formats of one's own, asked before all others; none has to be registered
 */
public record ReadOptions(ReadLimits limits, CsvColumns csvColumns, List<RideFormat> formats) implements Serializable {
    /** The usual limits; columns are found by their names; no format beside those that are found by themselves. */
    public static final ReadOptions DEFAULT = new ReadOptions(ReadLimits.DEFAULT, CsvColumns.BY_NAME, List.of());

    /** Copies the list. */
    public ReadOptions {
        formats = List.copyOf(formats);
    }

    /** These options with other limits. */
    public ReadOptions withLimits(ReadLimits other) {
        return new ReadOptions(other, csvColumns, formats);
    }

    /** These options with other columns. */
    public ReadOptions withCsvColumns(CsvColumns other) {
        return new ReadOptions(limits, other, formats);
    }

    /** These options with these formats of one's own in place of any before. */
    public ReadOptions withFormats(List<RideFormat> own) {
        return new ReadOptions(limits, csvColumns, own);
    }

    /** What a format is told of them. */
    ReadRequest request(Cancellation cancellation) {
        return new ReadRequest(limits, csvColumns, cancellation);
    }
}
