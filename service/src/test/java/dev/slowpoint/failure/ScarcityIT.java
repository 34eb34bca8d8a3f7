package dev.slowpoint.failure;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.StartedService;
import java.io.IOException;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;

/** The service goes on answering where the machine runs short of something. */
class ScarcityIT {

    /** Runs the service from a shell that does something first. */
    private static UnaryOperator<List<String>> shell(String script) {
        return command -> Stream.concat(Stream.of("sh", "-c", script, "sh"), command.stream())
                .toList();
    }

    @Test
    void it_answers_while_its_log_can_not_be_written() throws Exception {
        try (StartedService service = StartedService.start(
                // All is logged, so that there is something to write for each request.
                List.of("--logging.level.org.springframework.web=debug"), shell("exec \"$@\" > /dev/full 2>&1"))) {
            for (int i = 0; i < 20; i++) {
                assertThat(Caller.post(service.address(), "/v1/cook-plans", Caller.plan(i))
                                .statusCode())
                        .isEqualTo(200);
            }
        }
    }

    @Test
    void it_recovers_when_it_had_no_file_descriptor_left() throws Exception {
        try (StartedService service = StartedService.start(List.of(), shell("ulimit -n 160; exec \"$@\""))) {
            List<Socket> connections = new ArrayList<>();
            try {
                for (int i = 0; i < 300; i++) {
                    connections.add(Caller.connect(service.address()));
                }
                TimeUnit.SECONDS.sleep(1);
                assertThat(service.process().isAlive()).isTrue();
            } finally {
                for (Socket connection : connections) {
                    connection.close();
                }
            }
            Awaitility.await()
                    .atMost(60, TimeUnit.SECONDS)
                    .ignoreException(IOException.class)
                    .untilAsserted(() -> assertThat(Caller.post(service.address(), "/v1/cook-plans", Caller.plan(1))
                                    .statusCode())
                            .isEqualTo(200));
        }
    }
}
