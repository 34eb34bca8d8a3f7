package dev.slowpoint.contract;

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
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;

/** A server between the kit and the service, which hands on what it gets, changed or not. */
final class Relay implements AutoCloseable {

    /** What the kit sent. */
    record Sent(String method, String target, Map<String, String> headers, byte[] body) {

        Sent {
            headers = caseless(headers);
        }

        String header(String name) {
            return headers.getOrDefault(name, "");
        }

        Sent target(String other) {
            return new Sent(method, other, headers, body);
        }

        Sent header(String name, String value) {
            Map<String, String> changed = caseless(headers);
            changed.put(name, value);
            return new Sent(method, target, changed, body);
        }

        Sent without(String name) {
            Map<String, String> changed = caseless(headers);
            changed.remove(name);
            return new Sent(method, target, changed, body);
        }

        Sent body(byte[] other) {
            return new Sent(method, target, headers, other);
        }
    }

    /** What the service answered. */
    record Received(int status, Map<String, String> headers, byte[] body) {

        Received {
            headers = caseless(headers);
        }

        String header(String name) {
            return headers.getOrDefault(name, "");
        }

        Received status(int other) {
            return new Received(other, headers, body);
        }

        Received header(String name, String value) {
            Map<String, String> changed = caseless(headers);
            changed.put(name, value);
            return new Received(status, changed, body);
        }

        Received without(String name) {
            Map<String, String> changed = caseless(headers);
            changed.remove(name);
            return new Received(status, changed, body);
        }

        Received body(byte[] other) {
            return new Received(status, headers, other);
        }
    }

    /** Headers that belong to one connection (RFC 9110, section 7.6.1), or that the client writes itself. */
    private static final Set<String> OF_A_CONNECTION =
            caselessSet("connection", "content-length", "expect", "host", "upgrade", "keep-alive", "transfer-encoding");

    private final HttpServer server;
    private final ExecutorService workers = Executors.newFixedThreadPool(4);
    private final HttpClient client = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
    private final URI service;
    private final UnaryOperator<Sent> before;
    private final BiFunction<Sent, Received, Received> after;

    private Relay(URI service, UnaryOperator<Sent> before, BiFunction<Sent, Received, Received> after)
            throws IOException {
        this.service = service;
        this.before = before;
        this.after = after;
        this.server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setExecutor(workers);
        server.createContext("/", this::relay);
        server.start();
    }

    static Relay of(URI service, UnaryOperator<Sent> before, BiFunction<Sent, Received, Received> after)
            throws IOException {
        return new Relay(service, before, after);
    }

    URI address() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort());
    }

    @Override
    public void close() {
        server.stop(0);
        workers.shutdownNow();
    }

    private static Map<String, String> caseless(Map<String, String> headers) {
        Map<String, String> copy = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        copy.putAll(headers);
        return copy;
    }

    private static Set<String> caselessSet(String... names) {
        Set<String> set = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        set.addAll(List.of(names));
        return set;
    }

    private void relay(HttpExchange exchange) throws IOException {
        try (exchange) {
            Sent asked = sent(exchange);
            Received answer = after.apply(asked, ask(before.apply(asked)));
            answer.headers().forEach((name, value) -> {
                if (!OF_A_CONNECTION.contains(name)) {
                    exchange.getResponseHeaders().set(name, value);
                }
            });
            if (exchange.getRequestMethod().equals("HEAD")) {
                String length = answer.header("Content-Length");
                if (!length.isEmpty()) {
                    exchange.getResponseHeaders().set("Content-Length", length);
                }
                exchange.sendResponseHeaders(answer.status(), -1);
            } else if (answer.status() == 304) {
                exchange.sendResponseHeaders(304, -1);
            } else {
                boolean chunked = answer.header("Transfer-Encoding").equals("chunked");
                exchange.sendResponseHeaders(
                        answer.status(), chunked ? 0 : answer.body().length == 0 ? -1 : answer.body().length);
                try (OutputStream out = exchange.getResponseBody()) {
                    out.write(answer.body());
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static Sent sent(HttpExchange exchange) throws IOException {
        Map<String, String> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        exchange.getRequestHeaders().forEach((name, values) -> headers.put(name, String.join(", ", values)));
        return new Sent(
                exchange.getRequestMethod(),
                exchange.getRequestURI().toString(),
                headers,
                exchange.getRequestBody().readAllBytes());
    }

    private Received ask(Sent sent) throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(service + sent.target()))
                .method(
                        sent.method(),
                        sent.body().length == 0
                                ? HttpRequest.BodyPublishers.noBody()
                                : HttpRequest.BodyPublishers.ofByteArray(sent.body()));
        sent.headers().forEach((name, value) -> {
            if (!OF_A_CONNECTION.contains(name)) {
                request.header(name, value);
            }
        });
        HttpResponse<byte[]> answer = client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        Map<String, String> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        answer.headers().map().forEach((name, values) -> headers.put(name, String.join(", ", values)));
        return new Received(answer.statusCode(), headers, answer.body());
    }
}
