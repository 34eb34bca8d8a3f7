package dev.slowpoint.api;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/**
 * What came back for bytes that no well-behaved client would send.
 *
 * @param head status line and headers
 * @param body the rest
 */
public record RawHttp(String head, String body) {

    private static final int PATIENCE_MS = 15_000;

    /** Sends bytes and reads until the server closes. */
    public static RawHttp exchange(int port, String sent) {
        return exchange(port, sent.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Sends bytes and reads until the server closes. */
    public static RawHttp exchange(int port, byte[] sent) {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(PATIENCE_MS);
            socket.getOutputStream().write(sent);
            socket.getOutputStream().flush();
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
            int end = answer.indexOf("\r\n\r\n");
            return end < 0 ? new RawHttp(answer, "") : new RawHttp(answer.substring(0, end), answer.substring(end + 4));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Of the status line. */
    public int status() {
        return Integer.parseInt(head.substring(9, 12));
    }
}
