package dev.slowpoint.browser;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.StartedService;
import dev.slowpoint.started.Tools;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The page to try the service on, as people use it in a browser. */
@ExtendWith(StartedService.Resolver.class)
class TrialPageIT {

    private static final JsonMapper JSON = new JsonMapper();

    /** Where pictures of the page are left for people to look at. */
    private static final Path PICTURES = Path.of("target", "pictures");

    private static Browser browser;

    private final String address;

    TrialPageIT(StartedService service) {
        this.address = service.address().toString();
    }

    @BeforeAll
    static void open() {
        browser = new Browser();
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @BeforeEach
    void fresh() {
        browser.size(1280, 900);
        browser.dark(false);
        browser.driver().get("about:blank");
        browser.complaints();
        browser.asked();
    }

    /** Whatever a test did, the page asked nobody but the service, and complained about nothing but refusals that it shows. */
    @AfterEach
    void quiet() {
        assertThat(browser.asked())
                .isNotEmpty()
                .allMatch(
                        asked -> asked.startsWith(address) || asked.startsWith("data:") || asked.equals("about:blank"));
        // The browser itself notes each answer that is a refusal.
        assertThat(browser.complaints()).allMatch(line -> line.contains("/v1/") && line.contains("status of 4"));
    }

    private void visit(String rest) {
        browser.driver().get(address + rest);
        settled();
    }

    /** Waits until the last question is answered. */
    private static void settled() {
        browser.await(driver ->
                driver.findElements(By.cssSelector("#answer[aria-busy=false]")).size() == 1
                        && (browser.id("window").isDisplayed()
                                ? !browser.id("window-answer").getText().isEmpty()
                                : true));
    }

    private static String text(String selector) {
        return browser.driver().findElement(By.cssSelector(selector)).getText();
    }

    private static WebElement named(String name) {
        return browser.driver().findElement(By.name(name));
    }

    /** Writes into a field as someone does, and waits for what comes of it. */
    private static void write(String name, String text) {
        String before = browser.driver().getCurrentUrl();
        WebElement field = named(name);
        field.sendKeys(Keys.chord(Keys.CONTROL, "a"), text, Keys.TAB);
        browser.await(driver -> !before.equals(driver.getCurrentUrl()));
        settled();
    }

    private JsonNode sent() {
        String shown = Objects.requireNonNull(browser.id("request-text").getDomProperty("textContent"));
        return JSON.readTree(shown.substring(shown.indexOf('{')));
    }

    @Test
    void a_plan_from_the_form_to_the_curve() throws Exception {
        visit("/");
        WebElement food = named("food.id");
        food.sendKeys(Keys.chord(Keys.CONTROL, "a"), "chick thigh");
        assertThat(browser.id("foods").isDisplayed()).isTrue();
        food.sendKeys(Keys.ARROW_DOWN, Keys.ENTER);
        browser.await(driver -> text("#request-text").contains("chicken-thigh"));
        assertThat(food.getDomProperty("value")).isEqualTo("Chicken thigh, skinless");
        write("geometry.thicknessMm", "30");
        write("surroundings.bath.setpointC", "66");
        JsonNode request = sent();
        assertThat(request.path("food").path("id").asString()).isEqualTo("chicken-thigh");
        assertThat(request.path("geometry").path("thicknessMm").asInt()).isEqualTo(30);

        // The same question by another client: what the page shows is what the service says.
        JsonNode plan = ask(request.toString());
        long minutes = -Math.floorDiv(-plan.path("takeOut").path("bestS").asLong(), 60);
        assertThat(text(".said .out")).contains(minutes / 60 + " h " + minutes % 60 + " min");
        assertThat(plan.path("safety").path("verdict").asString()).isEqualTo("met");
        assertThat(text(".card.met .verdict")).isEqualTo("rule met");
        assertThat(JSON.readTree(
                                Objects.requireNonNull(browser.id("answer-text").getDomProperty("textContent")))
                        .path("times"))
                .isEqualTo(plan.path("times"));
        assertThat(browser.driver().findElements(By.cssSelector("#plan svg path.core")))
                .hasSize(1);
        assertThat(browser.driver().findElements(By.cssSelector("#window-answer svg path.safe")))
                .hasSize(1);
        assertThat(browser.driver().findElements(By.cssSelector(".cautions li")))
                .hasSizeGreaterThan(1);
    }

    private JsonNode ask(String body) throws IOException, InterruptedException {
        HttpResponse<String> response = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(address + "/v1/cook-plans"))
                                .header("Content-Type", "application/json")
                                .POST(HttpRequest.BodyPublishers.ofString(body))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
        assertThat(response.statusCode()).isEqualTo(200);
        return JSON.readTree(response.body());
    }

