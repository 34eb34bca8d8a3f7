package dev.slowpoint.kit;

import io.restassured.RestAssured;
import io.restassured.config.DecoderConfig;
import io.restassured.config.EncoderConfig;
import io.restassured.config.HttpClientConfig;
import io.restassured.config.RedirectConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.config.SSLConfig;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assumptions;

/**
 * The server under test, and all that is known of it: the one place from which requests are sent.
 *
 * <p>Kept over the wire of JUnit's configuration parameters, so that a run needs nothing global.
 */
public final class Subject {

    private static final String PREFIX = "slowpoint.kit.";
    private static final String HEADER_SEPARATOR = ": ";

    private final URI address;
    private final Map<String, String> headers;
    private final Set<String> operations;
    private final long seed;
    private final int rounds;
    private final RestAssuredConfig config;
    private final Map<String, Answer> answers = new HashMap<>();
    private @Nullable Exchange last;

    private Subject(
            URI address,
            Map<String, String> headers,
            Set<String> operations,
            long seed,
            int rounds,
            RestAssuredConfig config) {
        this.address = address;
        this.headers = headers;
        this.operations = operations;
        this.seed = seed;
        this.rounds = rounds;
        this.config = config;
    }

    /**
     * What a run of the kit is told of its subject.
     *
     * @param address where it answers; a path before {@code /v1} may stand in it
     * @param headers sent with every request, by name
     * @param operations the operations it offers, by {@code operationId}; all where empty
     * @param timeout for a connection and for each answer
     * @param trusted certificates in PEM that are trusted instead of those of the Java runtime
     * @param seed of generated requests
     * @param rounds generated requests for each requirement that generates some
     */
    public record Terms(
            URI address,
            Map<String, String> headers,
            Set<String> operations,
            Duration timeout,
            Optional<Path> trusted,
            long seed,
            int rounds) {

        public Terms {
            headers = Map.copyOf(headers);
            operations = Set.copyOf(operations);
        }

        /** A subject of which nothing is known but where it answers. */
        public static Terms of(URI address) {
            return new Terms(address, Map.of(), Set.of(), Duration.ofSeconds(60), Optional.empty(), 1, 12);
        }

        Map<String, String> asParameters() {
            Map<String, String> parameters = new TreeMap<>();
            parameters.put(PREFIX + "address", address.toString().replaceAll("/+$", ""));
            parameters.put(PREFIX + "operations", String.join(",", operations));
            parameters.put(PREFIX + "timeoutMs", Long.toString(timeout.toMillis()));
            trusted.ifPresent(file -> parameters.put(PREFIX + "trusted", file.toString()));
            parameters.put(PREFIX + "seed", Long.toString(seed));
            parameters.put(PREFIX + "rounds", Integer.toString(rounds));
            parameters.put(
                    PREFIX + "headers",
                    headers.entrySet().stream()
                            .map(header -> header.getKey() + HEADER_SEPARATOR + header.getValue())
                            .collect(Collectors.joining("\n")));
            return parameters;
        }
    }

    /** The subject that the terms speak of. */
    public static Subject of(Terms terms) {
        Map<String, String> parameters = terms.asParameters();
        return of(key -> Optional.ofNullable(parameters.get(key)));
    }

    /** Reads back what {@link Terms#asParameters()} wrote. */
    static Subject of(Function<String, Optional<String>> parameters) {
        Map<String, String> headers = new TreeMap<>();
        told(parameters, "headers").lines().forEach(line -> {
            int end = line.indexOf(HEADER_SEPARATOR);
            headers.put(line.substring(0, end), line.substring(end + HEADER_SEPARATOR.length()));
        });
        return new Subject(
                URI.create(told(parameters, "address")),
                headers,
                Set.copyOf(words(told(parameters, "operations"))),
                Long.parseLong(told(parameters, "seed")),
                Integer.parseInt(told(parameters, "rounds")),
                config(
                        Integer.parseInt(told(parameters, "timeoutMs")),
                        parameters.apply(PREFIX + "trusted").map(Path::of)));
    }

    /** The words of a list with commas between them; none of the empty text. */
    static List<String> words(String list) {
        return list.isBlank() ? List.of() : List.of(list.strip().split("\\s*,\\s*", -1));
    }

    private static String told(Function<String, Optional<String>> parameters, String name) {
        return parameters
                .apply(PREFIX + name)
                .orElseThrow(() -> new IllegalStateException("The kit was started without " + PREFIX + name));
    }

    private static RestAssuredConfig config(int timeoutMs, Optional<Path> trusted) {
        RestAssuredConfig config = RestAssuredConfig.config()
                .decoderConfig(DecoderConfig.decoderConfig().noContentDecoders())
                .encoderConfig(EncoderConfig.encoderConfig().appendDefaultContentCharsetToContentTypeIfUndefined(false))
                .redirect(RedirectConfig.redirectConfig().followRedirects(false))
                .httpClient(HttpClientConfig.httpClientConfig()
                        .reuseHttpClientInstance()
                        .setParam("http.connection.timeout", timeoutMs)
                        .setParam("http.socket.timeout", timeoutMs));
        return trusted.map(file -> config.sslConfig(
                        SSLConfig.sslConfig().trustStore(trusting(file)).allowAllHostnames()))
                .orElse(config);
    }

    private static KeyStore trusting(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
            store.load(null, null);
            int count = 0;
            for (Certificate certificate :
                    CertificateFactory.getInstance("X.509").generateCertificates(in)) {
                store.setCertificateEntry("trusted-" + count++, certificate);
            }
            return store;
        } catch (IOException | GeneralSecurityException e) {
            throw new IllegalArgumentException(file + " holds no certificates that can be read: " + e.getMessage(), e);
        }
    }

    /** Where the subject answers, without a slash at the end. */
    public URI address() {
        return address;
    }

    /** Sent with every request. */
    public Map<String, String> headers() {
        return headers;
    }

    /** Where generated requests start from. */
    public long seed() {
        return seed;
    }

    /** How many requests to generate for a requirement. */
    public int rounds() {
        return rounds;
    }

    /** Ends the test, visibly skipped, when the subject does not offer this operation. */
    public void offers(String operationId) {
        Assumptions.assumeTrue(
                operations.isEmpty() || operations.contains(operationId),
                () -> "The subject is said not to offer " + operationId);
    }

    /** A request to a path of the contract, such as {@code /v1/foods}. */
    public Ask ask(String method, String path) {
        return new Ask(this, method, path);
    }

    public Ask get(String path) {
        return ask("GET", path);
    }

    public Ask post(String path) {
        return ask("POST", path);
    }

    RequestSpecification http() {
        return RestAssured.given().config(config).headers(headers).urlEncodingEnabled(true);
    }

    /** The answer to a question that several tests look at, asked by the first of them. */
    public Answer once(String question, Supplier<Answer> asked) {
        Answer answer = answers.computeIfAbsent(question, unknown -> asked.get());
        last = answer.exchange();
        return answer;
    }

    void keep(Exchange exchange) {
        last = exchange;
    }

    /** What was sent and answered last, for the report. */
    Optional<Exchange> last() {
        return Optional.ofNullable(last);
    }
}
