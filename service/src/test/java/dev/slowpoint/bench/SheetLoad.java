package dev.slowpoint.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Sends sheets of mixed portions.
 *
 * <ul>
 *   <li>{@code time PORT PORTIONS ROUNDS}: seconds of each round, as JSON and as a stream of lines.
 *   <li>{@code memory PORT PORTIONS PID}: streams so many portions and prints the resident memory of the service, in MB, at a
 *       tenth of the way, the most after that, and at the end.
 *   <li>{@code halves PORT PORT PORTIONS}: sends a whole sheet to one service, and its halves to both; fails unless every
 *       portion gets the same card.
 * </ul>
 */
final class SheetLoad {

    private static final JsonMapper JSON = new JsonMapper();
    private static final HttpClient CLIENT =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private static final String TERMS =
            "{\"cards\":[\"fridge\",\"frozen\",\"chillAndKeep\",\"reheat\"],\"target\":{\"purpose\":\"keep\"}}";
    private static final String[] FOODS = {
        "pork-loin", "chicken-breast", "beef-sirloin", "salmon", "turkey-breast", "carrot", "chicken-thigh", "trout"
    };

    private SheetLoad() {}

    public static void main(String[] arguments) throws Exception {
        int port = Integer.parseInt(arguments[1]);
        switch (arguments[0]) {
            case "time" -> time(port, Integer.parseInt(arguments[2]), Integer.parseInt(arguments[3]));
            case "memory" -> memory(port, Integer.parseInt(arguments[2]), Path.of("/proc", arguments[3], "status"));
            case "halves" -> halves(port, Integer.parseInt(arguments[2]), Integer.parseInt(arguments[3]));
            default -> throw new IllegalArgumentException(arguments[0]);
        }
    }

    private static void time(int port, int count, int rounds) throws IOException, InterruptedException {
        List<String> portions = portions(count);
        for (int round = 0; round < rounds; round++) {
            for (boolean lines : new boolean[] {false, true}) {
                String body = lines ? "{}\n" + String.join("\n", portions) + "\n" : sheet("{}", portions);
                long began = System.nanoTime();
                String answer = post(port, lines ? "application/x-ndjson" : "application/json", body);
                System.out.printf(
                        Locale.ROOT,
                        "%s seconds=%.2f MB=%.1f%n",
                        lines ? "lines" : "json",
                        (System.nanoTime() - began) / 1e9,
                        answer.length() / 1e6);
            }
        }
    }

    private static void memory(int port, int count, Path status) throws IOException, InterruptedException {
        AtomicLong sent = new AtomicLong();
        List<String> some = portions(2000);
        HttpRequest request = HttpRequest.newBuilder(uri(port))
                .header("Content-Type", "application/x-ndjson")
                .POST(HttpRequest.BodyPublishers.ofByteArrays(() -> new Lines(some, count, sent)))
                .build();
        HttpResponse<java.util.stream.Stream<String>> answer =
                CLIENT.send(request, HttpResponse.BodyHandlers.ofLines());
        long early = 0;
        long most = 0;
        long[] got = {0};
        try (java.util.stream.Stream<String> lines = answer.body()) {
            for (String line : (Iterable<String>) lines::iterator) {
                if (line.startsWith("{\"portion\"")) {
                    got[0]++;
                    if (got[0] == count / 10) {
                        early = resident(status);
                    } else if (got[0] > count / 10 && got[0] % 1000 == 0) {
                        most = Math.max(most, resident(status));
                    }
                }
            }
        }
        System.out.printf(
                Locale.ROOT,
                "portions=%d answered=%d earlyMB=%d mostMB=%d endMB=%d%n",
                sent.get(),
                got[0],
                early,
                most,
                resident(status));
        if (got[0] != count) {
            throw new IllegalStateException("not every portion was answered");
        }
    }

    /** Bodies of one portion each, made when they are sent. */
    private static final class Lines implements java.util.Iterator<byte[]> {
        private final List<String> some;
        private final int count;
        private final AtomicLong sent;
        private boolean begun;

        Lines(List<String> some, int count, AtomicLong sent) {
            this.some = some;
            this.count = count;
            this.sent = sent;
        }

        @Override
        public boolean hasNext() {
            return sent.get() < count;
        }

