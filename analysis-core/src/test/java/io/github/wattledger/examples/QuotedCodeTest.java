package io.github.wattledger.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Java code on a page is quoted, never written there: above each block a comment names the file and its region, {@code <!--
 * examples/File.java name -->}, and the block is that region, less its indentation.
 */
class QuotedCodeTest {
    private static final Path TOP = Path.of("..");
    private static final Pattern BLOCK = Pattern.compile("```java\\n(.*?)```", Pattern.DOTALL);
    private static final Pattern QUOTED =
            Pattern.compile("<!-- (examples/\\w+\\.java) (\\w+) -->\\n```java\\n(.*?)```", Pattern.DOTALL);
    private static final Pattern REGION =
            Pattern.compile("^ *// region (\\w+)\\n(.*?)^ *// endregion$", Pattern.DOTALL | Pattern.MULTILINE);

    static Stream<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(TOP.resolve("README.md"), TOP.resolve("DEVELOPERS.md")));
        try (Stream<Path> docs = Files.walk(TOP.resolve("docs"))) {
            docs.filter(path -> path.toString().endsWith(".md"))
                    .filter(path -> !path.toString().contains("node_modules"))
                    .forEach(pages::add);
        }
        return pages.stream();
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyBlockIsARegionOfAnExample(Path page) throws IOException {
        String text = Files.readString(page);
        List<MatchResult> quoted = QUOTED.matcher(text).results().toList();
        assertThat(quoted).hasSize((int) BLOCK.matcher(text).results().count());
        for (MatchResult block : quoted) {
            assertThat(block.group(3)).isEqualTo(region(block.group(1), block.group(2)));
        }
    }

    @Test
    void everyRegionIsShownSomewhere() throws IOException {
        List<String> shown = new ArrayList<>();
        for (Path page : pages().toList()) {
            QUOTED.matcher(Files.readString(page))
                    .results()
                    .forEach(block -> shown.add(block.group(1) + " " + block.group(2)));
        }
        TreeSet<String> regions = new TreeSet<>();
        try (Stream<Path> files = Files.list(TOP.resolve("docs/examples"))) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".java")).toList()) {
                REGION.matcher(Files.readString(file))
                        .results()
                        .forEach(region -> regions.add("examples/" + file.getFileName() + " " + region.group(1)));
            }
        }
        assertThat(regions).isNotEmpty().isSubsetOf(shown);
    }

    private static String region(String file, String name) throws IOException {
        Matcher matcher = REGION.matcher(Files.readString(TOP.resolve("docs").resolve(file)));
        return matcher.results()
                .filter(region -> region.group(1).equals(name))
                // The line end before the end mark would count as a line without indentation.
                .map(region -> region.group(2).stripTrailing().stripIndent() + "\n")
                .findFirst()
                .orElseThrow(() -> new AssertionError("no region " + name + " in " + file));
    }
}
