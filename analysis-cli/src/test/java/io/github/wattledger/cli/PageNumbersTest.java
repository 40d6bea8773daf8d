package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A page tells the numbers of the JSON report of the same ride, no others, and leaves none of these out. */
class PageNumbersTest {
    private static final Pattern NUMBER =
            Pattern.compile("<data value=\"([^\"]*)\" data-path=\"([^\"]*)\">([^<]*)</data>");

    private static String run(String... arguments) {
        Outcome outcome = Outcome.of(arguments);
        assertThat(outcome.status()).as(outcome.err()).isIn(0, 4);
        return outcome.out();
    }

    private static Map<String, String> numbers(String page) {
        Map<String, String> numbers = new TreeMap<>();
        Matcher number = NUMBER.matcher(page);
        while (number.find()) {
            numbers.put(number.group(2), number.group(1));
        }
        return numbers;
    }

    /** Every number of a tree with its path. */
    private static void collect(JsonNode node, String path, Map<String, String> into) {
        if (node.isObject()) {
            node.properties()
                    .forEach(entry -> collect(
                            entry.getValue(), path.isEmpty() ? entry.getKey() : path + "." + entry.getKey(), into));
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                collect(node.get(i), path + "[" + i + "]", into);
            }
        } else if (node.isNumber()) {
            into.put(path, node.decimalValue().stripTrailingZeros().toPlainString());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"over-hard-start", "even-paced", "damaged"})
    void ofARideAreThoseOfTheJsonReport(String sample) {
        String file = "../sample-rides/" + sample + ".fit";
        Map<String, String> json = new TreeMap<>();
        collect(new JsonMapper().readTree(run("review", file, "--format", "json")), "", json);
        Map<String, String> page = numbers(run("review", file, "--format", "html"));
        assertThat(json).containsAllEntriesOf(page);
        List<String> left = new ArrayList<>(json.keySet());
        left.removeAll(page.keySet());
        // Said in sentences, or kept in the notes; everything else must stand in the page as a number of its own.
        left.removeIf(
                path -> path.startsWith("quality.")
                        // Climbs have a table of their own; of a part the page gives no work and no end, of a section
                        // where
                        // it lies instead of when and how far, and no standing leaves its cell empty.
                        || path.matches("splits\\.climbs\\[\\d+]\\.(?!lost).*")
                        || path.matches("splits\\..*\\.(toSecond|movingSeconds|missingSeconds|workKJ)")
                        || path.matches("splits\\.sections\\[\\d+]\\.(fromSecond|distanceM)")
                        || (path.endsWith(".standingSeconds") && "0".equals(json.get(path)))
                        || path.startsWith("rider.")
                        || path.startsWith("ability.")
                        || path.startsWith("source.")
                        || path.startsWith("pacing.occasion")
                        || path.startsWith("pacing.remarks")
                        || path.equals("pacing.secondHalfOverFirst")
                        || path.startsWith("pacing.lostSplit")
                        || path.startsWith("pacing.proposedBunch")
                        || path.startsWith("pacing.numbers.")
                        || path.matches("load\\.\\w*[tT]emperature\\w*")
                        || (path.startsWith("pacing.findings") && !path.contains("costMinutes"))
                        || path.matches("load\\.\\w+Zones\\[\\d+]\\.(from|to)\\w+")
                        || path.startsWith("energy.lastThird")
                        || path.startsWith("energy.findings")
                        || path.matches("energy\\.hours\\[\\d+]\\.ridingSeconds")
                        // The work stands with the load; here it differs by the seconds without power.
                        || path.equals("energy.workKJ")
                        || path.equals("load.stoppedSeconds")
                        || path.matches(
                                "climbs\\[\\d+]\\.(startSeconds|endSeconds|startM|endM|normalizedPowerW|sameAs|secondsOverFirst)"));
        assertThat(left).isEmpty();
    }

    @Test
    void ofAComparisonAreThoseOfTheJsonReport() {
        String[] rides = {"../sample-rides/over-hard-start.fit", "../sample-rides/even-paced.fit"};
        Map<String, String> json = new TreeMap<>();
        collect(new JsonMapper().readTree(run("compare", rides[0], rides[1], "--format", "json")), "", json);
        Map<String, String> page = numbers(run("compare", rides[0], rides[1], "--format", "html"));
        assertThat(json).containsAllEntriesOf(page);
        List<String> left = new ArrayList<>(json.keySet());
        left.removeAll(page.keySet());
        // Said in sentences, or drawn point by point with the gap in numbers every 5 km.
        left.removeIf(path -> path.startsWith("course.")
                || path.endsWith("sessionIndex")
                || path.matches("others\\[\\d+]\\.(from|to)(Point|M)")
                || path.matches("others\\[\\d+]\\.(gapSeconds|movingGapSeconds|powerW|heartRateBpm)\\[\\d+]")
                || path.matches("others\\[\\d+]\\.stretches\\[\\d+]\\.apartM"));
        assertThat(left).isEmpty();
        assertThat(page.keySet()).anyMatch(path -> path.startsWith("others[0].gapSeconds["));
    }

    @Test
    void ofAWhatIfAreThoseOfTheJsonReport() {
        String[] words = {"what-if", "../sample-rides/over-hard-start.fit", "--with-position", "aero-bars", "--format"};
        String[] road = {"what-if", "--distance", "160km", "--power", "190", "--with-mass", "-2", "--format"};
        for (String[] asked : List.of(words, road)) {
            Map<String, String> json = new TreeMap<>();
            collect(new JsonMapper().readTree(run(with(asked, "json"))), "", json);
            Map<String, String> page = numbers(run(with(asked, "html")));
            assertThat(json).containsAllEntriesOf(page);
            List<String> left = new ArrayList<>(json.keySet());
            left.removeAll(page.keySet());
            // Said in sentences.
            left.removeIf(path -> path.startsWith("source.")
                    || path.startsWith("road.")
                    || path.startsWith("extent.")
                    || path.matches("influences\\[\\d+]\\.(value|low|high)"));
            assertThat(left).isEmpty();
        }
    }

    private static String[] with(String[] words, String last) {
        String[] all = Arrays.copyOf(words, words.length + 1);
        all[words.length] = last;
        return all;
    }

    @Test
    void ofASeasonAreThoseOfTheJsonReport(@TempDir Path folder) {
        String store = folder.resolve("season.sqlite").toString();
        Map<String, String> json = new TreeMap<>();
        collect(
                new JsonMapper()
                        .readTree(run("season", "../sample-rides/season", "--store", store, "--format", "json")),
                "",
                json);
        Map<String, String> page =
                numbers(run("season", "../sample-rides/season", "--store", store, "--format", "html"));
        assertThat(json).containsAllEntriesOf(page);
        List<String> left = new ArrayList<>(json.keySet());
        left.removeAll(page.keySet());
        // Said in sentences, told of the last day alone, or left to the pages of the rides.
        left.removeIf(path -> path.matches("load\\.start\\w+")
                || path.matches("load\\.days\\[\\d+]\\.(loadRatio|loadChangeInWeek)")
                || path.matches("weeks\\[\\d+]\\.ridesWithoutStress")
                || path.startsWith("months[")
                || path.matches("(recentB|b)ests\\[\\d+]\\.seconds")
                || path.startsWith("threshold.")
                || path.startsWith("durability[")
                || path.startsWith("pacing.")
                || path.startsWith("rider.")
                || path.startsWith("recentRidingBests[")
                || path.matches("rides\\[\\d+]\\.(openingOverTarget|fadePercent)")
                || path.matches("rides\\[\\d+]\\.(sessionIndex|elapsedSeconds|timerSeconds|powerSeconds|averagePowerW"
                        + "|maximumHeartRateBpm|wattsPerBeat|decouplingPercent|thresholdPowerW|targetW)"));
        assertThat(left).isEmpty();
    }

    @Test
    void ofSeveralRidersAreThoseOfTheJsonReport(@TempDir Path folder) throws IOException {
        String page = Files.readString(new SamplePages(folder).riders());
        String team = folder.resolve("team").toString();
        Map<String, String> json = new TreeMap<>();
        collect(new JsonMapper().readTree(run("season", "--riders", team, "--format", "json")), "", json);
        assertThat(json).containsAllEntriesOf(numbers(page));
        List<String> left = new ArrayList<>(json.keySet());
        left.removeAll(numbers(page).keySet());
        // Said in sentences where it is worth a look.
        left.removeIf(path -> path.equals("skippedFiles") || path.endsWith(".loadRatio"));
        assertThat(left).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"over-hard-start", "damaged"})
    void areWrittenAsTheyAre(String sample) {
        Matcher number = NUMBER.matcher(run("review", "../sample-rides/" + sample + ".fit", "--format", "html"));
        int count = 0;
        while (number.find()) {
            // The words round the value: in its own unit, unless it is a clock, km or km/h.
            Matcher words = Pattern.compile("^(-?\\d+(?:\\.\\d+)?)( (?:W|bpm|kJ|m|%|rpm|W a beat|W/kg|m/h|s))?$")
                    .matcher(number.group(3));
            // Parts of a ride have km and km/h over their columns, and their grade in percent.
            boolean isInHead =
                    number.group(2).matches("splits\\..*\\.(startM|endM|distanceM|averageSpeedMps|meanGrade)");
            if (words.matches() && !isInHead) {
                BigDecimal shown = new BigDecimal(words.group(1));
                BigDecimal half = halfOfTheStep(number.group(2), shown);
                assertThat(shown.subtract(new BigDecimal(number.group(1))).abs())
                        .as(number.group(2) + " shown as " + number.group(3))
                        .isLessThanOrEqualTo(half);
                count++;
            }
        }
        assertThat(count).isGreaterThan(30);
    }

    /**
     * Half of the step to which a number is rounded: of its last decimal, but for what a model says of a body: 5 g, and of
     * energy the third digit, 10 kJ at least.
     */
    private static BigDecimal halfOfTheStep(String path, BigDecimal shown) {
        if (path.startsWith("energy.energyKJ")) {
            int digits = shown.precision() - shown.scale();
            return BigDecimal.valueOf(5).scaleByPowerOfTen(Math.max(0, digits - 3 - 1));
        }
        return path.matches("energy\\..*arbohydrate.*")
                ? BigDecimal.valueOf(2.5)
                : BigDecimal.valueOf(0.5).movePointLeft(shown.scale());
    }
}
