package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.PlainJWT;
import com.nimbusds.jwt.SignedJWT;
import com.sun.net.httpserver.HttpServer;
import dev.slowpoint.ops.StartRefused;
import io.github.bucket4j.TimeMeter;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.Date;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.core.io.DefaultResourceLoader;
import org.springframework.mock.env.MockEnvironment;

/** A token is taken only if the right one signed it, for us, for now, and for this. */
class TokenCredentialsTest {

    private static final String ISSUER = "https://issuer.example";
    private static final String AUDIENCE = "slowpoint";
    private static final RSAKey KEY = made("k1");
    private static final RSAKey OTHER = made("k2");

    @TempDir
    private Path folder;

    private final Map<String, String> settings = new HashMap<>();

    private static RSAKey made(String name) {
        try {
            return new RSAKeyGenerator(2048).keyID(name).generate();
        } catch (JOSEException e) {
            throw new IllegalStateException(e);
        }
    }

    @BeforeEach
    void settings() throws Exception {
        settings.put("issuer-uri", ISSUER);
        settings.put("audiences", AUDIENCE);
        settings.put("public-key-location", pem(KEY, "key.pem"));
    }

    private String pem(RSAKey of, String name) throws Exception {
        return Files.writeString(folder.resolve(name), pem(of.toRSAPublicKey().getEncoded(), "PUBLIC KEY"))
                .toUri()
                .toString();
    }

