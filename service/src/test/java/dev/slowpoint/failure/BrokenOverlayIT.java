package dev.slowpoint.failure;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.StartedService;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged service refuses to start from a broken overlay, and says why in one message. */
class BrokenOverlayIT {

    private static final Path EXAMPLE = Path.of("src/main/guide/overlay-example");

    @Test
    void a_fault_stops_the_start_with_the_place_of_the_fault(@TempDir Path folder) throws Exception {
        for (String file : new String[] {"overlay.csv", "foods.csv"}) {
            String text = Files.readString(EXAMPLE.resolve(file));
            Files.writeString(folder.resolve(file), text.replace(",pork,", ",beast,"));
        }
        Path log = folder.resolveSibling(folder.getFileName() + ".log");
        Process process = start(folder, log);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        String said = Files.readString(log);
        assertThat(process.exitValue()).as(said).isEqualTo(1);
        assertThat(said)
                .contains("The overlay in " + folder, "overlay/foods.csv line 2, column group: holds 'beast'")
                .doesNotContain("\tat ");
        Files.delete(log);
    }

    private static Process start(Path folder, Path log) throws IOException {
        return new ProcessBuilder(
                        StartedService.java(),
                        "-XX:+UseSerialGC",
                        "-jar",
                        System.getProperty("service.jar"),
                        "--server.port=" + StartedService.freePort(),
                        "--management.server.port=" + StartedService.freePort(),
                        "--slowpoint.overlay.directory=" + folder)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
    }
}
