package dev.slowpoint.ops.access;

import static org.assertj.core.api.Assertions.assertThat;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.ECDSASigner;
import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.ECKey;
import com.nimbusds.jose.jwk.gen.ECKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import dev.slowpoint.api.HttpTest;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.Date;
import org.junit.jupiter.api.Test;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** Tokens in the place of keys. */
@DirtiesContext
class TokensHttpTest extends HttpTest {

    private static final ECKey KEY = made();

    private static ECKey made() {
        try {
            return new ECKeyGenerator(Curve.P_256).generate();
        } catch (JOSEException e) {
            throw new IllegalStateException(e);
        }
    }

    @DynamicPropertySource
    static void settings(DynamicPropertyRegistry properties) throws Exception {
        Path file = Files.writeString(
                Files.createTempFile("issuer", ".pem"),
                "-----BEGIN PUBLIC KEY-----\n"
                        + Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII))
                                .encodeToString(KEY.toECPublicKey().getEncoded())
                        + "\n-----END PUBLIC KEY-----\n");
        file.toFile().deleteOnExit();
        properties.add("slowpoint.access.mode", () -> "jwt");
        properties.add(TokenSettings.PREFIX + "issuer-uri", () -> "https://issuer.example");
        properties.add(TokenSettings.PREFIX + "audiences", () -> "slowpoint");
        properties.add(TokenSettings.PREFIX + "jws-algorithms", () -> "ES256");
        properties.add(
                TokenSettings.PREFIX + "public-key-location", () -> file.toUri().toString());
        properties.add("slowpoint.access.tokens.per-second", () -> "0.1");
        properties.add("slowpoint.access.tokens.burst", () -> "20");
    }

    private static String token(String subject, String scope, Instant until) throws Exception {
        SignedJWT token = new SignedJWT(
                new JWSHeader(JWSAlgorithm.ES256),
                new JWTClaimsSet.Builder()
                        .issuer("https://issuer.example")
                        .audience("slowpoint")
                        .subject(subject)
                        .claim("scope", scope)
                        .expirationTime(Date.from(until))
                        .build());
        token.sign(new ECDSASigner(KEY));
        return token.serialize();
    }

    private Response foods(String token) {
        return http().header("Authorization", "Bearer " + token).get("/v1/foods");
    }

    @Test
    void a_token_lets_its_subject_in_as_often_as_it_may() throws Exception {
        String hut = token("hut-1", "slowpoint:plan", Instant.now().plusSeconds(60));
        int through = 0;
        Response last = foods(hut);
        while (last.statusCode() == 200 && through < 40) {
            through++;
            last = foods(hut);
        }
        assertThat(through).isBetween(18, 22);
        assertThat(last.statusCode()).isEqualTo(429);
        assertThat(READER.readTree(last.asByteArray()).at("/code").asString()).isEqualTo("TOO_MANY_REQUESTS");
        assertThat(foods(token("hut-2", "slowpoint:plan", Instant.now().plusSeconds(60)))
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void without_the_scope_it_is_403_and_the_scope_is_named() throws Exception {
        Response response = foods(token("hut-3", "profile", Instant.now().plusSeconds(60)));
        assertThat(response.statusCode()).isEqualTo(403);
        assertThat(response.contentType()).isEqualTo(PROBLEM);
        assertThat(READER.readTree(response.asByteArray()).at("/code").asString())
                .isEqualTo("FORBIDDEN");
        assertThat(response.header("WWW-Authenticate"))
                .isEqualTo("Bearer realm=\"slowpoint\", error=\"insufficient_scope\", scope=\"slowpoint:plan\"");
    }

    @Test
    void an_expired_token_is_401() throws Exception {
        Response response = foods(token("hut-4", "slowpoint:plan", Instant.now().minusSeconds(120)));
        assertThat(response.statusCode()).isEqualTo(401);
        assertThat(http().get("/livez").statusCode()).isEqualTo(200);
    }

    @Test
    void subjects_never_become_labels() throws Exception {
        foods(token("xyzzy", "slowpoint:plan", Instant.now().plusSeconds(60)));
        assertThat(RestAssured.given()
                        .port(managementPort)
                        .get("/actuator/prometheus")
                        .asString())
                .doesNotContain("xyzzy");
    }
}
