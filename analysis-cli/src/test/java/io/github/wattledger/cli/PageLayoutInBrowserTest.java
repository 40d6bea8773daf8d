package io.github.wattledger.cli;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.html.HtmlReport;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.ReviewParts;
import io.github.wattledger.testing.SampleReviews;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** How the pages are laid out in a real browser: on a telephone, on paper, and what stands where. */
class PageLayoutInBrowserTest {
    private static final String SAMPLE = "over-hard-start";
    private static final Path SAMPLE_FILE = Path.of("../sample-rides/over-hard-start.fit");
    private static final int TELEPHONE = 360;

    @TempDir
    private static @Nullable Path folder;

    @RegisterExtension
    static final OneBrowser BROWSER = new OneBrowser();

    @AfterEach
    void asWideAsUsual() {
        BROWSER.get().media("", false);
        BROWSER.get().command("Emulation.clearDeviceMetricsOverride", Map.of());
    }

    private static SamplePages pages() {
        return new SamplePages(requireNonNull(folder));
    }

    private static Path pageOf(RideReview review, String name) throws IOException {
        StringBuilder text = new StringBuilder();
        new HtmlReport(Units.METRIC).write(review, text);
        return Files.writeString(requireNonNull(folder).resolve(name), text);
    }

    /** A ride of which nothing is known, on a device that stored numbers: the widest table of loads. */
    private static Path nothingKnownBesideADevice() throws IOException {
        RideReview nothing = SampleReviews.nothingKnown();
        return pageOf(
                ReviewParts.changed(
                        nothing,
                        parts -> parts.deviceTotals = SampleReviews.race().deviceTotals()),
                "nothing-but-a-device.html");
    }

    private static List<Path> allPages() throws IOException {
        return List.of(
                pages().review(SAMPLE),
                pages().review("damaged"),
                pageOf(SampleReviews.raceWithClimbs(), "climbs.html"),
                nothingKnownBesideADevice(),
                pages().season(),
                pages().riders(),
                pages().comparison(),
                pages().whatIf());
    }

    // The head.

    /** The words are those of the text report; the advice is that of the rows, the minutes are those of the account. */
    @Test
    void theHeadSaysWhatItCostAndWhatToDoNextTime() {
        BROWSER.get().open(pages().review(SAMPLE));
        String[] lost = BROWSER.text("[...document.querySelector('.losses tfoot tr').querySelectorAll('.number')]"
                        + ".map(n => n.textContent.trim()).join()")
                .split(",", -1);
        assertThat(lost).hasSize(2).allMatch(end -> end.matches("\\d+\\.\\d min"));
        String headline = "Over-hard start. The mistakes cost " + lost[0] + " for the same energy, " + lost[1]
                + " for the same effort.";
        assertThat(BROWSER.text("document.querySelector('h1').textContent")).isEqualTo(headline);
        assertThat(BROWSER.text("document.title")).isEqualTo("over-hard-start.fit: " + headline);
        assertThat(Outcome.of("review", SAMPLE_FILE.toString())
                        .out()
                        .lines()
                        .limit(15)
                        .map(String::strip)
                        .collect(Collectors.joining(" ")))
                .contains(headline);
        assertThat(BROWSER.text(
                        "[...document.querySelectorAll('.next-time li')].map(l => l.textContent.trim()).join('|')"))
                .isEqualTo(BROWSER.text("[1, 2, 3].map(n => n + ' ' + document.querySelector('#finding-' + n)"
                        + ".lastElementChild.textContent).join('|')"));
    }

    @Test
    void aRideWithoutAMistakeHasNoAdviceInItsHead() throws IOException {
        BROWSER.get().open(pageOf(SampleReviews.nothingKnown(), "nothing.html"));
        assertThat(BROWSER.text("document.querySelectorAll('.next-time').length"))
                .isEqualTo("0");
        assertThat(BROWSER.text("document.querySelector('h1').textContent")).isEqualTo("Not judged");
    }

    // On a telephone.

    @Test
    void nothingIsWiderThanATelephone() throws IOException {
        for (Path page : allPages()) {
            BROWSER.get().width(TELEPHONE, 800);
            BROWSER.get().open(page);
            assertThat(Integer.parseInt(BROWSER.text("document.documentElement.scrollWidth")))
                    .as(page.toString())
                    .isLessThanOrEqualTo(TELEPHONE);
            BROWSER.get().run("document.querySelectorAll('details').forEach(d => d.open = true)");
            assertThat(Integer.parseInt(BROWSER.text("document.documentElement.scrollWidth")))
                    .as(page + " with all that can be opened")
                    .isLessThanOrEqualTo(TELEPHONE);
        }
    }

