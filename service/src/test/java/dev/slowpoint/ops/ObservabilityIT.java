package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import dev.slowpoint.started.Command;
import dev.slowpoint.started.StartedService;
import dev.slowpoint.started.Tools;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The packaged service under a bounded, mixed load, watched by a real Prometheus and a receiver of traces: everything that
 * operators are given finds what it looks for.
 */
class ObservabilityIT {

    /** What no line, span or label may hold. */
    private static final String MARKER = "zzmarkerzz";

    private static final String TRACE = "4bf92f3577b34da6a3ce929d0e0e4736";
    private static final String SAMPLED = "00-" + TRACE + "-00f067aa0ba902b7-01";
    private static final JsonMapper READER = new JsonMapper();
    private static final Pattern YAML = Pattern.compile("```yaml\\n(.*?)```", Pattern.DOTALL);
    private static final Pattern OWN_METRIC = Pattern.compile("\\bslowpoint_\\w+");
    private static final HttpClient CLIENT = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(5))
            .build();

    /** Not there in the open mode of this test; that it is in the mode with keys is tested with that mode. */
    private static final String ONLY_WITH_KEYS = "slowpoint_access_reload_failed_total{application=\"slowpoint\"}";

    private static final List<byte[]> SENT_SPANS = new CopyOnWriteArrayList<>();

    @TempDir
    private static Path folder;

    private static HttpServer receiver;
    private static StartedService service;
    private static Process prometheus;
    private static URI asked;

    @BeforeAll
    static void watch() throws Exception {
        String program = Tools.need("prometheus").toString();
        receiver = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        receiver.createContext("/v1/traces", exchange -> {
            SENT_SPANS.add(exchange.getRequestBody().readAllBytes());
            exchange.sendResponseHeaders(200, -1);
            exchange.close();
        });
        receiver.start();
        service = StartedService.start(
                List.of(
                        "--slowpoint.limits.threads-per-core=1",
                        "--slowpoint.limits.most-waiting=1",
                        "--slowpoint.limits.longest-backlog=0ms",
                        "--slowpoint.logs.slow-request=1ms",
                        "--slowpoint.logs.most-lines-per-second=1000",
                        "--management.tracing.sampling.probability=1.0",
                        "--management.opentelemetry.tracing.export.schedule-delay=200ms",
                        "--management.opentelemetry.tracing.export.otlp.endpoint=http://127.0.0.1:"
                                + receiver.getAddress().getPort() + "/v1/traces"),
                Map.of("LOGGING_STRUCTURED_FORMAT_CONSOLE", "ecs"));
        int port = StartedService.freePort();
        asked = URI.create("http://127.0.0.1:" + port);
        prometheus = startPrometheus(program, port);
        Awaitility.await()
                .atMost(30, TimeUnit.SECONDS)
                .pollInterval(200, TimeUnit.MILLISECONDS)
                .until(() -> answers(asked.resolve("/-/ready")) && !series("up").isEmpty());
        load();
    }

    /** With the configuration that the guide shows, but for the address and the pace. */
    private static Process startPrometheus(String program, int port) throws IOException {
        Matcher shown = YAML.matcher(Watching.page("watching.md"));
        assertThat(shown.find()).isTrue();
        String configuration = shown.group(1)
                .replace("127.0.0.1:9090", service.managementAddress().getAuthority())
                .replace("15s", "1s");
        assertThat(configuration)
                .contains(service.managementAddress().getAuthority())
                .contains("interval: 1s");
        Files.writeString(folder.resolve("prometheus.yaml"), configuration);
        Files.copy(Watching.RULES, folder.resolve("rules.yaml"));
        Process started = new ProcessBuilder(
                        program,
                        "--config.file=" + folder.resolve("prometheus.yaml"),
                        "--storage.tsdb.path=" + folder.resolve("data"),
                        "--web.listen-address=127.0.0.1:" + port,
                        "--enable-feature=exemplar-storage",
                        "--log.level=warn")
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("prometheus.log").toFile())
                .start();
        Runtime.getRuntime().addShutdownHook(new Thread(started::destroyForcibly));
        return started;
    }

    @AfterAll
    static void stop() throws InterruptedException {
        if (prometheus != null) {
            prometheus.destroy();
            if (!prometheus.waitFor(10, TimeUnit.SECONDS)) {
                prometheus.destroyForcibly().waitFor();
            }
        }
        if (service != null) {
            service.close();
        }
        if (receiver != null) {
            receiver.stop(0);
        }
    }

    /** Every operation and every kind of mistake, and more at once than there is room for. */
    private static void load() throws Exception {
        Path examples = Path.of("../api-spec/examples");
        Map<String, String> requests = Map.of(
                "cook-plans", "cook-plan-hut-dinner",
                "chill-plans", "chill-plan-weekly-box",
                "replans", "replan-short-cut",
                "load-plans", "load-plan-sunday-lunch",
                "process-windows", "process-window-feast-roast",
                "lookup-tables", "lookup-table-thin-chicken",
                "portion-sheets", "portion-sheet-weekly-box",
                "log-reviews", "log-review-loose-plug");
        for (Map.Entry<String, String> request : requests.entrySet()) {
            byte[] body = Files.readAllBytes(examples.resolve(request.getValue() + ".request.json"));
            assertThat(post("/v1/" + request.getKey(), body))
                    .as(request.getKey())
                    .isEqualTo(200);
        }
        byte[] trout = Files.readAllBytes(examples.resolve("cook-plan-trout.request.json"));
        assertThat(post("/v1/cook-plans?include=uncertainty", trout)).isEqualTo(200);
        String text = new String(trout, StandardCharsets.UTF_8);
        assertThat(post("/v1/cook-plans", text.replaceFirst("\"id\": ?\"[^\"]*\"", "\"id\":\"" + MARKER + "\"")))
                .isEqualTo(422);
        assertThat(post("/v1/cook-plans", text.replaceFirst("\"thicknessMm\": ?[0-9.]+", "\"thicknessMm\":99999")))
                .isEqualTo(400);
        assertThat(post("/v1/cook-plans", "{\"" + MARKER)).isEqualTo(400);
        assertThat(post("/v1/cook-plans?include=" + MARKER, trout)).isEqualTo(400);
        assertThat(post("/v1/" + MARKER, "{}")).isEqualTo(404);
        assertThat(post("/v1/foods/" + MARKER + "%0a%7b%22x%22%3a1%7d", "{}")).isBetween(400, 499);
        raw("GET /v1/foods/" + MARKER + "\n{\"" + MARKER + "\":1} HTTP/1.1\r\nHost: x\r\n\r\n");
        raw("GET /v1/foods/<" + MARKER + "> HTTP/1.1\r\nHost: x\r\n\r\n");
        raw(MARKER.toUpperCase(Locale.ROOT) + " /v1/foods HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n");
        crowd(Files.readAllBytes(examples.resolve("load-plan-sunday-lunch.request.json")));
    }

    /** Comes all at once until one is sent away, but not for ever. */
    private static void crowd(byte[] body) {
        for (int round = 0; round < 10; round++) {
            List<CompletableFuture<HttpResponse<Void>>> answers = new ArrayList<>();
            for (int i = 0; i < 16; i++) {
                answers.add(CLIENT.sendAsync(request("/v1/load-plans", body), HttpResponse.BodyHandlers.discarding()));
            }
            Set<Integer> statuses =
                    answers.stream().map(answer -> answer.join().statusCode()).collect(Collectors.toSet());
            assertThat(statuses).isSubsetOf(200, 503);
            if (statuses.contains(503)) {
                return;
            }
        }
        throw new AssertionError("nobody was sent away");
    }

    @Test
    void the_target_is_up_and_exemplars_do_not_break_the_scrape() throws Exception {
        assertThat(READER.readTree(get(asked.resolve("/api/v1/targets")))
                        .path("data")
                        .path("activeTargets")
                        .path(0)
                        .path("lastError")
                        .asString())
                .isEmpty();
        assertThat(series("up == 1")).hasSize(1);
        Awaitility.await()
                .atMost(20, TimeUnit.SECONDS)
                .until(() -> READER.readTree(get(asked.resolve(
                                        "/api/v1/query_exemplars?query=http_server_requests_seconds_bucket&start="
                                                + (Instant.now().getEpochSecond() - 300) + "&end="
                                                + (Instant.now().getEpochSecond() + 10))))
                                .path("data")
                                .size()
                        > 0);
    }

    @Test
    void the_configuration_of_the_guide_is_in_order() {
        Command check = Command.run(
                folder, Map.of(), List.of(Tools.need("promtool").toString(), "check", "config", "prometheus.yaml"));
        assertThat(check.exitCode()).as(check.output()).isZero();
    }

    @Test
    void every_query_of_the_dashboards_finds_something() {
        assertThat(emptyOf(Watching.queries())).isEmpty();
    }

    /** With it every bucket that a rule asks for: one that is not there would find nothing and say nothing. */
    @Test
    void everything_that_rules_look_at_is_there() {
        Set<String> selectors = Watching.selectors();
        assertThat(selectors).anyMatch(selector -> selector.contains("le=\"0.1\""));
        assertThat(emptyOf(selectors)).containsExactly(ONLY_WITH_KEYS);
        assertThat(emptyOf(new LinkedHashSet<>(Watching.recorded()))).isEmpty();
    }

    /** Both queries of each section, but for what is empty as long as all is well. */
    @Test
    void every_query_of_the_runbook_finds_something() {
        Set<String> queries = Pattern.compile("(?m)^\\d\\. `(.*)`$")
                .matcher(Watching.page("runbook.md"))
                .results()
                .map(match -> match.group(1))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        assertThat(queries).hasSizeGreaterThan(20);
        assertThat(emptyOf(queries))
                .containsExactlyInAnyOrder(
                        // The instance answers.
                        "up == 0",
                        // The mode is another.
                        "sum by (instance) (increase(" + ONLY_WITH_KEYS + "[15m]))",
                        "slowpoint_access_keys{application=\"slowpoint\"}",
                        // No request met a fault.
                        "sum by (uri, exception) (increase(http_server_requests_seconds_count{application=\"slowpoint\",status=\"500\"}[1h]))");
    }

    @Test
    void the_page_names_all_metrics_of_ours_and_no_other() throws Exception {
        Set<String> scraped = get(service.managementAddress().resolve("/actuator/prometheus"))
                .lines()
                .filter(line -> line.startsWith("slowpoint_"))
                .map(line -> line.substring(0, line.indexOf('{')))
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> told = OWN_METRIC
                .matcher(Watching.page("watching.md"))
                .results()
                .map(match -> match.group())
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(told).isEqualTo(scraped);
    }

    @Test
    void there_are_no_more_series_than_the_page_says() throws Exception {
        long series = get(service.managementAddress().resolve("/actuator/prometheus"))
                .lines()
                .filter(line -> !line.startsWith("#"))
                .count();
        System.out.println("series of one instance after every operation and many mistakes: " + series);
        assertThat(series).isLessThan(900);
    }

    @Test
    void spans_are_sent_and_hold_nothing_of_what_was_asked() {
        byte[] trace = HexFormat.of().parseHex(TRACE);
        Awaitility.await()
                .atMost(20, TimeUnit.SECONDS)
                .until(() -> SENT_SPANS.stream()
                        .anyMatch(sent -> text(sent).contains(text(trace))
                                && text(sent).contains("http post /v1/cook-plans")
                                && text(sent).contains("margins")));
        assertThat(SENT_SPANS.stream()
                        .map(ObservabilityIT::text)
                        .filter(sent -> sent.contains(MARKER) || sent.contains("trout")))
                .isEmpty();
    }

    @Test
    void every_line_of_the_log_is_an_object_and_none_holds_what_was_asked() throws IOException {
        List<String> lines = Files.readAllLines(service.log());
        assertThat(lines).hasSizeGreaterThan(5);
        List<JsonNode> ofTrace = new ArrayList<>();
        for (String line : lines) {
            JsonNode object = READER.readTree(line);
            assertThat(object.path("message").isString()).as(line).isTrue();
            assertThat(line).doesNotContainIgnoringCase(MARKER);
            if (object.path("trace.id").asString("").equals(TRACE)) {
                ofTrace.add(object);
            }
        }
        assertThat(ofTrace).isNotEmpty().allSatisfy(line -> {
            assertThat(line.path("span.id").asString("")).hasSize(16);
            assertThat(line.path("http").path("route").asString("")).startsWith("/v1/");
            assertThat(line.path("http").path("request").path("method").asString(""))
                    .isNotEmpty();
            assertThat(line.path("event").path("duration").asLong(0)).isPositive();
        });
        assertThat(ofTrace).anySatisfy(line -> {
            assertThat(line.path("http").path("response").path("status_code").asInt(0))
                    .isEqualTo(503);
            assertThat(line.path("slowpoint").path("problem").asString("")).isEqualTo("OVERLOADED");
        });
    }

    /** Those that find nothing, though asked until they could have. */
    private static Set<String> emptyOf(Set<String> queries) {
        Set<String> empty = new LinkedHashSet<>(queries);
        assertThat(empty).isNotEmpty();
        long begin = System.nanoTime();
        do {
            empty.removeIf(query -> !series(query).isEmpty());
        } while (!empty.isEmpty()
                && System.nanoTime() - begin < Duration.ofSeconds(8).toNanos());
        return empty;
    }

    private static JsonNode series(String query) {
        JsonNode answer = READER.readTree(
                get(asked.resolve("/api/v1/query?query=" + URLEncoder.encode(query, StandardCharsets.UTF_8))));
        assertThat(answer.path("status").asString("")).as(query + ": " + answer).isEqualTo("success");
        return answer.path("data").path("result");
    }

    private static int post(String path, String body) throws IOException, InterruptedException {
        return post(path, body.getBytes(StandardCharsets.UTF_8));
    }

    private static int post(String path, byte[] body) throws IOException, InterruptedException {
        return CLIENT.send(request(path, body), HttpResponse.BodyHandlers.discarding())
                .statusCode();
    }

    private static HttpRequest request(String path, byte[] body) {
        return HttpRequest.newBuilder(URI.create(service.address() + path))
                .timeout(Duration.ofSeconds(60))
                .header("Content-Type", "application/json")
                .header("traceparent", SAMPLED)
                .header("User-Agent", MARKER)
                .header("Authorization", "Bearer " + MARKER)
                .header("Accept-Language", "en;" + MARKER)
                .header("baggage", "traceId=" + MARKER)
                .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                .build();
    }

    private static void raw(String request) throws IOException {
        try (Socket socket =
                new Socket(service.address().getHost(), service.address().getPort())) {
            socket.setSoTimeout(5000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            assertThat(socket.getInputStream().read()).isPositive();
        }
    }

    private static boolean answers(URI address) {
        try {
            return CLIENT.send(HttpRequest.newBuilder(address).build(), HttpResponse.BodyHandlers.discarding())
                            .statusCode()
                    == 200;
        } catch (IOException notYet) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static String get(URI address) {
        try {
            return CLIENT.send(HttpRequest.newBuilder(address).build(), HttpResponse.BodyHandlers.ofString())
                    .body();
        } catch (IOException e) {
            throw new IllegalStateException(address.toString(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Bytes as they are, so that they can be searched. */
    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }
}
