package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.Command;
import dev.slowpoint.started.StartedService;
import io.restassured.RestAssured;
import java.io.IOException;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.SocketException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The packaged service lets in whom it should, and does not start where it would let in anybody. */
@ExtendWith(StartedService.Resolver.class)
class AccessIT {

    private static final String OLD = Keys.key(21);
    private static final String NEW = Keys.key(22);
    private static final String MAY = "500,5000,16,,";

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--server.address=0.0.0.0",
                "--management.server.address=0.0.0.0",
                "--slowpoint.access.mode=opne",
                "--slowpoint.access.mode=keys",
                "--slowpoint.access.mode=jwt"
            })
    void a_start_that_would_let_in_anybody_is_refused_with_what_to_do(String argument) {
        Command refused = StartedService.refused(List.of(argument));
        assertThat(refused.exitCode()).isEqualTo(1);
        assertThat(refused.output())
                .contains("APPLICATION FAILED TO START", "Action:")
                .contains(argument.contains("address") ? "slowpoint.access.mode" : "slowpoint.access", "Set ")
                .doesNotContain("\tat ");
    }

    @Test
    void a_broken_file_of_keys_stops_the_start_with_line_and_column() throws IOException {
        Path file = Files.writeString(folder.resolve("keys.csv"), Keys.file(Keys.line("hut", OLD, "5,20,zero,,")));
        Command refused =
                StartedService.refused(List.of("--slowpoint.access.mode=keys", "--slowpoint.access.keys-file=" + file));
        assertThat(refused.exitCode()).isEqualTo(1);
        assertThat(refused.output())
                .contains(file + " cannot be taken: line 2, column atOnce")
                .doesNotContain("\tat ");
    }

    @Test
    void in_the_open_mode_only_this_machine_is_heard(StartedService service) throws IOException {
        for (URI address : List.of(service.address(), service.managementAddress())) {
            Optional<InetAddress> outside = outside();
            if (outside.isPresent()) {
                assertThat(connects(outside.get(), address.getPort()))
                        .as("%s", address)
                        .isFalse();
            }
            assertThat(connects(InetAddress.getLoopbackAddress(), address.getPort()))
                    .isTrue();
        }
    }

    /** Keys handed out as a container platform does it: the folder behind a link is swapped. */
    @Test
    void keys_change_without_a_restart_and_a_broken_file_changes_nothing() throws IOException {
        publish("1", Keys.file(Keys.line("hut", OLD, MAY)));
        try (StartedService service = StartedService.start(List.of(
                "--slowpoint.access.mode=keys",
                "--slowpoint.access.keys-file=" + folder.resolve("data").resolve("keys.csv"),
                "--slowpoint.access.keys-read-every=100ms"))) {
            assertThat(status(service, OLD)).isEqualTo(200);
            assertThat(status(service, NEW)).isEqualTo(401);
            publish("2", Keys.file(Keys.line("hut", OLD, MAY), Keys.line("hut", NEW, MAY)));
            await(service, NEW, 200);
            assertThat(status(service, OLD)).isEqualTo(200);
            publish("3", "nonsense");
            Awaitility.await()
                    .atMost(60, TimeUnit.SECONDS)
                    .until(() -> RestAssured.get(service.managementAddress().resolve("/actuator/prometheus"))
                            .asString()
                            .lines()
                            .anyMatch(line ->
                                    line.startsWith("slowpoint_access_reload_failed_total") && !line.endsWith(" 0.0")));
            assertThat(status(service, OLD)).isEqualTo(200);
            publish("4", Keys.file(Keys.line("hut", NEW, MAY)));
            await(service, OLD, 401);
            assertThat(status(service, NEW)).isEqualTo(200);
            smoke(service, NEW);
        }
    }

    /** The kit takes its credentials from the environment, where no list of processes shows them. */
    private void smoke(StartedService service, String key) {
        Command kit = Command.run(
                folder,
                Map.of("SLOWPOINT_KIT_AUTH", "Bearer " + key),
                List.of(
                        StartedService.java(),
                        "-jar",
                        Path.of(System.getProperty("kit.jar")).toAbsolutePath().toString(),
                        "--base-url",
                        service.address().toString(),
                        "--tags",
                        "smoke",
                        "--report",
                        folder.resolve("report").toString()));
        assertThat(kit.exitCode()).as(kit.output()).isZero();
        assertThat(kit.output()).doesNotContain(key);
    }

    private void publish(String version, String content) throws IOException {
        Path data = Files.createDirectory(folder.resolve("v" + version));
        Files.writeString(data.resolve("keys.csv"), content);
        Path link = Files.createSymbolicLink(folder.resolve("next"), data);
        Files.move(link, folder.resolve("data"), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    private static void await(StartedService service, String key, int status) {
        Awaitility.await().atMost(60, TimeUnit.SECONDS).until(() -> status(service, key) == status);
    }

    private static int status(StartedService service, String key) {
        return RestAssured.given()
                .header("Authorization", "Bearer " + key)
                .get(service.address().resolve("/v1/warnings"))
                .statusCode();
    }

    private static Optional<InetAddress> outside() throws SocketException {
        return NetworkInterface.networkInterfaces()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(address -> !address.isLoopbackAddress() && !address.isLinkLocalAddress())
                .findFirst();
    }

    private static boolean connects(InetAddress address, int port) throws IOException {
        try (Socket socket = new Socket(address, port)) {
            return socket.isConnected();
        } catch (ConnectException refused) {
            return false;
        }
    }
}