    @Test
    void theForemostColumnsAreSeenWithoutScrolling() throws IOException {
        int columns = 0;
        for (Path page : allPages()) {
            BROWSER.get().width(TELEPHONE, 800);
            BROWSER.get().open(page);
            BROWSER.get().run("document.querySelectorAll('details').forEach(d => d.open = true)");
            assertThat(
                            BROWSER.text(
                                    "[...document.querySelectorAll('.scroll')].filter(s => !s.querySelector('.foremost')).length"))
                    .as("tables that scroll without a foremost column in " + page)
                    .isEqualTo("0");
            assertThat(BROWSER.text("[...document.querySelectorAll('th.foremost')].filter(th =>"
                            + " th.getBoundingClientRect().right > th.closest('.scroll').getBoundingClientRect().right + 1)"
                            + ".map(th => th.textContent).join()"))
                    .as(page.toString())
                    .isEmpty();
            columns += Integer.parseInt(BROWSER.text("document.querySelectorAll('th.foremost').length"));
        }
        assertThat(columns).isGreaterThan(15);
    }

    // On paper.

    private static int sheetsOfA4(Path page) {
        BROWSER.get().open(page);
        Map<String, Object> printed = BROWSER.get()
                .command(
                        "Page.printToPDF",
                        Map.of("paperWidth", 210 / 25.4, "paperHeight", 297 / 25.4, "printBackground", true));
        String pdf = new String(
                Base64.getDecoder().decode(String.valueOf(printed.get("data"))), StandardCharsets.ISO_8859_1);
        // A page object of a PDF (ISO 32000-1, 7.7.3.3); the tree above the pages has /Type /Pages.
        Matcher sheet = Pattern.compile("/Type\\s*/Page\\b").matcher(pdf);
        int sheets = 0;
        while (sheet.find()) {
            sheets++;
        }
        return sheets;
    }

    @Test
    void aRaceIsPrintedOnFourSheetsAtMost() {
        assertThat(sheetsOfA4(pages().review(SAMPLE))).isBetween(2, 4);
    }

    /** Collapsed on a screen; on paper the hours alone. */
    @Test
    void onlyTheHoursArePrintedOfTheParts() {
        String shown = "[...document.querySelectorAll('.splits details')].filter(d =>"
                + " d.querySelector('table').checkVisibility({contentVisibilityAuto: true})"
                + " && d.querySelector('table').getBoundingClientRect().height > 0)"
                + ".map(d => d.querySelector('summary').textContent).join('; ')";
        BROWSER.get().open(pages().review(SAMPLE));
        assertThat(BROWSER.text("document.querySelectorAll('.splits details').length"))
                .isNotEqualTo("0");
        assertThat(BROWSER.text(shown)).isEmpty();
        BROWSER.get().media("print", false);
        BROWSER.get().await(shown + " === 'Hour by hour, elapsed time'"); // styles for paper come a frame later
    }

    @Test
    void otherPagesArePrintedOnFew() throws IOException {
        assertThat(sheetsOfA4(pages().season())).isBetween(1, 3);
        assertThat(sheetsOfA4(pages().comparison())).isBetween(1, 3);
        assertThat(sheetsOfA4(pages().whatIf())).isEqualTo(1);
        assertThat(sheetsOfA4(pages().riders())).isEqualTo(1);
    }

    @Test
    void aHeadingIsNotLeftAloneAtTheEndOfASheet() {
        BROWSER.get().open(pages().review(SAMPLE));
        BROWSER.get().media("print", false);
        assertThat(BROWSER.text("[...new Set([...document.querySelectorAll('main h2, main h3')]"
                        + ".map(h => getComputedStyle(h).breakAfter))].join()"))
                .isEqualTo("avoid");
    }

    @Test
    void theNoteOfAClimbStandsOnOneLine() throws IOException {
        Path page = pageOf(SampleReviews.raceWithClimbs(), "climbs.html");
        for (int width : new int[] {TELEPHONE, 703, 1440}) { // 703 pixels are 186 mm, A4 less its margins
            BROWSER.get().width(width, 900);
            BROWSER.get().media(width == 703 ? "print" : "screen", false);
            BROWSER.get().open(page);
            assertThat(BROWSER.text("document.querySelector('.climbs .note').textContent.trim()"))
                    .startsWith("the same road as climb 1");
            assertThat(BROWSER.text("document.querySelector('.climbs .note .small').getClientRects().length"))
                    .as("lines at " + width)
                    .isEqualTo("1");
        }
    }

