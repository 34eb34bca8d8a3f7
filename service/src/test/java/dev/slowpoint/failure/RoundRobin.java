package dev.slowpoint.failure;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * What stands before several instances: hands requests to them in turn, and to the next one where an instance does not answer
 * or says to come again. It may, because the contract says that every operation is free of side effects.
 */
final class RoundRobin implements AutoCloseable {

    private final HttpServer server;
    private final ExecutorService workers = Executors.newFixedThreadPool(16);
    private final HttpClient client = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(2))
            .build();
    private final List<URI> instances;
    private final AtomicInteger turn = new AtomicInteger();
    private final AtomicInteger retried = new AtomicInteger();

    RoundRobin(List<URI> instances) throws IOException {
        this.instances = List.copyOf(instances);
        this.server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setExecutor(workers);
        server.createContext("/", this::relay);
        server.start();
    }

    URI address() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort());
    }

    /** Requests that were handed to another instance. */
    int retried() {
        return retried.get();
    }

    @Override
    public void close() {
        server.stop(0);
        workers.shutdownNow();
    }

    private void relay(HttpExchange exchange) throws IOException {
        try (exchange) {
            byte[] body = exchange.getRequestBody().readAllBytes();
            int first = turn.getAndIncrement();
            for (int attempt = 0; attempt < 2 * instances.size(); attempt++) {
                try {
                    HttpResponse<byte[]> answer = client.send(
                            HttpRequest.newBuilder(instances
                                            .get(Math.floorMod(first + attempt, instances.size()))
                                            .resolve(exchange.getRequestURI()))
                                    .header("Content-Type", "application/json")
                                    .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                                    .build(),
                            HttpResponse.BodyHandlers.ofByteArray());
                    if (answer.statusCode() != 503) {
                        answer(exchange, answer.statusCode(), answer.body());
                        return;
                    }
                } catch (IOException gone) {
                    // The next one is asked.
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    break;
                }
                retried.incrementAndGet();
            }
            answer(exchange, 502, "no instance answers".getBytes(StandardCharsets.UTF_8));
        }
    }

    private static void answer(HttpExchange exchange, int status, byte[] body) throws IOException {
        exchange.sendResponseHeaders(status, body.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(body);
        }
    }
}
