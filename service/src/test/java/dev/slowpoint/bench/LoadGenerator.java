package dev.slowpoint.bench;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
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
 * Sends cook-plan requests over connections that stay open, and tells what came back. A process of its own, so that it does not
 * disturb what it measures; plain sockets, so that it costs little.
 *
 * <p>Arguments: port, path, connections, seconds, requests a second (zero for as many as possible), share frozen. With a rate,
 * requests are due at moments fixed beforehand, and their latency counts from then: a service that stands still for a while is
 * charged for all that should have been sent meanwhile.
 *
 * <p>Prints one line of {@code name=value}: answers with 200 a second, their latency from when they were due (p50, p99, most)
 * and the 99th percentile from when they were sent, all in microseconds; how many were answered with 200, with 503, with
 * anything else, and not at all; the 99th percentile of those with 503; the share of 503 that said when to come again; and the
 * time of the processors that this program took itself.
 */
final class LoadGenerator {

    /** Requests on one connection: fewer than the service answers before it closes it. */
    private static final int REUSED = 5000;

    private static final int TIMEOUT_MS = 30_000;
    private static final int BODIES = 512;
    private static final String[] FOODS = {"pork-loin", "chicken-breast", "beef-sirloin", "salmon", "turkey-breast"};

    private final int port;
    private final double seconds;
    private final double perConnection;
    private final byte[][] requests;

    private LoadGenerator(int port, double seconds, double perConnection, byte[][] requests) {
        this.port = port;
        this.seconds = seconds;
        this.perConnection = perConnection;
        this.requests = requests;
    }

    public static void main(String[] arguments) throws Exception {
        int connections = Integer.parseInt(arguments[2]);
        LoadGenerator generator = new LoadGenerator(
                Integer.parseInt(arguments[0]),
                Double.parseDouble(arguments[3]),
                Double.parseDouble(arguments[4]) / connections,
                requests(arguments[1], Double.parseDouble(arguments[5])));
        ExecutorService threads = Executors.newFixedThreadPool(connections, work -> {
            Thread thread = new Thread(work);
            thread.setDaemon(true);
            return thread;
        });
        List<Callable<Tally>> calls = IntStream.range(0, connections)
                .mapToObj(i -> (Callable<Tally>) () -> generator.drive(i, connections))
                .toList();
        List<Tally> tallies = new ArrayList<>();
        for (Future<Tally> future : threads.invokeAll(calls)) {
            tallies.add(future.get());
        }
        threads.shutdown();
        long[] due = sorted(tallies, tally -> tally.due);
        long[] sent = sorted(tallies, tally -> tally.sent);
        long[] refused = sorted(tallies, tally -> tally.refused);
        long told = tallies.stream().mapToLong(tally -> tally.told).sum();
        System.out.printf(
                Locale.ROOT,
                "rate=%.1f p50=%d p99=%d max=%d sentP99=%d ok=%d refused=%d other=%d broken=%d refusedP99=%d told=%.2f"
                        + " generatorCpuMs=%d%n",
                due.length / generator.seconds,
                at(due, 0.5),
                at(due, 0.99),
                at(due, 1.0),
                at(sent, 0.99),
                due.length,
                refused.length,
                tallies.stream().mapToLong(tally -> tally.other).sum(),
                tallies.stream().mapToLong(tally -> tally.broken).sum(),
                at(refused, 0.99),
                refused.length == 0 ? 1.0 : (double) told / refused.length,
                ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                                .getProcessCpuTime()
                        / 1_000_000L);
    }

    /** Microseconds below which a share of sorted nanoseconds lies; zero if there are none. */
    private static long at(long[] sorted, double share) {
        return sorted.length == 0 ? 0 : sorted[(int) (share * (sorted.length - 1))] / 1000;
    }

    private interface Part {
        Nanos of(Tally tally);
    }

    private static long[] sorted(List<Tally> tallies, Part part) {
        return tallies.stream()
                .flatMapToLong(tally -> Arrays.stream(part.of(tally).all()))
                .sorted()
                .toArray();
    }

    private static final class Nanos {
        private long[] values = new long[4096];
        private int count;

        void add(long nanos) {
            if (count == values.length) {
                values = Arrays.copyOf(values, 2 * count);
            }
            values[count++] = nanos;
        }

