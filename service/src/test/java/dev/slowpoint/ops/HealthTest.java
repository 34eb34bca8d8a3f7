package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import io.restassured.RestAssured;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.core.env.Environment;

/** The service tells its platform when it lives and when it is ready. */
@Import(HealthTest.Witnesses.class)
class HealthTest extends HttpTest {

    @Autowired
    private Witness witness;

    @ParameterizedTest
    @ValueSource(strings = {"/livez", "/readyz"})
    void probes_answer_on_the_public_port(String path) {
        assertThat(http().get(path).statusCode()).isEqualTo(200);
        assertThat(READER.readTree(http().get(path).asByteArray()).at("/status").asString())
                .isEqualTo("UP");
    }

    @Test
    void probes_answer_on_the_management_port() {
        for (String group : List.of("liveness", "readiness")) {
            assertThat(RestAssured.given()
                            .port(managementPort)
                            .get("/actuator/health/" + group)
                            .statusCode())
                    .isEqualTo(200);
        }
    }

    @Test
    void while_it_rehearses_it_lives_but_is_not_ready() {
        assertThat(witness.seen).containsExactly(Map.entry("/livez", 200), Map.entry("/readyz", 503));
    }

    @Test
    void nothing_but_health_info_and_metrics_is_exposed() {
        for (String endpoint : List.of("env", "beans", "heapdump", "loggers", "shutdown", "threaddump")) {
            assertThat(RestAssured.given()
                            .port(managementPort)
                            .get("/actuator/" + endpoint)
                            .statusCode())
                    .as(endpoint)
                    .isEqualTo(404);
        }
    }

    @TestConfiguration(proxyBeanMethods = false)
    static class Witnesses {

        @Bean
        Witness witness(Environment environment) {
            return new Witness(environment);
        }
    }

    /** Looks at the probes from within the rehearsal. */
    static final class Witness implements Rehearsal {

        private final Environment environment;
        private final Map<String, Integer> seen = new LinkedHashMap<>();

        private Witness(Environment environment) {
            this.environment = environment;
        }

        @Override
        public void rehearse() {
            if (seen.isEmpty()) {
                int port = environment.getRequiredProperty("local.server.port", Integer.class);
                for (String path : List.of("/livez", "/readyz")) {
                    seen.put(path, RestAssured.given().port(port).get(path).statusCode());
                }
            }
        }
    }
}
