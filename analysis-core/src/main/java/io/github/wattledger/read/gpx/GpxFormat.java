package io.github.wattledger.read.gpx;

import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFormat;
import io.github.wattledger.read.UnreadableRideException;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.regex.Pattern;

/** GPX tracks with times. */
public final class GpxFormat implements RideFormat {
    private static final int LOOKED_AT_BYTES = 4096;
    private static final Pattern ROOT = Pattern.compile("<(?:[\\w.-]+:)?gpx[\\s>]");

    /** A format without state. */
    public GpxFormat() {}

    @Override
    public String name() {
        return "GPX";
    }

    @Override
    public Set<String> fileEndings() {
        return Set.of("gpx");
    }

    @Override
    public boolean recognizes(byte[] content) {
        int length = Math.min(content.length, LOOKED_AT_BYTES);
        // Every usual encoding of XML holds the ASCII letters; UTF-16 has zeros in between.
        String start = new String(content, 0, length, StandardCharsets.ISO_8859_1).replace("\0", "");
        return start.indexOf('<') >= 0 && ROOT.matcher(start).find();
    }

    @Override
    public ReadResult read(byte[] content, ReadRequest request) throws UnreadableRideException {
        GpxParser parser = new GpxParser(request.limits().maximumSamples(), request.cancellation());
        parser.parse(content);
        return parser.result(name());
    }
}
