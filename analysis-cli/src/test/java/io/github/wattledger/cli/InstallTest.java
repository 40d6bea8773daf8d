package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The script that installs, in a home of its own, with stand-ins for the compiler and for Maven. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the script is for Unix")
class InstallTest {
    private static final List<String> TOOLS = List.of(
            "sh", "dirname", "mkdir", "rmdir", "cp", "mv", "rm", "ln", "readlink", "sed", "chmod", "uname", "cat");

    /** Builds a launcher that says its version, as the real build does. */
    private static final String MAVEN = """
            #!/bin/sh
            mkdir -p analysis-cli/target/wattledger/bin analysis-cli/target/wattledger/lib
            printf '#!/bin/sh\\necho wattledger 1.2.3\\n' > analysis-cli/target/wattledger/bin/wattledger
            chmod 755 analysis-cli/target/wattledger/bin/wattledger
            """;

    @TempDir
    Path temp;

    private Path home;
    private Path link;
    private Path installed;
    private Path bin;

    @BeforeEach
    void layOut() throws IOException {
        temp = temp.toRealPath();
        home = Files.createDirectory(temp.resolve("my home"));
        link = home.resolve(".local/bin/wattledger");
        installed = home.resolve(".local/share/wattledger");
        bin = Files.createDirectory(temp.resolve("bin"));
        for (String tool : TOOLS) {
            Path real = Stream.of("/bin", "/usr/bin")
                    .map(folder -> Path.of(folder, tool))
                    .filter(Files::isExecutable)
                    .findFirst()
                    .orElseThrow();
            Files.createSymbolicLink(bin.resolve(tool), real);
        }
        Files.createDirectories(temp.resolve("the sources/analysis-cli"));
        Files.copy(Path.of("install.sh"), temp.resolve("the sources/analysis-cli/install.sh"));
        program("javac", "#!/bin/sh\necho javac 21.0.1\n");
        program("mvn", MAVEN);
    }

    private void program(String name, String script) throws IOException {
        Files.writeString(bin.resolve(name), script);
        Files.setPosixFilePermissions(bin.resolve(name), PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private Outcome run(String... words) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                "/bin/sh", temp.resolve("the sources/analysis-cli/install.sh").toString()));
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command).directory(temp.toFile());
        builder.environment().clear();
        builder.environment().put("PATH", bin.toString());
        builder.environment().put("HOME", home.toString());
        Path out = temp.resolve("out");
        Path err = temp.resolve("err");
        Process process =
                builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
        assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
        return new Outcome(
                process.exitValue(),
                Files.readString(out, StandardCharsets.UTF_8),
                Files.readString(err, StandardCharsets.UTF_8));
    }

    private List<String> below(Path folder) throws IOException {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
                    .map(path -> folder.relativize(path).toString())
                    .sorted()
                    .toList();
        }
    }

    @Test
    void theCommandIsPutOnThePath() throws Exception {
        Outcome outcome = run();
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        assertThat(outcome.out())
                .contains(
                        "Installed wattledger 1.2.3 as " + link + "; its files are in " + installed + ".",
                        "the licence of the FIT SDK in it forbids passing it on",
                        "Your shell does not look into ~/.local/bin yet.",
                        "To remove it: sh " + temp + "/the sources/analysis-cli/install.sh --remove");
        assertThat(link).isSymbolicLink();
        assertThat(below(home)).containsExactly(".local/bin/wattledger", ".local/share/wattledger/bin/wattledger");
    }

    @Test
    void aSecondRunReplacesTheFirst() throws Exception {
        assertThat(run().status()).isZero();
        Path old = Files.createFile(installed.resolve("lib/old.jar"));
        assertThat(run().status()).isZero();
        assertThat(old).doesNotExist();
        assertThat(below(home)).hasSize(2);
    }

    @Test
    void allOfItCanBeRemoved() throws Exception {
        Path other = Files.createDirectories(home.resolve(".local/share/other"));
        assertThat(run().status()).isZero();
        Path cache = Files.createDirectories(home.resolve(".cache/wattledger"));
        Files.createFile(cache.resolve("classes-1-2.jsa"));
        Files.createFile(cache.resolve("sqlite-1-2"));
        Outcome outcome = run("--remove");
        assertThat(outcome.status()).isZero();
        assertThat(outcome.out().lines())
                .containsExactly(
                        "Removed " + link + " and " + installed + ".",
                        "Removed what the launcher kept in " + cache + ".");
        assertThat(below(home)).isEmpty();
        assertThat(other).isDirectory();
        assertThat(cache).doesNotExist();
        assertThat(run("--remove").out()).isEqualTo("Nothing to remove: Wattledger is not installed for you.\n");
    }

    @Test
    void whatIsNotOursIsLeftAlone() throws Exception {
        Files.createDirectories(link.getParent());
        Files.writeString(link, "somebody else's");
        for (String[] words : new String[][] {{}, {"--remove"}}) {
            Outcome outcome = run(words);
            assertThat(outcome.status()).isEqualTo(1);
            assertThat(outcome.err())
                    .isEqualTo("install.sh: " + link + " is there, but not from this script; move it away\n");
        }
        assertThat(link).hasContent("somebody else's");
        assertThat(installed).doesNotExist();
    }

    @Test
    void withoutACompilerNothingIsDone() throws Exception {
        Files.delete(bin.resolve("javac"));
        program("apt-get", "#!/bin/sh\n");
        Outcome outcome = run();
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err())
                .isEqualTo("install.sh: no JDK found; install one of version 17 or later: sudo apt-get install"
                        + " default-jdk-headless\n");
        assertThat(below(home)).isEmpty();
    }

    @Test
    void anOldCompilerIsNamed() throws Exception {
        program("javac", "#!/bin/sh\necho javac 1.8.0_292\n");
        Outcome outcome = run();
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err())
                .startsWith("install.sh: " + bin.resolve("javac") + " is of version 1; install a JDK of version 17 or");
    }

    @Test
    void withoutMavenItSaysHowToGetIt() throws Exception {
        Files.delete(bin.resolve("mvn"));
        program("brew", "#!/bin/sh\n");
        Outcome outcome = run();
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err())
                .isEqualTo("install.sh: no Maven found, which builds Java programs; install it: brew install maven\n");
    }

    @Test
    void aFailedBuildLeavesTheEarlierInstallation() throws Exception {
        assertThat(run().status()).isZero();
        program("mvn", "#!/bin/sh\necho 'no such host' >&2\nexit 1\n");
        Outcome outcome = run();
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err())
                .isEqualTo("no such host\ninstall.sh: the build failed; its messages stand above. Is this computer"
                        + " online?\n");
        assertThat(below(home)).hasSize(2);
    }
}
