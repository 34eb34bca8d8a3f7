package dev.slowpoint.ops.access;

import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.jwk.source.JWKSource;
import com.nimbusds.jose.jwk.source.JWKSourceBuilder;
import com.nimbusds.jose.proc.DefaultJOSEObjectTypeVerifier;
import com.nimbusds.jose.proc.JWSKeySelector;
import com.nimbusds.jose.proc.JWSVerificationKeySelector;
import com.nimbusds.jose.proc.SecurityContext;
import com.nimbusds.jose.util.DefaultResourceRetriever;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.proc.DefaultJWTClaimsVerifier;
import com.nimbusds.jwt.proc.DefaultJWTProcessor;
import com.nimbusds.jwt.proc.JWTProcessor;
import dev.slowpoint.ops.StartRefused;
import java.io.IOException;
import java.net.InetAddress;
import java.net.MalformedURLException;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.interfaces.RSAPublicKey;
import java.security.spec.X509EncodedKeySpec;
import java.time.Duration;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.core.env.Environment;
import org.springframework.core.io.ResourceLoader;

/**
 * Which tokens are taken. The names of the settings are those that the framework has for a resource server; what it would
 * let be left out, issuer and audience, is asked for: a token meant for another service must not do here.
 */
final class TokenSettings {

    static final String PREFIX = "spring.security.oauth2.resourceserver.jwt.";

    /** Signed by one who has a private key. With a shared secret, or none, everybody who can check could sign. */
    private static final Set<JWSAlgorithm> ALLOWED = Set.of(
            JWSAlgorithm.RS256,
            JWSAlgorithm.RS384,
            JWSAlgorithm.RS512,
            JWSAlgorithm.PS256,
            JWSAlgorithm.PS384,
            JWSAlgorithm.PS512,
            JWSAlgorithm.ES256,
            JWSAlgorithm.ES384,
            JWSAlgorithm.ES512);

    private static final Pattern PEM =
            Pattern.compile("-----BEGIN PUBLIC KEY-----([A-Za-z0-9+/=\\s]+)-----END PUBLIC KEY-----");

    private static final int LEAST_RSA_BITS = 2048;
    private static final int PATIENCE_MS = 1_000;
    private static final int LONGEST_KEY_SET = 256 * 1024;

    /** Keys are read again after this time. */
    private static final Duration FRESH = Duration.ofMinutes(5);

    /** For how long keys stay good while their issuer does not answer. */
    private static final Duration OUTAGE = Duration.ofHours(1);

    /** At most twice in this time is the issuer asked, whatever tokens come. */
    private static final Duration LEAST_BETWEEN = Duration.ofSeconds(30);

    private final Environment environment;
    private final ResourceLoader resources;

    TokenSettings(Environment environment, ResourceLoader resources) {
        this.environment = environment;
        this.resources = resources;
    }

    /**
     * Checks tokens as it is set.
     *
     * @throws StartRefused if something is missing or cannot be read
     */
    JWTProcessor<SecurityContext> processor() {
        String issuer = needed("issuer-uri", "who signs the tokens");
        Set<String> audiences = Set.copyOf(words(needed("audiences", "what stands in their aud")));
        String keySet = set("jwk-set-uri");
        String keyFile = set("public-key-location");
        if ((keySet == null) == (keyFile == null)) {
            throw new StartRefused(
                    "Tokens cannot be checked: of " + PREFIX + "jwk-set-uri and " + PREFIX
                            + "public-key-location one must be set.",
                    "Set the first to where the issuer publishes its keys, or the second to a PEM file.");
        }
        Set<JWSAlgorithm> algorithms = algorithms();
        DefaultJWTProcessor<SecurityContext> processor = new DefaultJWTProcessor<>();
        processor.setJWSTypeVerifier(new DefaultJOSEObjectTypeVerifier<>(
                new HashSet<>(Arrays.asList(JOSEObjectType.JWT, new JOSEObjectType("at+jwt"), null))));
        processor.setJWSKeySelector(
                keySet != null
                        ? selector(algorithms, keySet)
                        : selector(algorithms, publicKey(String.valueOf(keyFile))));
        processor.setJWTClaimsSetVerifier(new DefaultJWTClaimsVerifier<>(
                audiences, new JWTClaimsSet.Builder().issuer(issuer).build(), Set.of("sub", "exp"), Set.of()));
        return processor;
    }

