package dev.slowpoint.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.SlowpointApplication;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * Measures sheets of mixed portions over HTTP, as JSON and as a stream. Its name keeps it out of the tests: {@code
 * -Dtest=SheetRunner -Dsheet.portions=10000}.
 */
class SheetRunner {

    private static final int PORTIONS = Integer.getInteger("sheet.portions", 10_000);
    private static final int ROUNDS = Integer.getInteger("sheet.rounds", 5);
    private static final String[] FOODS = {
        "pork-loin", "chicken-breast", "beef-sirloin", "salmon", "turkey-breast", "carrot", "chicken-thigh", "trout"
    };

    private record Answered(double seconds, double cpuSeconds, String body) {}

    @Test
    void mixed_portions_are_planned() throws Exception {
        try (ConfigurableApplicationContext application =
                SpringApplication.run(SlowpointApplication.class, "--server.port=0", "--management.server.port=0")) {
            int port = Integer.parseInt(application.getEnvironment().getRequiredProperty("local.server.port"));
            List<String> portions = portions(new Random(7));
            for (String terms : List.of(
                    "{}",
                    "{\"cards\":[\"fridge\",\"frozen\",\"chillAndKeep\",\"reheat\"],\"target\":{\"purpose\":\"keep\"}}")) {
                String json = "{\"sheet\":" + terms + ",\"portions\":[" + String.join(",", portions) + "]}";
                String lines = terms + "\n" + String.join("\n", portions) + "\n";
                for (int round = 0; round < ROUNDS; round++) {
                    report("JSON", terms, post(port, "application/json", json));
                    report("lines", terms, post(port, "application/x-ndjson", lines));
                }
            }
        }
    }

    private static void report(String how, String terms, Answered answered) {
        String body = answered.body();
        int totals = body.lastIndexOf("\"totals\"");
        System.out.printf(
                Locale.ROOT,
                "sheet: %s, %s: %.2f s (%.2f s of processors, this client's included), %.1f MB, %s%n",
                how,
                terms,
                answered.seconds(),
                answered.cpuSeconds(),
                body.length() / 1e6,
                body.substring(totals, Math.min(totals + 75, body.length())).strip());
    }

    private static long cpu() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    private static Answered post(int port, String type, String body) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + "/v1/portion-sheets"))
                .header("Content-Type", type)
                .POST(BodyPublishers.ofString(body))
                .build();
        long started = System.nanoTime();
        long worked = cpu();
        HttpResponse<String> answer = HttpClient.newHttpClient().send(request, BodyHandlers.ofString());
        double seconds = (System.nanoTime() - started) / 1e9;
        double cpuSeconds = (cpu() - worked) / 1e9;
        assertThat(answer.statusCode()).isEqualTo(200);
        return new Answered(seconds, cpuSeconds, answer.body());
    }

    /** Eight foods, slabs and some cylinders and bricks, from 12 to 70 mm, two in five frozen, with and without a spread. */
    private static List<String> portions(Random random) {
        List<String> portions = new ArrayList<>();
        for (int i = 0; i < PORTIONS; i++) {
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
