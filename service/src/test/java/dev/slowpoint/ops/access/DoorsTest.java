package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import dev.slowpoint.api.RawHttp;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Ways in that no client of ours takes. Each is answered as a problem, or by closing the connection, and never by more. */
class DoorsTest extends HttpTest {

    private static final String HOST = "Host: localhost\r\nConnection: close\r\n";
    private static final String BODY = "Content-Type: application/json\r\n";

    private RawHttp raw(String text) {
        return RawHttp.exchange(port, text);
    }

    private static void problem(RawHttp answer, int... statuses) {
        assertThat(statuses).as(answer.toString()).contains(answer.status());
        assertThat(answer.head()).contains("Content-Type: " + PROBLEM);
        givesNothingAway(answer);
    }

    private static void givesNothingAway(RawHttp answer) {
        assertThat(answer.head().toLowerCase(Locale.ROOT))
                .doesNotContain("\nserver:")
                .doesNotContain("powered");
        assertThat(answer.toString())
                .doesNotContain("Tomcat")
                .doesNotContain("Exception")
                .doesNotContain("org.apache")
                .doesNotContain("at dev.slowpoint");
    }

    @Test
    void a_body_that_is_packed_is_not_unpacked() throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            byte[] blanks = " ".repeat(1 << 20).getBytes(java.nio.charset.StandardCharsets.US_ASCII);
            for (int i = 0; i < 32; i++) {
                gzip.write(blanks);
            }
        }
        assertThat(packed.size()).as("32 MiB when unpacked").isLessThan(64 * 1024);
        for (String path : List.of(PLANS, LOGS, SHEETS, TABLES)) {
            Response answer = http().header("Content-Encoding", "gzip")
                    .contentType(JSON)
                    .body(packed.toByteArray())
                    .post(path);
            assertThat(answer.statusCode()).as(path).isEqualTo(415);
        }
        problem(
                raw("POST /v1/cook-plans HTTP/1.1\r\n" + HOST + BODY
                        + "Transfer-Encoding: gzip, chunked\r\n\r\n0\r\n\r\n"),
                501,
                400);
    }

    @Test
    void a_chunked_body_that_never_ends_is_cut_off() {
        String chunk = "1000\r\n" + " ".repeat(0x1000) + "\r\n";
        problem(
                raw("POST /v1/cook-plans HTTP/1.1\r\n" + HOST + BODY + "Transfer-Encoding: chunked\r\n\r\n"
                        + chunk.repeat(17) + "0\r\n\r\n"),
                413);
    }

    /** Two readers of one message must not take its end to lie in two places (RFC 9112, section 6.3). */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Content-Length: 4~Content-Length: 5",
                "Content-Length: 4, 5",
                "Content-Length: +4",
                "Content-Length: 0x4",
                "Content-Length: 4 ~ Content-Length: 4",
                "Content-Length : 4",
                "Content-Length: -1",
                "Content-Length: 99999999999999999999",
                "Transfer-Encoding: chunked, chunked",
                "Transfer-Encoding: xchunked",
                "Transfer-Encoding : chunked",
                "Transfer-Encoding: chunked~Transfer-Encoding: identity",
            })
    void a_body_with_an_unclear_end_is_refused_and_the_connection_closed(String headers) {
        RawHttp answer = raw("POST /v1/cook-plans HTTP/1.1\r\nHost: localhost\r\n" + BODY
                + headers.replace("~", "\r\n") + "\r\n\r\n{}\r\n0\r\n\r\nGET /v1/foods HTTP/1.1\r\nHost: localhost\r\n"
                + "Connection: close\r\n\r\n");
        problem(answer, 400, 501, 413);
        assertThat(answer.body()).as("the second request is not answered").doesNotContain("HTTP/1.1");
    }

    /** Both lengths: the chunks count, and what follows is not taken for a request (RFC 9112, section 6.1). */
    @Test
    void with_both_lengths_nothing_after_the_message_is_answered() {
        RawHttp answer = raw("POST /v1/cook-plans HTTP/1.1\r\nHost: localhost\r\n" + BODY
                + "Content-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n"
                + "GET /v1/foods HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.body()).doesNotContain("pork-loin");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/../../etc/passwd",
                "/v1/..%2f..%2fetc/passwd",
                "/v1/%2e%2e/%2e%2e/etc/passwd",
                "/v1/foods/..\\..\\x",
                "/v1/foods%5c",
                "/v1/foods%00",
                "/v1/foods/%c0%ae%c0%ae",
                "/v1;/../foods/x",
                "//v1/foods",
                "/v1//foods",
                "/v1/foods/",
                "/docs/../v1/foods",
                "/v1/foods/..;/rules/x",
                "/v1/foods/%252e%252e"
            })
    void a_crooked_path_leads_nowhere(String path) {
        RawHttp answer = raw("GET " + path + " HTTP/1.1\r\n" + HOST + "\r\n");
        problem(answer, 400, 404);
    }

    /** They belong to the path of what was asked, and change nothing of who is asked. */
    @Test
    void parameters_of_a_path_are_passed_over() {
        assertThat(raw("GET /v1/foods/pork-loin;jsessionid=1 HTTP/1.1\r\n" + HOST + "\r\n")
                        .body())
                .isEqualTo(raw("GET /v1/foods/pork-loin HTTP/1.1\r\n" + HOST + "\r\n")
                        .body());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Host: localhost, evil.example|400,200",
                "Host: evil.example/x|400,400",
                "Host: a b|400,400",
                "Host: evil.example@localhost|400,400",
                "Host: evil.example:99999999|200,200",
                "Host: <script>|400,400",
                "Host: evil.example|200,200",
            })
    void a_crooked_host_is_refused_and_no_host_is_ever_repeated(String host, String statuses) {
        RawHttp answer = raw("GET /docs HTTP/1.1\r\n" + host + "\r\nConnection: close\r\n\r\n");
        assertThat(answer.status()).as(answer.toString()).isIn(statuses.startsWith("400") ? 400 : 302);
        assertThat(answer.toString()).doesNotContain("evil").doesNotContain("<script");
    }

    @Test
    void forwarded_headers_change_nothing() {
        RawHttp answer = raw("GET /docs HTTP/1.1\r\n" + HOST
                + "X-Forwarded-Host: evil.example\r\nX-Forwarded-Proto: https\r\nX-Forwarded-Prefix: /evil\r\n"
                + "Forwarded: host=evil.example;proto=https\r\n\r\n");
        assertThat(answer.head())
                .contains("Location: /swagger-ui/index.html")
                .doesNotContain("evil")
                .doesNotContain("Strict-Transport-Security");
    }

    @Test
    void an_absolute_address_is_taken_by_its_path_and_an_old_version_of_http_is_answered() {
        assertThat(raw("GET http://other.example/livez HTTP/1.1\r\nHost: other.example\r\nConnection: close\r\n\r\n")
                        .status())
                .isEqualTo(200);
        problem(raw("GET http://other.example/livez HTTP/1.1\r\n" + HOST + "\r\n"), 400);
        assertThat(raw("GET /livez HTTP/1.0\r\n\r\n").status()).isEqualTo(200);
        RawHttp oldest = raw("GET /livez\r\n\r\n");
        givesNothingAway(oldest);
    }

    @Test
    void http_2_is_not_spoken() {
        RawHttp answer = raw("GET /livez HTTP/1.1\r\nHost: localhost\r\nConnection: Upgrade, HTTP2-Settings, close\r\n"
                + "Upgrade: h2c\r\nHTTP2-Settings: AAMAAABkAAQAAP__\r\n\r\n");
        assertThat(answer.status()).isEqualTo(200);
        // Closed without a word, as whoever speaks like this understands no other.
        assertThat(raw("PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n").head()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"TRACE", "TRACK", "CONNECT", "PROPFIND", "get", "G%45T", "DEBUG", "X"})
    void other_methods_are_refused(String method) {
        problem(raw(method + " /v1/foods HTTP/1.1\r\n" + HOST + "\r\n"), 400, 405, 501);
    }

    @Test
    void a_method_that_a_header_or_a_query_names_is_not_taken() {
        assertThat(http().header("X-HTTP-Method-Override", "DELETE")
                        .get("/v1/foods")
                        .statusCode())
                .isEqualTo(200);
        assertThat(http().contentType("application/x-www-form-urlencoded")
                        .body("_method=GET")
                        .post("/v1/foods")
                        .statusCode())
                .isEqualTo(405);
    }

    @Test
    void headers_too_long_and_too_many_are_refused() {
        problem(raw("GET /v1/foods HTTP/1.1\r\n" + HOST + "X: " + "a".repeat(9_000) + "\r\n\r\n"), 400, 431);
        String many = IntStream.range(0, 101).mapToObj(i -> "X" + i + ": 1\r\n").collect(Collectors.joining());
        problem(raw("GET /v1/foods HTTP/1.1\r\n" + HOST + many + "\r\n"), 400, 431);
        problem(raw("GET /" + "a".repeat(9_000) + " HTTP/1.1\r\n" + HOST + "\r\n"), 400, 414);
    }

    @ParameterizedTest
    @ValueSource(strings = {"X: a\r\n folded: b", "X\u0000: a", "X: a\u0000b", ": a", "X Y: a", "X: a\rY: b"})
    void crooked_headers_break_nothing(String header) {
        RawHttp answer = raw("GET /v1/foods HTTP/1.1\r\n" + HOST + header + "\r\n\r\n");
        assertThat(answer.status()).as(answer.toString()).isIn(200, 400);
        givesNothingAway(answer);
    }

    @Test
    void too_many_parameters_are_refused_without_being_looked_at_one_by_one() {
        String many = IntStream.range(0, 201).mapToObj(i -> "a" + i + "=1").collect(Collectors.joining("&"));
        problem(raw("GET /v1/foods?" + many + " HTTP/1.1\r\n" + HOST + "\r\n"), 400);
    }

    /** A form is no request of ours; its body is neither read for parameters nor for anything else. */
    @Test
    void a_form_is_not_read() {
        String form = "units=us&units=xyzzy&" + "a=1&".repeat(300);
        Response answer = http().contentType("application/x-www-form-urlencoded")
                .body(form)
                .post(PLANS);
        assertThat(answer.statusCode()).isEqualTo(415);
        assertThat(answer.asString()).doesNotContain("xyzzy");
    }

    @Test
    void depth_and_counts_are_bounded() {
        String deep = porkWith("\"pork-loin\"", "[".repeat(30) + "]".repeat(30));
        assertThat(READER.readTree(
                                http().contentType(JSON).body(deep).post(PLANS).asByteArray())
                        .at("/code")
                        .asString())
                .isEqualTo("NESTING_TOO_DEEP");
        Response long_ = http().contentType(JSON)
                .body(porkWith("60}", "1" + "0".repeat(5_000) + "}"))
                .post(PLANS);
        assertThat(long_.statusCode()).isEqualTo(400);
    }

    /** None of the framework's, whether it is exposed elsewhere or not. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "/auditevents",
                "/beans",
                "/caches",
                "/conditions",
                "/configprops",
                "/env",
                "/flyway",
                "/health",
                "/health/liveness",
                "/heapdump",
                "/httpexchanges",
                "/info",
                "/integrationgraph",
                "/jolokia",
                "/liquibase",
                "/logfile",
                "/loggers",
                "/mappings",
                "/metrics",
                "/prometheus",
                "/quartz",
                "/refresh",
                "/restart",
                "/sbom",
                "/scheduledtasks",
                "/sessions",
                "/shutdown",
                "/startup",
                "/threaddump"
            })
    void no_endpoint_of_the_management_is_on_the_public_port(String endpoint) {
        for (String method : List.of("GET", "POST")) {
            assertThat(http().request(method, "/actuator" + endpoint).statusCode())
                    .as(method)
                    .isEqualTo(404);
        }
        if (!List.of("", "/health", "/health/liveness", "/info", "/prometheus").contains(endpoint)) {
            assertThat(RestAssured.given()
                            .port(managementPort)
                            .get("/actuator" + endpoint)
                            .statusCode())
                    .isEqualTo(404);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/h2-console",
                "/console",
                "/swagger-ui.html",
                "/swagger-config",
                "/webjars/swagger-ui/index.html",
                "/.env",
                "/.git/config",
                "/WEB-INF/web.xml",
                "/META-INF/MANIFEST.MF",
                "/application.yaml",
                "/dev/slowpoint/SlowpointApplication.class",
                "/login",
                "/logout",
                "/favicon.ico"
            })
    void nothing_of_the_inside_is_served(String path) {
        Response answer = http().get(path);
        assertThat(answer.asString()).doesNotContain("slowpoint:").doesNotContain("Manifest-Version");
        if (!path.contains("swagger")) {
            assertThat(answer.statusCode()).isEqualTo(404);
        }
    }

    /** What a browser is told of every page of the documentation. */
    @Test
    void pages_load_nothing_from_elsewhere_and_stand_in_no_frame() {
        for (String path : List.of("/docs", "/swagger-ui/index.html", "/swagger-ui/swagger-ui.css")) {
            Response page = http().redirects().follow(false).get(path);
            assertThat(page.header("Content-Security-Policy"))
                    .as(path)
                    .contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'", "base-uri 'none'")
                    .doesNotContain("unsafe")
                    .doesNotContain("*")
                    .doesNotContain("http");
            assertThat(page.header("Referrer-Policy")).isEqualTo("no-referrer");
            assertThat(page.header("X-Content-Type-Options")).isEqualTo("nosniff");
            assertThat(page.header("Strict-Transport-Security")).isNull();
        }
    }

    @Test
    void the_page_of_the_contract_takes_no_address_of_a_contract_from_its_own_address() {
        String script = http().get("/swagger-ui/swagger-initializer.js").asString();
        assertThat(script).contains("/openapi.yaml").doesNotContain("\"queryConfigEnabled\" : true");
    }

    /** Each text that a caller sends and that comes back, in each representation that a browser shows. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "\\\"><img src=x onerror=alert(1)>",
                "</title></svg><script>1</script>",
                "&lt;script&gt;",
                "javascript:alert(1)",
                "{{7*7}}${7*7}#{7*7}"
            })
    void what_callers_write_is_never_markup(String text) {
        String load = "{\"items\":[{\"id\":\"" + text
                + "\",\"food\":{\"id\":\"pork-loin\"},\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":20,\"massG\":300},"
                + "\"start\":{\"temperatureC\":4}}],\"surroundings\":{\"bath\":{\"volumeL\":20,\"heaterW\":1200}}}";
        for (String accept : List.of("image/svg+xml", JSON)) {
            Response answer = http().contentType(JSON).accept(accept).body(load).post(LOADS);
            assertThat(answer.contentType()).isIn("image/svg+xml", JSON, PROBLEM);
            assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
            if (answer.contentType().startsWith("image")) {
                assertThat(answer.asString())
                        .doesNotContain("<script")
                        .doesNotContain("<img")
                        .doesNotContain("49");
            }
        }
        String log = "{\"food\":{\"id\":\"pork-loin\"},\"place\":\"bath\",\"label\":\"" + text + "\",\"batch\":\""
                + text + "\",\"readings\":{\"timesS\":[0,60],\"temperaturesC\":[60,60]}}";
        Response page = http().contentType(JSON).accept("text/html").body(log).post(LOGS);
        assertThat(page.asString()).doesNotContain("<script").doesNotContain("<img src=x");
    }
}