    // Marks and labels.

    /** Pairs of boxes that lie over one another, of what is seen and of one drawing. */
    private static final String OVERLAPS = """
            return [...document.querySelectorAll('svg.chart')].flatMap(chart => {
              const boxes = [...chart.querySelectorAll(arguments[0])].map(e => [e.textContent || e.getAttribute('class'),
                e.getBoundingClientRect(), e.matches('circle')]).filter(b => b[1].width > 0);
              const pairs = [];
              boxes.forEach((a, i) => boxes.slice(i + 1).forEach(b => {
                const isOver = a[1].left < b[1].right && b[1].left < a[1].right
                  && a[1].top < b[1].bottom && b[1].top < a[1].bottom;
                if (isOver && !(a[2] && b[2])) pairs.push(a[0] + ' and ' + b[0]);
              }));
              return pairs;
            }).join('; ');""";

    @ParameterizedTest
    @ValueSource(ints = {TELEPHONE, 800, 1440, 2560})
    void noLabelLiesOverAnother(int width) throws IOException {
        for (Path page : allPages()) {
            BROWSER.get().width(width, 900);
            BROWSER.get().open(page);
            BROWSER.get()
                    .run("document.documentElement.classList.remove('moving')"); // the drawing of the timeline as well
            for (String kind : List.of(".foot", ".level", ".climb-label", ".level, circle")) {
                assertThat(String.valueOf(BROWSER.get().run(OVERLAPS, kind)))
                        .as(kind + " of " + page.getFileName() + " at " + width)
                        .isEmpty();
            }
        }
    }

    @Test
    void aNumberInADrawingHasARimOfPaper() throws IOException {
        BROWSER.get().open(pageOf(SampleReviews.raceWithClimbs(), "climbs.html"));
        assertThat(BROWSER.text("getComputedStyle(document.querySelector('.climb-label')).paintOrder"))
                .startsWith("stroke");
    }

    /** By the story of the sample: 4 min with the timer paused, 2.5 min standing with the timer running. */
    @Test
    void eachStopIsMarkedWhereItWas() throws Exception {
        BROWSER.get().width(1440, 900);
        BROWSER.get().open(pages().review(SAMPLE));
        BROWSER.get().awaitCharts();
        List<Interval> stops = stopsOfAMinute(Reviewer.review(SAMPLE_FILE, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE));
        assertThat(stops).hasSize(2);
        assertThat(stops.get(0).seconds()).isCloseTo(240, within(15));
        assertThat(stops.get(1).seconds()).isCloseTo(150, within(15));
        String places =
                BROWSER.text("[...document.querySelectorAll('.part:not([hidden])')].map(p => p.style.left).join()");
        String[] lefts = places.split(",", -1);
        assertThat(lefts).hasSize(2);
        for (int i = 0; i < lefts.length; i++) {
            double share = Double.parseDouble(lefts[i].replace("%", "")) / 100;
            assertThat(share * 25_939).isCloseTo(stops.get(i).fromSecond(), within(3.0));
        }
        // The drawing for paper: a line for each of them, and no other in the mark of this finding.
        assertThat(BROWSER.text("document.querySelectorAll('.drawn .flag[href=\"#finding-2\"] .reach').length"))
                .isEqualTo("2");
        assertThat(BROWSER.text("document.querySelectorAll('.drawn .flag[href=\"#finding-1\"] .reach').length"))
                .isEqualTo("1");
    }

    /** Standing between moving seconds of the race for more than a minute, from the states of the seconds alone. */
    private static List<Interval> stopsOfAMinute(RideReview review) {
        List<Interval> stops = new ArrayList<>();
        Interval judged = review.pacing().judged();
        int from = -1;
        for (int second = judged.fromSecond(); second < judged.toSecond(); second++) {
            boolean isRiding = review.ride().state(second) == SecondState.RIDING;
            if (!isRiding && from < 0) {
                from = second;
            } else if (isRiding && from >= 0) {
                if (second - from > 60) {
                    stops.add(new Interval(from, second));
                }
                from = -1;
            }
        }
        return stops;
    }

    // A stretch.