    /** Half a unit of the last digit would be in favour of the plan. */
    @Test
    void nothing_is_rounded_to_look_safer_or_better_than_it_is() {
        visit("/");
        assertThat(browser.run("return import('/trial/units.js').then(u => [u.cautious(0.96, 1, Math.floor),"
                        + " u.cautious(0.7, 1, Math.floor), u.cautious(0.41, 1, Math.ceil),"
                        + " u.amount(5.68, 'mm', Math.floor), u.time(43199, Math.floor), u.time(43201)])"))
                .isEqualTo(List.of(
                        "0.9", "0.7", "0.5", "5.6\u00a0mm", "11\u00a0h\u00a059\u00a0min", "12\u00a0h\u00a01\u00a0min"));
        // The texture closes at 43112 s on the early side: 11 h 58 min 32 s.
        assertThat(text("#plan")).contains("not after\n11 h 58 min").doesNotContain("11 h 59 min");
    }

    @Test
    void the_slider_reads_the_curve_at_a_moment() {
        visit("/");
        WebElement slider = browser.driver().findElement(By.cssSelector("#plan input[type=range]"));
        slider.sendKeys(Keys.HOME);
        // At food in, all of the piece is at the temperature it starts with.
        assertThat(text(".reading")).startsWith("After 0 min: core 4 °C (2 °C to 6 °C)");
        slider.sendKeys(Keys.END);
        assertThat(text(".reading")).contains("surface 60 °C");
        assertThat(slider.getDomAttribute("aria-valuetext"))
                .isEqualTo(
                        browser.driver().findElement(By.cssSelector(".reading")).getDomProperty("textContent"));
    }

    @Test
    void a_fault_stands_beside_its_field_in_the_words_of_the_service() {
        visit("/");
        write("geometry.thicknessMm", "900");
        WebElement field = named("geometry.thicknessMm");
        assertThat(field.getDomAttribute("aria-invalid")).isEqualTo("true");
        String described = Objects.requireNonNull(field.getDomAttribute("aria-describedby"));
        WebElement fault = browser.id(described.split(" ", -1)[0]);
        assertThat(fault.getText()).contains("900").contains("250");
        assertThat(fault.getRect().getY())
                .isBetween(
                        field.getRect().getY(),
                        field.getRect().getY() + 2 * field.getRect().getHeight());
        assertThat(text("#refusal")).contains(fault.getText().substring(0, 20));
        assertThat(browser.id("plan").getText()).isEmpty();
        browser.driver()
                .findElement(By.cssSelector("#form button[type=submit]"))
                .click();
        browser.await(driver -> field.equals(driver.switchTo().activeElement()));
        write("geometry.thicknessMm", "45");
        assertThat(field.getDomAttribute("aria-invalid")).isNull();
        assertThat(text("#refusal")).isEmpty();
    }

    @Test
    void what_is_no_number_is_sent_as_it_is_and_refused_by_its_place() {
        visit("/");
        write("geometry.thicknessMm", "thick");
        assertThat(sent().path("geometry").path("thicknessMm").asString()).isEqualTo("thick");
        assertThat(browser.driver().findElements(By.cssSelector("[id='geometry.thicknessMm-fault']")))
                .hasSize(1);
    }

