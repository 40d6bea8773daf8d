package io.github.wattledger.season;

import java.nio.file.Path;

/**
 * A file below a season's folders.
 *
 * @param path its absolute path
 * @param name its path below the folder, with slashes
 * @param sizeBytes its size
 * @param modifiedNs when it was changed last, nanoseconds since 1970
 */
record FoundFile(Path path, String name, long sizeBytes, long modifiedNs) {}
