package io.github.wattledger.cli.report.html;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A real browser without a window: the system's Chromium, driven over its own driver. Nothing is downloaded. */
public final class Browser implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(30);
    private static final Pattern REQUEST = Pattern.compile("\"method\":\"Network\\.requestWillBeSent\"");
    private static final Pattern REQUESTED =
            Pattern.compile("\"documentURL\":.*?\"request\":\\{.*?\"url\":\"([^\"]*)\"");

    private final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** A browser, or empty where the system has none: then tests are skipped with {@link #MISSING}. */
    public static Optional<Browser> find() {
        Optional<Path> chromium = first("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");
        Optional<Path> chromedriver = first("/usr/bin/chromedriver", "/usr/lib/chromium/chromedriver");
        if (chromium.isEmpty() || chromedriver.isEmpty()) {
            return Optional.empty();
        }
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium.get().toFile());
        // No sandbox, since tests may run as root; the pages are our own.
        options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--window-size=1280,1000");
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(chromedriver.get().toFile())
                .build();
        return Optional.of(new Browser(new ChromeDriver(service, options)));
    }

    /** Why tests are skipped. */
    public static final String MISSING =
            "no Chromium with its driver on this system: apt-get install chromium chromium-driver";

    private static Optional<Path> first(String... places) {
        return Stream.of(places).map(Path::of).filter(Files::isExecutable).findFirst();
    }

    /** Opens a page from its file and waits for its charts, where it has a script. */
    public void open(Path page) {
        log(LogType.PERFORMANCE);
        log(LogType.BROWSER);
        driver.get(page.toUri().toString());
    }

    /** Waits until the timeline moves. */
    public void awaitCharts() {
        await("document.documentElement.dataset.ready");
    }

    /** Waits until an expression of the page is true. */
    public void await(String condition) {
        Object isTrue = runAsync("const done = arguments[arguments.length - 1];"
                + "const end = performance.now() + " + PATIENCE.toMillis() + ";"
                + "(function look() {"
                + "  if (" + condition + ") done(true);"
                + "  else if (performance.now() > end) done(false);"
                + "  else setTimeout(look, 20);"
                + "})();");
        if (!Boolean.TRUE.equals(isTrue)) {
            throw new AssertionError("in vain waited for " + condition + "; the console says " + console());
        }
    }

    /** Every address that was asked for since the page was opened. */
    public List<String> requests() {
        List<String> requests = new ArrayList<>();
        for (LogEntry entry : log(LogType.PERFORMANCE)) {
            Matcher requested = REQUESTED.matcher(entry.getMessage());
            if (REQUEST.matcher(entry.getMessage()).find() && requested.find()) {
                requests.add(requested.group(1));
            }
        }
        return requests;
    }

    /** What the console says since the page was opened. */
    public List<String> console() {
        return log(LogType.BROWSER).stream().map(LogEntry::getMessage).toList();
    }

    private List<LogEntry> log(String type) {
        return driver.manage().logs().get(type).getAll();
    }

    /** Runs a script; its result. */
    public Object run(String script, Object... arguments) {
        Object result = driver.executeScript(script, arguments);
        return result == null ? "" : result;
    }

    /** Runs a script that ends by calling its last argument; its result. */
    public Object runAsync(String script) {
        driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(2));
        Object result = driver.executeAsyncScript(script);
        return result == null ? "" : result;
    }

    public WebElement find(String selector) {
        return driver.findElement(By.cssSelector(selector));
    }

    /** The pointer, the keys. */
    public Actions act() {
        return new Actions(driver);
    }

    /** Gives a command of the browser's own protocol. */
    public Map<String, Object> command(String name, Map<String, Object> parameters) {
        return driver.executeCdpCommand(name, parameters);
    }

    /** How wide the page is shown, pixels. */
    public void width(int pixels, int height) {
        command(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", pixels, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    /** Light or dark, screen or print. */
    public void media(String medium, boolean isDark) {
        command(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "media",
                        medium,
                        "features",
                        List.of(Map.of("name", "prefers-color-scheme", "value", isDark ? "dark" : "light"))));
    }

    @Override
    public void close() {
        driver.quit();
    }
}
