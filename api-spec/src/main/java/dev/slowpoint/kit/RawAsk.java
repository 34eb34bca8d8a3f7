package dev.slowpoint.kit;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import javax.net.ssl.SSLSocketFactory;

/** Sends what no well-behaved client would, and tells the status; for a subject behind plain TCP or public TLS. */
public final class RawAsk {

    private static final int PATIENCE_MS = 15_000;

    private RawAsk() {}

    /**
     * The head and body of the answer to a request line, as they came.
     *
     * @param target what stands between method and version, as it is
     */
    public static String exchange(Subject subject, String method, String target) throws IOException {
        URI address = subject.address();
        boolean secure = "https".equals(address.getScheme());
        int port = address.getPort() >= 0 ? address.getPort() : secure ? 443 : 80;
        StringBuilder sent = new StringBuilder(method + " " + target + " HTTP/1.1\r\nHost: " + address.getHost()
                + "\r\nConnection: close\r\nAccept: application/json\r\n");
        subject.headers()
                .forEach((name, value) ->
                        sent.append(name).append(": ").append(value).append("\r\n"));
        sent.append("\r\n");
        try (Socket socket = secure
                ? SSLSocketFactory.getDefault().createSocket(address.getHost(), port)
                : new Socket(address.getHost(), port)) {
            socket.setSoTimeout(PATIENCE_MS);
            socket.getOutputStream().write(sent.toString().getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