    @Test
    void a_fault_within_what_is_folded_is_unfolded() {
        visit("/#food.id=pork-loin&geometry.shape=slab&geometry.thicknessMm=45&start.temperatureC=4"
                + "&surroundings.bath.setpointC=60&surroundings.bath.volumeL=20");
        assertThat(text("#refusal")).isNotEmpty();
        assertThat(named("geometry.massG").getDomAttribute("aria-invalid")).isEqualTo("true");
        assertThat(named("surroundings.bath.heaterW").getDomAttribute("aria-invalid"))
                .isEqualTo("true");
        assertThat(named("surroundings.bath.heaterW").isDisplayed()).isTrue();
    }

    @Test
    void units_change_what_is_shown_and_never_what_is_asked() {
        visit("/");
        JsonNode metric = sent();
        browser.driver().findElement(By.cssSelector("label[for=units-us]")).click();
        browser.await(driver -> text(".said").contains("°F"));
        settled();
        assertThat(sent()).isEqualTo(metric);
        assertThat(named("surroundings.bath.setpointC").getDomProperty("value")).isEqualTo("140");
        assertThat(named("geometry.thicknessMm").getDomProperty("value")).startsWith("1.77");
        assertThat(text("#answer")).doesNotContain("°C");
        write("surroundings.bath.setpointC", "145");
        // (145 - 32) / 1.8
        assertThat(sent().path("surroundings").path("bath").path("setpointC").asDouble())
                .isEqualTo(62.7778);
        assertThat(browser.driver().getCurrentUrl()).contains("units=us");
    }

    @ParameterizedTest
    @CsvSource({"de, herausnehmen", "fr, Retirez-le", "es, Sáquelo"})
    void every_language_is_spoken_by_page_and_service(String language, String take) {
        visit("/?language=" + language);
        assertThat(browser.driver().findElement(By.tagName("html")).getDomAttribute("lang"))
                .isEqualTo(language);
        assertThat(text(".said .out")).contains(take);
        assertThat(text(".cautions")).doesNotContain("guarantee");
        assertThat(text("#request-text")).contains("Accept-Language: " + language);
        // The question stays when the language is changed.
        write("geometry.thicknessMm", "38,5");
        assertThat(sent().path("geometry").path("thicknessMm").asDouble()).isEqualTo(38.5);
        browser.driver()
                .findElement(By.cssSelector(".languages a[hreflang=en]"))
                .click();
        browser.await(
                driver -> "en".equals(driver.findElement(By.tagName("html")).getDomAttribute("lang")));
        settled();
        assertThat(named("geometry.thicknessMm").getDomProperty("value")).isEqualTo("38.5");
    }

    @Test
    void an_address_holds_the_whole_question() {
        visit("/");
        browser.driver().findElement(By.cssSelector("button[data-step=sear]")).click();
        settled();
        browser.driver().findElement(By.cssSelector("button[data-step=chill]")).click();
        settled();
        browser.driver().findElement(By.cssSelector("button[data-step=store]")).click();
        browser.await(driver -> text("#request-text").contains("store"));
        settled();
        new Select(named("eater")).selectByValue("vulnerable");
        browser.await(driver -> text("#request-text").contains("vulnerable"));
        settled();
        write("lowestSetpointC", "58");
        JsonNode request = sent();
        String shared = browser.driver().getCurrentUrl();
        browser.driver().get("about:blank");
        browser.driver().get(shared);
        settled();
        assertThat(sent()).isEqualTo(request);
        assertThat(request.path("then")).hasSize(3);
        assertThat(text("ol.then")).contains("sear").contains("chill").contains("store");
        assertThat(named("lowestSetpointC").getDomProperty("value")).isEqualTo("58");
    }

    @Test
    void members_without_a_field_come_with_the_address_and_are_told() {
        visit("/#food.id=pork-loin&geometry.shape=slab&geometry.thicknessMm=45&start.surfaceC=2&start.coreC=-1"
                + "&surroundings.bath.setpointC=60");
        assertThat(sent().path("start").path("coreC").asInt()).isEqualTo(-1);
        assertThat(text("#extras")).contains("start.coreC = -1");
        assertThat(text(".card.met .verdict")).isEqualTo("rule met");
    }

