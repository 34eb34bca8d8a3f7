package dev.slowpoint.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;

/**
 * Sends all example requests of the contract, each with all that it may include, and cook plans of many sizes; prints the
 * SHA-256 over all answers in the order of the requests. Two services that print the same answer the same bytes.
 *
 * <p>Arguments: port, folder of the examples, threads, rounds. Each round must answer the same; prints requests, bytes and
 * digest.
 */
final class SameAnswers {

    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private final String service;

    private SameAnswers(int port) {
        this.service = "http://127.0.0.1:" + port;
    }

    public static void main(String[] arguments) throws Exception {
        SameAnswers asking = new SameAnswers(Integer.parseInt(arguments[0]));
        Map<String, Request> requests = requests(Path.of(arguments[1]));
        int threads = Integer.parseInt(arguments[2]);
        int rounds = Integer.parseInt(arguments[3]);
        String first = "";
        long bytes = 0;
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            for (int round = 0; round < rounds; round++) {
                MessageDigest digest = MessageDigest.getInstance("SHA-256");
                bytes = 0;
                List<Future<byte[]>> answers = new ArrayList<>();
                for (Request request : requests.values()) {
                    answers.add(pool.submit(() -> asking.ask(request)));
                }
                for (Future<byte[]> answer : answers) {
                    digest.update(answer.get());
                    bytes += answer.get().length;
                }
                String shown = HexFormat.of().formatHex(digest.digest());
                if (round > 0 && !shown.equals(first)) {
                    throw new IllegalStateException("round " + round + " differs: " + shown + " after " + first);
                }
                first = shown;
            }
        } finally {
            pool.shutdownNow();
        }
        System.out.printf("requests=%d bytes=%d sha256=%s%n", requests.size(), bytes, first);
    }

    /** One question. */
    record Request(String path, String body) {}

    /** The example requests by the name of their file, and more cook plans. */
    static Map<String, Request> requests(Path examples) throws IOException {
        Map<String, Request> requests = new LinkedHashMap<>();
        try (Stream<Path> files = Files.list(examples)) {
            for (Path file : files.sorted().toList()) {
                String name = file.getFileName().toString();
                if (name.endsWith(".request.json")) {
                    String operation = operation(name);
                    requests.put(name, new Request(operation, Files.readString(file)));
                    if (operation.equals("/v1/cook-plans")) {
                        requests.put(
                                name + " with all",
                                new Request(
                                        operation + "?include=curve,organisms,margins,rules,uncertainty,sources",
                                        Files.readString(file)));
                    }
                }
            }
        }
        int i = 0;
        for (byte[] request : LoadGenerator.requests("/v1/cook-plans", 0.2)) {
            String sent = new String(request, StandardCharsets.UTF_8);
            requests.put("plan " + i++, new Request("/v1/cook-plans", sent.substring(sent.indexOf("\r\n\r\n") + 4)));
        }
        return requests;
    }

    private static String operation(String name) {
        for (String operation : List.of(
                "cook-plan",
                "chill-plan",
                "replan",
                "load-plan",
                "log-review",
                "process-window",
                "portion-sheet",
                "lookup-table")) {
            if (name.startsWith(operation + "-")) {
                return "/v1/" + operation + "s";
            }
        }
        throw new IllegalArgumentException("no operation reads " + name);
    }

    private byte[] ask(Request request) throws InterruptedException {
        for (int attempt = 0; ; attempt++) {
            try {
                HttpResponse<byte[]> answer = client.send(
                        HttpRequest.newBuilder(URI.create(service + request.path()))
                                .header("Content-Type", "application/json")
                                .POST(HttpRequest.BodyPublishers.ofString(request.body()))
                                .build(),
                        HttpResponse.BodyHandlers.ofByteArray());
                if (answer.statusCode() == 200) {
                    return answer.body();
                }
                if (answer.statusCode() != 503) {
                    throw new IllegalStateException(request + " was answered with " + answer.statusCode() + ": "
                            + new String(answer.body(), StandardCharsets.UTF_8));
                }
            } catch (IOException closed) {
                // A connection may be closed between two requests; the contract says that it is safe to ask again.
                System.err.println("asked again: " + closed.getMessage());
            }
            if (attempt > 50) {
                throw new IllegalStateException(request + " was not answered");
            }
            Thread.sleep(200);
        }
    }
}