        @Override
        public byte[] next() {
            if (!begun) {
                begun = true;
                return "{}\n".getBytes(StandardCharsets.UTF_8);
            }
            return (some.get((int) (sent.getAndIncrement() % some.size())) + "\n").getBytes(StandardCharsets.UTF_8);
        }
    }

    private static long resident(Path status) throws IOException {
        for (String line : Files.readAllLines(status)) {
            if (line.startsWith("VmRSS:")) {
                return Long.parseLong(line.replaceAll("[^0-9]", "")) / 1024;
            }
        }
        throw new IllegalStateException("no VmRSS in " + status);
    }

    private static void halves(int one, int other, int count) throws IOException, InterruptedException {
        List<String> portions = portions(count);
        Map<String, String> whole = cards(post(one, "application/json", sheet(TERMS, portions)));
        Map<String, String> parts =
                new TreeMap<>(cards(post(one, "application/json", sheet(TERMS, portions.subList(0, count / 2)))));
        parts.putAll(cards(post(other, "application/json", sheet(TERMS, portions.subList(count / 2, count)))));
        if (whole.size() != count || !whole.equals(parts)) {
            throw new IllegalStateException("the halves of a sheet give other cards than the whole");
        }
        System.out.printf(
                "portions=%d cards of the whole and of its halves on two instances are the same; kinds of cards=%d%n",
                count, whole.values().stream().distinct().count());
    }

    /** The card of each portion: its band without the number, which is that of the sheet. */
    private static Map<String, String> cards(String answer) {
        JsonNode sheet = JSON.readTree(answer);
        Map<Integer, String> bands = new HashMap<>();
        for (JsonNode band : sheet.get("bands")) {
            ObjectNode card = (ObjectNode) band.deepCopy();
            int number = card.remove("band").asInt();
            bands.put(number, card.toString());
        }
        Map<String, String> cards = new TreeMap<>();
        for (JsonNode portion : sheet.get("portions")) {
            JsonNode band = portion.get("band");
            cards.put(
                    portion.get("id").asString(),
                    band == null
                            ? portion.get("errors").toString().replaceAll("#/portions/\\d+", "#")
                            : Objects.requireNonNull(bands.get(band.asInt())));
        }
        return cards;
    }

    private static String sheet(String terms, List<String> portions) {
        return "{\"sheet\":" + terms + ",\"portions\":[" + String.join(",", portions) + "]}";
    }

    private static URI uri(int port) {
        return URI.create("http://127.0.0.1:" + port + "/v1/portion-sheets");
    }

    private static String post(int port, String type, String body) throws IOException, InterruptedException {
        HttpResponse<String> answer = CLIENT.send(
                HttpRequest.newBuilder(uri(port))
                        .header("Content-Type", type)
                        .POST(HttpRequest.BodyPublishers.ofString(body))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 200) {
            throw new IOException(answer.statusCode() + " " + answer.body());
        }
        return answer.body();
    }

    /** Eight foods, slabs and some cylinders and bricks, from 12 to 70 mm, two in five frozen, with and without a spread. */
    private static List<String> portions(int count) {
        Random random = new Random(7);
        List<String> portions = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String food = FOODS[random.nextInt(FOODS.length)];
            double across = 12.0 + 58.0 * random.nextDouble() * random.nextDouble();
            String size = String.format(Locale.ROOT, "%.1f", across);
            int shape = random.nextInt(10);
            String geometry = shape < 8
                    ? "{\"shape\":\"slab\",\"thicknessMm\":" + size + "}"
                    : shape == 8
                            ? "{\"shape\":\"cylinder\",\"diameterMm\":" + size + "}"
                            : "{\"shape\":\"brick\",\"thicknessMm\":" + size + ",\"widthMm\":90,\"lengthMm\":150}";
            String spread = random.nextInt(3) == 0 ? ",\"thicknessSpreadMm\":2" : "";
            String start = random.nextInt(5) < 2 ? "-18" : "4";
            portions.add("{\"id\":\"K" + i + "\",\"food\":{\"id\":\"" + food + "\"},\"geometry\":" + geometry + spread
                    + ",\"start\":{\"temperatureC\":" + start + "}}");
        }
        return portions;
    }
}
