package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.api.RawHttp;
import dev.slowpoint.started.Command;
import dev.slowpoint.started.StartedService;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.X509Certificate;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509TrustManager;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Certificates come as files, and change without a restart. */
class TlsIT {

    private static final char[] PASSWORD = "changeit".toCharArray();

    /** Takes any certificate: what is looked at is which one is shown. */
    private static final X509TrustManager ANY = new X509TrustManager() {
        @Override
        public void checkClientTrusted(X509Certificate[] chain, String type) {}

        @Override
        public void checkServerTrusted(X509Certificate[] chain, String type) {}

        @Override
        public X509Certificate[] getAcceptedIssuers() {
            return new X509Certificate[0];
        }
    };

    @TempDir
    private Path folder;

    @Test
    void a_new_certificate_is_served_without_a_restart_and_nothing_older_than_tls_1_2() throws Exception {
        BigInteger old = publish("1");
        try (StartedService service = StartedService.start(List.of(
                "--server.ssl.bundle=server",
                "--spring.ssl.bundle.pem.server.reload-on-update=true",
                "--spring.ssl.bundle.pem.server.keystore.certificate=" + folder.resolve("tls.crt"),
                "--spring.ssl.bundle.pem.server.keystore.private-key=" + folder.resolve("tls.key"),
                "--spring.ssl.bundle.watch.file.quiet-period=200ms"))) {
            int port = service.address().getPort();
            assertThat(shown(port, "TLSv1.3")).isEqualTo(old);
            assertThat(shown(port, "TLSv1.2")).isEqualTo(old);
            assertThatThrownBy(() -> shown(port, "TLSv1.1")).isInstanceOf(SSLException.class);
            BigInteger next = publish("2");
            assertThat(next).isNotEqualTo(old);
            await(port, next);
            // Files that are no certificate change nothing, and do not stand in the way of the next ones.
            Path bad = Files.createDirectory(folder.resolve("..bad"));
            Files.writeString(bad.resolve("tls.crt"), "nonsense");
            handOut(bad);
            Awaitility.await()
                    .during(2, TimeUnit.SECONDS)
                    .atMost(90, TimeUnit.SECONDS)
                    .until(() -> shown(port, "TLSv1.3").equals(next));
            await(port, publish("3"));
            assertThat(answer(port)).contains("HTTP/1.1 200", "Strict-Transport-Security: max-age=31536000");
            RawHttp plain =
                    RawHttp.exchange(port, "GET /livez HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
            assertThat(plain.status()).isEqualTo(400);
            assertThat(plain.toString()).doesNotContain("Tomcat").doesNotContain("Exception");
        }
    }

    /** A new key and certificate in a folder of their own, handed out; answers its serial number. */
    private BigInteger publish(String version) throws IOException, GeneralSecurityException {
        Path store = folder.resolve("store-" + version + ".p12");
        Command made = Command.run(
                folder,
                Map.of(),
                List.of(
                        Path.of(StartedService.java()).resolveSibling("keytool").toString(),
                        "-genkeypair",
                        "-alias",
                        "server",
                        "-keyalg",
                        "EC",
                        "-groupname",
                        "secp256r1",
                        "-dname",
                        "CN=localhost",
                        "-ext",
                        "san=dns:localhost",
                        "-validity",
                        "2",
                        "-keystore",
                        store.toString(),
                        "-storepass",
                        new String(PASSWORD)));
        assertThat(made.exitCode()).as(made.output()).isZero();
        KeyStore keys = KeyStore.getInstance(store.toFile(), PASSWORD);
        X509Certificate certificate = (X509Certificate) keys.getCertificate("server");
        Path data = Files.createDirectory(folder.resolve("..v" + version));
        pem(data.resolve("tls.crt"), "CERTIFICATE", certificate.getEncoded());
        pem(
                data.resolve("tls.key"),
                "PRIVATE KEY",
                keys.getKey("server", PASSWORD).getEncoded());
        handOut(data);
        return certificate.getSerialNumber();
    }

    /** As Kubernetes lays out a secret: the files are links through a link, and that one is swapped. */
    private void handOut(Path data) throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("..next"), data.getFileName());
        Files.move(link, folder.resolve("..data"), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        for (String file : List.of("tls.crt", "tls.key")) {
            if (!Files.isSymbolicLink(folder.resolve(file))) {
                Files.createSymbolicLink(folder.resolve(file), Path.of("..data", file));
            }
        }
    }

    private static void await(int port, BigInteger serialNumber) {
        Awaitility.await()
                .atMost(90, TimeUnit.SECONDS)
                .until(() -> shown(port, "TLSv1.3").equals(serialNumber));
    }

    private static void pem(Path file, String what, byte[] der) throws IOException {
        Files.writeString(
                file,
                "-----BEGIN " + what + "-----\n"
                        + Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII))
                                .encodeToString(der)
                        + "\n-----END " + what + "-----\n");
    }

    private static SSLSocket connect(int port, String version) throws IOException, GeneralSecurityException {
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, new TrustManager[] {ANY}, null);
        SSLSocket socket = (SSLSocket) context.getSocketFactory().createSocket("127.0.0.1", port);
        socket.setEnabledProtocols(new String[] {version});
        socket.startHandshake();
        return socket;
    }

    private static BigInteger shown(int port, String version) throws IOException, GeneralSecurityException {
        try (SSLSocket socket = connect(port, version)) {
            return ((X509Certificate) socket.getSession().getPeerCertificates()[0]).getSerialNumber();
        }
    }

    private static String answer(int port) throws IOException, GeneralSecurityException {
        try (SSLSocket socket = connect(port, "TLSv1.3")) {
            socket.getOutputStream()
                    .write("GET /livez HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"
                            .getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }
}
