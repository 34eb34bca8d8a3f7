package dev.slowpoint.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.SlowpointApplication;
import dev.slowpoint.api.StoredAnswers;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * Loads the running service from another process: cook plans and, in turn with them, an endpoint of the same application that
 * reads the same requests and writes a stored answer. Its name keeps it out of the tests; see DEVELOPERS.md.
 */
class LoadRunner {

    private static final String PLANS = "/v1/cook-plans";
    private static final int ROUNDS = 5;
    private static final double SECONDS = Double.parseDouble(System.getProperty("load.seconds", "5"));
    private static final double FROZEN = Double.parseDouble(System.getProperty("load.frozen", "0"));

    @Test
    void cook_plans_are_loaded_in_turn_with_stored_answers() throws Exception {
        try (ConfigurableApplicationContext application =
                SpringApplication.run(SlowpointApplication.class, "--server.port=0", "--management.server.port=0")) {
            int port = Integer.parseInt(application.getEnvironment().getRequiredProperty("local.server.port"));
            load(port, PLANS, 4, 2 * SECONDS, 0.0);
            load(port, StoredAnswers.PATH, 4, 2 * SECONDS, 0.0);
            long failures = 0;
            for (int connections : new int[] {1, 8}) {
                List<Double> plans = new ArrayList<>();
                List<Double> stored = new ArrayList<>();
                for (int round = 0; round < ROUNDS; round++) {
                    double[] plan = load(port, PLANS, connections, SECONDS, 0.0);
                    plans.add(plan[0]);
                    failures += (long) plan[3];
                    stored.add(load(port, StoredAnswers.PATH, connections, SECONDS, 0.0)[0]);
                }
                double capacity = median(plans);
                double[] half = load(port, PLANS, connections, 2 * SECONDS, 0.5 * capacity);
                failures += (long) half[3];
                System.out.printf(
                        "load: %d connections: %.0f plans/s, %.0f stored answers/s, ratio %.2f;"
                                + " at half load p50 %.0f us, p99 %.0f us%n",
                        connections, capacity, median(stored), capacity / median(stored), half[1], half[2]);
            }
            System.out.printf("load: %d answers other than 200%n", failures);
            assertThat(failures).isZero();
        }
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().skip(values.size() / 2).findFirst().orElseThrow();
    }

    private static double[] load(int port, String path, int connections, double seconds, double rate)
            throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        LoadGenerator.class.getName(),
                        Integer.toString(port),
                        path,
                        Integer.toString(connections),
                        Double.toString(seconds),
                        Double.toString(rate),
                        Double.toString(FROZEN))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (BufferedReader reader =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            String line = reader.readLine();
            assertThat(process.waitFor()).isZero();
            double[] figures = new double[4];
            String[] words = line.split(" ", -1);
            for (int i = 0; i < 4; i++) {
                figures[i] = Double.parseDouble(words[i]);
            }
            return figures;
        }
    }
}
