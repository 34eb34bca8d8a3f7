package dev.slowpoint.failure;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.StartedService;
import java.io.IOException;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Clients that send or take slowly, or do nothing at all, more of them than the service has threads. The times are those of a
 * service that is less patient than it usually is, so that they pass sooner.
 */
class SlowClientsIT {

    private static final int AT_ONCE = 4;

    /** Threads of the service: those for work and those for slow clients. */
    private static final int THREADS = 4 * Runtime.getRuntime().availableProcessors() + AT_ONCE;

    private static final Duration GRACE = Duration.ofSeconds(2);

    private static StartedService service = started();

    private final List<Socket> slow = new ArrayList<>();

    private static StartedService started() {
        return StartedService.start(List.of(
                "--slowpoint.limits.slow-clients.at-once=" + AT_ONCE,
                "--slowpoint.limits.slow-clients.grace=" + GRACE.toMillis() + "ms"));
    }

    @BeforeAll
    static void answers() throws Exception {
        assertThat(Caller.post(service.address(), "/v1/cook-plans", Caller.plan(0))
                        .statusCode())
                .isEqualTo(200);
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @AfterEach
    void hangUp() throws IOException {
        for (Socket socket : slow) {
            socket.close();
        }
        // The next test begins with room for all: a slow client is then waited for, and not sent away.
        Awaitility.await().atMost(60, TimeUnit.SECONDS).until(SlowClientsIT::isWaitedFor);
    }

    private static boolean isWaitedFor() throws IOException {
        try (Socket one = Caller.connect(service.address())) {
            one.setSoTimeout(500);
            Caller.send(one, Caller.head("/v1/cook-plans", "application/json", 5000) + "{");
            one.getInputStream().read();
            return false;
        } catch (SocketTimeoutException waiting) {
            return true;
        }
    }

    private Socket slow(int receiveBuffer) throws IOException {
        Socket socket = Caller.connect(service.address(), receiveBuffer);
        slow.add(socket);
        return socket;
    }

    /** Sends a space now and then on all connections as long as they are open. */
    private void dribble(Duration pause, int times) throws InterruptedException {
        for (int i = 0; i < times; i++) {
            for (Socket socket : slow) {
                try {
                    Caller.send(socket, " ");
                } catch (IOException closed) {
                    // As it should be, sooner or later.
                }
            }
            TimeUnit.MILLISECONDS.sleep(pause.toMillis());
        }
    }

    /** Other clients are answered as if nothing were the matter. */
    private static void othersAreAnswered() throws Exception {
        for (int i = 0; i < 20; i++) {
            HttpResponse<byte[]> answer = Caller.post(service.address(), "/v1/cook-plans", Caller.plan(i));
            assertThat(answer.statusCode()).isEqualTo(200);
        }
    }

    @Test
    void a_body_that_comes_byte_by_byte_is_given_up() throws Exception {
        Socket socket = slow(0);
        Caller.send(socket, Caller.head("/v1/cook-plans", "application/json", 5000) + "{");
        long began = System.nanoTime();
        Thread dribbling = new Thread(() -> {
            try {
                dribble(Duration.ofMillis(100), 200);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        dribbling.start();
        try {
            String answer = Caller.rest(socket);
            assertThat(answer).startsWith("HTTP/1.1 408 ").contains("Connection: close", "REQUEST_TIMEOUT");
            assertThat(Duration.ofNanos(System.nanoTime() - began)).isBetween(GRACE, GRACE.multipliedBy(4));
        } finally {
            dribbling.interrupt();
            dribbling.join();
        }
    }

    @Test
    void more_slow_bodies_than_threads_keep_nobody_waiting() throws Exception {
        for (int i = 0; i < 3 * THREADS; i++) {
            Caller.send(slow(0), Caller.head("/v1/cook-plans", "application/json", 5000) + "{");
        }
        othersAreAnswered();
        dribble(Duration.ofMillis(100), 10);
        othersAreAnswered();
    }

    @Test
    void a_slow_body_that_finds_no_room_is_told_when_to_come_again() throws Exception {
        for (int i = 0; i < AT_ONCE; i++) {
            Caller.send(slow(0), Caller.head("/v1/cook-plans", "application/json", 5000) + "{");
        }
        Awaitility.await().atMost(60, TimeUnit.SECONDS).untilAsserted(() -> {
            try (Socket one = Caller.connect(service.address())) {
                Caller.send(one, Caller.head("/v1/cook-plans", "application/json", 5000) + "{");
                assertThat(Caller.rest(one)).startsWith("HTTP/1.1 503 ").contains("Retry-After: 1", "OVERLOADED");
            }
        });
    }

    @Test
    void slow_bodies_of_requests_that_are_refused_unread_keep_no_thread() throws Exception {
        for (int i = 0; i < 3 * THREADS; i++) {
            Caller.send(slow(0), Caller.head("/v1/nothing", "application/x-www-form-urlencoded", 5000) + "u");
        }
        othersAreAnswered();
        dribble(Duration.ofMillis(100), 15);
        othersAreAnswered();
        for (Socket socket : slow) {
            assertThat(closedAfter(socket)).startsWith("HTTP/1.1 404 ");
        }
    }

    /** What came before the service hung up; a client that is still sending then may be told so by a reset. */
    private static String closedAfter(Socket socket) throws IOException {
        StringBuilder answer = new StringBuilder();
        try {
            for (int c = socket.getInputStream().read();
                    c >= 0;
                    c = socket.getInputStream().read()) {
                answer.append((char) c);
            }
        } catch (SocketException reset) {
            assertThat(answer).isNotEmpty();
        }
        return answer.toString();
    }

    @Test
    void more_slow_heads_than_threads_keep_nobody_waiting() throws Exception {
        for (int i = 0; i < 3 * THREADS; i++) {
            Caller.send(slow(0), "POST /v1/cook-plans HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Slow:");
        }
        dribble(Duration.ofMillis(100), 5);
        othersAreAnswered();
    }

    @Test
    void more_readers_that_take_nothing_than_threads_keep_nobody_waiting() throws Exception {
        // More than the buffers on the way can hold.
        String many = "GET /openapi.yaml HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n".repeat(20);
        for (int i = 0; i < 6 * THREADS; i++) {
            Caller.send(slow(1024), many);
        }
        othersAreAnswered();
    }

    @Test
    void a_thousand_idle_connections_keep_nobody_waiting() throws Exception {
        for (int i = 0; i < 1000; i++) {
            slow(0);
        }
        othersAreAnswered();
    }

    @Test
    void a_stream_that_stands_still_ends_with_a_problem_and_makes_room() throws Exception {
        Socket stream = slow(0);
        Caller.send(stream, Caller.head("/v1/portion-sheets", "application/x-ndjson", 100_000) + "{}\n");
        Thread dribbling = new Thread(() -> {
            try {
                dribble(Duration.ofMillis(100), 200);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        dribbling.start();
        try {
            assertThat(Caller.rest(stream)).startsWith("HTTP/1.1 200 ").contains("REQUEST_TIMEOUT");
        } finally {
            dribbling.interrupt();
            dribbling.join();
        }
        sheetsAreTaken();
    }

    @Test
    void streams_that_nobody_reads_make_room_again() throws Exception {
        String portion = "{\"food\":{\"id\":\"pork-loin\"},\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":1}}\n";
        for (int i = 0; i < 2; i++) {
            Socket stream = slow(1024);
            Caller.send(stream, Caller.head("/v1/portion-sheets", "application/x-ndjson", 100_000_000) + "{}\n");
            Thread sending = new Thread(() -> {
                try {
                    for (int k = 0; k < 100_000; k++) {
                        Caller.send(stream, portion);
                    }
                } catch (IOException closed) {
                    // The service hung up.
                }
            });
            sending.setDaemon(true);
            sending.start();
        }
        sheetsAreTaken();
    }

    private static void sheetsAreTaken() {
        String sheet = "{\"sheet\":{},\"portions\":[{\"food\":{\"id\":\"pork-loin\"},\"geometry\":{\"shape\":\"slab\","
                + "\"thicknessMm\":40},\"start\":{\"temperatureC\":4}}]}";
        Awaitility.await()
                .atMost(40, TimeUnit.SECONDS)
                .untilAsserted(() -> assertThat(Caller.post(service.address(), "/v1/portion-sheets", sheet)
                                .statusCode())
                        .isEqualTo(200));
    }
}
