package io.github.wattledger.season;

import org.jspecify.annotations.Nullable;

/**
 * A file as it was when it was read.
 *
 * @param problem why it gives no ride, or null
 * @param rideCount how many rides it gives
 */
record FileRow(
        String path,
        String name,
        long sizeBytes,
        long modifiedNs,
        String sha256,
        int analysisVersion,
        @Nullable String problem,
        int rideCount) {
    static FileRow of(FoundFile file, String sha256, @Nullable String problem, int rideCount) {
        return new FileRow(
                file.path().toString(),
                file.name(),
                file.sizeBytes(),
                file.modifiedNs(),
                sha256,
                StoreDatabase.ANALYSIS_VERSION,
                problem,
                rideCount);
    }

    boolean isStillOf(FoundFile found) {
        return sizeBytes == found.sizeBytes()
                && modifiedNs == found.modifiedNs()
                && analysisVersion == StoreDatabase.ANALYSIS_VERSION;
    }
}
