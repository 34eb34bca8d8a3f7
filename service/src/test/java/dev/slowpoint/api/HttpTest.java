package dev.slowpoint.api;

import io.restassured.RestAssured;
import io.restassured.config.DecoderConfig;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.specification.RequestSpecification;
import java.util.Map;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalManagementPort;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.cbor.CBORMapper;

/** The service on a free port, with the real planner; started once for all that extend this. */
@SpringBootTest(
        webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"management.server.port=0", "management.prometheus.metrics.export.enabled=true"})
@Import(TroubledKitchen.class)
public abstract class HttpTest {

    protected static final String PLANS = "/v1/cook-plans";
    protected static final String CHILLS = "/v1/chill-plans";
    protected static final String LOGS = "/v1/log-reviews";
    protected static final String REPLANS = "/v1/replans";
    protected static final String WINDOWS = "/v1/process-windows";
    protected static final String LOADS = "/v1/load-plans";
    protected static final String SHEETS = "/v1/portion-sheets";
    protected static final String TABLES = "/v1/lookup-tables";
    protected static final String JSON = "application/json";
    protected static final String CBOR = "application/cbor";
    protected static final String PROBLEM = "application/problem+json";

    /** The smallest request that keeps the contract. */
    protected static final String PORK = """
            {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},
             "start":{"temperatureC":4},"surroundings":{"bath":{"setpointC":60}}}""";

    /** The smallest request for a chill that keeps the contract. */
    protected static final String WARM_PORK = """
            {"food":{"id":"pork-loin"},"geometry":{"shape":"slab","thicknessMm":45},
             "start":{"temperatureC":60},"chill":{"medium":"iceWater"}}""";

    protected static final JsonMapper READER = new JsonMapper();
    protected static final CBORMapper CBOR_READER = new CBORMapper();

    @LocalServerPort
    protected int port;

    @LocalManagementPort
    protected int managementPort;

    /** A request that is sent as it stands, without a charset that nobody asked for. */
    protected RequestSpecification http() {
        return RestAssured.given()
                .config(RestAssuredConfig.config()
                        .decoderConfig(DecoderConfig.decoderConfig().noContentDecoders())
                        .encoderConfig(EncoderConfig.encoderConfig()
                                .appendDefaultContentCharsetToContentTypeIfUndefined(false)))
                .port(port);
    }

    /** The same text as CBOR. */
    protected static byte[] cbor(String json) {
        return CBOR_READER.writeValueAsBytes(READER.readTree(json));
    }

    /** The pork request with one place replaced; {@code null} as a place takes it away. */
    protected static String porkWith(String from, String to) {
        String changed = PORK.replace(from, to);
        if (changed.equals(PORK)) {
            throw new IllegalArgumentException(from + " does not stand in the request");
        }
        return changed;
    }

    /** Where an example of that file name is sent. */
    protected static String operation(String example) {
        return "/v1/"
                + example.replaceAll("-(plan|review|window|sheet|table)-.*", "-$1s")
                        .replaceAll("^replan-.*", "replans");
    }

    protected static JsonNode tree(byte[] body, String type) {
        return type.startsWith(CBOR) ? CBOR_READER.readTree(body) : READER.readTree(body);
    }

    protected static Map<?, ?> map(byte[] body) {
        return READER.readValue(body, Map.class);
    }
}
