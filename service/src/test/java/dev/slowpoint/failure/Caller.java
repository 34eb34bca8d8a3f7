package dev.slowpoint.failure;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Asks the service as a client would, or byte by byte as none should. */
final class Caller {

    static final int PATIENCE_MS = 30_000;

    private static final HttpClient CLIENT = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();

    private Caller() {}

    /** A cook plan of a size of its own, so that answers cannot be mixed up unseen. */
    static String plan(int number) {
        return String.format(
                Locale.ROOT,
                "{\"food\":{\"id\":\"pork-loin\"},\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":%.1f},"
                        + "\"start\":{\"temperatureC\":4},\"surroundings\":{\"bath\":{\"setpointC\":60}}}",
                20.0 + 0.1 * (number % 250));
    }

    /** The head of a request with a body of that length. */
    static String head(String path, String type, int length) {
        return "POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: " + type + "\r\nContent-Length: "
                + length + "\r\n\r\n";
    }

    static HttpResponse<byte[]> post(URI service, String path, String body) throws IOException, InterruptedException {
        return CLIENT.send(
                HttpRequest.newBuilder(service.resolve(path))
                        .timeout(Duration.ofMillis(PATIENCE_MS))
                        .header("Content-Type", "application/json")
                        .POST(HttpRequest.BodyPublishers.ofString(body))
                        .build(),
                HttpResponse.BodyHandlers.ofByteArray());
    }

    /** A connection that gives up after a while. */
    static Socket connect(URI service) throws IOException {
        return connect(service, 0);
    }

    /** A connection that can hold so few bytes that were not read. */
    static Socket connect(URI service, int receiveBuffer) throws IOException {
        Socket socket = new Socket();
        if (receiveBuffer > 0) {
            socket.setReceiveBufferSize(receiveBuffer);
        }
        socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), service.getPort()), PATIENCE_MS);
        socket.setSoTimeout(PATIENCE_MS);
        return socket;
    }

    static void send(Socket socket, String text) throws IOException {
        OutputStream out = socket.getOutputStream();
        out.write(text.getBytes(StandardCharsets.UTF_8));
        out.flush();
    }

    /** All that comes until the service closes the connection. */
    static String rest(Socket socket) throws IOException {
        return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    /** The next line without its end. */
    static String line(InputStream in) throws IOException {
        List<Integer> bytes = new ArrayList<>();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0) {
                throw new IOException("the connection was closed after " + bytes.size() + " bytes of a line");
            }
            bytes.add(c);
        }
        byte[] line = new byte[bytes.size()];
        for (int i = 0; i < line.length; i++) {
            line[i] = bytes.get(i).byteValue();
        }
        return new String(line, StandardCharsets.UTF_8).stripTrailing();
    }
}
