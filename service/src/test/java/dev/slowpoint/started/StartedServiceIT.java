package dev.slowpoint.started;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.RestAssured;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What only the packaged service can show. */
@ExtendWith(StartedService.Resolver.class)
class StartedServiceIT {

    @Test
    void the_packaged_service_serves_the_contract_it_was_built_with(StartedService service) {
        assertThat(RestAssured.get(service.address().resolve("/openapi.yaml")).asString())
                .contains("operationId: planCook");
    }
}
