package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The endpoint for measuring is not there unless the service was started for measuring. */
class StoredAnswersTest extends HttpTest {

    @Test
    void there_are_no_stored_answers() {
        assertThat(http().contentType(JSON).body(PORK).post(StoredAnswers.PATH).statusCode())
                .isEqualTo(404);
    }

    @Test
    void no_request_switches_them_on() {
        assertThat(http().contentType(JSON)
                        .header("X-Spring-Profiles-Active", StoredAnswers.PROFILE)
                        .body(PORK)
                        .post(StoredAnswers.PATH + "?spring.profiles.active=" + StoredAnswers.PROFILE)
                        .statusCode())
                .isEqualTo(404);
        for (String path : new String[] {"/actuator/env", "/env"}) {
            assertThat(http().port(managementPort)
                            .contentType(JSON)
                            .body("{\"name\":\"spring.profiles.active\",\"value\":\"benchmark\"}")
                            .post(path)
                            .statusCode())
                    .isEqualTo(404);
        }
        assertThat(http().contentType(JSON).body(PORK).post(StoredAnswers.PATH).statusCode())
                .isEqualTo(404);
    }
}
