package io.github.wattledger.read;

import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.ForeignCode;
import java.util.Set;

/**
 * A format from outside this library, which may fail in any way: then its file is one that cannot be read, and the others of
 * a season are not lost with it.
 */
final class ForeignFormat implements RideFormat {
    private final RideFormat format;

    ForeignFormat(RideFormat format) {
        this.format = format;
    }

    @Override
    public String name() {
        return format.name();
    }

    @Override
    public Set<String> fileEndings() {
        return format.fileEndings();
    }

    /** One that fails at this says nothing of the content, and must not keep another format from it. */
    @Override
    @SuppressWarnings("CatchGeneric") // a user's code may throw anything
    public boolean recognizes(byte[] content) {
        try {
            return format.recognizes(content);
        } catch (CancelledException e) {
            throw e;
        } catch (RuntimeException | LinkageError e) {
            return false;
        }
    }

    @Override
    @SuppressWarnings("CatchGeneric") // a user's code may throw anything
    public ReadResult read(byte[] content, ReadRequest request) throws UnreadableRideException {
        try {
            ReadResult result = format.read(content, request);
            if (result == null) {
                throw new IllegalStateException("it returned null");
            }
            return result;
        } catch (CancelledException e) {
            throw e;
        } catch (RuntimeException | LinkageError e) {
            throw new UnreadableRideException(
                    Reason.READER_FAILED,
                    "could not be read: the reader " + ForeignCode.name(format)
                            + ", which is not the library's own, failed (" + ForeignCode.reason(e)
                            + "); tell whoever wrote it",
                    e);
        }
    }
}
