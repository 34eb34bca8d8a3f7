package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import io.opentelemetry.api.common.AttributeKey;
import io.opentelemetry.api.trace.SpanKind;
import io.opentelemetry.sdk.common.CompletableResultCode;
import io.opentelemetry.sdk.trace.data.SpanData;
import io.opentelemetry.sdk.trace.export.SpanExporter;
import java.util.Collection;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.TestPropertySource;

/** What a traced request leaves behind, and that it tells nothing of what was asked. */
@Import(TracesTest.Receiver.class)
@TestPropertySource(
        properties = {
            "management.opentelemetry.tracing.export.schedule-delay=20ms",
            "management.tracing.sampling.probability=0"
        })
class TracesTest extends HttpTest {

    private static final String CALLER = "00f067aa0ba902b7";
    private static final List<String> TOLD = List.of(
            "error",
            "exception",
            "method",
            "outcome",
            "status",
            "uri",
            "slowpoint.problem",
            PhaseSpans.TIMES,
            PhaseSpans.BUSY);

    private static final List<SpanData> SPANS = new CopyOnWriteArrayList<>();

    @TestConfiguration(proxyBeanMethods = false)
    static class Receiver {

        @Bean
        SpanExporter spans() {
            return new SpanExporter() {
                @Override
                public CompletableResultCode export(Collection<SpanData> spans) {
                    SPANS.addAll(spans);
                    return CompletableResultCode.ofSuccess();
                }

                @Override
                public CompletableResultCode flush() {
                    return CompletableResultCode.ofSuccess();
                }

                @Override
                public CompletableResultCode shutdown() {
                    return CompletableResultCode.ofSuccess();
                }
            };
        }
    }

    @Test
    void a_plan_goes_on_in_the_trace_of_its_caller_and_tells_its_phases() {
        List<SpanData> spans = spansOf("4bf92f3577b34da6a3ce929d0e0e4701", PLANS, PORK, 5);
        SpanData request = request(spans);
        assertThat(request.getName()).isEqualTo("http post /v1/cook-plans");
        assertThat(request.getKind()).isEqualTo(SpanKind.SERVER);
        assertThat(request.getParentSpanId()).isEqualTo(CALLER);
        assertThat(spans)
                .filteredOn(span -> span != request)
                .extracting(SpanData::getName)
                .containsExactlyInAnyOrder("solve", "texture", "safety", "margins");
        assertThat(spans).filteredOn(span -> span != request).allSatisfy(span -> {
            assertThat(span.getParentSpanId()).isEqualTo(request.getSpanId());
            assertThat(span.getAttributes().get(AttributeKey.longKey(PhaseSpans.TIMES)))
                    .isEqualTo(1L);
            long tookUs = TimeUnit.NANOSECONDS.toMicros(span.getEndEpochNanos() - span.getStartEpochNanos());
            assertThat(span.getAttributes().get(AttributeKey.longKey(PhaseSpans.BUSY)))
                    .isBetween(tookUs - 1, tookUs + 1);
            long slack = TimeUnit.MILLISECONDS.toNanos(5);
            assertThat(span.getStartEpochNanos()).isGreaterThan(request.getStartEpochNanos() - slack);
            assertThat(span.getEndEpochNanos()).isLessThan(request.getEndEpochNanos() + slack);
        });
    }

    @Test
    void a_window_that_tries_many_plans_has_one_span_a_phase() {
        List<SpanData> spans = spansOf("4bf92f3577b34da6a3ce929d0e0e4702", WINDOWS, PORK, 4);
        SpanData solve = spans.stream()
                .filter(span -> span.getName().equals("solve"))
                .findFirst()
                .orElseThrow();
        assertThat(spans).extracting(SpanData::getName).doesNotHaveDuplicates();
        assertThat(solve.getAttributes().get(AttributeKey.longKey(PhaseSpans.TIMES)))
                .isGreaterThan(10L);
    }

    @Test
    void a_refusal_tells_its_code() {
        String body = porkWith("\"thicknessMm\":45", "\"thicknessMm\":45000");
        SpanData request = request(spansOf("4bf92f3577b34da6a3ce929d0e0e4703", PLANS, body, 1));
        assertThat(request.getAttributes().get(AttributeKey.stringKey("slowpoint.problem")))
                .isEqualTo("OUT_OF_RANGE");
    }

    @Test
    void a_caller_who_does_not_trace_is_not_traced() {
        String untold = "4bf92f3577b34da6a3ce929d0e0e4704";
        ask(untold, "00", PLANS, PORK);
        spansOf("4bf92f3577b34da6a3ce929d0e0e4705", PLANS, PORK, 5);
        assertThat(SPANS).noneMatch(span -> span.getTraceId().equals(untold));
    }

    @Test
    void nothing_of_what_was_asked_is_told() {
        String trace = "4bf92f3577b34da6a3ce929d0e0e4706";
        http().header("traceparent", "00-" + trace + "-" + CALLER + "-01").get("/v1/foods/pork-loin?include=pork-loin");
        spansOf(trace, PLANS, PORK, 6);
        assertThat(SPANS).filteredOn(span -> span.getTraceId().equals(trace)).allSatisfy(span -> {
            assertThat(span.getName()).doesNotContain("pork");
            assertThat(span.getAttributes().asMap()).allSatisfy((key, value) -> {
                assertThat(TOLD).contains(key.getKey());
                assertThat(value.toString()).doesNotContain("pork");
            });
        });
    }

    private void ask(String trace, String flags, String path, String body) {
        http().contentType(JSON)
                .header("traceparent", "00-" + trace + "-" + CALLER + "-" + flags)
                .body(body)
                .post(path);
    }

    private List<SpanData> spansOf(String trace, String path, String body, int atLeast) {
        ask(trace, "01", path, body);
        return Awaitility.await()
                .atMost(20, TimeUnit.SECONDS)
                .until(
                        () -> SPANS.stream()
                                .filter(span -> span.getTraceId().equals(trace))
                                .toList(),
                        found -> found.size() >= atLeast
                                && found.stream()
                                        .anyMatch(span -> span.getKind() == SpanKind.SERVER
                                                && span.getName().endsWith(path)));
    }

    private static SpanData request(List<SpanData> spans) {
        return spans.stream()
                .filter(span -> span.getKind() == SpanKind.SERVER)
                .findFirst()
                .orElseThrow();
    }
}
