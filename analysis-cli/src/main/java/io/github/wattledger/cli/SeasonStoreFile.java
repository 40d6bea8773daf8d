package io.github.wattledger.cli;

import java.nio.file.Files;
import java.nio.file.Path;

/** Where the store of a season is, unless another place is named. */
final class SeasonStoreFile {
    /** Its name in the season's first folder. */
    static final String NAME = ".wattledger-season.sqlite";

    private SeasonStoreFile() {}

    /** The store of a folder; a path that is no folder is the store itself. */
    static Path in(Path folderOrStore) {
        return Files.isDirectory(folderOrStore) ? folderOrStore.resolve(NAME) : folderOrStore;
    }
}
