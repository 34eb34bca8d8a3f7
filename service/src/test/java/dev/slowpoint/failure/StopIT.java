package dev.slowpoint.failure;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.StartedService;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A service that is told to stop answers what it has taken on, and then goes. */
class StopIT {

    private static final int CLIENTS = 16;

    /** What became of one request. */
    private record Exchange(long sentNanos, int status, boolean begun, boolean whole) {}

    /** One request on a connection of its own. */
    private static Exchange ask(URI service, int number) {
        long sent = System.nanoTime();
        int status = 0;
        boolean begun = false;
        try (Socket socket = Caller.connect(service)) {
            String body = Caller.plan(number);
            sent = System.nanoTime();
            Caller.send(socket, Caller.head("/v1/cook-plans", "application/json", body.length()) + body);
            InputStream in = socket.getInputStream();
            String first = Caller.line(in);
            begun = true;
            status = Integer.parseInt(first.substring(9, 12));
            int length = 0;
            for (String header = Caller.line(in); !header.isEmpty(); header = Caller.line(in)) {
                if (header.startsWith("Content-Length: ")) {
                    length = Integer.parseInt(header.substring(16));
                }
            }
            String answer = new String(in.readNBytes(length), java.nio.charset.StandardCharsets.UTF_8);
            return new Exchange(sent, status, true, answer.startsWith("{") && answer.endsWith("}"));
        } catch (IOException gone) {
            return new Exchange(sent, status, begun, false);
        }
    }

    @Test
    void what_was_taken_on_is_answered_whole_and_the_process_goes() throws Exception {
        StartedService service = StartedService.start(List.of());
        List<Exchange> exchanges = new CopyOnWriteArrayList<>();
        ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
        try (Socket stream = Caller.connect(service.address())) {
            List<Future<?>> running = IntStream.range(0, CLIENTS)
                    .<Future<?>>mapToObj(client -> clients.submit(() -> {
                        for (int i = 0; i < 10_000; i++) {
                            Exchange exchange = ask(service.address(), 31 * client + i);
                            exchanges.add(exchange);
                            if (!exchange.begun()) {
                                return;
                            }
                        }
                    }))
                    .toList();
            String head =
                    "POST /v1/portion-sheets HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/x-ndjson\r\n"
                            + "Transfer-Encoding: chunked\r\n\r\n";
            Caller.send(stream, head + chunk("{}\n") + chunk(portion(0)));
            TimeUnit.SECONDS.sleep(2);

            long told = System.nanoTime();
            service.process().destroy();
            // The stream goes on for a while after the service was told to stop.
            for (int i = 1; i <= 10; i++) {
                TimeUnit.MILLISECONDS.sleep(100);
                Caller.send(stream, chunk(portion(i)));
            }
            Caller.send(stream, "0\r\n\r\n");
            String answered = Caller.rest(stream);
            assertThat(answered).contains("\"totals\":{\"portions\":11,\"planned\":11,\"refused\":0");
            assertThat(answered).endsWith("0\r\n\r\n");
            for (Future<?> client : running) {
                client.get(30, TimeUnit.SECONDS);
            }
            assertThat(service.process().waitFor(30, TimeUnit.SECONDS)).isTrue();
            assertThat(service.process().exitValue()).isEqualTo(143);

            List<Exchange> before =
                    exchanges.stream().filter(e -> e.sentNanos() < told).toList();
            assertThat(before).hasSizeGreaterThan(CLIENTS).allMatch(e -> e.status() == 200 && e.whole());
            // Whatever was begun afterwards is whole as well, a plan or a refusal that says to come again.
            assertThat(exchanges.stream().filter(Exchange::begun))
                    .allMatch(e -> e.whole() && (e.status() == 200 || e.status() == 503));
        } finally {
            clients.shutdownNow();
            service.close();
        }
    }

    private static String portion(int number) {
        return "{\"id\":\"K" + number + "\",\"food\":{\"id\":\"pork-loin\"},\"geometry\":{\"shape\":\"slab\","
                + "\"thicknessMm\":" + (30 + number) + "},\"start\":{\"temperatureC\":4}}\n";
    }

    private static String chunk(String text) {
        return Integer.toHexString(text.length()) + "\r\n" + text + "\r\n";
    }
}
