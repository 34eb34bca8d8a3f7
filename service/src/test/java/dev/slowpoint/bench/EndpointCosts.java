package dev.slowpoint.bench;

import dev.slowpoint.bench.SameAnswers.Request;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * What each operation of the contract costs with its example requests: median time of a client that asks one after another, and
 * the time that the processors of the service work for one answer, which says how many a core can give in a second.
 *
 * <p>Arguments: port, folder of the examples, process id of the service, seconds for each request. Prints rows of a table.
 */
final class EndpointCosts {

    private static final HttpClient CLIENT =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private static final int LEAST = 12;

    private EndpointCosts() {}

    public static void main(String[] arguments) throws Exception {
        int port = Integer.parseInt(arguments[0]);
        Path times = Path.of("/proc", arguments[2], "stat");
        double seconds = Double.parseDouble(arguments[3]);
        Map<String, Request> requests = new LinkedHashMap<>();
        SameAnswers.requests(Path.of(arguments[1])).forEach((name, request) -> {
            if (!name.startsWith("plan ")) {
                requests.put(name.replace(".request.json", ""), request);
            }
        });
        for (String path : new String[] {
            "/v1/foods",
            "/v1/foods/pork-loin",
            "/v1/rules",
            "/v1/rules/us-fsis-2021",
            "/v1/parameter-sets",
            "/v1/warnings",
            "/v1/problems",
            "/openapi.yaml"
        }) {
            requests.put("GET " + path, new Request(path, ""));
        }
        System.out.println("| request | median ms | p90 ms | core ms | answers a second and core | KB |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        for (Map.Entry<String, Request> entry : requests.entrySet()) {
            measure(port, entry.getKey(), entry.getValue(), times, seconds);
        }
    }

    private static void measure(int port, String name, Request request, Path times, double seconds)
            throws IOException, InterruptedException {
        int size = 0;
        long warm = System.nanoTime();
        while (System.nanoTime() - warm < seconds * 0.5e9) {
            size = ask(port, request);
        }
        double cpu = cpuMs(times);
        long began = System.nanoTime();
        long[] taken = new long[100_000];
        int count = 0;
        while (count < LEAST || (System.nanoTime() - began < seconds * 1e9 && count < taken.length)) {
            long sent = System.nanoTime();
            size = ask(port, request);
            taken[count++] = System.nanoTime() - sent;
        }
        double each = (cpuMs(times) - cpu) / count;
        long[] sorted = Arrays.copyOf(taken, count);
        Arrays.sort(sorted);
        System.out.printf(
                Locale.ROOT,
                "| %s | %.2f | %.2f | %.2f | %.0f | %.1f |%n",
                name,
                sorted[count / 2] / 1e6,
                sorted[(int) (0.9 * (count - 1))] / 1e6,
                each,
                1000.0 / Math.max(each, 1e-3),
                size / 1000.0);
    }

    private static int ask(int port, Request request) throws IOException, InterruptedException {
        HttpRequest.Builder builder = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + request.path()));
        HttpRequest sent = request.body().isEmpty()
                ? builder.build()
                : builder.header("Content-Type", "application/json")
                        .POST(HttpRequest.BodyPublishers.ofString(request.body()))
                        .build();
        HttpResponse<byte[]> answer = CLIENT.send(sent, HttpResponse.BodyHandlers.ofByteArray());
        if (answer.statusCode() != 200) {
            throw new IOException(request.path() + " was answered with " + answer.statusCode());
        }
        return answer.body().length;
    }

    /** Time of the processors so far, in ticks of 10 ms that Linux counts in. */
    private static double cpuMs(Path stat) throws IOException {
        String all = Files.readString(stat);
        String[] fields = all.substring(all.lastIndexOf(')') + 2).split(" ", -1);
        return 10.0 * (Long.parseLong(fields[11]) + Long.parseLong(fields[12]));
    }
}
