package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** What the pages say of files, headings and commands holds. */
class DocumentsTest {
    private static final Path TOP = Path.of("..").toAbsolutePath().normalize();
    private static final Pattern FENCED =
            Pattern.compile("^```(\\w*)\\n(.*?)^```$", Pattern.DOTALL | Pattern.MULTILINE);
    private static final Pattern INLINE = Pattern.compile("`([^`\\n]+)`");
    private static final Pattern LINK = Pattern.compile("\\[[^\\]\\[]*\\]\\(([^)\\s]+)\\)");
    private static final Pattern HEADING = Pattern.compile("^#+ (.+)$", Pattern.MULTILINE);
    private static final Pattern COMMAND = Pattern.compile("^(?:wattledger|java -jar \\S*wattledger\\.jar)(?: (.*))?$");
    private static final Pattern WORD = Pattern.compile("'([^']*)'|\"([^\"]*)\"|(\\S+)");

    /** A block of the tutorial, and the output that is shown below it, if any. */
    private static final Pattern STEP =
            Pattern.compile("```sh\\n(.*?)```\\n(?:\\n```text\\n(.*?)```\\n)?", Pattern.DOTALL);

    static List<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>();
        for (String page : List.of("README.md", "DEVELOPERS.md", "CHANGELOG.md", "sample-rides/README.md")) {
            pages.add(TOP.resolve(page));
        }
        try (Stream<Path> docs = Files.walk(TOP.resolve("docs"))) {
            docs.filter(path -> path.toString().endsWith(".md"))
                    .filter(path -> !path.toString().contains("node_modules"))
                    .sorted()
                    .forEach(pages::add);
        }
        return pages;
    }

    @ParameterizedTest
    @MethodSource("pages")
    void linksLeadToFilesAndHeadingsThatAreThere(Path page) throws IOException {
        String words = FENCED.matcher(Files.readString(page)).replaceAll("");
        for (MatchResult link : LINK.matcher(words).results().toList()) {
            String target = link.group(1);
            if (target.matches("[a-z]+:.*")) {
                continue; // elsewhere; tests ask nothing of a network
            }
            int hash = target.indexOf('#');
            String file = hash < 0 ? target : target.substring(0, hash);
            Path path = file.isEmpty() ? page : page.resolveSibling(file).normalize();
            assertThat(path).as("%s in %s", target, page).startsWith(TOP).exists();
            if (hash >= 0) {
                assertThat(anchors(path)).as("%s in %s", target, page).contains(target.substring(hash + 1));
            }
        }
    }

    @Test
    void everyPageIsReachedFromTheTwoTables() throws IOException {
        for (Path page : pages()) {
            if (page.startsWith(TOP.resolve("docs")) && !page.endsWith("docs/README.md")) {
                String inDocs = TOP.resolve("docs").relativize(page).toString().replace('\\', '/');
                assertThat(Files.readString(TOP.resolve("docs/README.md"))).contains("(" + inDocs + ")");
            }
        }
    }

    /** Names of headings as links use them: lower case, hyphens for spaces, without other marks; repeated ones numbered. */
    private static Set<String> anchors(Path page) throws IOException {
        Set<String> anchors = new TreeSet<>();
        Map<String, Integer> times = new HashMap<>();
        Matcher matcher = HEADING.matcher(FENCED.matcher(Files.readString(page)).replaceAll(""));
        while (matcher.find()) {
            String name = matcher.group(1)
                    .strip()
                    .toLowerCase(Locale.ROOT)
                    .replaceAll("[^\\p{L}\\p{N} _-]", "")
                    .replace(' ', '-');
            int before = times.merge(name, 1, Integer::sum) - 1;
            anchors.add(before == 0 ? name : name + "-" + before);
        }
        return anchors;
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyCommandShownCanBeGiven(Path page) throws IOException {
        CommandLine program = program();
        for (String command : commands(Files.readString(page))) {
            if (command.matches("[\\w-]+")) { // a command's name in a sentence
                assertThat(program.getSubcommands()).as("%s", page).containsKey(command);
            } else {
                assertThatCode(() -> program().parseArgs(CommandChoice.withCommand(program, arguments(command))))
                        .as("%s in %s", command, page)
                        .doesNotThrowAnyException();
            }
        }
    }

    private static CommandLine program() {
        return Main.commandLine(System.out, System.err, new RideOpener(InputStream.nullInputStream()));
    }

    @Test
    void commandsAreFoundInEveryDress() {
        String page = """
                Say `wattledger rider --example`, not wattledger.

                    java -jar a/wattledger.jar what-if --distance 1km \\
                        --power 200

                ```sh
                wattledger review 'my ride.fit' > out.txt
                ```
                    wattledger review: rider.toml:1: a message
                """;
        assertThat(commands(page))
                .containsExactlyInAnyOrder(
                        "rider --example", "what-if --distance 1km --power 200", "review 'my ride.fit' > out.txt");
        assertThat(arguments("review 'my ride.fit' > out.txt")).containsExactly("review", "my ride.fit");
        assertThat(commands(read("README.md"))).hasSizeGreaterThan(4);
    }

    private static String read(String page) {
        try {
            return Files.readString(TOP.resolve(page));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** What follows the program's name in blocks of code, indented code and code within a line. */
    private static List<String> commands(String text) {
        List<String> candidates = new ArrayList<>();
        String words = FENCED.matcher(text).replaceAll("");
        INLINE.matcher(words).results().forEach(code -> candidates.add(code.group(1)));
        for (String line : text.replaceAll("\\\\\\n\\s*", "").lines().toList()) {
            for (String each : line.strip().split(" && ", -1)) {
                candidates.add(each);
            }
        }
        List<String> commands = new ArrayList<>();
        for (String candidate : candidates) {
            Matcher matcher = COMMAND.matcher(candidate);
            // "wattledger review: ..." is a message, and the name alone no command.
            if (matcher.matches()
                    && matcher.group(1) != null
                    && !matcher.group(1).matches("[\\w-]+: .*")) {
                commands.add(matcher.group(1));
            }
        }
        return commands;
    }

    /** The words of a command as a shell would give them, up to where it sends the output. */
    private static String[] arguments(String command) {
        List<String> arguments = new ArrayList<>();
        for (MatchResult word : WORD.matcher(command).results().toList()) {
            if (word.group().equals(">") || word.group().equals("|")) {
                break;
            }
            arguments.add(word.group(1) != null ? word.group(1) : word.group(2) != null ? word.group(2) : word.group());
        }
        return arguments.toArray(String[]::new);
    }

    /** Each block of the tutorial goes through a shell, in a folder that holds nothing but the sample rides and a course. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void theTutorialRunsAndPrintsWhatItShows(@TempDir Path folder) throws Exception {
        copy(TOP.resolve("sample-rides"), folder.resolve("sample-rides"));
        Path course = Path.of("docs", "examples", "ebbwood-165.gpx");
        Files.createDirectories(folder.resolve("docs").resolve("examples"));
        Files.copy(TOP.resolve(course), folder.resolve(course));
        Path program = Files.createDirectory(folder.resolve("bin")).resolve("wattledger");
        Files.writeString(
                program,
                "#!/bin/sh\nexec '" + Path.of(System.getProperty("java.home"), "bin", "java") + "' -cp '"
                        + System.getProperty("java.class.path") + "' io.github.wattledger.cli.Main \"$@\"\n");
        assertThat(program.toFile().setExecutable(true)).isTrue();
        List<MatchResult> steps =
                STEP.matcher(read("docs/tutorial.md")).results().toList();
        assertThat(steps).hasSizeGreaterThan(5);
        for (MatchResult step : steps) {
            List<String> printed = run(folder, step.group(1));
            int at = 0;
            for (String line : step.group(2) == null
                    ? List.<String>of()
                    : step.group(2).lines().toList()) {
                if (!line.equals("...")) {
                    int found = printed.subList(at, printed.size()).indexOf(line);
                    assertThat(found)
                            .as("'%s' in %s", line, String.join("\n", printed))
                            .isNotNegative();
                    at += found + 1;
                }
            }
        }
        assertThat(folder.resolve("race.html")).isNotEmptyFile();
    }

    private static List<String> run(Path folder, String script) throws Exception {
        ProcessBuilder builder = new ProcessBuilder("sh", "-e", "-c", script)
                .directory(folder.toFile())
                .redirectErrorStream(true);
        builder.environment().merge("PATH", folder.resolve("bin").toString(), (old, own) -> own + ":" + old);
        Process process = builder.start();
        process.getOutputStream().close();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        process.getInputStream().transferTo(new PrintStream(out, false, StandardCharsets.UTF_8));
        String printed = out.toString(StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as("%s%n%s", script, printed).isZero();
        return printed.lines().toList();
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> paths = Files.walk(from)) {
            for (Path path : paths.toList()) {
                if (!path.getFileName().toString().startsWith(".wattledger")) {
                    Files.copy(path, to.resolve(from.relativize(path).toString()));
                }
            }
        }
    }
}