        long[] all() {
            return Arrays.copyOf(values, count);
        }
    }

    private static final class Tally {
        private final Nanos due = new Nanos();
        private final Nanos sent = new Nanos();
        private final Nanos refused = new Nanos();
        private long told;
        private long other;
        private long broken;

        void add(Answer answer, long due, long sent) {
            long now = System.nanoTime();
            if (answer.status == 200) {
                this.due.add(now - due);
                this.sent.add(now - sent);
            } else if (answer.status == 503) {
                refused.add(now - sent);
                told += answer.told ? 1 : 0;
            } else {
                other++;
            }
        }
    }

    /** One connection, reopened when it is closed. */
    private Tally drive(int connection, int connections) throws InterruptedException {
        Tally tally = new Tally();
        long begin = System.nanoTime();
        long end = begin + (long) (seconds * 1e9);
        double interval = perConnection > 0.0 ? 1e9 / perConnection : 0.0;
        // Connections take turns, so that requests are due one by one and not all at once.
        long turn = (long) (interval * connection / connections);
        int sent = 0;
        while (true) {
            try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
                socket.setTcpNoDelay(true);
                socket.setSoTimeout(TIMEOUT_MS);
                OutputStream out = socket.getOutputStream();
                InputStream in = new BufferedInputStream(socket.getInputStream(), 1 << 14);
                boolean open = true;
                for (int onThis = 0; onThis < REUSED && open; onThis++) {
                    long due = interval > 0.0 ? begin + turn + (long) (sent * interval) : System.nanoTime();
                    if (due >= end || System.nanoTime() >= end) {
                        return tally;
                    }
                    long early = due - System.nanoTime();
                    if (early > 0) {
                        Thread.sleep(early / 1_000_000L, (int) (early % 1_000_000L));
                    }
                    long now = System.nanoTime();
                    sent++;
                    out.write(requests[(connection * 131 + sent) % BODIES]);
                    out.flush();
                    Answer answer = Answer.read(in);
                    tally.add(answer, due, now);
                    open = answer.open;
                }
            } catch (IOException gone) {
                tally.broken++;
                if (System.nanoTime() >= end) {
                    return tally;
                }
                Thread.sleep(20);
            }
        }
    }

    /** What an answer said, read to its end. */
    private record Answer(int status, boolean open, boolean told) {

        static Answer read(InputStream in) throws IOException {
            String first = line(in);
            int length = 0;
            boolean open = true;
            boolean told = false;
            for (String header = line(in); !header.isEmpty(); header = line(in)) {
                if (header.regionMatches(true, 0, "Content-Length:", 0, 15)) {
                    length = Integer.parseInt(header.substring(15).trim());
                } else if (header.regionMatches(true, 0, "Connection: close", 0, 17)) {
                    open = false;
                } else if (header.regionMatches(true, 0, "Retry-After:", 0, 12)) {
                    told = true;
                }
            }
            in.skipNBytes(length);
            return new Answer(Integer.parseInt(first.substring(9, 12)), open, told);
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
    }

    /** Requests of the kind that people send most, always the same ones. */
    static byte[][] requests(String path, double frozen) {
        Random random = new Random(20261125);
        byte[][] made = new byte[BODIES][];
        for (int i = 0; i < BODIES; i++) {
            byte[] bytes = body(random, frozen).getBytes(StandardCharsets.UTF_8);
            String head = "POST " + path + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                    + "Accept: application/json\r\nContent-Length: " + bytes.length + "\r\n\r\n";
            byte[] start = head.getBytes(StandardCharsets.US_ASCII);
            made[i] = Arrays.copyOf(start, start.length + bytes.length);
            System.arraycopy(bytes, 0, made[i], start.length, bytes.length);
        }
        return made;
    }

    private static String body(Random random, double frozen) {
        return String.format(
                Locale.ROOT,
                "{\"food\":{\"id\":\"%s\"},\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":%.1f},"
                        + "\"start\":{\"temperatureC\":%d},\"surroundings\":{\"bath\":{\"setpointC\":%.1f}}}",
                FOODS[random.nextInt(FOODS.length)],
                random.nextDouble(12.0, 60.0),
                random.nextDouble() < frozen ? -18 : random.nextInt(1, 8),
                random.nextDouble(58.0, 68.0));
    }
}
