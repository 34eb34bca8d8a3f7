package dev.slowpoint.ops;

import java.io.IOException;
import java.io.InputStream;
import java.net.HttpURLConnection;
import java.net.Proxy;
import java.net.URI;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.security.cert.X509Certificate;
import java.util.Map;
import javax.net.ssl.HttpsURLConnection;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509TrustManager;

/**
 * Asks the service of this very container whether it is ready: a program of its own, for images that have neither a shell
 * nor curl. Ends with 0 when it is, otherwise with 1 and the reason on standard error. It loads nothing but the JDK.
 */
public final class HealthProbe {

    private static final int LONGEST_MS = 3000;
    private static final int OK = 200;

    private HealthProbe() {}

    /** Asks where the environment says that the service listens; the names are those that the service reads itself. */
    public static void main(String[] arguments) {
        URI address = address(System.getenv());
        String fault;
        try {
            int status = ask(address);
            fault = status == OK ? "" : "status " + status;
        } catch (IOException | GeneralSecurityException e) {
            fault = e.toString();
        }
        if (!fault.isEmpty()) {
            System.err.println(address + ": " + fault);
            System.exit(1);
        }
    }

    /** The readiness probe on the main port, by TLS where the service has a bundle for it. */
    static URI address(Map<String, String> environment) {
        String scheme = environment.getOrDefault("SERVER_SSL_BUNDLE", "").isEmpty() ? "http" : "https";
        return URI.create(scheme + "://127.0.0.1:" + environment.getOrDefault("SERVER_PORT", "8080") + "/readyz");
    }

    /** The status of the answer. */
    static int ask(URI address) throws IOException, GeneralSecurityException {
        HttpURLConnection connection = (HttpURLConnection) address.toURL().openConnection(Proxy.NO_PROXY);
        try {
            connection.setConnectTimeout(LONGEST_MS);
            connection.setReadTimeout(LONGEST_MS);
            if (connection instanceof HttpsURLConnection secured) {
                secured.setSSLSocketFactory(anyCertificate().getSocketFactory());
                secured.setHostnameVerifier((host, session) -> true);
            }
            int status = connection.getResponseCode();
            try (InputStream body = status < 400 ? connection.getInputStream() : connection.getErrorStream()) {
                if (body != null) {
                    body.readAllBytes();
                }
            }
            return status;
        } finally {
            connection.disconnect();
        }
    }

    /** The certificate names the service for its clients, not the loopback address; nothing secret is sent or believed. */
    private static SSLContext anyCertificate() throws GeneralSecurityException {
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, new TrustManager[] {new Unchecked()}, new SecureRandom());
        return context;
    }

    private static final class Unchecked implements X509TrustManager {
        @Override
        public void checkClientTrusted(X509Certificate[] chain, String authType) {}

        @Override
        public void checkServerTrusted(X509Certificate[] chain, String authType) {}

        @Override
        public X509Certificate[] getAcceptedIssuers() {
            return new X509Certificate[0];
        }
    }
}
