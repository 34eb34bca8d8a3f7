package dev.slowpoint.bench;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;

/**
 * Sends cook-plan requests over connections that stay open, and reports what came back. A process of its own, so that it does
 * not disturb what it measures; plain sockets, so that it costs little.
 *
 * <p>Arguments: port, path, connections, seconds, requests a second (zero for as many as possible), share frozen. Prints
 * requests a second, median and 99th percentile of the latency in microseconds, and the number of answers that were not 200.
 */
final class LoadGenerator {

    /** Requests on one connection: fewer than the service answers before it closes it. */
    private static final int REUSED = 5000;

    private static final int TIMEOUT_MS = 10_000;
    private static final int BODIES = 512;
    private static final String[] FOODS = {"pork-loin", "chicken-breast", "beef-sirloin", "salmon", "turkey-breast"};

    private final int port;
    private final String path;
    private final double seconds;
    private final double perConnection;
    private final byte[][] requests;

    private LoadGenerator(int port, String path, double seconds, double perConnection, double frozen) {
        this.port = port;
        this.path = path;
        this.seconds = seconds;
        this.perConnection = perConnection;
        this.requests = requests(frozen);
    }

    public static void main(String[] arguments) throws Exception {
        int connections = Integer.parseInt(arguments[2]);
        double rate = Double.parseDouble(arguments[4]);
        LoadGenerator generator = new LoadGenerator(
                Integer.parseInt(arguments[0]),
                arguments[1],
                Double.parseDouble(arguments[3]),
                rate / connections,
                Double.parseDouble(arguments[5]));
        ExecutorService threads = Executors.newFixedThreadPool(connections, work -> {
            Thread thread = new Thread(work);
            thread.setDaemon(true);
            return thread;
        });
        List<Callable<Tally>> calls = IntStream.range(0, connections)
                .mapToObj(i -> (Callable<Tally>) () -> generator.drive(i))
                .toList();
        long failures = 0;
        long answers = 0;
        long[] latencies = new long[0];
        for (Future<Tally> future : threads.invokeAll(calls)) {
            Tally tally = future.get();
            failures += tally.failures;
            answers += tally.count;
            int from = latencies.length;
            latencies = Arrays.copyOf(latencies, from + tally.count);
            System.arraycopy(tally.latencies, 0, latencies, from, tally.count);
        }
        threads.shutdown();
        Arrays.sort(latencies);
        System.out.printf(
                Locale.ROOT,
                "%.1f %d %d %d%n",
                answers / generator.seconds,
                latencies[latencies.length / 2] / 1000,
                latencies[(int) (0.99 * (latencies.length - 1))] / 1000,
                failures);
    }

    private static final class Tally {
        private long[] latencies = new long[4096];
        private int count;
        private long failures;

        void add(long nanos) {
            if (count == latencies.length) {
                latencies = Arrays.copyOf(latencies, 2 * count);
            }
            latencies[count++] = nanos;
        }
    }

    /** One connection: as fast as answers come, or at moments fixed beforehand, from which latency is then counted. */
    private Tally drive(int connection) throws IOException, InterruptedException {
        Tally tally = new Tally();
        long begin = System.nanoTime();
        long end = begin + (long) (seconds * 1e9);
        double interval = perConnection > 0.0 ? 1e9 / perConnection : 0.0;
        int sent = 0;
        while (true) {
            try (Socket socket = new Socket("localhost", port)) {
                socket.setTcpNoDelay(true);
                socket.setSoTimeout(TIMEOUT_MS);
                OutputStream out = socket.getOutputStream();
                InputStream in = new BufferedInputStream(socket.getInputStream(), 1 << 16);
                for (int onThis = 0; onThis < REUSED; onThis++) {
                    long due = perConnection > 0.0 ? begin + (long) (sent * interval) : System.nanoTime();
                    if (due >= end) {
                        return tally;
                    }
                    while (System.nanoTime() < due) {
                        Thread.sleep(0, 100_000);
                    }
                    out.write(requests[(connection * 131 + sent) % BODIES]);
                    out.flush();
                    if (status(in) != 200) {
                        tally.failures++;
                    }
                    tally.add(System.nanoTime() - due);
                    sent++;
                }
            }
        }
    }

    /** Reads an answer to its end and tells its status. */
    private static int status(InputStream in) throws IOException {
        String first = line(in);
        int length = 0;
        for (String header = line(in); !header.isEmpty(); header = line(in)) {
            if (header.regionMatches(true, 0, "Content-Length:", 0, 15)) {
                length = Integer.parseInt(header.substring(15).trim());
            }
        }
        in.skipNBytes(length);
        return Integer.parseInt(first.substring(9, 12));
    }

    private static String line(InputStream in) throws IOException {
        StringBuilder text = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0) {
                throw new IOException("the connection was closed");
            }
            if (c != '\r') {
                text.append((char) c);
            }
        }
        return text.toString();
    }

    private byte[][] requests(double frozen) {
        Random random = new Random(20261125);
        byte[][] made = new byte[BODIES][];
        for (int i = 0; i < BODIES; i++) {
            String body = String.format(
                    Locale.ROOT,
                    "{\"food\":{\"id\":\"%s\"},\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":%.1f},"
                            + "\"start\":{\"temperatureC\":%d},\"surroundings\":{\"bath\":{\"setpointC\":%.1f}}}",
                    FOODS[random.nextInt(FOODS.length)],
                    random.nextDouble(12.0, 60.0),
                    random.nextDouble() < frozen ? -18 : random.nextInt(1, 8),
                    random.nextDouble(58.0, 68.0));
            byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
            String head = "POST " + path + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                    + "Accept: application/json\r\nContent-Length: " + bytes.length + "\r\n\r\n";
            byte[] start = head.getBytes(StandardCharsets.US_ASCII);
            made[i] = Arrays.copyOf(start, start.length + bytes.length);
            System.arraycopy(bytes, 0, made[i], start.length, bytes.length);
        }
        return made;
    }
}
