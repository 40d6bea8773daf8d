package io.github.wattledger.cli;

import io.github.wattledger.cli.report.html.Browser;
import io.github.wattledger.cli.report.html.HtmlReport;
import io.github.wattledger.cli.report.words.Units;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Pictures of the pages for people to look at, and how quickly a page of 15 h draws: see docs/benchmarks.md. The one
 * argument is the folder to write into.
 */
final class PagePictures {
    private static final int[] WIDTHS = {360, 800, 1440, 2560};
    private static final int LOADS = 7;

    private final Browser browser;
    private final Path folder;
    private final PrintStream out;

    private PagePictures(Browser browser, Path folder, PrintStream out) {
        this.browser = browser;
        this.folder = folder;
        this.out = out;
    }

    /** Writes the pictures and prints the measurements. */
    public static void main(String[] arguments) throws IOException {
        try (Browser browser = Browser.find().orElseThrow(() -> new IllegalStateException(Browser.MISSING))) {
            new PagePictures(browser, Files.createDirectories(Path.of(arguments[0])), System.out).make();
        }
    }

    private void make() throws IOException {
        Map<String, Path> pages = new TreeMap<>();
        for (String sample : List.of("over-hard-start", "even-paced", "damaged")) {
            Path page = folder.resolve(sample + ".html");
            run("review", "../sample-rides/" + sample + ".fit", "--format", "html", "--output", page.toString());
            pages.put(sample, page);
        }
        Path store = Files.createTempFile("season", ".sqlite");
        Files.delete(store);
        Path season = folder.resolve("season.html");
        run(
                "season",
                "../sample-rides/season",
                "--store",
                store.toString(),
                "--format",
                "html",
                "--output",
                season.toString());
        Files.deleteIfExists(store);
        pages.put("season", season);
        Path comparison = folder.resolve("compare.html");
        run(
                "compare",
                "../sample-rides/over-hard-start.fit",
                "../sample-rides/even-paced.fit",
                "--format",
                "html",
                "--output",
                comparison.toString());
        pages.put("compare", comparison);
        Path whatIf = folder.resolve("what-if.html");
        run(
                "what-if",
                "../sample-rides/over-hard-start.fit",
                "--with-position",
                "aero-bars",
                "--format",
                "html",
                "--output",
                whatIf.toString());
        pages.put("what-if", whatIf);
        for (Map.Entry<String, Path> page : pages.entrySet()) {
            picture(page.getKey(), page.getValue());
        }
        zoomed(pages.get("over-hard-start"));
        measure();
    }

    /** A finding shown on an axis of distance. */
    private void zoomed(@Nullable Path page) throws IOException {
        browser.width(1100, 900);
        show(Objects.requireNonNull(page));
        browser.find("input[value='distance']").click();
        browser.run("document.querySelector('#finding-1 .chip').click()");
        browser.act().moveToElement(browser.find(".pane .u-over")).perform();
        write("zoomed.png", browser.command("Page.captureScreenshot", Map.of()));
    }

    private void run(String... arguments) {
        int status = Main.run(arguments, out, out);
        if (status != 0) {
            throw new IllegalStateException(String.join(" ", arguments) + " ended with " + status);
        }
    }

    private void picture(String name, Path page) throws IOException {
        for (int width : WIDTHS) {
            for (boolean isDark : new boolean[] {false, true}) {
                browser.media("screen", isDark);
                browser.width(width, 900);
                show(page);
                Map<String, Object> picture = browser.command(
                        "Page.captureScreenshot",
                        Map.of(
                                "captureBeyondViewport",
                                true,
                                "clip",
                                Map.of("x", 0, "y", 0, "width", width, "height", height(), "scale", 1)));
                write(name + "-" + width + (isDark ? "-dark" : "") + ".png", picture);
            }
        }
        browser.media("", false);
        print(name + "-a4.pdf", 210 / 25.4, 297 / 25.4);
        print(name + "-letter.pdf", 8.5, 11);
    }

    private void show(Path page) {
        browser.open(page);
        if (Boolean.TRUE.equals(browser.run("return !!document.getElementById('timeline')"))) {
            browser.awaitCharts();
        }
    }

    private long height() {
        return ((Number) browser.run("return Math.ceil(document.documentElement.getBoundingClientRect().height)"))
                .longValue();
    }

    private void print(String name, double widthInches, double heightInches) throws IOException {
        write(
                name,
                browser.command(
                        "Page.printToPDF",
                        Map.of(
                                "paperWidth",
                                widthInches,
                                "paperHeight",
                                heightInches,
                                "preferCSSPageSize",
                                false,
                                "printBackground",
                                true)));
    }

    private void write(String name, Map<String, Object> data) throws IOException {
        Files.write(folder.resolve(name), Base64.getDecoder().decode(String.valueOf(data.get("data"))));
    }

    private void measure() throws IOException {
        StringBuilder text = new StringBuilder();
        new HtmlReport(Units.METRIC).write(LongRide.review(), text);
        Path page = folder.resolve("fifteen-hours.html");
        Files.writeString(page, text);
        out.println(
                "15 h at one reading a second: " + text.toString().getBytes(StandardCharsets.UTF_8).length + " bytes");
        browser.width(1440, 900);
        double[] drawn = new double[LOADS];
        for (int load = 0; load < LOADS; load++) {
            show(page);
            drawn[load] = number("performance.getEntriesByName('timeline-drawn')[0].startTime");
        }
        out.println("drawn after, ms, from the start of the navigation to the second frame: " + sorted(drawn));
        out.println("one zoom step a frame, 120 steps, ms between frames: " + browser.runAsync(FRAMES));
    }

    private double number(String script) {
        return ((Number) browser.run("return " + script)).doubleValue();
    }

    private static String sorted(double[] values) {
        Arrays.sort(values);
        StringBuilder text = new StringBuilder();
        for (double value : values) {
            text.append(text.length() == 0 ? "" : " ").append(Math.round(value));
        }
        return text.toString();
    }

    /** Zooms in and out with the keys, one step a frame, and tells the frames and the time that the steps took. */
    private static final String FRAMES = """
            const done = arguments[arguments.length - 1];
            const panes = document.querySelector('.panes');
            panes.scrollIntoView({block: 'center'});
            const frames = [], work = [];
            let before = null, step = 0;
            function frame(now) {
              if (before !== null) frames.push(now - before);
              before = now;
              if (step === 120) {
                const rank = (list, share) => list.sort((a, b) => a - b)[Math.floor(share * (list.length - 1))].toFixed(1);
                done('median ' + rank(frames, 0.5) + ', 95th percentile ' + rank(frames, 0.95) + ', worst ' + rank(frames, 1)
                  + '; script and drawing commands a step: median ' + rank(work, 0.5) + ', worst ' + rank(work, 1));
                return;
              }
              const key = step % 16 < 8 ? '+' : '-';
              step++;
              const start = performance.now();
              panes.dispatchEvent(new KeyboardEvent('keydown', {key: key, bubbles: true}));
              // uPlot draws in a microtask, which has run by the time of this one.
              Promise.resolve().then(() => Promise.resolve()).then(() => work.push(performance.now() - start));
              requestAnimationFrame(frame);
            }
            requestAnimationFrame(frame);
            """;
}