    @Test
    void text_from_the_address_never_becomes_markup() {
        visit("/#food.id=" + "%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E"
                + "&geometry.shape=%3Cb%3E&nothing=%3Cscript%3E");
        assertThat(browser.driver().findElements(By.cssSelector("#refusal img, #refusal b, #extras script, form img")))
                .isEmpty();
        assertThat(text("#refusal")).isNotEmpty();
        assertThat(text("#extras")).contains("<script>");
    }

    @Test
    void the_line_that_is_copied_gets_the_answer_that_is_shown() throws Exception {
        Tools.need("curl");
        visit("/?language=fr#food.id=chicken-thigh&geometry.shape=slab&geometry.thicknessMm=30&start.temperatureC=4"
                + "&surroundings.bath.setpointC=66&target.purpose=keep&units=us");
        browser.mayReadClipboard(address);
        browser.id("copy-curl").click();
        browser.await(driver -> browser.id("copied").getText().equals("Copié"));
        String line = (String) browser.run("return navigator.clipboard.readText()");
        Process shell = new ProcessBuilder("sh", "-c", line).start();
        String answer = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(shell.waitFor()).isZero();
        assertThat(answer)
                .isNotEmpty()
                .isEqualTo(browser.id("answer-text").getDomProperty("textContent"))
                .contains("°F");
    }

    @Test
    void the_curl_line_asks_the_same() throws Exception {
        visit("/?language=de");
        String line = (String) browser.run(
                "return import('/trial/service.js').then(m => m.curl('/v1/cook-plans', \"{\\\"a\\\":\\\"it's\\\"}\"))");
        Process shell = new ProcessBuilder(
                        "sh", "-c", "curl() { for a in \"$@\"; do printf '%s\\n' \"$a\"; done; }; " + line)
                .redirectErrorStream(true)
                .start();
        List<String> arguments = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .lines()
                .toList();
        assertThat(arguments)
                .containsExactly(
                        "-s",
                        address + "/v1/cook-plans",
                        "-H",
                        "Content-Type: application/json",
                        "-H",
                        "Accept-Language: de",
                        "-d",
                        "{\"a\":\"it's\"}");
    }

    @Test
    void where_keys_are_asked_for_the_page_takes_one_and_shows_it_nowhere(@TempDir Path folder) throws IOException {
        String key = dev.slowpoint.ops.access.Keys.key(31);
        Path file = Files.writeString(
                folder.resolve("keys.csv"),
                dev.slowpoint.ops.access.Keys.file(dev.slowpoint.ops.access.Keys.line("kitchen", key, "50,500,4,,")));
        try (StartedService closed =
                StartedService.start(List.of("--slowpoint.access.mode=keys", "--slowpoint.access.keys-file=" + file))) {
            browser.driver().get(closed.address() + "/");
            settled();
            assertThat(text("#refusal")).isNotEmpty();
            assertThat(browser.id("key").isDisplayed()).isTrue();
            browser.id("key").sendKeys(key, Keys.TAB);
            browser.await(
                    driver -> !driver.findElements(By.cssSelector(".said .out")).isEmpty());
            settled();
            assertThat(named("food.id").getDomProperty("value")).isEqualTo("Pork loin, lean");
            assertThat(browser.driver().getCurrentUrl()).doesNotContain(key);
            assertThat((String) browser.run("return document.documentElement.outerHTML"))
                    .doesNotContain(key);
            assertThat((String)
                            browser.run("return import('/trial/service.js').then(m => m.curl('/v1/cook-plans', '{}'))"))
                    .contains("Bearer $KEY")
                    .doesNotContain(key);
            // Of this service, not of the other that each test may ask.
            assertThat(browser.asked())
                    .allMatch(asked -> asked.startsWith(closed.address().toString()) || asked.equals("about:blank"));
        }
        visit("/");
    }

