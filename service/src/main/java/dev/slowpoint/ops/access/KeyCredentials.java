package dev.slowpoint.ops.access;

import dev.slowpoint.ops.StartRefused;
import io.github.bucket4j.TimeMeter;
import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Knows callers by their keys. The file is read again and again, by its content: what hands it out may swap a link or a
 * folder, and tells nobody. A file that cannot be taken changes nothing: the keys that were read before stay good.
 */
final class KeyCredentials implements Credentials, AutoCloseable {

    static final String PROPERTY = "slowpoint.access.keys-file";

    /** Keys that are good now. */
    static final String KEYS = "slowpoint.access.keys";

    /** Looks at a file that could not be taken. */
    static final String RELOAD_FAILED = "slowpoint.access.reload.failed";

    /** Requests of clients, by client and whether they were taken on. */
    static final String CLIENT_REQUESTS = "slowpoint.client.requests";

    private static final Logger LOG = LoggerFactory.getLogger(KeyCredentials.class);

    /** Keys and what their clients have asked of late. */
    private record State(byte[] content, KeyRing ring, Map<String, Account> accounts) {}

    private final Path file;
    private final InstantSource clock;
    private final TimeMeter time;
    private final MeterRegistry registry;
    private final Counter reloadFailed;
    private final ScheduledExecutorService watch;
    private volatile State state;
    private byte @Nullable [] refused;

    /**
     * Reads the file, and goes on to read it.
     *
     * @throws StartRefused if the file cannot be taken
     */
    KeyCredentials(Path file, Duration every, InstantSource clock, TimeMeter time, MeterRegistry registry) {
        this.file = file;
        this.clock = clock;
        this.time = time;
        this.registry = registry;
        this.reloadFailed = Counter.builder(RELOAD_FAILED)
                .description("Looks at the file of keys that could not be taken; the keys read before stay good")
                .register(registry);
        try {
            byte[] content = content();
            this.state = state(content, Map.of());
        } catch (IOException | KeyFileFault e) {
            throw new StartRefused(
                    "The file of keys " + file + " cannot be taken: " + reason(e),
                    "Mend the file that " + PROPERTY + " names; the guide to access tells its format.");
        }
        Gauge.builder(KEYS, this, self -> (double) self.state.ring().goodAt(clock.instant()))
                .description("Keys that are good now")
                .register(registry);
        this.watch = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "keys");
            thread.setDaemon(true);
            return thread;
        });
        watch.scheduleWithFixedDelay(this::look, every.toMillis(), every.toMillis(), TimeUnit.MILLISECONDS);
    }

    @Override
    public Identity of(String shown) {
        State now = state;
        Key key = now.ring().find(shown);
        Account account = now.accounts().get(key.client());
        if (KeyRing.isNobody(key) || account == null) {
            return new Identity.Unknown(Key.hasForm(shown) ? Identity.Reason.UNKNOWN : Identity.Reason.MALFORMED);
        }
        return key.goodAt(clock.instant())
                ? new Identity.Known(account)
                : new Identity.Unknown(Identity.Reason.NOT_NOW);
    }

    /** Reads the file again, and takes it if it can be taken. */
    void look() {
        byte[] content = null;
        try {
            content = content();
            if (Arrays.equals(content, state.content())) {
                refused = null;
                return;
            }
            State next = state(content, state.accounts());
            Map<String, Account> before = state.accounts();
            state = next;
            refused = null;
            before.keySet().stream()
                    .filter(client -> !next.accounts().containsKey(client))
                    .forEach(this::forget);
            LOG.info(
                    "took {} clients with {} good keys from {}",
                    next.accounts().size(),
                    next.ring().goodAt(clock.instant()),
                    file);
        } catch (IOException | KeyFileFault | RuntimeException e) {
            reloadFailed.increment();
            // An empty array stands for a file that cannot be read at all.
            byte[] now = content == null ? new byte[0] : content;
            if (!Arrays.equals(now, refused)) {
                LOG.error("The file of keys {} cannot be taken, the keys before stay good: {}", file, reason(e));
            }
            refused = now;
        }
    }

    private byte[] content() throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(KeyFile.LONGEST + 1);
        }
    }

    private static String reason(Exception e) {
        return e instanceof KeyFileFault
                ? String.valueOf(e.getMessage())
                : e.getClass().getSimpleName();
    }

    /** Who was known before and may ask as much goes on where they were: a new file gives nobody a full bucket. */
    private State state(byte[] content, Map<String, Account> before) throws KeyFileFault {
        KeyRing ring = KeyFile.read(content);
        Map<String, Account> accounts = new HashMap<>();
        ring.clients().forEach((client, allowance) -> {
            Account old = before.get(client);
            accounts.put(
                    client,
                    old != null && old.allowance().equals(allowance)
                            ? old
                            : new Account(allowance, time, tally(client)));
        });
        return new State(content, ring, Map.copyOf(accounts));
    }

    private Account.Tally tally(String client) {
        Counter takenOn = counter(client, "taken");
        Counter sentAway = counter(client, "refused");
        return yes -> (yes ? takenOn : sentAway).increment();
    }

    private Counter counter(String client, String outcome) {
        return Counter.builder(CLIENT_REQUESTS)
                .description("Requests of clients that showed a key, by whether they were within their limits")
                .tag("client", client)
                .tag("outcome", outcome)
                .register(registry);
    }

    private void forget(String client) {
        registry.remove(counter(client, "taken"));
        registry.remove(counter(client, "refused"));
    }

    @Override
    public void close() {
        watch.shutdownNow();
    }
}
