package dev.slowpoint.browser;

import dev.slowpoint.started.Tools;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A browser without a window, and what its pages asked for and complained about. */
final class Browser implements AutoCloseable {

    private static final Duration LONGEST = Duration.ofSeconds(60);
    private static final Duration PAUSE = Duration.ofMillis(50);
    private static final JsonMapper JSON = new JsonMapper();

    private final ChromeDriver driver;

    /** A browser in which nothing was ever done. */
    Browser() {
        Path program = Tools.need("chromium");
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(Tools.need("chromedriver").toFile())
                .build();
        ChromeOptions options = new ChromeOptions();
        options.setBinary(program.toFile());
        options.addArguments(
                "--headless=new",
                // Build servers run as root, where the sandbox does not start.
                "--no-sandbox",
                "--disable-dev-shm-usage",
                "--disable-gpu",
                "--disable-background-networking",
                "--disable-component-update",
                "--no-first-run",
                "--force-color-profile=srgb",
                // Whatever asks for a name on the network finds none.
                "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1");
        LoggingPreferences logged = new LoggingPreferences();
        logged.enable(LogType.BROWSER, Level.ALL);
        logged.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability("goog:loggingPrefs", logged);
        this.driver = new ChromeDriver(service, options);
    }

    ChromeDriver driver() {
        return driver;
    }

    /** Makes the window as large as a telephone or a desk would have it, in units of CSS. */
    void size(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    /** Prefers dark pages, or light ones. */
    void dark(boolean dark) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    /** Lets pages of an origin read what was copied. */
    void mayReadClipboard(String origin) {
        driver.executeCdpCommand(
                "Browser.grantPermissions",
                Map.of("origin", origin, "permissions", List.of("clipboardReadWrite", "clipboardSanitizedWrite")));
    }

    /** Waits until something is there. */
    <T> T await(Function<ChromeDriver, T> something) {
        return new WebDriverWait(driver, LONGEST, PAUSE)
                // The answer is made anew each time.
                .ignoring(StaleElementReferenceException.class)
                .until(unused -> something.apply(driver));
    }

    WebElement id(String id) {
        return driver.findElement(By.id(id));
    }

    /** What a script returns. */
    Object run(String script, Object... arguments) {
        return ((JavascriptExecutor) driver).executeScript(script, arguments);
    }

    /** All that is visible, as a picture. */
    byte[] picture() {
        return driver.getScreenshotAs(OutputType.BYTES);
    }

    /** What pages complained about on their console since this was last asked. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** Addresses that pages asked for since this was last asked. */
    TreeSet<String> asked() {
        TreeSet<String> addresses = new TreeSet<>();
        for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
            JsonNode message = JSON.readTree(entry.getMessage()).path("message");
            if (Objects.equals(message.path("method").asString(""), "Network.requestWillBeSent")) {
                addresses.add(message.path("params").path("request").path("url").asString());
            }
        }
        return addresses;
    }

    @Override
    public void close() {
        driver.quit();
    }
}
