package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.TestPropertySource;
import tools.jackson.databind.JsonNode;

/** A request that takes too long is answered with a problem, and nothing goes on working for it. */
@TestPropertySource(
        properties = {"slowpoint.limits.longest-request=0ms", "slowpoint.limits.longest-large-request=150ms"})
@DirtiesContext
class DeadlineHttpTest extends HttpTest {

    /** Takes seconds where it may. */
    private static final String TABLE = """
            {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab"},"thickness":{"fromMm":10,"toMm":60},
             "setpoint":{"fromC":58,"toC":70},"start":{"fromC":1,"toC":10},"withinPercent":0.2,"longestBytes":60000}""";

    private static final String COOK = """
            {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},"start":{"temperatureC":4},
             "surroundings":{"bath":{"setpointC":60}}}""";

    private static String sheet(int portions) {
        return IntStream.range(0, portions)
                .mapToObj(i -> """
                        {"id":"P%d","food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":%s},"start":{"temperatureC":%s}}""".formatted(i, 20 + 0.1 * (i % 900), -20 + 0.1 * (i % 7)))
                .collect(Collectors.joining(",", "{\"portions\":[", "]}"));
    }

    private void outOfTime(Response response) {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(503);
        assertThat(response.contentType()).isEqualTo("application/problem+json");
        assertThat(response.header("Retry-After")).isEqualTo("5");
        assertThat(response.header("Cache-Control")).contains("no-store");
        JsonNode problem = READER.readTree(response.asByteArray());
        assertThat(problem.at("/code").asString()).isEqualTo("OUT_OF_TIME");
        assertThat(problem.at("/type").asString()).isEqualTo("/problems/out-of-time");
    }

    /** Time that all threads with a name have had of the processor [ns]. */
    private static long worked(String name) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        return Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                .filter(thread -> thread != null && thread.getThreadName().startsWith(name))
                .mapToLong(thread -> threads.getThreadCpuTime(thread.getThreadId()))
                .sum();
    }

    private static void nothingGoesOn(String threads) throws InterruptedException {
        long before = worked(threads);
        Thread.sleep(300);
        // A solver that went on would have used most of that time.
        assertThat(worked(threads) - before).isLessThan(100_000_000L);
    }

    @Test
    void a_plan_out_of_time_is_a_problem_that_may_be_asked_again() {
        outOfTime(http().contentType(JSON).body(COOK).post(PLANS));
    }

    @Test
    void no_way_of_writing_its_path_gives_a_request_more_time() {
        outOfTime(http().urlEncodingEnabled(false).contentType(JSON).body(COOK).post("/%761/cook-plans"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es", "fr"})
    void it_is_said_in_every_language(String language) {
        Response response = http().contentType(JSON)
                .header("Accept-Language", language)
                .body(COOK)
                .post(PLANS);
        outOfTime(response);
        assertThat(response.header("Content-Language")).isEqualTo(language);
    }

    @Test
    void a_table_out_of_time_is_a_problem_and_the_solver_stops() throws InterruptedException {
        outOfTime(http().contentType(JSON).body(TABLE).post(TABLES));
        nothingGoesOn("http-nio");
    }

    @Test
    void a_sheet_out_of_time_is_a_problem_and_its_workers_stop() throws InterruptedException {
        outOfTime(http().contentType(JSON).body(sheet(9000)).post(SHEETS));
        nothingGoesOn("sheet-");
    }

    @Test
    void a_stream_goes_on_and_refuses_the_portions_that_took_too_long() {
        String lines = """
                {}
                {"id":"A","food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},"start":{"temperatureC":4}}
                {"id":"B","food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":55},"start":{"temperatureC":4}}
                """;
        Response response = http().contentType("application/x-ndjson")
                .body(lines.getBytes(StandardCharsets.UTF_8))
                .post(SHEETS);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(response.asString()).contains("\"A\"", "\"B\"", "OUT_OF_TIME", "\"refused\":2");
    }
}
