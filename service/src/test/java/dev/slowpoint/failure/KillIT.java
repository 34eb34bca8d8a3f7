package dev.slowpoint.failure;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.StartedService;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** One of two instances dies without a word, and comes back; who asks through a relay that tries again does not notice. */
class KillIT {

    private static final int CLIENTS = 8;
    private static final int QUESTIONS = 40;

    @Test
    void nobody_notices_an_instance_that_dies_and_comes_back() throws Exception {
        ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
        try (StartedService lasting = StartedService.start(List.of());
                StartedService dying = StartedService.start(List.of())) {
            List<byte[]> expected = new ArrayList<>();
            for (int i = 0; i < QUESTIONS; i++) {
                byte[] one = Caller.post(lasting.address(), "/v1/cook-plans", Caller.plan(i))
                        .body();
                assertThat(Caller.post(dying.address(), "/v1/cook-plans", Caller.plan(i))
                                .body())
                        .as("the same bytes from both instances")
                        .isEqualTo(one);
                expected.add(one);
            }
            AtomicBoolean over = new AtomicBoolean();
            try (RoundRobin relay = new RoundRobin(List.of(lasting.address(), dying.address()))) {
                List<Future<Integer>> running = IntStream.range(0, CLIENTS)
                        .mapToObj(client -> clients.submit(() -> {
                            int asked = 0;
                            for (; !over.get(); asked++) {
                                int question = (7 * client + asked) % QUESTIONS;
                                HttpResponse<byte[]> answer =
                                        Caller.post(relay.address(), "/v1/cook-plans", Caller.plan(question));
                                assertThat(answer.statusCode()).isEqualTo(200);
                                assertThat(answer.body()).isEqualTo(expected.get(question));
                            }
                            return asked;
                        }))
                        .toList();
                TimeUnit.SECONDS.sleep(1);
                int before = relay.retried();
                dying.process().destroyForcibly();
                assertThat(dying.process().waitFor(10, TimeUnit.SECONDS)).isTrue();
                TimeUnit.SECONDS.sleep(1);
                over.set(true);
                for (Future<Integer> client : running) {
                    assertThat(client.get(60, TimeUnit.SECONDS)).isPositive();
                }
                assertThat(relay.retried())
                        .as("requests that met the dead instance")
                        .isGreaterThan(before);
            }
            // It comes back, and answers the same.
            try (StartedService again = StartedService.start(List.of())) {
                for (int i = 0; i < QUESTIONS; i++) {
                    assertThat(Caller.post(again.address(), "/v1/cook-plans", Caller.plan(i))
                                    .body())
                            .isEqualTo(expected.get(i));
                }
            }
        } finally {
            clients.shutdownNow();
        }
    }
}