    @ParameterizedTest
    @ValueSource(strings = {"light", "dark"})
    void an_audit_of_accessibility_finds_nothing(String scheme) throws IOException {
        browser.dark("dark".equals(scheme));
        visit("/#food.id=chicken-breast&geometry.shape=slab&geometry.thicknessMm=40&start.temperatureC=4"
                + "&surroundings.bath.setpointC=60&then.0.step=chill&then.0.medium=iceWater&then.1.step=store"
                + "&then.1.temperatureC=3&then.1.days=20&tolerances.thicknessMm=2");
        browser.run("document.querySelectorAll('details').forEach(d => { d.open = true; })");
        assertThat(violations()).isEmpty();
        write("geometry.thicknessMm", "0");
        assertThat(violations()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/docs/guide", "/docs/guide/operating"})
    void pages_of_the_guide_pass_the_audit_too(String page) throws IOException {
        browser.driver().get(address + page);
        assertThat(violations()).isEmpty();
    }

    /** What axe-core finds, an engine that checks pages against the WCAG. */
    private static List<String> violations() throws IOException {
        try (InputStream axe = Objects.requireNonNull(TrialPageIT.class.getResourceAsStream("/axe.min.js"))) {
            browser.run(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
        }
        JsonNode results = JSON.readTree((String) browser.run("return axe.run(document).then(r => JSON.stringify("
                + "{passes: r.passes.length, violations: r.violations.flatMap(v => v.nodes.map(n => v.id + ': ' + n.html"
                + " + ' ' + n.failureSummary))}))"));
        assertThat(results.path("passes").asInt()).isGreaterThan(10);
        List<String> found = new ArrayList<>();
        results.path("violations").forEach(violation -> found.add(violation.asString()));
        return found;
    }

    @Test
    void the_first_key_leads_past_the_form_to_the_plan() {
        visit("/");
        String question = browser.driver().getCurrentUrl();
        browser.driver().switchTo().activeElement().sendKeys(Keys.TAB);
        browser.driver().switchTo().activeElement().sendKeys(Keys.ENTER);
        assertThat(browser.driver().switchTo().activeElement().getDomAttribute("id"))
                .isEqualTo("answer");
        assertThat(browser.driver().getCurrentUrl()).isEqualTo(question);
    }

    @Test
    void all_of_it_can_be_reached_by_keyboard() {
        visit("/");
        browser.run("document.querySelectorAll('details').forEach(d => { d.open = true; })");
        String all =
                "return [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex=\"0\"]')]"
                        + ".filter(e => e.offsetParent !== null && !(e.type === 'radio' && !e.checked)).length";
        long expected = (Long) browser.run(all);
        browser.run(
                "window.reached = new Set(); document.addEventListener('focusin', e => window.reached.add(e.target))");
        for (long i = 0; i < expected + 5; i++) {
            browser.driver().switchTo().activeElement().sendKeys(Keys.TAB);
        }
        assertThat((Long) browser.run("return window.reached.size")).isGreaterThanOrEqualTo(expected);
    }

    /** Cumulative layout shift as the web vitals define it: 0.1 and less is good (web.dev, "Cumulative Layout Shift"). */
    @ParameterizedTest
    @CsvSource({"390, 844", "1280, 900"})
    void nothing_moves_while_the_page_comes(int width, int height) {
        browser.size(width, height);
        visit("/");
        Object shift = browser.run("return new Promise(done => { let sum = 0; new PerformanceObserver(list => {"
                + " for (const e of list.getEntries()) { if (!e.hadRecentInput) sum += e.value; } })"
                + ".observe({type: 'layout-shift', buffered: true}); setTimeout(() => done(sum), 300); })");
        assertThat(((Number) shift).doubleValue()).isLessThan(0.05);
    }

    /** No page is wider than its window, and pictures are left to be looked at. */
    @ParameterizedTest
    @CsvSource({"390, light, en", "390, dark, de", "1280, light, en", "1280, dark, fr"})
    void pictures(int width, String scheme, String language) throws IOException {
        browser.size(width, 900);
        browser.dark("dark".equals(scheme));
        visit("/?language=" + language);
        assertThat((Long) browser.run("return document.documentElement.scrollWidth"))
                .isLessThanOrEqualTo(width);
        long height = (Long) browser.run("return document.documentElement.scrollHeight");
        browser.size(width, (int) height);
        Files.createDirectories(PICTURES);
        Files.write(PICTURES.resolve("page-" + width + "-" + scheme + "-" + language + ".png"), browser.picture());
    }
}
