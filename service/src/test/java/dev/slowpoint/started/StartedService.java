package dev.slowpoint.started;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/**
 * The packaged service in a process of its own, as its users run it; started once for all tests that ask for it, and
 * stopped when the last of them has run.
 */
public final class StartedService implements AutoCloseable {

    /** Hands the service to tests and to their constructors. */
    public static final class Resolver implements ParameterResolver {
        @Override
        public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
            return parameter.getParameter().getType() == StartedService.class;
        }

        @Override
        public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
            return context.getRoot()
                    .getStore(ExtensionContext.Namespace.create(StartedService.class))
                    .computeIfAbsent(StartedService.class, unused -> StartedService.start(List.of()));
        }
    }

    private static final Duration LONGEST_START = Duration.ofSeconds(300);

    private final Process process;
    private final URI address;
    private final URI managementAddress;
    private final Path log;

    private StartedService(Process process, URI address, URI managementAddress, Path log) {
        this.process = process;
        this.address = address;
        this.managementAddress = managementAddress;
        this.log = log;
    }

    /** Starts the packaged service on a free port with more arguments of the command line, and waits until it is ready. */
    public static StartedService start(List<String> arguments) {
        return start(arguments, Map.of(), command -> command);
    }

    /** The same with more variables of the environment. */
    public static StartedService start(List<String> arguments, Map<String, String> environment) {
        return start(arguments, environment, command -> command);
    }

    /**
     * The same within another program.
     *
     * @param within turns its command into the one that is run, which must become that process
     */
    public static StartedService start(List<String> arguments, UnaryOperator<List<String>> within) {
        return start(arguments, Map.of(), within);
    }

    private static StartedService start(
            List<String> arguments, Map<String, String> environment, UnaryOperator<List<String>> within) {
        Path jar = jar();
        try {
            int port = freePort();
            int management = freePort();
            Path log = jar.resolveSibling("started-service-" + port + ".log");
            ProcessBuilder builder = new ProcessBuilder(within.apply(command(jar, port, management, arguments)))
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile());
            builder.environment().putAll(environment);
            StartedService service = new StartedService(
                    builder.start(),
                    URI.create((arguments.stream().anyMatch(a -> a.startsWith("--server.ssl")) ? "https" : "http")
                            + "://127.0.0.1:" + port),
                    URI.create("http://127.0.0.1:" + management),
                    log);
            service.awaitReady(log);
            return service;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What becomes of a start that is refused: the exit code and all that is said. */
    public static Command refused(List<String> arguments) {
        try {
            return Command.run(
                    jar().toAbsolutePath().getParent(), Map.of(), command(jar(), freePort(), freePort(), arguments));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path jar() {
        Path jar = Path.of(System.getProperty("service.jar", ""));
        if (!Files.isRegularFile(jar)) {
            throw new IllegalStateException("No packaged service at " + jar + "; these tests run in mvn verify");
        }
        return jar;
    }

    /** Its process. */
    public Process process() {
        return process;
    }

    /** What it wrote to its console. */
    public Path log() {
        return log;
    }

    /** Where its management answers, without a slash at the end. */
    public URI managementAddress() {
        return managementAddress;
    }

    /** Where it answers, without a slash at the end. */
    public URI address() {
        return address;
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(30, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            process.destroyForcibly();
        }
    }

    /** The program that runs this test. */
    public static String java() {
        return Path.of(System.getProperty("java.home"), "bin", "java").toString();
    }

    /** A port that was free a moment ago. */
    public static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private static List<String> command(Path jar, int port, int management, List<String> arguments) {
        List<String> command = new ArrayList<>(List.of(
                java(),
                "-XX:+UseSerialGC",
                "-jar",
                jar.toString(),
                "--server.port=" + port,
                "--management.server.port=" + management));
        command.addAll(arguments);
        return command;
    }

    private void awaitReady(Path log) throws IOException {
        HttpRequest readiness = HttpRequest.newBuilder(
                        "https".equals(address.getScheme())
                                // Its certificate is nobody's that is trusted here.
                                ? managementAddress.resolve("/actuator/health/readiness")
                                : address.resolve("/readyz"))
                .timeout(Duration.ofSeconds(5))
                .build();
        HttpClient client = HttpClient.newHttpClient();
        long begin = System.nanoTime();
        try {
            while (System.nanoTime() - begin < LONGEST_START.toNanos() && process.isAlive()) {
                if (answers(client, readiness)) {
                    return;
                }
                // Another process tells of itself in no way but this one: it has to be asked again.
                process.waitFor(50, TimeUnit.MILLISECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        close();
        throw new IllegalStateException("The service did not become ready:\n" + Files.readString(log));
    }

    private static boolean answers(HttpClient client, HttpRequest readiness) throws InterruptedException {
        try {
            return client.send(readiness, HttpResponse.BodyHandlers.discarding())
                            .statusCode()
                    == 200;
        } catch (IOException notYet) {
            return false;
        }
    }
}
