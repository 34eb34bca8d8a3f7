package dev.slowpoint.started;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * What a program of another process left.
 *
 * @param exitCode 0 if it says that all is well
 * @param output what it wrote, errors included
 */
public record Command(int exitCode, String output) {

    private static final Duration LONGEST = Duration.ofMinutes(10);

    /**
     * Runs a program in a folder until it ends.
     *
     * @throws IllegalStateException if it takes longer than ten minutes; it is then stopped
     */
    public static Command run(Path folder, Map<String, String> environment, List<String> words) {
        try {
            Path output = Files.createTempFile(folder, "command-", ".log");
            ProcessBuilder builder = new ProcessBuilder(words)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(output.toFile());
            builder.environment().putAll(environment);
            Process process = builder.start();
            process.getOutputStream().close();
            if (!process.waitFor(LONGEST.toSeconds(), TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException(words + " did not end:\n" + Files.readString(output));
            }
            String written = Files.readString(output, StandardCharsets.UTF_8);
            Files.delete(output);
            return new Command(process.exitValue(), written);
        } catch (IOException e) {
            throw new IllegalStateException(words + " could not be run", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
