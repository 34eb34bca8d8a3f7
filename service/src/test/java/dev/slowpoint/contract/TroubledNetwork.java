package dev.slowpoint.contract;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** What lies between a device and the service: each request meets the next trouble of a list, the last of which stays. */
final class TroubledNetwork implements AutoCloseable {

    /** What becomes of one request. */
    interface Trouble {
        void meet(HttpExchange exchange, TroubledNetwork network) throws IOException, InterruptedException;
    }

    private final URI service;
    private final HttpClient client = HttpClient.newHttpClient();
    private final HttpServer server;
    private final List<Long> arrivals = new ArrayList<>();

    TroubledNetwork(URI service, Trouble... troubles) throws IOException {
        this.service = service;
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> {
            Trouble trouble;
            synchronized (arrivals) {
                trouble = troubles[Math.min(arrivals.size(), troubles.length - 1)];
                arrivals.add(System.nanoTime());
            }
            try (exchange) {
                trouble.meet(exchange, this);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        server.start();
    }

    /** None: the true answer. */
    static Trouble none() {
        return altered(body -> body);
    }

    /** The true answer with another body. */
    static Trouble altered(UnaryOperator<String> change) {
        return (exchange, network) -> {
            HttpResponse<String> answer = network.forward(exchange);
            answer(
                    exchange,
                    answer.statusCode(),
                    answer.headers().firstValue("Content-Type").orElseThrow(),
                    change.apply(answer.body()));
        };
    }

    /** The true answer, with the headers of what is outdated (RFC 9745) and will end (RFC 8594). */
    static Trouble retiring() {
        return (exchange, network) -> {
            exchange.getResponseHeaders().set("Deprecation", "@1798761600");
            exchange.getResponseHeaders().set("Sunset", "Fri, 31 Dec 2027 23:59:59 GMT");
            none().meet(exchange, network);
        };
    }

    /** Too busy, with the seconds of {@code Retry-After}. */
    static Trouble busy(int seconds) {
        return (exchange, network) -> {
            exchange.getResponseHeaders().set("Retry-After", Integer.toString(seconds));
            answer(exchange, 503, "text/html", "<html>Too busy</html>");
        };
    }

    /** A page in the place of the answer, as the portals of guest networks give it. */
    static Trouble portal() {
        return (exchange, network) -> answer(exchange, 200, "text/html", "<html>Sign in</html>");
    }

    /** The connection is closed without an answer. */
    static Trouble dropped() {
        return (exchange, network) -> exchange.getRequestBody().readAllBytes();
    }

    /** The connection is closed after half of the true answer. */
    static Trouble brokenOff() {
        return (exchange, network) -> {
            HttpResponse<String> answer = network.forward(exchange);
            byte[] body = answer.body().getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().set("Content-Type", "application/json");
            exchange.sendResponseHeaders(200, body.length);
            exchange.getResponseBody().write(body, 0, body.length / 2);
            exchange.getResponseBody().flush();
        };
    }

    URI address() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort());
    }

    /** When each request came [s], from the first. */
    List<Double> arrivalsS() {
        synchronized (arrivals) {
            return arrivals.stream().map(at -> (at - arrivals.get(0)) / 1e9).toList();
        }
    }

    @Override
    public void close() {
        server.stop(0);
    }

    private HttpResponse<String> forward(HttpExchange exchange) throws IOException, InterruptedException {
        return client.send(
                HttpRequest.newBuilder(service.resolve(exchange.getRequestURI()))
                        .header("Content-Type", exchange.getRequestHeaders().getFirst("Content-Type"))
                        .header("Accept", exchange.getRequestHeaders().getFirst("Accept"))
                        .POST(HttpRequest.BodyPublishers.ofByteArray(
                                exchange.getRequestBody().readAllBytes()))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private static void answer(HttpExchange exchange, int status, String type, String body) throws IOException {
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Content-Type", type);
        exchange.sendResponseHeaders(status, bytes.length);
        exchange.getResponseBody().write(bytes);
    }
}