    private Set<JWSAlgorithm> algorithms() {
        String set = set("jws-algorithms");
        Set<JWSAlgorithm> algorithms = set == null
                ? Set.of(JWSAlgorithm.RS256)
                : words(set).stream().map(JWSAlgorithm::parse).collect(Collectors.toUnmodifiableSet());
        if (algorithms.isEmpty() || !ALLOWED.containsAll(algorithms)) {
            throw new StartRefused(
                    PREFIX + "jws-algorithms names an algorithm that is not taken.",
                    "Take it from "
                            + ALLOWED.stream()
                                    .map(JWSAlgorithm::getName)
                                    .sorted()
                                    .collect(Collectors.joining(", "))
                            + ".");
        }
        return algorithms;
    }

    /** Keys that the issuer publishes, by the name that a token gives. */
    private static JWSKeySelector<SecurityContext> selector(Set<JWSAlgorithm> algorithms, String keySet) {
        URI address = URI.create(keySet);
        if (!"https".equals(address.getScheme()) && !isLoopback(address.getHost())) {
            throw new StartRefused(
                    PREFIX + "jwk-set-uri is not https: whoever stands between could hand out keys.",
                    "Give an address with https.");
        }
        try {
            JWKSource<SecurityContext> keys = JWKSourceBuilder.<SecurityContext>create(
                            address.toURL(), new DefaultResourceRetriever(PATIENCE_MS, PATIENCE_MS, LONGEST_KEY_SET))
                    .cache(FRESH.toMillis(), 3L * PATIENCE_MS)
                    .rateLimited(LEAST_BETWEEN.toMillis())
                    .outageTolerant(OUTAGE.toMillis())
                    .build();
            return new JWSVerificationKeySelector<>(algorithms, keys);
        } catch (MalformedURLException e) {
            throw new StartRefused(PREFIX + "jwk-set-uri is no address.", "Give an address with https.");
        }
    }

    /** One key, whatever name a token gives it. */
    private static JWSKeySelector<SecurityContext> selector(Set<JWSAlgorithm> algorithms, PublicKey key) {
        Set<JWSAlgorithm> ofKey = algorithms.stream()
                .filter(
                        key instanceof RSAPublicKey
                                ? JWSAlgorithm.Family.RSA::contains
                                : JWSAlgorithm.Family.EC::contains)
                .collect(Collectors.toUnmodifiableSet());
        if (ofKey.isEmpty()) {
            throw new StartRefused(
                    "The key of " + PREFIX + "public-key-location fits none of " + PREFIX + "jws-algorithms.",
                    "RS256 is taken if none is named; for an elliptic curve name ES256.");
        }
        return (header, context) -> ofKey.contains(header.getAlgorithm()) ? List.of(key) : List.of();
    }

    private PublicKey publicKey(String location) {
        String text;
        try {
            text = resources.getResource(location).getContentAsString(StandardCharsets.US_ASCII);
        } catch (IOException unreadable) {
            throw new StartRefused(
                    "The key of tokens cannot be read from " + location + ".",
                    "Set " + PREFIX + "public-key-location to file: and the path of a PEM file.");
        }
        Matcher pem = PEM.matcher(text.strip());
        if (pem.matches()) {
            X509EncodedKeySpec key =
                    new X509EncodedKeySpec(Base64.getMimeDecoder().decode(pem.group(1)));
            for (String family : List.of("RSA", "EC")) {
                try {
                    PublicKey read = KeyFactory.getInstance(family).generatePublic(key);
                    if (!(read instanceof RSAPublicKey rsa) || rsa.getModulus().bitLength() >= LEAST_RSA_BITS) {
                        return read;
                    }
                } catch (GeneralSecurityException ofAnotherFamily) {
                    // The next one may fit.
                }
            }
        }
        throw new StartRefused(
                location + " is no public RSA key of 2048 bits or more, and none of an elliptic curve.",
                "Give the public key of the issuer alone, in PEM; its private key must not lie here.");
    }

    private static boolean isLoopback(@Nullable String host) {
        try {
            return host != null && InetAddress.getByName(host).isLoopbackAddress();
        } catch (UnknownHostException nowhere) {
            return false;
        }
    }

    private static List<String> words(String list) {
        return Arrays.stream(list.split(",", -1))
                .map(String::strip)
                .filter(word -> !word.isEmpty())
                .toList();
    }

    private String needed(String name, String what) {
        String value = set(name);
        if (value == null) {
            throw new StartRefused(
                    AccessMode.PROPERTY + " is jwt, but " + PREFIX + name + " is not set.", "Set it to " + what + ".");
        }
        return value;
    }

    private @Nullable String set(String name) {
        String value = environment.getProperty(PREFIX + name);
        return value == null || value.isBlank() ? null : value;
    }
}
