package io.github.wattledger.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * What the launcher runs on its first start: a season of one ride and a review beside it, so that the classes which these load
 * can be archived. It also unpacks SQLite's library of machine code once, to the place that the driver's own settings name;
 * the driver unpacks a copy on every start otherwise.
 */
final class WarmUp {
    private WarmUp() {}

    /**
     * Warms up.
     *
     * @param args the ride
     */
    public static void main(String[] args) throws IOException {
        unpackLibrary(System.getProperty("org.sqlite.lib.path"), System.getProperty("org.sqlite.lib.name"));
        Path ride = Path.of(args[0]);
        Path season = Files.createTempDirectory("wattledger-warm-up-");
        try (PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8)) {
            Files.copy(ride, season.resolve("ride.fit"));
            for (List<String> words : List.of(
                    List.of("season", season.toString()),
                    List.of("review", ride.toString(), "--season", season.toString()))) {
                Main.run(words.toArray(String[]::new), nowhere, nowhere);
            }
        } finally {
            delete(season);
        }
    }

    /** Where the library cannot be loaded from its place, it is taken away again: then the driver does as ever. */
    private static void unpackLibrary(@Nullable String folder, @Nullable String name) throws IOException {
        String packed = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + LibraryLoaderUtil.getNativeLibName();
        try (InputStream library = WarmUp.class.getResourceAsStream(packed)) {
            if (folder == null || name == null || library == null) {
                return;
            }
            Path unpacked = Path.of(folder, name);
            Files.copy(library, unpacked);
            try {
                System.load(unpacked.toAbsolutePath().toString());
            } catch (UnsatisfiedLinkError e) {
                Files.delete(unpacked);
            }
        }
    }

    private static void delete(Path season) throws IOException {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(season)) {
            for (Path file : files) {
                Files.delete(file);
            }
        }
        Files.delete(season);
    }
}
