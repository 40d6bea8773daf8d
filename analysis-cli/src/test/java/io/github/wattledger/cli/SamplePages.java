package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Pages of the sample rides as the commands write them, each made once for a folder. */
final class SamplePages {
    private final Path folder;

    SamplePages(Path folder) {
        this.folder = folder;
    }

    /** The page of a sample ride. */
    Path review(String sample) {
        return page(sample, "review", "../sample-rides/" + sample + ".fit");
    }

    /** The page of the sample season. */
    Path season() {
        String store = folder.resolve("season.sqlite").toString();
        return page("season", "season", "../sample-rides/season", "--store", store);
    }

    /** Both races over the course, compared. */
    Path comparison() {
        return page("compare", "compare", "../sample-rides/over-hard-start.fit", "../sample-rides/even-paced.fit");
    }

    /** The race in another position. */
    Path whatIf() {
        return page("what-if", "what-if", "../sample-rides/over-hard-start.fit", "--with-position", "aero-bars");
    }

    /** Two riders: one with the whole sample season, one without its May. */
    Path riders() throws IOException {
        Path pages = folder.resolve("riders-pages");
        if (!Files.exists(pages)) {
            copySeason("anna", "");
            copySeason("bo & son #2", "2026-05");
            Outcome outcome =
                    Outcome.of("season", "--riders", folder.resolve("team").toString(), "--pages", pages.toString());
            assertThat(outcome.status()).as(outcome.err()).isZero();
        }
        return pages.resolve("index.html");
    }

    private void copySeason(String rider, String without) throws IOException {
        Path home = Files.createDirectories(folder.resolve("team").resolve(rider));
        try (Stream<Path> files = Files.list(Path.of("../sample-rides/season"))) {
            for (Path file : files.toList()) {
                String name = String.valueOf(file.getFileName());
                if (without.isEmpty() || !name.startsWith(without)) {
                    Files.copy(file, home.resolve(name));
                }
            }
        }
    }

    private Path page(String name, String... words) {
        Path page = folder.resolve(name + ".html");
        if (!Files.exists(page)) {
            String[] all = new String[words.length + 4];
            System.arraycopy(words, 0, all, 0, words.length);
            System.arraycopy(new String[] {"--format", "html", "--output", page.toString()}, 0, all, words.length, 4);
            Outcome outcome = Outcome.of(all);
            assertThat(outcome.status()).as(outcome.err()).isZero();
        }
        return page;
    }
}