    /** The means of what is shown are those of a review of the same seconds; the grade is rise over distance. */
    @Test
    void aStretchShowsItsMeans() throws Exception {
        BROWSER.get().open(pages().review(SAMPLE));
        BROWSER.get().awaitCharts();
        assertThat(BROWSER.text("document.querySelector('.means').textContent"))
                .isEqualTo("Select a stretch to see its means.");
        BROWSER.get().find("[data-do='in']").click();
        assertThat(BROWSER.text("document.querySelector('.window').textContent"))
                .isEqualTo("1:48:05 to 5:24:14");
        String means = BROWSER.text("document.querySelector('.means').textContent");

        Outcome outcome = Outcome.of(
                "review", SAMPLE_FILE.toString(), "--from", "1:48:05", "--to", "5:24:14", "--format", "json");
        JsonNode load = new JsonMapper().readTree(outcome.out()).get("load");
        RideReview whole = Reviewer.review(SAMPLE_FILE, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
        int first = 6_485; // 1:48:05
        int end = 19_454; // 5:24:14
        double rise = difference(whole.ride().series(Channel.ALTITUDE), first, end);
        double metres = difference(whole.ride().series(Channel.DISTANCE), first, end);
        assertThat(number(means, " W ")).isCloseTo(load.get("averagePowerW").asDouble(), within(0.51));
        assertThat(number(means, " W normalized"))
                .isCloseTo(load.get("normalizedPowerW").asDouble(), within(0.51));
        assertThat(number(means, " bpm"))
                .isCloseTo(load.get("averageHeartRateBpm").asDouble(), within(0.51));
        assertThat(number(means, " km/h")).isCloseTo(load.get("averageSpeedMps").asDouble() * 3.6, within(0.06));
        assertThat(number(means, " % grade")).isCloseTo(rise / metres * 100, within(0.051));
        BROWSER.get().find("[data-do='whole']").click();
        assertThat(BROWSER.text("document.querySelector('.means').textContent")).startsWith("Select a stretch");
    }

    private static double difference(Series series, int first, int end) {
        return series.get(end - 1) - series.get(first);
    }

    private static double number(String means, String unit) {
        Matcher number =
                Pattern.compile("(-?\\d+(?:\\.\\d)?)" + Pattern.quote(unit)).matcher(means);
        assertThat(number.find()).as(unit + " in " + means).isTrue();
        return Double.parseDouble(number.group(1));
    }

    // Several riders.

    /** The first rider's races are those of the sample season, two of four begun too hard; the other has one. */
    @Test
    void severalRidersShowTheirPacingAndLeadToTheirSeasonsAndBack() throws IOException {
        BROWSER.get().open(pages().riders());
        assertThat(BROWSER.text("[...document.querySelectorAll('h2')].map(h => h.textContent).join('; ')"))
                .isEqualTo("Pacing; Pacing of the last races; Worth a look; Load");
        assertThat(BROWSER.text("[...document.querySelectorAll('section:first-of-type tbody tr')]"
                        + ".map(r => r.cells[0].textContent + ': ' + r.cells[1].textContent + ', ' + r.cells[3].textContent"
                        + " + ', ' + r.cells[4].textContent).join('; ')"))
                .isEqualTo("anna: Even, 2026-05-31, 2 of 2, then 0 of 2;"
                        + " bo & son #2: Over-hard start, 2026-04-19, fewer than 4 races");
        BROWSER.get().find(".riders tr:nth-child(2) a").click();
        BROWSER.get().await("document.querySelector('.rides')");
        assertThat(BROWSER.text("document.title")).startsWith("bo & son #2, season 2026-04-05");
        BROWSER.get().find(".rides tbody a").click();
        BROWSER.get().awaitCharts();
        BROWSER.get().find(".over a").click();
        BROWSER.get().await("document.querySelector('.rides')");
        BROWSER.get().find(".over a").click();
        BROWSER.get().await("document.querySelector('.riders')");
        assertThat(BROWSER.text("document.querySelector('h1').textContent")).isEqualTo("2 riders");
    }

    // A season.

    @Test
    void racesComeFirstInASeasonAndLoadsAfter() {
        BROWSER.get().open(pages().season());
        assertThat(BROWSER.text("[...document.querySelectorAll('h2')].map(h => h.textContent).join('; ')"))
                .isEqualTo("Races and long rides; Bests and threshold; The rider, from own rides; Load; Weeks; Rides");
    }
}