    private static String pem(byte[] der, String what) {
        return "-----BEGIN " + what + "-----\n"
                + Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII))
                        .encodeToString(der)
                + "\n-----END " + what + "-----\n";
    }

    private TokenCredentials credentials() {
        MockEnvironment environment = new MockEnvironment();
        settings.forEach((name, value) -> environment.setProperty(TokenSettings.PREFIX + name, value));
        return new TokenCredentials(
                new TokenSettings(environment, new DefaultResourceLoader()).processor(),
                "slowpoint:plan",
                new Allowance(5, 20, 2),
                TimeMeter.SYSTEM_NANOTIME);
    }

    private static JWTClaimsSet.Builder claims() {
        return new JWTClaimsSet.Builder()
                .issuer(ISSUER)
                .audience(AUDIENCE)
                .subject("hut-7")
                .claim("scope", "profile slowpoint:plan")
                .expirationTime(Date.from(Instant.now().plusSeconds(300)));
    }

    private static String signed(JWTClaimsSet claims, RSAKey by) throws Exception {
        return signed(claims, by, new JWSHeader.Builder(JWSAlgorithm.RS256).keyID(by.getKeyID()));
    }

    private static String signed(JWTClaimsSet claims, RSAKey by, JWSHeader.Builder header) throws Exception {
        SignedJWT token = new SignedJWT(header.build(), claims);
        token.sign(new RSASSASigner(by));
        return token.serialize();
    }

    private void unknown(String token, Identity.Reason reason) {
        assertThat(credentials().of(token)).isEqualTo(new Identity.Unknown(reason));
    }

    @Test
    void a_good_token_is_its_subject() throws Exception {
        TokenCredentials credentials = credentials();
        Identity first = credentials.of(signed(claims().build(), KEY));
        assertThat(first).isInstanceOf(Identity.Known.class);
        assertThat(credentials.of(signed(claims().jwtID("another").build(), KEY)))
                .as("the same client")
                .isEqualTo(first);
        assertThat(credentials.of(signed(claims().subject("hut-8").build(), KEY)))
                .isNotEqualTo(first);
    }

    @Test
    void one_of_several_audiences_is_enough_and_scopes_may_be_a_list() throws Exception {
        assertThat(credentials()
                        .of(signed(
                                claims().audience(List.of("other", AUDIENCE))
                                        .claim("scope", null)
                                        .claim("scp", List.of("slowpoint:plan"))
                                        .build(),
                                KEY)))
                .isInstanceOf(Identity.Known.class);
    }

    @Test
    void a_token_without_the_scope_is_known_but_not_allowed() throws Exception {
        for (Object scope : new Object[] {"profile", "slowpoint:planning", "", List.of("profile"), 1}) {
            assertThat(credentials().of(signed(claims().claim("scope", scope).build(), KEY)))
                    .as("%s", scope)
                    .isEqualTo(new Identity.NotAllowed("slowpoint:plan"));
        }
    }

    @Test
    void what_somebody_else_signed_is_refused() throws Exception {
        unknown(signed(claims().build(), OTHER), Identity.Reason.UNKNOWN);
        String good = signed(claims().build(), KEY);
        int dot = good.lastIndexOf('.');
        unknown(good.substring(0, dot + 1), Identity.Reason.MALFORMED);
        unknown(good.substring(0, dot + 1) + "AAAA", Identity.Reason.UNKNOWN);
        String another = signed(claims().subject("admin").build(), OTHER);
        String spliced = good.substring(0, good.indexOf('.'))
                + another.substring(another.indexOf('.'), another.lastIndexOf('.'))
                + good.substring(dot);
        unknown(spliced, Identity.Reason.UNKNOWN);
    }

    @Test
    void a_token_that_is_not_signed_is_refused() throws Exception {
        String none = new PlainJWT(claims().build()).serialize();
        unknown(none, Identity.Reason.UNKNOWN);
        for (String alg : List.of("NONE", "None", "nOnE")) {
            String header = Base64.getUrlEncoder()
                    .withoutPadding()
                    .encodeToString(("{\"alg\":\"" + alg + "\"}").getBytes(StandardCharsets.US_ASCII));
            assertThat(credentials().of(header + none.substring(none.indexOf('.'))))
                    .as(alg)
                    .isInstanceOf(Identity.Unknown.class);
        }
    }

    /** The public key taken as a shared secret: everybody has it. */
    @Test
    void the_public_key_is_no_secret_to_sign_with() throws Exception {
        for (byte[] secret : List.of(
                KEY.toRSAPublicKey().getEncoded(),
                pem(KEY.toRSAPublicKey().getEncoded(), "PUBLIC KEY").getBytes(StandardCharsets.US_ASCII))) {
            SignedJWT token = new SignedJWT(
                    new JWSHeader.Builder(JWSAlgorithm.HS256).keyID("k1").build(), claims().build());
            token.sign(new MACSigner(secret));
            unknown(token.serialize(), Identity.Reason.UNKNOWN);
        }
    }

    @Test
    void a_key_that_the_token_brings_itself_is_not_taken() throws Exception {
        unknown(
                signed(claims().build(), OTHER, new JWSHeader.Builder(JWSAlgorithm.RS256).jwk(OTHER.toPublicJWK())),
                Identity.Reason.UNKNOWN);
    }

    @Test
    void another_algorithm_of_the_same_key_and_another_type_are_refused() throws Exception {
        unknown(signed(claims().build(), KEY, new JWSHeader.Builder(JWSAlgorithm.PS256)), Identity.Reason.UNKNOWN);
        unknown(
                signed(
                        claims().build(),
                        KEY,
                        new JWSHeader.Builder(JWSAlgorithm.RS256).type(new JOSEObjectType("dpop+jwt"))),
                Identity.Reason.UNKNOWN);
        assertThat(credentials()
                        .of(signed(
                                claims().build(),
                                KEY,
                                new JWSHeader.Builder(JWSAlgorithm.RS256).type(new JOSEObjectType("at+jwt")))))
                .isInstanceOf(Identity.Known.class);
    }

    @Test
    void issuer_audience_subject_and_times_are_checked() throws Exception {
        unknown(signed(claims().issuer("https://other.example").build(), KEY), Identity.Reason.UNKNOWN);
        unknown(signed(claims().issuer(null).build(), KEY), Identity.Reason.UNKNOWN);
        unknown(signed(claims().audience("other").build(), KEY), Identity.Reason.UNKNOWN);
        unknown(signed(claims().audience((String) null).build(), KEY), Identity.Reason.UNKNOWN);
        unknown(signed(claims().subject(null).build(), KEY), Identity.Reason.UNKNOWN);
        unknown(signed(claims().subject(" ").build(), KEY), Identity.Reason.MALFORMED);
        unknown(signed(claims().subject("x".repeat(256)).build(), KEY), Identity.Reason.MALFORMED);
        unknown(signed(claims().expirationTime(null).build(), KEY), Identity.Reason.UNKNOWN);
        unknown(
                signed(
                        claims().expirationTime(Date.from(Instant.now().minusSeconds(61)))
                                .build(),
                        KEY),
                Identity.Reason.NOT_NOW);
        unknown(
                signed(
                        claims().notBeforeTime(Date.from(Instant.now().plusSeconds(120)))
                                .build(),
                        KEY),
                Identity.Reason.UNKNOWN);
    }

    @ParameterizedTest
    @ValueSource(strings = {"x", "a.b", "a.b.c", "a.b.c.d.e", "eyJhbGciOiJSUzI1NiJ9..", "...", "null.null.null"})
    void what_is_no_token_is_refused(String shown) {
        assertThat(credentials().of(shown)).isInstanceOf(Identity.Unknown.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "issuer-uri=",
                "audiences=",
                "public-key-location=",
                "public-key-location=file:/nowhere.pem",
                "jwk-set-uri=https://issuer.example/keys",
                "jws-algorithms=HS256",
                "jws-algorithms=none",
                "jws-algorithms=RS256,HS512",
                "jws-algorithms=ES256"
            })
    void settings_that_are_missing_or_dangerous_stop_the_start(String set) {
        settings.put(set.substring(0, set.indexOf('=')), set.substring(set.indexOf('=') + 1));
        assertThatThrownBy(this::credentials).isInstanceOf(StartRefused.class);
    }

    @Test
    void a_key_set_is_read_from_afar_by_tls_only() {
        settings.remove("public-key-location");
        settings.put("jwk-set-uri", "http://issuer.example/keys");
        assertThatThrownBy(this::credentials).hasMessageContaining("not https");
    }

    @Test
    void a_private_or_a_short_key_stops_the_start() throws Exception {
        Files.writeString(
                folder.resolve("private.pem"), pem(KEY.toRSAPrivateKey().getEncoded(), "PRIVATE KEY"));
        settings.put(
                "public-key-location", folder.resolve("private.pem").toUri().toString());
        assertThatThrownBy(this::credentials).isInstanceOf(StartRefused.class);
        settings.put("public-key-location", pem(new RSAKeyGenerator(1024, true).generate(), "short.pem"));
        assertThatThrownBy(this::credentials).isInstanceOf(StartRefused.class);
    }

    @Test
    void keys_of_the_issuer_change_without_a_restart_and_unknown_names_do_not_make_us_ask_each_time() throws Exception {
        AtomicReference<String> published = new AtomicReference<>(new JWKSet(KEY.toPublicJWK()).toString());
        AtomicInteger asked = new AtomicInteger();
        HttpServer issuer = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        issuer.createContext("/keys", exchange -> {
            asked.incrementAndGet();
            byte[] body = String.valueOf(published.get()).getBytes(StandardCharsets.UTF_8);
            exchange.sendResponseHeaders(200, body.length);
            exchange.getResponseBody().write(body);
            exchange.close();
        });
        issuer.start();
        settings.remove("public-key-location");
        settings.put("jwk-set-uri", "http://127.0.0.1:" + issuer.getAddress().getPort() + "/keys");
        TokenCredentials credentials = credentials();
        try {
            assertThat(credentials.of(signed(claims().build(), KEY))).isInstanceOf(Identity.Known.class);
            published.set(new JWKSet(List.of(KEY.toPublicJWK(), OTHER.toPublicJWK())).toString());
            assertThat(credentials.of(signed(claims().build(), OTHER))).isInstanceOf(Identity.Known.class);
            RSAKey foreign = new RSAKey.Builder(OTHER).keyID("k3").build();
            for (int i = 0; i < 50; i++) {
                assertThat(credentials.of(signed(claims().build(), foreign))).isInstanceOf(Identity.Unknown.class);
            }
            assertThat(asked.get()).as("times the issuer was asked").isLessThanOrEqualTo(3);
        } finally {
            issuer.stop(0);
        }
        assertThat(credentials.of(signed(claims().build(), KEY)))
                .as("the issuer is gone, its keys are known")
                .isInstanceOf(Identity.Known.class);
        assertThat(credentials().of(signed(claims().build(), KEY)))
                .as("the issuer is gone, and its keys were never read")
                .isEqualTo(new Identity.Undecided());
    }
}
