package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HealthProbeTest {

    @Test
    @DisplayName("It asks where the settings of the service say that it listens")
    void address() {
        assertThat(HealthProbe.address(Map.of())).isEqualTo(URI.create("http://127.0.0.1:8080/readyz"));
        assertThat(HealthProbe.address(Map.of("SERVER_PORT", "8443", "SERVER_SSL_BUNDLE", "server")))
                .isEqualTo(URI.create("https://127.0.0.1:8443/readyz"));
        assertThat(HealthProbe.address(Map.of("SERVER_SSL_BUNDLE", "")))
                .isEqualTo(URI.create("http://127.0.0.1:8080/readyz"));
    }

    @ParameterizedTest
    @ValueSource(ints = {200, 503})
    @DisplayName("It reads the status, good or bad")
    void status(int status) throws Exception {
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        assertThat(statusOf(server, "http", status)).isEqualTo(status);
    }

    @Test
    @DisplayName("It asks by TLS, whatever name the certificate has")
    void tls(@TempDir Path folder) throws Exception {
        HttpsServer server = HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setHttpsConfigurator(new HttpsConfigurator(certified(folder)));
        assertThat(statusOf(server, "https", 200)).isEqualTo(200);
    }

    @Test
    @DisplayName("Where nothing listens it fails")
    void nothing() throws Exception {
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        int port = server.getAddress().getPort();
        server.start();
        server.stop(0);
        assertThatThrownBy(() -> HealthProbe.ask(URI.create("http://127.0.0.1:" + port + "/readyz")))
                .isInstanceOf(ConnectException.class);
    }

    private static int statusOf(HttpServer server, String scheme, int status) throws Exception {
        server.createContext("/readyz", exchange -> {
            exchange.sendResponseHeaders(status, -1);
            exchange.close();
        });
        server.start();
        try {
            return HealthProbe.ask(
                    URI.create(scheme + "://127.0.0.1:" + server.getAddress().getPort() + "/readyz"));
        } finally {
            server.stop(0);
        }
    }

    /** A certificate for another name, signed by nobody. */
    private static SSLContext certified(Path folder) throws Exception {
        Path file = folder.resolve("store.p12");
        Process keytool = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-alias",
                        "one",
                        "-keyalg",
                        "EC",
                        "-dname",
                        "CN=slowpoint.example.org",
                        "-storetype",
                        "PKCS12",
                        "-storepass",
                        "changeit",
                        "-keystore",
                        file.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("keytool.log").toFile())
                .start();
        assertThat(keytool.waitFor(60, TimeUnit.SECONDS)).isTrue();
        KeyStore store = KeyStore.getInstance("PKCS12");
        try (InputStream bytes = Files.newInputStream(file)) {
            store.load(bytes, "changeit".toCharArray());
        }
        KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        keys.init(store, "changeit".toCharArray());
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(keys.getKeyManagers(), null, null);
        return context;
    }
}
