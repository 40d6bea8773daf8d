package io.github.wattledger.cli;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** What the script of a page writes in miles, feet and degrees Fahrenheit: axes, titles, what the cursor reads, the means. */
class UnitsInBrowserTest {
    @RegisterExtension
    static final OneBrowser BROWSER = new OneBrowser();

    @TempDir
    private static @Nullable Path folder;

    @BeforeAll
    static void start() {
        Path page = requireNonNull(folder).resolve("imperial.html");
        Outcome outcome = Outcome.of(
                "review",
                "../sample-rides/over-hard-start.fit",
                "--format",
                "html",
                "--units",
                "imperial",
                "--output",
                page.toString());
        assertThat(outcome).isEqualTo(new Outcome(0, "", ""));
        BROWSER.get().open(page);
        BROWSER.get().awaitCharts();
    }

    @Test
    void titlesNameFeetAndFahrenheit() {
        assertThat(BROWSER.text("[...document.querySelectorAll('.pane h3')].map(h => h.textContent).join('; ')"))
                .contains("Altitude, ft")
                .contains("Temperature at the recorder, \u00B0F")
                .doesNotContain("Altitude, m")
                .doesNotContain("\u00B0C");
    }

    /** The last second: 168.1 km by the text report, divided by the 1.609344 km of a mile. */
    @Test
    void theCursorReadsMilesFeetAndFahrenheit() {
        String drawn = BROWSER.text("(() => { const over = document.querySelector('.pane .u-over');"
                + " const box = over.getBoundingClientRect();"
                + " over.dispatchEvent(new MouseEvent('mousemove', {bubbles: true, clientX: box.right - 0.5,"
                + " clientY: box.top + 20})); return document.querySelector('.readout').textContent; })()");
        Matcher mile = Pattern.compile("mile (\\d+\\.\\d)").matcher(drawn);
        assertThat(mile.find()).as(drawn).isTrue();
        assertThat(Double.parseDouble(mile.group(1))).isCloseTo(168.1 / 1.609344, within(0.3));
        assertThat(drawn)
                .containsPattern("\\d+ ft")
                .containsPattern("\\d+ \u00B0F")
                .doesNotContainPattern("\\d+ m\\b")
                .doesNotContain("km")
                .doesNotContain("\u00B0C");
    }

    /** Against the text report of the same stretch, which has the same means. */
    @Test
    void theMeansOfAStretchAreThoseOfTheReport() {
        BROWSER.get().run("document.querySelector('[data-do=\"in\"]').click()");
        String[] window =
                BROWSER.text("document.querySelector('.window').textContent").split(" to ", -1);
        String means = BROWSER.text("document.querySelector('.means').textContent");
        BROWSER.get().run("document.querySelector('[data-do=\"whole\"]').click()");
        String report = Outcome.of(
                        "review",
                        "../sample-rides/over-hard-start.fit",
                        "--from",
                        window[0],
                        "--to",
                        window[1],
                        "--units",
                        "imperial")
                .out();
        assertThat(number(means, "([\\d.]+) mi ")).isCloseTo(number(report, "\n  distance +([\\d.]+) mi"), within(0.1));
        assertThat(number(means, "([\\d.]+) mph moving"))
                .isCloseTo(number(report, "\n  average speed[^\n]*? ([\\d.]+) mph"), within(0.1));
        assertThat(number(means, "(\\d+) \u00B0F"))
                .isCloseTo(number(report, "\n  average temperature +(\\d+) deg F"), within(1.0));
    }

    private static double number(String text, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(text);
        assertThat(found.find()).as("%s in %s", pattern, text).isTrue();
        return Double.parseDouble(found.group(1));
    }
}
