package io.github.wattledger.cli.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A sentence that names a unit of length, speed, mass or temperature itself would not follow {@code --units}. */
class UnitsInSourcesTest {
    private static final Path MAIN = Path.of("src/main");

    /** Here the units have their names. */
    private static final Set<String> WHERE_UNITS_ARE = Set.of("ReportUnit.java", "Units.java", "LibraryWords.java");

    private static final String UNIT =
            "(km/h|km|kg(?!/m3)|m/s|m/h|m|mi|ft|lb|mph|[Kk]ilomet\\w+|[Mm]iles?|deg [CF]|Celsius|Fahrenheit)";

    private static final Pattern STRING = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

    private static final Pattern IN_A_STRING = Pattern.compile("(?<![\\w/'&])" + UNIT + "(?![\\w/'])");

    private static final Pattern IN_A_TEMPLATE = Pattern.compile("(?<![\\w/'\"])" + UNIT + "(?![\\w/'\"=])");

    /** Watts per kilogram are a number of the trade; a section of a plan may be called by the kilometre where it ends. */
    private static final List<String> NO_UNITS_OF_A_READER = List.of("W/kg", "name.equals(\"km \"", "@param");

    @Test
    void noSentenceNamesAUnitItself() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path file : files(MAIN.resolve("java/io/github/wattledger/cli/report"), ".java")) {
            if (!WHERE_UNITS_ARE.contains(String.valueOf(file.getFileName()))
                    && !String.valueOf(file.getParent()).endsWith("csv")) {
                search(file, UnitsInSourcesTest::isInAString, found);
            }
        }
        for (Path file : files(MAIN.resolve("resources"), ".js")) {
            search(file, UnitsInSourcesTest::isInAString, found);
        }
        for (Path file : files(MAIN.resolve("jte"), ".jte")) {
            search(file, UnitsInSourcesTest::isInATemplate, found);
        }
        assertThat(found).isEmpty();
    }

    /** The search itself finds what it is there for. */
    @Test
    void aUnitWithinAStringIsFound() {
        assertThat(List.of("x + \" km in \"", "\"km 3\"", "\" kg\"", "\"Altitude, m\"", "\"at \" + x + \" m up\""))
                .allMatch(UnitsInSourcesTest::isInAString);
        assertThat(List.of("\" min\"", "\" W/kg\"", "\" kg/m3\"", "\" m2\"", "\" \" + m + \"x\"", "km(\"W'\")"))
                .noneMatch(UnitsInSourcesTest::isInAString);
        assertThat(isInATemplate("<th scope=\"col\">km of ride 1</th>")).isTrue();
        assertThat(isInATemplate("<th class=\"number\">${page.unit()}</th>")).isFalse();
    }

    private static boolean isInAString(String line) {
        return STRING.matcher(line)
                .results()
                .anyMatch(string -> IN_A_STRING.matcher(string.group(1)).find());
    }

    private static boolean isInATemplate(String line) {
        return IN_A_TEMPLATE.matcher(line).find();
    }

    private static List<Path> files(Path below, String ending) throws IOException {
        try (Stream<Path> all = Files.walk(below)) {
            List<Path> files = all.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
            assertThat(files).isNotEmpty();
            return files;
        }
    }

    private static void search(Path file, Predicate<String> isFound, List<String> found) throws IOException {
        int number = 0;
        for (String line : Files.readAllLines(file)) {
            number++;
            if (isFound.test(line) && NO_UNITS_OF_A_READER.stream().noneMatch(line::contains)) {
                found.add(file + ":" + number + ": " + line.strip());
            }
        }
    }
}
