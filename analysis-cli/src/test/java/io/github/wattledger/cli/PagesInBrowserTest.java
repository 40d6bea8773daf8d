package io.github.wattledger.cli;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.html.HtmlReport;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.testing.ReviewParts;
import io.github.wattledger.testing.SampleReviews;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;

/** The pages in a real browser, opened from files as a rider opens them. */
class PagesInBrowserTest {
    private static final String SAMPLE = "over-hard-start";

    @TempDir
    private static @Nullable Path folder;

    @RegisterExtension
    static final OneBrowser BROWSER = new OneBrowser();

    private static Path in(String name) {
        return requireNonNull(folder).resolve(name);
    }

    private static Path pageOf(String sample) {
        Path page = in(sample + ".html");
        if (!Files.exists(page)) {
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            int status = Main.run(
                    new String[] {
                        "review", "../sample-rides/" + sample + ".fit", "--format", "html", "--output", page.toString()
                    },
                    new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8),
                    new PrintStream(err, true, StandardCharsets.UTF_8));
            assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isZero();
        }
        return page;
    }

    private static Path pageOf(RideReview review, String name) throws IOException {
        StringBuilder text = new StringBuilder();
        new HtmlReport(Units.METRIC).write(review, text);
        return Files.writeString(in(name), text);
    }

    private static boolean isLit(String selector) {
        return Boolean.TRUE.equals(
                BROWSER.get().run("return document.querySelector(arguments[0]).classList.contains('lit')", selector));
    }

    @ParameterizedTest
    @ValueSource(strings = {"over-hard-start", "even-paced", "damaged"})
    void opensFromAFileWithoutANetworkAndWithoutAnError(String sample) {
        Path page = pageOf(sample);
        BROWSER.get().open(page);
        BROWSER.get().awaitCharts();
        assertThat(BROWSER.get().requests()).containsExactly(page.toUri().toString());
        assertThat(BROWSER.get().console()).isEmpty();
        assertThat(BROWSER.text("performance.getEntriesByType('resource').length"))
                .isEqualTo("0");
    }

    @Test
    void thePolicyForbidsEveryLoad() {
        BROWSER.get().open(pageOf(SAMPLE));
        BROWSER.get().awaitCharts();
        BROWSER.get()
                .run(
                        "window.blocked = [];"
                                + "document.addEventListener('securitypolicyviolation', e => window.blocked.push(e.effectiveDirective));"
                                + "new Image().src = 'https://example.invalid/a.png';"
                                + "fetch('https://example.invalid/b').catch(() => {});"
                                + "const s = document.createElement('script'); s.textContent = 'window.evil = 1'; document.body.append(s);");
        BROWSER.get().await("window.blocked.length >= 3");
        assertThat(BROWSER.text("window.blocked.sort().join()")).isEqualTo("connect-src,img-src,script-src-elem");
        assertThat(BROWSER.text("typeof window.evil")).isEqualTo("undefined");
    }

    @ParameterizedTest
    @CsvSource({"360", "800", "1440"})
    void nothingIsWiderThanTheWindow(int width) {
        try {
            BROWSER.get().width(width, 900);
            BROWSER.get().open(pageOf(SAMPLE));
            BROWSER.get().awaitCharts();
            assertThat(Integer.parseInt(BROWSER.text("document.documentElement.scrollWidth")))
                    .isLessThanOrEqualTo(width);
        } finally {
            BROWSER.get().command("Emulation.clearDeviceMetricsOverride", Map.of());
        }
    }

    @Nested
    class Timeline {
        /** Half of the recording of 7:12:20. */
        private static final int HALF_SECONDS = 25_940 / 2;

        /** The recording over some 1,200 pixels. */
        private static final int A_PIXEL_SECONDS = 22;

        private int secondUnderCursor() {
            Matcher clock = Pattern.compile("^(\\d+):(\\d\\d):(\\d\\d) ")
                    .matcher(BROWSER.text("document.querySelector('.readout').textContent"));
            assertThat(clock.find()).isTrue();
            return Integer.parseInt(clock.group(1)) * 3600
                    + Integer.parseInt(clock.group(2)) * 60
                    + Integer.parseInt(clock.group(3));
        }

        @BeforeEach
        void open() {
            BROWSER.get().open(pageOf(SAMPLE));
            BROWSER.get().awaitCharts();
        }

        private void hover(String selector) {
            BROWSER.get().run("document.querySelector(arguments[0]).scrollIntoView({block: 'center'})", selector);
            BROWSER.get().act().moveToElement(BROWSER.get().find(selector)).perform();
        }

        private void hoverAt(double shareOfWidth) {
            BROWSER.get().run("document.querySelector('.pane').scrollIntoView({block: 'center'})");
            int width = BROWSER.get().find(".pane .u-over").getSize().getWidth();
            BROWSER.get()
                    .act()
                    .moveToElement(
                            BROWSER.get().find(".pane .u-over"), (int) Math.round((shareOfWidth - 0.5) * width), 0)
                    .perform();
        }

        @Test
        void aMarkLightsItsRowAndARowItsMark() {
            hover("[data-flag='2'] .chip");
            assertThat(isLit("#finding-2")).isTrue();
            assertThat(isLit("#finding-1")).isFalse();
            hover("#finding-3 .title");
            assertThat(isLit("[data-flag='3']")).isTrue();
            assertThat(isLit("[data-flag='2']")).isFalse();
            assertThat(isLit("#finding-2")).isFalse();
        }

        @Test
        void everyFindingHasAMarkAndARow() {
            assertThat(BROWSER.text(
                            "[...document.querySelectorAll('[data-flag]')].map(f => f.dataset.flag).sort().join()"))
                    .isEqualTo("1,2,3,4");
            assertThat(BROWSER.text(
                            "[...document.querySelectorAll('tr.finding')].map(f => f.dataset.finding).sort().join()"))
                    .isEqualTo("1,2,3,4");
        }

        @Test
        void aClickOnAMarkGoesToTheRowAndOneOnTheRowsNumberToTheStretch() {
            BROWSER.get().run("document.querySelector('[data-flag=\"4\"]').scrollIntoView({block: 'center'})");
            BROWSER.get().find("[data-flag='4'] .chip").click();
            assertThat(BROWSER.text("document.activeElement.id")).isEqualTo("finding-4");
            hover("#finding-1 .chip");
            BROWSER.get().find("#finding-1 .chip").click();
            assertThat(BROWSER.text("document.activeElement.dataset.flag")).isEqualTo("1");
            // The finding is from 0:12:06 to 1:21:02; a little is shown on either side of it.
            Matcher shown = Pattern.compile("0:0\\d:\\d\\d to 1:3\\d:\\d\\d")
                    .matcher(BROWSER.text("document.querySelector('.window').textContent"));
            assertThat(shown.matches()).isTrue();
        }

        @Test
        void theCursorTellsTheValuesOfItsSecond() {
            hoverAt(0.5);
            assertThat(secondUnderCursor()).isCloseTo(HALF_SECONDS, within(A_PIXEL_SECONDS));
            assertThat(BROWSER.text("document.querySelector('.readout').textContent"))
                    .containsPattern("km \\d+\\.\\d")
                    .containsPattern("\\d+ W")
                    .containsPattern("\\d+ bpm")
                    .containsPattern("\\d+ m");
        }

        @Test
        void theAxisCanBeOneOfDistance() {
            BROWSER.get().find("input[value='distance']").click();
            hoverAt(0.5);
            Matcher km = Pattern.compile("km (\\d+\\.\\d)")
                    .matcher(BROWSER.text("document.querySelector('.readout').textContent"));
            assertThat(km.find()).isTrue();
            // Half of the 168.1 km that the text report gives, to a pixel of some 1200.
            assertThat(Double.parseDouble(km.group(1))).isCloseTo(84.05, within(0.3));
            BROWSER.get().find("input[value='time']").click();
            hoverAt(0.5);
            assertThat(secondUnderCursor()).isCloseTo(HALF_SECONDS, within(A_PIXEL_SECONDS));
        }

        @Test
        void buttonsZoomAndMove() {
            BROWSER.get().find("[data-do='in']").click();
            // Half of it, around the middle: a quarter of 25,939 s from either end.
            assertThat(BROWSER.text("document.querySelector('.window').textContent"))
                    .isEqualTo("1:48:05 to 5:24:14");
            BROWSER.get().find("[data-do='left']").click();
            assertThat(BROWSER.text("document.querySelector('.window').textContent"))
                    .isEqualTo("0:00:00 to 3:36:10");
            BROWSER.get().find("[data-do='whole']").click();
            assertThat(BROWSER.text("document.querySelector('.window').textContent"))
                    .isEmpty();
        }

        @Test
        void dragZoomsAndADoubleClickShowsTheWhole() {
            hoverAt(0.25);
            int width = BROWSER.get().find(".pane .u-over").getSize().getWidth();
            BROWSER.get()
                    .act()
                    .clickAndHold()
                    .moveByOffset(width / 4, 0)
                    .release()
                    .perform();
            Matcher shown = Pattern.compile("1:4[78]:\\d\\d to 3:3[5-7]:\\d\\d")
                    .matcher(BROWSER.text("document.querySelector('.window').textContent"));
            assertThat(shown.matches())
                    .as(BROWSER.text("document.querySelector('.window').textContent"))
                    .isTrue();
            BROWSER.get().act().doubleClick(BROWSER.get().find(".pane .u-over")).perform();
            assertThat(BROWSER.text("document.querySelector('.window').textContent"))
                    .isEmpty();
        }

        @Test
        void keysZoomMoveAndSpeak() {
            BROWSER.get().run("document.querySelector('.panes').focus()");
            BROWSER.get().act().sendKeys("+").perform();
            assertThat(BROWSER.text("document.querySelector('.window').textContent"))
                    .isEqualTo("1:48:05 to 5:24:14");
            BROWSER.get().act().sendKeys(Keys.ARROW_RIGHT).perform();
            assertThat(BROWSER.text("document.querySelector('.live [aria-live]').textContent"))
                    .contains(" W")
                    .contains(" bpm")
                    .startsWith("3:3");
            BROWSER.get().act().sendKeys(Keys.ESCAPE).perform();
            assertThat(BROWSER.text("document.querySelector('.window').textContent"))
                    .isEmpty();
        }

        @Test
        void theTrackShowsWhereTheCursorIs() {
            hoverAt(0.3);
            String first = BROWSER.text("document.querySelector('.track .here').getAttribute('cx')");
            hoverAt(0.7);
            assertThat(BROWSER.text("document.querySelector('.track .here').getAttribute('cx')"))
                    .isNotEqualTo(first);
            assertThat(Double.parseDouble(first)).isBetween(0.0, 1100.0);
        }

        @Test
        void theUnpackedChannelsAreThoseOfTheRecording() {
            // The last second's cursor must tell the ride's own end: 168.1 km after 7:12:19.
            BROWSER.get().run("document.querySelector('.panes').focus()");
            hoverAt(0.9999);
            assertThat(BROWSER.text("document.querySelector('.readout').textContent"))
                    .startsWith("7:12:")
                    .contains("km 168.1");
        }
    }

    @Nested
    class Paper {
        @Test
        void printsTheDrawingsAndNoControls() {
            BROWSER.get().open(pageOf(SAMPLE));
            BROWSER.get().awaitCharts();
            assertThat(BROWSER.text("getComputedStyle(document.querySelector('.drawn')).display"))
                    .isEqualTo("none");
            try {
                BROWSER.get().media("print", false);
                assertThat(BROWSER.text("getComputedStyle(document.querySelector('.drawn')).display"))
                        .isEqualTo("block");
                assertThat(BROWSER.text("getComputedStyle(document.querySelector('.live')).display"))
                        .isEqualTo("none");
            } finally {
                BROWSER.get().media("", false);
            }
        }

        @Test
        void withoutScriptsTheDrawingStays() {
            try {
                BROWSER.get().command("Emulation.setScriptExecutionDisabled", Map.of("value", true));
                BROWSER.get().open(pageOf(SAMPLE));
                assertThat(BROWSER.get().find(".drawn .chart").isDisplayed()).isTrue();
                assertThat(BROWSER.get().find(".drawn .flag").isDisplayed()).isTrue();
                assertThat(BROWSER.get().find(".live").isDisplayed()).isFalse();
            } finally {
                BROWSER.get().command("Emulation.setScriptExecutionDisabled", Map.of("value", false));
            }
        }
    }

    @Nested
    class Words {
        private static final String SCRIPT = "</script></title><script>window.evil=1</script>";
        private static final String IMAGE = "\"><img src=x onerror=window.evil=2>'`${window.evil=3}";

        @Test
        void fromOutsideStayWords() throws IOException {
            Path page = pageOf(SampleReviews.named(SampleReviews.race(), IMAGE, SCRIPT), "hostile.html");
            BROWSER.get().open(page);
            BROWSER.get().awaitCharts();
            assertThat(BROWSER.text("typeof window.evil")).isEqualTo("undefined");
            assertThat(BROWSER.text("document.querySelector('.circumstances').textContent"))
                    .contains(SCRIPT);
            assertThat(BROWSER.text("document.querySelector('.file-name').textContent"))
                    .isEqualTo(IMAGE);
            assertThat(BROWSER.text("document.title")).startsWith(IMAGE + ": Over-hard start");
            assertThat(BROWSER.text("document.images.length")).isEqualTo("0");
            assertThat(BROWSER.get().requests()).containsExactly(page.toUri().toString());
            assertThat(BROWSER.get().console()).isEmpty();
        }

        @Test
        void sayWhatCouldNotBeComputed() throws IOException {
            BROWSER.get().open(pageOf(SampleReviews.nothingKnown(), "nothing.html"));
            assertThat(BROWSER.text("document.querySelector('main').innerText"))
                    .contains("there is neither power nor heart rate nor altitude in this file")
                    .contains("There is no power in this file.")
                    .contains("There is no heart rate in this file.")
                    .contains("there are no positions in this file")
                    .doesNotContain("NaN")
                    .doesNotContain("null");
            assertThat(BROWSER.get().console()).isEmpty();
        }
    }

    @Nested
    class Accessibility {
        @Test
        void axeWouldFindSomething() throws IOException {
            BROWSER.get().open(pageOf(SAMPLE));
            BROWSER.get().awaitCharts();
            BROWSER.get()
                    .run(
                            "const button = document.createElement('button'); document.querySelector('main').append(button)");
            assertThat(accessibilityFindings().toString()).contains("button-name");
        }

        @ParameterizedTest
        @CsvSource({"1440, false", "1440, true", "360, false", "360, true"})
        void axeFindsNothing(int width, boolean isDark) throws IOException {
            BROWSER.get().width(width, 900);
            BROWSER.get().media("screen", isDark);
            try {
                BROWSER.get().open(pageOf(SAMPLE));
                BROWSER.get().awaitCharts();
                assertThat(accessibilityFindings()).isEmpty();
            } finally {
                BROWSER.get().media("", false);
                BROWSER.get().command("Emulation.clearDeviceMetricsOverride", Map.of());
            }
        }
    }

    @Nested
    class Season {
        private Path pages() throws IOException {
            Path pages = in("season");
            if (!Files.exists(pages)) {
                ByteArrayOutputStream err = new ByteArrayOutputStream();
                int status = Main.run(
                        new String[] {
                            "season",
                            "../sample-rides/season",
                            "--store",
                            in("season.sqlite").toString(),
                            "--pages",
                            pages.toString()
                        },
                        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8));
                assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isZero();
            }
            return pages.resolve("index.html");
        }

        @Test
        void opensFromAFileWithoutANetworkAndWithoutAnError() throws IOException {
            Path page = pages();
            BROWSER.get().open(page);
            BROWSER.get().await("document.readyState === 'complete'");
            assertThat(BROWSER.get().requests()).containsExactly(page.toUri().toString());
            assertThat(BROWSER.get().console()).isEmpty();
            assertThat(BROWSER.text("document.querySelectorAll('script').length"))
                    .isEqualTo("0");
        }

        @Test
        void aRowLeadsToThePageOfItsRideAndBack() throws IOException {
            BROWSER.get().open(pages());
            assertThat(BROWSER.text("document.querySelectorAll('.rides tbody tr').length"))
                    .isEqualTo("12");
            assertThat(BROWSER.text("document.querySelectorAll('.rides tbody a').length"))
                    .isEqualTo("12");
            BROWSER.get().run("document.querySelector('.rides tbody a').scrollIntoView({block: 'center'})");
            BROWSER.get().find(".rides tbody tr:nth-child(4) a").click();
            BROWSER.get().awaitCharts();
            assertThat(BROWSER.text("document.querySelector('.file-name').textContent"))
                    .isEqualTo("Alder Ring, first race (2026-04-19-first-race.fit.gz)");
            // By the story of the samples the first race was begun much too hard.
            assertThat(BROWSER.text("document.querySelector('h1').textContent"))
                    .matches("Over-hard start\\. The mistakes cost [\\d.]+ min for the same energy,"
                            + " [\\d.]+ min for the same effort\\.");
            BROWSER.get().find(".over a").click();
            BROWSER.get().await("document.querySelector('.rides')");
        }

        @ParameterizedTest
        @CsvSource({"1440, false", "1440, true", "360, false", "360, true"})
        void axeFindsNothing(int width, boolean isDark) throws IOException {
            assertFitsAndAxeFindsNothing(pages(), width, isDark);
        }
    }

    @Nested
    class Comparison {
        private Path page() {
            Path page = in("compare.html");
            if (!Files.exists(page)) {
                ByteArrayOutputStream err = new ByteArrayOutputStream();
                int status = Main.run(
                        new String[] {
                            "compare",
                            "../sample-rides/over-hard-start.fit",
                            "../sample-rides/even-paced.fit",
                            "--format",
                            "html",
                            "--output",
                            page.toString()
                        },
                        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8));
                assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isZero();
            }
            return page;
        }

        @Test
        void opensFromAFileWithoutANetworkAndWithoutAScript() {
            BROWSER.get().open(page());
            BROWSER.get().await("document.readyState === 'complete'");
            assertThat(BROWSER.get().requests()).containsExactly(page().toUri().toString());
            assertThat(BROWSER.get().console()).isEmpty();
            assertThat(BROWSER.text("document.querySelectorAll('script').length"))
                    .isEqualTo("0");
            assertThat(BROWSER.text("document.querySelectorAll('.chart').length"))
                    .isEqualTo("2");
        }

        @Test
        void aFileNameStaysWords() throws IOException {
            String hostile = "<img src=x onerror=window.evil=1>.fit";
            Path first = Files.copy(Path.of("../sample-rides/over-hard-start.fit"), in(hostile));
            Path page = in("compare-hostile.html");
            int status = Main.run(
                    new String[] {
                        "compare", first.toString(), first.toString(), "--format", "html", "--output", page.toString()
                    },
                    new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8),
                    new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8));
            assertThat(status).isZero();
            BROWSER.get().open(page);
            assertThat(BROWSER.text("document.images.length")).isEqualTo("0");
            assertThat(BROWSER.text("typeof window.evil")).isEqualTo("undefined");
            assertThat(BROWSER.text("document.querySelector('.circumstances').textContent"))
                    .contains(hostile);
            assertThat(BROWSER.text("document.querySelector('h1').textContent")).isEqualTo("Level");
        }

        @ParameterizedTest
        @CsvSource({"1440, false", "1440, true", "360, false", "360, true"})
        void axeFindsNothing(int width, boolean isDark) throws IOException {
            assertFitsAndAxeFindsNothing(page(), width, isDark);
        }
    }

    @ParameterizedTest
    @CsvSource({"1440, false", "1440, true", "360, false", "360, true"})
    void axeFindsNothingInAPageOfRiders(int width, boolean isDark) throws IOException {
        assertFitsAndAxeFindsNothing(new SamplePages(requireNonNull(folder)).riders(), width, isDark);
    }

    @Nested
    class WhatIf {
        @Test
        void opensFromAFileWithoutANetworkAndWithoutAScript() {
            Path page = new SamplePages(requireNonNull(folder)).whatIf();
            BROWSER.get().open(page);
            BROWSER.get().await("document.readyState === 'complete'");
            assertThat(BROWSER.get().requests()).containsExactly(page.toUri().toString());
            assertThat(BROWSER.get().console()).isEmpty();
            assertThat(BROWSER.text("document.querySelectorAll('script').length"))
                    .isEqualTo("0");
            assertThat(BROWSER.text("document.querySelector('h1').textContent"))
                    .matches("Saves [\\d.]+ min \\([\\d.]+ to [\\d.]+ min\\)\\.");
        }

        @ParameterizedTest
        @CsvSource({"1440, false", "1440, true", "360, false", "360, true"})
        void axeFindsNothing(int width, boolean isDark) throws IOException {
            assertFitsAndAxeFindsNothing(new SamplePages(requireNonNull(folder)).whatIf(), width, isDark);
        }
    }

    @Test
    void theBalanceIsDrawnWhereCriticalPowerIsKnown() throws IOException {
        RideReview race = SampleReviews.race();
        WPrimeBalance balance =
                WPrimeBalance.of(race.ride().part(race.reviewed()), 240, 18_000, WPrimeBalance.Model.DIFFERENTIAL);
        AbilityEvidence evidence =
                new AbilityEvidence(null, Outcome.refused("the numbers were given"), balance, List.of(), null, null);
        RideReview known = ReviewParts.changed(
                race,
                parts -> parts.ability =
                        new Ability(240.0, 18.0, Ability.Source.RIDE_FIT_AND_GUIDE, 2.0, 182.98, 25_320, evidence));
        BROWSER.get().open(pageOf(known, "balance.html"));
        BROWSER.get().awaitCharts();
        assertThat(BROWSER.text("[...document.querySelectorAll('.pane h3')].map(h => h.textContent).join('; ')"))
                .isEqualTo("Power, mean of 30 s, W; Heart rate, bpm; W\u2032 balance, kJ; Altitude, m");
        assertThat(BROWSER.text("document.querySelectorAll('.drawn .balance').length"))
                .isEqualTo("1");
        BROWSER.get().run("document.querySelector('.panes').focus()");
        BROWSER.get().act().sendKeys(Keys.ARROW_LEFT).perform();
        // No second of this ride is above 240 W: all of W' is there throughout.
        assertThat(BROWSER.text("document.querySelector('.readout').textContent"))
                .contains("18.0 kJ of W\u2032");
    }

    /** A quarter below the upper edge of the pane is above the line, a quarter above the lower edge is below it. */
    @Test
    void groundBelowTheSeaIsFilledFromBelow() throws IOException {
        StringBuilder rows = new StringBuilder("seconds,power,altitude\n");
        for (int second = 0; second < 1200; second++) {
            rows.append(second)
                    .append(",150,")
                    .append(second < 600 ? -140 : -120)
                    .append('\n');
        }
        Path ride = Files.writeString(in("below-the-sea.csv"), rows);
        Path page = in("below-the-sea.html");
        assertThat(io.github.wattledger.cli.Outcome.of(
                                "review", ride.toString(), "--format", "html", "--output", page.toString())
                        .status())
                .isZero();
        BROWSER.get().open(page);
        BROWSER.get().awaitCharts();
        String alpha = "(share => { const pane = [...document.querySelectorAll('.pane')]"
                + ".find(p => p.textContent.includes('Altitude'));"
                + " const canvas = pane.querySelector('canvas');"
                + " const over = pane.querySelector('.u-over').getBoundingClientRect();"
                + " const all = canvas.getBoundingClientRect();"
                + " const x = (over.left - all.left + over.width * 0.2) * devicePixelRatio;"
                + " const y = (over.top - all.top + over.height * share) * devicePixelRatio;"
                + " return canvas.getContext('2d').getImageData(Math.round(x), Math.round(y), 1, 1).data[3]; })";
        assertThat(BROWSER.text(alpha + "(0.25)")).isEqualTo("0");
        assertThat(BROWSER.text(alpha + "(0.97)")).isEqualTo("255");
    }

    @Test
    void aRideOfFifteenHoursFitsIntoHalfAMegabyte() throws IOException {
        Path page = pageOf(LongRide.review(), "long.html");
        assertThat(Files.size(page)).isLessThan(500_000);
        BROWSER.get().open(page);
        BROWSER.get().awaitCharts();
        assertThat(BROWSER.get().console()).isEmpty();
    }

    private static void assertFitsAndAxeFindsNothing(Path page, int width, boolean isDark) throws IOException {
        BROWSER.get().width(width, 900);
        BROWSER.get().media("screen", isDark);
        try {
            BROWSER.get().open(page);
            assertThat(Integer.parseInt(BROWSER.text("document.documentElement.scrollWidth")))
                    .isLessThanOrEqualTo(width);
            assertThat(accessibilityFindings()).isEmpty();
        } finally {
            BROWSER.get().media("", false);
            BROWSER.get().command("Emulation.clearDeviceMetricsOverride", Map.of());
        }
    }

    /**
     * All that axe-core finds by the guidelines and by its best practices, with the place; and labels that differ from
     * what is seen, which it looks for only when asked.
     */
    private static List<?> accessibilityFindings() throws IOException {
        try (InputStream axe = requireNonNull(PagesInBrowserTest.class.getResourceAsStream("/axe.min.js"))) {
            BROWSER.get().run(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
        }
        BROWSER.get().run("document.querySelectorAll('details').forEach(d => d.open = true)");
        return (List<?>)
                BROWSER.get()
                        .runAsync(
                                "const done = arguments[arguments.length - 1];"
                                        + "axe.run({rules: {'label-content-name-mismatch': {enabled: true}}})"
                                        + ".then(result => done(result.violations"
                                        + ".concat(result.incomplete.filter(i => i.id !== 'color-contrast'))" // see
                                        // ColourContrastTest
                                        + ".map(v => v.id + ' ' + v.nodes.slice(0, 5).map(n => n.target.join(' ') + ' ' + n.failureSummary).join(' | '))))");
    }
}
