package dev.slowpoint.contract;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.started.StartedService;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** What the guide for devices says, held against the packaged service and its contract. */
@ExtendWith(StartedService.Resolver.class)
class DeviceGuideIT {

    private static final Path GUIDE = Path.of("..", "api-spec", "docs", "device-guide.md");

    private static final Pattern REQUEST = Pattern.compile("POST (/v1/\\S+)\\n[^{`]*(\\{.*?)```", Pattern.DOTALL);

    private final StartedService service;

    DeviceGuideIT(StartedService service) {
        this.service = service;
    }

    @Test
    void its_requests_are_answered() throws IOException {
        Matcher requests = REQUEST.matcher(Files.readString(GUIDE));
        List<String> asked = new ArrayList<>();
        while (requests.find()) {
            asked.add(requests.group(1));
            RestAssured.given()
                    .contentType(ContentType.JSON)
                    .body(requests.group(2))
                    .post(service.address().resolve(requests.group(1)))
                    .then()
                    .statusCode(200);
        }
        assertThat(asked).containsExactly("/v1/cook-plans", "/v1/lookup-tables");
    }

    @Test
    void it_tells_what_to_show_for_each_word() throws IOException {
        JsonNode contract = new YAMLMapper()
                .readTree(RestAssured.get(service.address().resolve("/openapi.yaml"))
                        .asString());
        String guide = Files.readString(GUIDE);
        for (String member : List.of(
                "Safety/properties/verdict",
                "Holding/properties/verdict",
                "Interruption/properties/verdict",
                "ProcessPoint/properties/verdict",
                "LogReviewAnswer/properties/verdict",
                "Texture/properties/verdict",
                "ReplanAnswer/properties/decision",
                "LoadPlanAnswer/properties/schedule",
                "Warning/properties/severity",
                "CodedNotice/properties/severity")) {
            JsonNode words = contract.at("/components/schemas/" + member + "/examples");
            assertThat(words).as(member).isNotEmpty();
            words.forEach(word -> assertThat(guide).as(member).contains("`" + word.asString() + "`"));
        }
    }

    @Test
    void what_it_says_of_faulty_probes_is_so() throws IOException {
        expect("/v1/cook-plans", plan("-127"), 400, "OUT_OF_RANGE");
        expect("/v1/cook-plans", plan("85.0"), 400, "OUT_OF_RANGE");
        expect("/v1/cook-plans", plan("NaN"), 400, "NOT_FINITE");
        expect("/v1/cook-plans", plan("null"), 400, "NULL_VALUE");
        expect("/v1/replans", replan("\"coreReadings\":[{\"atS\":3600,\"coreC\":-127}]"), 400, "OUT_OF_RANGE");
        expect("/v1/replans", replan("\"coreReadings\":[{\"atS\":3600,\"coreC\":85.0}]"), 422, "READING_IMPOSSIBLE");
        for (String fault : List.of("-127", "85.0", "110")) {
            assertThat(warningsWithBathAt(fault)).as(fault).contains("LOG_HAS_GAP");
        }
        assertThat(warningsWithBathAt("60.1")).isEmpty();
    }

    private List<String> warningsWithBathAt(String waterC) {
        return RestAssured.given()
                .contentType(ContentType.JSON)
                .body(replan("\"bathLog\":[{\"atS\":0,\"waterC\":60},{\"atS\":800,\"waterC\":" + waterC
                        + "},{\"atS\":1600,\"waterC\":60},{\"atS\":2400,\"waterC\":60},{\"atS\":3200,\"waterC\":60}]"))
                .post(service.address().resolve("/v1/replans"))
                .then()
                .statusCode(200)
                .extract()
                .path("warnings.code");
    }

    private void expect(String path, String body, int status, String code) {
        String told = RestAssured.given()
                .contentType(ContentType.JSON)
                .body(body)
                .post(service.address().resolve(path))
                .then()
                .statusCode(status)
                .extract()
                .path("code");
        assertThat(told).as(body).isEqualTo(code);
    }

    private static String plan(String startC) {
        return """
                {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},"start":{"temperatureC":%s},
                 "surroundings":{"bath":{"setpointC":60}}}""".formatted(startC);
    }

    private static String replan(String soFar) {
        return """
                {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},"start":{"temperatureC":4},
                 "surroundings":{"bath":{"setpointC":60}},"soFar":{"elapsedS":3600,%s}}""".formatted(soFar);
    }
}
