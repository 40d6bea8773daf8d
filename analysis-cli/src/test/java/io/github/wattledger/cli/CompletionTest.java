package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What bash offers at the end of a line, asked of bash itself. */
class CompletionTest {
    private static final Path BASH = Path.of("/bin/bash");

    @TempDir
    Path folder = Path.of("");

    /** The words offered, and after a bar the options of completion that the function set. */
    private String offered(String... words) throws Exception {
        assumeTrue(Files.isExecutable(BASH), "there is no bash here");
        Path script = Files.writeString(
                folder.resolve("completion.bash"), Outcome.of("completion").out());
        List<String> command = new ArrayList<>(List.of(BASH.toString(), "--norc", "-c", """
                source "$0" || exit 1
                compopt() { set="$set $*"; }
                COMP_WORDS=("$@"); COMP_CWORD=$(( $# - 1 )); set=
                _wattledger
                echo "${COMPREPLY[*]}|$set"
                """, script.toString()));
        command.addAll(List.of(words));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue()).as(out).isZero();
        return out.strip();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "sea; season|",
                "review,--form; --format|",
                "review,a.fit,--format,; text json csv splits html|",
                "review,a.fit,--format,=,h; html|",
                "review,a.fit,--format,=; text json csv splits html|",
                "review,a.fit,--format=h; --format=html|",
                "a.fit,--format,j; json|",
                "a.fit,--eff; --effort|",
                "review,a.fit,--explain,over-h; over-hard-start|",
                "review,a.fit,--effort,; auto race training|",
                "what-if,a.fit,--with-position,a; aero-bars|",
                "compare,a.fit,b.fit,--units,; metric imperial|",
                "inspect,a.fit,--format,; text json|",
                "inspect,a.csv,--column,pow; power=| -o nospace",
                "help,what; what-if|",
                "review,a.fit,--mass,; '| +o default'",
                "season,--pages,; '| +o default -o dirnames'",
            })
    void wordsAreOffered(String words, String offered) throws Exception {
        List<String> line = new ArrayList<>(List.of("wattledger"));
        line.addAll(List.of(words.split(",", -1)));
        assertThat(offered(line.toArray(String[]::new))).isEqualTo(offered);
    }

    /** Where nothing is offered, the shell completes file names by its own rules: it knows how to quote a blank. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "my ri",
                "review,my ri",
                "review,a.fit,--rider,",
                "season,",
                "compare,a.fit,b",
                "review,a.fit,--output,r"
            })
    void fileNamesAreLeftToTheShell(String words) throws Exception {
        List<String> line = new ArrayList<>(List.of("wattledger"));
        line.addAll(List.of(words.split(",", -1)));
        assertThat(offered(line.toArray(String[]::new))).isEqualTo("|");
    }

    @Test
    void everyCommandAndOptionIsInIt() {
        String script = Outcome.of("completion").out();
        assertThat(script).contains("complete -o default -F _wattledger wattledger\n");
        Main.commandLine(System.out, System.err, new RideOpener(InputStream.nullInputStream()))
                .getSubcommands()
                .forEach((name, command) -> {
                    assertThat(script).contains("'" + name + " '-*)");
                    command.getCommandSpec()
                            .options()
                            .forEach(option -> assertThat(script).contains(option.longestName()));
                });
    }
}
