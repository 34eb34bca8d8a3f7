package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.ActiveProfiles;

/** Even where the endpoint for measuring is there, it is no part of the contract. */
@ActiveProfiles(StoredAnswers.PROFILE)
@DirtiesContext
class StoredAnswersOfBenchmarksTest extends HttpTest {

    @Test
    void they_read_requests_as_strictly_and_are_written_as_plans_are() {
        byte[] plan = http().contentType(JSON).body(PORK).post(PLANS).asByteArray();
        assertThat(http().contentType(JSON).body(PORK).post(StoredAnswers.PATH).asByteArray())
                .isEqualTo(plan);
        assertThat(http().contentType(JSON)
                        .body(porkWith("45", "40"))
                        .post(StoredAnswers.PATH)
                        .asByteArray())
                .isEqualTo(plan);
        assertThat(http().contentType(JSON)
                        .body(porkWith("45", "null"))
                        .post(StoredAnswers.PATH)
                        .statusCode())
                .isEqualTo(400);
    }

    @Test
    void neither_contract_nor_documents_know_them() {
        for (String path : new String[] {"/openapi.yaml", "/docs/openapi", "/docs/openapi.yaml"}) {
            assertThat(http().get(path).then().statusCode(200).extract().asString())
                    .contains("planCook")
                    .doesNotContain("stored-answers", "StoredAnswers");
        }
    }
}
