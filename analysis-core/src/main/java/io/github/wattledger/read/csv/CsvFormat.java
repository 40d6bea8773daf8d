package io.github.wattledger.read.csv;

import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFormat;
import io.github.wattledger.read.UnreadableRideException;
import java.util.Set;

/**
 * Tables of samples with a row of headers: comma, semicolon or tab between the cells, decimal point or comma. A table
 * with a {@code state} for each second is a ride already cleaned and is read as exactly that.
 */
public final class CsvFormat implements RideFormat {
    /** A format without state. */
    public CsvFormat() {}

    @Override
    public String name() {
        return "CSV";
    }

    @Override
    public Set<String> fileEndings() {
        return Set.of("csv");
    }

    @Override
    public boolean recognizes(byte[] content) {
        return CsvText.looksLikeTable(content);
    }

    @Override
    public ReadResult read(byte[] content, ReadRequest request) throws UnreadableRideException {
        return new CsvReading(request).read(CsvText.of(content), name());
    }
}
