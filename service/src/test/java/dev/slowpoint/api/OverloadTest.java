package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.coyote.AbstractProtocol;
import org.awaitility.Awaitility;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.tomcat.TomcatWebServer;
import org.springframework.boot.web.server.servlet.context.ServletWebServerApplicationContext;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.context.bean.override.convention.TestBean;

/** Beyond its capacity the service sends requests away at once, and those admitted are answered. */
@TestPropertySource(
        properties = {
            "slowpoint.limits.threads-per-core=1",
            "slowpoint.limits.most-waiting=3",
            "slowpoint.limits.longest-backlog=0ms"
        })
@DirtiesContext
class OverloadTest extends HttpTest {

    private static final int REQUESTS = 24;
    private static final CountDownLatch GATE = new CountDownLatch(1);
    private static final AtomicBoolean CLOSED = new AtomicBoolean(false);
    private static final AtomicInteger INSIDE = new AtomicInteger();

    @TestBean(name = "troubledPlanning")
    protected @Nullable CookPlanning planning;

    static CookPlanning planning() {
        return (request, include, sentences) -> {
            if (CLOSED.get()) {
                INSIDE.incrementAndGet();
                try {
                    GATE.await();
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
            }
            return plan();
        };
    }

    /** The smallest plan there can be: only the way there and back matters here. */
    private static CookPlanAnswer plan() {
        return new CookPlanAnswer(
                "2026.1",
                "0000000000000000",
                60.0,
                null,
                new CookPlanAnswer.Times(null, null, null, null, null),
                null,
                null,
                null,
                new SafetyVerdict(
                        "notApplicable",
                        "us-fsis-2021",
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        0,
                        null,
                        null,
                        null),
                new CookPlanAnswer.Texture("none", null, null, null, null),
                null,
                null,
                null,
                List.of(),
                List.of(),
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    @Autowired
    private ServletWebServerApplicationContext context;

    @Test
    void requests_beyond_capacity_are_told_when_to_come_again() throws Exception {
        CLOSED.set(true);
        int threads = handler().getMaxThreads();
        ExecutorService clients = Executors.newFixedThreadPool(threads + REQUESTS);
        try {
            List<Future<Response>> answers = new ArrayList<>();
            // First every thread is kept busy, then the others come: so none is let through or refused by chance.
            for (int i = 0; i < threads; i++) {
                answers.add(
                        clients.submit(() -> http().contentType(JSON).body(PORK).post(PLANS)));
                int busy = i + 1;
                Awaitility.await().atMost(30, TimeUnit.SECONDS).until(() -> INSIDE.get() == busy);
            }
            for (int i = 0; i < REQUESTS; i++) {
                answers.add(
                        clients.submit(() -> http().contentType(JSON).body(PORK).post(PLANS)));
            }
            Awaitility.await().atMost(30, TimeUnit.SECONDS).until(() -> waiting() == REQUESTS);
            GATE.countDown();
            int refused = 0;
            for (Future<Response> answer : answers) {
                Response response = answer.get(30, TimeUnit.SECONDS);
                assertThat(response.statusCode()).isIn(200, 503);
                if (response.statusCode() == 503) {
                    refused++;
                    assertThat(response.header("Retry-After")).isEqualTo("1");
                    assertThat(response.contentType()).isEqualTo(PROBLEM);
                    assertThat(READER.readTree(response.asByteArray())
                                    .at("/code")
                                    .asString())
                            .isEqualTo("OVERLOADED");
                    assertThat(READER.readTree(response.asByteArray())
                                    .at("/retryable")
                                    .asBoolean())
                            .isTrue();
                }
            }
            assertThat(refused).isBetween(1, REQUESTS - 1);
        } finally {
            GATE.countDown();
            clients.shutdownNow();
        }
        assertThat(http().contentType(JSON).body(PORK).post(PLANS).statusCode()).isEqualTo(200);
    }

    private AbstractProtocol<?> handler() {
        return (AbstractProtocol<?>) ((TomcatWebServer) Objects.requireNonNull(context.getWebServer()))
                .getTomcat()
                .getConnector()
                .getProtocolHandler();
    }

    private int waiting() {
        return ((org.apache.tomcat.util.threads.ThreadPoolExecutor) handler().getExecutor())
                .getQueue()
                .size();
    }
}
