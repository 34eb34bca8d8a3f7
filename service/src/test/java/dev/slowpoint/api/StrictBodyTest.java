package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.plan.Stirring;
import dev.slowpoint.safety.Eater;
import io.restassured.response.Response;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.cbor.CBORGenerator;

/** Every way in which a body may break the contract is refused by name, in text and in binary alike. */
class StrictBodyTest extends HttpTest {

    private JsonNode refusal(String type, byte[] body) {
        Response response = http().contentType(type).accept(type).body(body).post(PLANS);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        assertThat(response.contentType()).isEqualTo(PROBLEM);
        assertThat(response.header("Cache-Control")).isEqualTo("no-store");
        JsonNode problem = READER.readTree(response.asByteArray());
        assertThat(problem.at("/status").asInt()).isEqualTo(400);
        assertThat(problem.at("/code")).isEqualTo(problem.at("/errors/0/code"));
        return problem;
    }

    private JsonNode refusal(String body) {
        return refusal(JSON, body.getBytes(StandardCharsets.UTF_8));
    }

    private static void assertFault(JsonNode problem, String code, String pointer) {
        assertThat(problem.at("/errors")).as(problem.toString()).hasSize(1);
        assertThat(problem.at("/errors/0/code").asString()).isEqualTo(code);
        assertThat(problem.at("/errors/0/pointer").asString()).isEqualTo(pointer);
        assertThat(problem.at("/type").asString())
                .isEqualTo("/problems/" + code.toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    /** What stands in the request, what to send there, and the fault to expect; each is sent in text and in binary. */
    static Stream<Arguments> faults() {
        String thickness = "\"thicknessMm\":45";
        String food = "\"food\":{\"id\":\"pork-loin\"}";
        String start = "\"start\":{\"temperatureC\":4}";
        String setpoint = "\"setpointC\":60";
        return Stream.of(
                Arguments.of("\"shape\"", "\"sauce\":1,\"shape\"", "UNKNOWN_FIELD", "#/geometry/sauce"),
                Arguments.of(food, food + ",\"a/b~c d\":{\"x\":[1]}", "UNKNOWN_FIELD", "#/a~1b~0c%20d"),
                Arguments.of("\"slab\"", "0", "WRONG_TYPE", "#/geometry/shape"),
                Arguments.of("\"slab\"", "\"SLAB\"", "UNKNOWN_WORD", "#/geometry/shape"),
                Arguments.of("\"slab\"", "\"0\"", "UNKNOWN_WORD", "#/geometry/shape"),
                Arguments.of("\"slab\"", "\"\"", "UNKNOWN_WORD", "#/geometry/shape"),
                Arguments.of(thickness, "\"thicknessMm\":\"45\"", "WRONG_TYPE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":\"0.02\"", "WRONG_TYPE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":\"45,5\"", "WRONG_TYPE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":\"NaN\"", "WRONG_TYPE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":\"Infinity\"", "WRONG_TYPE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":true", "WRONG_TYPE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":[45]", "WRONG_TYPE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":{}", "WRONG_TYPE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":null", "NULL_VALUE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":2.9", "OUT_OF_RANGE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":250.1", "OUT_OF_RANGE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":-45", "OUT_OF_RANGE", "#/geometry/thicknessMm"),
                Arguments.of(thickness, "\"thicknessMm\":1e300", "OUT_OF_RANGE", "#/geometry/thicknessMm"),
                Arguments.of("," + thickness, "", "SIZE_MISSING", "#/geometry/thicknessMm"),
                Arguments.of(thickness, thickness + ",\"diameterMm\":45", "SIZE_NOT_OF_SHAPE", "#/geometry/diameterMm"),
                Arguments.of(thickness, thickness + ",\"widthMm\":45", "SIZE_NOT_OF_SHAPE", "#/geometry/widthMm"),
                Arguments.of(thickness, thickness + ",\"massG\":0.5", "OUT_OF_RANGE", "#/geometry/massG"),
                Arguments.of(
                        "\"slab\"," + thickness,
                        "\"brick\"," + thickness + ",\"widthMm\":90",
                        "SIZE_MISSING",
                        "#/geometry/lengthMm"),
                Arguments.of(
                        "\"slab\"," + thickness,
                        "\"brick\"," + thickness + ",\"widthMm\":90,\"lengthMm\":44",
                        "SIZES_CONTRADICT",
                        "#/geometry/lengthMm"),
                Arguments.of(
                        "\"slab\"," + thickness,
                        "\"brick\"," + thickness + ",\"widthMm\":90,\"lengthMm\":120,\"massG\":500",
                        "FIELDS_EXCLUDE_EACH_OTHER",
                        "#/geometry/massG"),
                Arguments.of(
                        "\"slab\"," + thickness,
                        "\"cylinder\",\"diameterMm\":60,\"lengthMm\":90,\"massG\":300",
                        "FIELDS_EXCLUDE_EACH_OTHER",
                        "#/geometry/lengthMm"),
                Arguments.of("\"slab\"," + thickness, "\"cylinder\"", "SIZE_MISSING", "#/geometry/diameterMm"),
                Arguments.of("\"slab\"," + thickness, "\"sphere\"", "ONE_OF_REQUIRED", "#/geometry"),
                Arguments.of(
                        "\"slab\"," + thickness,
                        "\"sphere\",\"diameterMm\":40,\"massG\":30",
                        "FIELDS_EXCLUDE_EACH_OTHER",
                        "#/geometry/diameterMm"),
                Arguments.of("\"slab\"," + thickness, "\"egg\"", "ONE_OF_REQUIRED", "#/geometry"),
                Arguments.of(
                        "\"slab\"," + thickness,
                        "\"egg\",\"diameterMm\":45,\"lengthMm\":44",
                        "SIZES_CONTRADICT",
                        "#/geometry/lengthMm"),
                Arguments.of(
                        "\"slab\"," + thickness,
                        "\"egg\",\"massG\":60,\"lengthMm\":57",
                        "FIELDS_EXCLUDE_EACH_OTHER",
                        "#/geometry/lengthMm"),
                Arguments.of(
                        thickness,
                        thickness + ",\"arrangement\":{\"pileOf\":11}",
                        "OUT_OF_RANGE",
                        "#/geometry/arrangement/pileOf"),
                Arguments.of(
                        thickness,
                        thickness + ",\"arrangement\":{\"submerged\":\"oneFaceInAir\"}",
                        "COMPANION_MISSING",
                        "#/geometry/arrangement/airC"),
                Arguments.of(
                        thickness,
                        thickness + ",\"arrangement\":{\"airC\":21}",
                        "FIELDS_EXCLUDE_EACH_OTHER",
                        "#/geometry/arrangement/airC"),
                Arguments.of(
                        setpoint, setpoint + ",\"heaterW\":1000", "COMPANION_MISSING", "#/surroundings/bath/volumeL"),
                Arguments.of(
                        thickness + "},\n " + start + ",\"surroundings\":{\"bath\":{" + setpoint,
                        thickness + ",\"massG\":800},\n " + start + ",\"surroundings\":{\"bath\":{" + setpoint
                                + ",\"volumeL\":20",
                        "COMPANION_MISSING",
                        "#/surroundings/bath/heaterW"),
                Arguments.of(
                        setpoint,
                        setpoint + ",\"volumeL\":20,\"heaterW\":1000",
                        "COMPANION_MISSING",
                        "#/geometry/massG"),
                then("{}", "MISSING_FIELD", "/0/step"),
                then("{\"step\":\"boil\"}", "UNKNOWN_WORD", "/0/step"),
                then("{\"step\":\"bath\",\"setpointC\":60}", "MEMBER_MISSING", "/0/durationS"),
                then("{\"step\":\"unheated\"}", "ONE_OF_REQUIRED", "/0"),
                then("{\"step\":\"sear\",\"method\":\"pan\"}", "MEMBER_MISSING", "/0/secondsPerSide"),
                then(
                        "{\"step\":\"rest\",\"durationS\":60},{\"step\":\"sear\",\"method\":\"pan\",\"secondsPerSide\":0}",
                        "OUT_OF_RANGE",
                        "/1/secondsPerSide"),
                then(
                        "{\"step\":\"sear\",\"method\":\"torch\",\"secondsPerSide\":30,\"heatC\":300}",
                        "FIELDS_EXCLUDE_EACH_OTHER",
                        "/0/heatC"),
                then("{\"step\":\"rest\"}", "MEMBER_MISSING", "/0/durationS"),
                then("{\"step\":\"rest\",\"durationS\":60,\"method\":\"pan\"}", "MEMBER_NOT_OF_STEP", "/0/method"),
                then("{\"step\":\"chill\"}", "MEMBER_MISSING", "/0/medium"),
                then(
                        "{\"step\":\"chill\",\"medium\":\"iceWater\",\"bothSidesAtOnce\":false}",
                        "MEMBER_NOT_OF_STEP",
                        "/0/bothSidesAtOnce"),
                then("{\"step\":\"store\",\"temperatureC\":3}", "MEMBER_MISSING", "/0/days"),
                then("{\"step\":\"reheat\",\"durationS\":600}", "MEMBER_MISSING", "/0/setpointC"),
                then("{\"step\":\"rest\",\"durationS\":60},7", "WRONG_TYPE", "/1"),
                then("null", "NULL_VALUE", "/0"),
                then("{\"step\":\"rest\",\"durationS\":60},".repeat(12) + "{}", "WRONG_NUMBER_OF_ITEMS", ""),
                Arguments.of(start, start + ",\"then\":{}", "WRONG_TYPE", "#/then"),
                Arguments.of(start, start + ",\"then\":null", "NULL_VALUE", "#/then"),
                Arguments.of("\"shape\":\"slab\",", "", "MISSING_FIELD", "#/geometry/shape"),
                Arguments.of(food + ",", "", "MISSING_FIELD", "#/food"),
                Arguments.of(food, "\"food\":null", "NULL_VALUE", "#/food"),
                Arguments.of(food, "\"food\":\"pork-loin\"", "WRONG_TYPE", "#/food"),
                Arguments.of(food, "\"food\":{}", "ONE_OF_REQUIRED", "#/food"),
                Arguments.of("\"pork-loin\"", "\"Pork Loin\"", "WRONG_PATTERN", "#/food/id"),
                Arguments.of("\"pork-loin\"", "\"<script>\"", "WRONG_PATTERN", "#/food/id"),
                Arguments.of("\"pork-loin\"", "7", "WRONG_TYPE", "#/food/id"),
                Arguments.of(
                        "\"pork-loin\"",
                        "\"pork-loin\",\"group\":\"pork\"",
                        "FIELDS_EXCLUDE_EACH_OTHER",
                        "#/food/group"),
                Arguments.of(
                        "\"pork-loin\"",
                        "\"pork-loin\",\"previouslyFrozen\":1",
                        "WRONG_TYPE",
                        "#/food/previouslyFrozen"),
                Arguments.of(
                        "\"pork-loin\"",
                        "\"pork-loin\",\"previouslyFrozen\":\"true\"",
                        "WRONG_TYPE",
                        "#/food/previouslyFrozen"),
                Arguments.of(
                        "\"id\":\"pork-loin\"",
                        "\"group\":\"pork\",\"composition\":{\"waterPercent\":0.72,\"proteinPercent\":0.21,\"fatPercent\":0.07}",
                        "SUM_NOT_WHOLE",
                        "#/food/composition"),
                Arguments.of(
                        "\"id\":\"pork-loin\"",
                        "\"group\":\"pork\",\"composition\":{\"waterPercent\":72,\"proteinPercent\":21}",
                        "MISSING_FIELD",
                        "#/food/composition/fatPercent"),
                Arguments.of(start, "\"start\":{}", "ONE_OF_REQUIRED", "#/start"),
                Arguments.of(start, "\"start\":{\"coreC\":4}", "COMPANION_MISSING", "#/start/surfaceC"),
                Arguments.of(
                        "\"temperatureC\":4",
                        "\"temperatureC\":4,\"coreC\":4",
                        "FIELDS_EXCLUDE_EACH_OTHER",
                        "#/start/coreC"),
                Arguments.of("\"temperatureC\":4", "\"temperatureC\":-127", "OUT_OF_RANGE", "#/start/temperatureC"),
                Arguments.of("\"temperatureC\":4", "\"temperatureC\":85.0", "OUT_OF_RANGE", "#/start/temperatureC"),
                Arguments.of(setpoint, "\"setpointC\":135", "OUT_OF_RANGE", "#/surroundings/bath/setpointC"),
                Arguments.of(
                        setpoint,
                        "\"setpointC\":60,\"stirring\":\"Pumped\"",
                        "UNKNOWN_WORD",
                        "#/surroundings/bath/stirring"),
                Arguments.of(
                        start, start + ",\"target\":{\"serveAfterS\":7200.5}", "NOT_WHOLE", "#/target/serveAfterS"),
                Arguments.of(start, start + ",\"target\":{\"serveAfterS\":59}", "OUT_OF_RANGE", "#/target/serveAfterS"),
                Arguments.of(start, start + ",\"target\":null", "NULL_VALUE", "#/target"),
                Arguments.of(start, start + ",\"eater\":1", "WRONG_TYPE", "#/eater"),
                Arguments.of(start, start + ",\"rule\":\"\"", "WRONG_PATTERN", "#/rule"));
    }

    private static Arguments then(String steps, String code, String place) {
        String start = "\"start\":{\"temperatureC\":4}";
        return Arguments.of(start, start + ",\"then\":[" + steps + "]", code, "#/then" + place);
    }

    @ParameterizedTest
    @MethodSource("faults")
    void a_fault_is_named_in_text(String from, String to, String code, String pointer) {
        assertFault(refusal(porkWith(from, to)), code, pointer);
    }

    @ParameterizedTest
    @MethodSource("faults")
    void the_same_fault_is_named_the_same_in_binary(String from, String to, String code, String pointer) {
        String body = porkWith(from, to);
        assertThat(refusal(CBOR, cbor(body)).toString()).isEqualTo(refusal(body).toString());
        assertFault(refusal(CBOR, cbor(body)), code, pointer);
    }

    @Test
    void all_faults_of_a_request_are_named_at_once() {
        JsonNode problem = refusal("""
                {"fod":{"id":"pork-loin"},"geometry":{"shape":"slap","thicknessMm":"45"},
                 "start":{"temperatureC":null},"surroundings":{"bath":{"setpointC":135,"setpointC":60}},
                 "target":{"withinK":9}}""");
        assertThat(problem.at("/errors")
                        .valueStream()
                        .map(fault -> fault.at("/code").asString() + " "
                                + fault.at("/pointer").asString())
                        .toList())
                .containsExactly(
                        "UNKNOWN_FIELD #/fod",
                        "UNKNOWN_WORD #/geometry/shape",
                        "WRONG_TYPE #/geometry/thicknessMm",
                        "NULL_VALUE #/start/temperatureC",
                        "OUT_OF_RANGE #/surroundings/bath/setpointC",
                        "DUPLICATE_FIELD #/surroundings/bath/setpointC",
                        "OUT_OF_RANGE #/target/withinK",
                        "MISSING_FIELD #/food");
        assertThat(problem.at("/detail").asString()).startsWith("8 faults. The first: ");
        assertThat(problem.at("/errors/0/hint").asString()).isEqualTo("Maybe food?");
        assertThat(problem.at("/errors/1/hint").asString()).isEqualTo("Maybe slab?");
    }

    @Test
    void a_fault_carries_its_numbers_as_members() {
        JsonNode fault =
                refusal(porkWith("\"thicknessMm\":45", "\"thicknessMm\":2")).at("/errors/0");
        assertThat(fault.at("/value").asString()).isEqualTo("2");
        assertThat(fault.at("/minimum").asDouble()).isEqualTo(3.0);
        assertThat(fault.at("/maximum").asDouble()).isEqualTo(250.0);
        assertThat(fault.at("/unit").asString()).isEqualTo("mm");
        assertThat(fault.at("/detail").asString()).isEqualTo("thicknessMm is 2, but must lie between 3 and 250 mm.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"setpointC\":60|\"setpointC\":135|This looks like Fahrenheit: 135 F is 57.2 C.",
                "\"setpointC\":60|\"setpointC\":333.15|This looks like kelvin: 333.15 K is 60.0 C.",
                "\"temperatureC\":4|\"temperatureC\":-127|-127 is a common sensor-fault value. Check the probe.",
                "\"temperatureC\":4|\"temperatureC\":85.0|85 is a common sensor-fault value. Check the probe.",
                "\"thicknessMm\":45|\"thicknessMm\":2.5|This looks like centimetres. Sizes are in millimetres.",
                "\"thicknessMm\":45|\"thickness_mm\":45|Maybe thicknessMm?",
                "\"thicknessMm\":45|\"thickness\":45|Maybe thicknessMm?",
                "\"thicknessMm\":45|\"thicknessMm\":\"45.5\"|Send the number without quotes.",
                "\"thicknessMm\":45|\"thicknessMm\":\"45,5\"|Send the number without quotes and with a decimal point.",
                "\"thicknessMm\":45|\"thicknessMm\":\"NaN\"|Check the sensor; leave the field out when there is no reading.",
                "\"thicknessMm\":45|\"thicknessMm\":NaN|Check the sensor; leave the field out when there is no reading.",
                "\"thicknessMm\":45|\"thicknessMm\":45,5|Maybe a decimal comma? Numbers are written with a point: 45.5.",
            })
    void a_suspicious_value_gets_a_hint(String from, String to, String hint) {
        assertThat(refusal(porkWith(from, to)).at("/errors/0/hint").asString()).isEqualTo(hint);
    }

    @Test
    void a_bath_far_beyond_boiling_gets_no_guess() {
        JsonNode fault =
                refusal(porkWith("\"setpointC\":60", "\"setpointC\":212")).at("/errors/0");
        assertThat(fault.has("hint")).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "Infinity", "-Infinity", "1e400", "-1e400"})
    void what_is_not_finite_is_named_in_text(String number) {
        assertFault(
                refusal(porkWith("\"thicknessMm\":45", "\"thicknessMm\":" + number)),
                "NOT_FINITE",
                "#/geometry/thicknessMm");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void what_is_not_finite_is_named_in_binary_of_both_widths(double number) {
        assertFault(
                refusal(CBOR, geometry(generator -> generator.writeNumber(number))),
                "NOT_FINITE",
                "#/geometry/thicknessMm");
        assertFault(
                refusal(CBOR, geometry(generator -> generator.writeNumber((float) number))),
                "NOT_FINITE",
                "#/geometry/thicknessMm");
    }

    @Test
    void a_narrow_float_means_its_printed_digits() {
        byte[] body = geometry(generator -> generator.writeNumber(45.1f));
        CookPlanRequest request = RequestReader.read(body, Wire.CBOR, CookPlanRequest.class);
        assertThat(request.geometry().thicknessMm()).isEqualTo(45.1);
    }

    /** RFC 8949: undefined is 0xf7, the unassigned simple value 16 is 0xf0, a byte string of one byte is 0x41. */
    @ParameterizedTest
    @ValueSource(strings = {"f7", "f0", "4101"})
    void binary_values_that_text_does_not_have_are_refused(String value) {
        byte[] body = splice(geometry(generator -> generator.writeString("here")), "6468657265", value);
        assertFault(refusal(CBOR, body), "WRONG_TYPE", "#/geometry/thicknessMm");
    }

    private static byte[] splice(byte[] body, String from, String to) {
        String hex = HexFormat.of().formatHex(body);
        assertThat(hex).contains(from);
        return HexFormat.of().parseHex(hex.replace(from, to));
    }

    @Test
    void a_field_sent_twice_is_refused_in_text_and_in_binary() {
        assertFault(
                refusal(porkWith("\"thicknessMm\":45", "\"thicknessMm\":45,\"thicknessMm\":45")),
                "DUPLICATE_FIELD",
                "#/geometry/thicknessMm");
        byte[] body = geometry(generator -> {
            generator.writeNumber(45);
            generator.writeName("thicknessMm");
            generator.writeNumber(45);
        });
        assertFault(refusal(CBOR, body), "DUPLICATE_FIELD", "#/geometry/thicknessMm");
    }

    /** The pork request in binary, with the thickness written by hand. */
    private static byte[] geometry(Consumer<CBORGenerator> thickness) {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        try (CBORGenerator generator = (CBORGenerator) CBOR_READER.createGenerator(body)) {
            generator.writeStartObject();
            generator.writeName("food");
            generator.writePOJO(READER.readTree("{\"id\":\"pork-loin\"}"));
            generator.writeName("start");
            generator.writePOJO(READER.readTree("{\"temperatureC\":4}"));
            generator.writeName("surroundings");
            generator.writePOJO(READER.readTree("{\"bath\":{}}"));
            generator.writeName("geometry");
            generator.writeStartObject();
            generator.writeName("shape");
            generator.writeString("slab");
            generator.writeName("thicknessMm");
            thickness.accept(generator);
            generator.writeEndObject();
            generator.writeEndObject();
        }
        return body.toByteArray();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\n\t "})
    void an_empty_body_is_named(String body) {
        assertThat(refusal(body).at("/code").asString()).isEqualTo("EMPTY_BODY");
    }

    @Test
    void an_empty_binary_body_is_named() {
        assertThat(refusal(CBOR, new byte[0]).at("/code").asString()).isEqualTo("EMPTY_BODY");
    }

    @ParameterizedTest
    @ValueSource(strings = {"{}x", "{}{}", "{} 1", "{},"})
    void text_after_the_request_is_refused(String ending) {
        String body = PORK + ending.substring(2);
        assertThat(refusal(body).at("/code").asString()).isIn("TRAILING_CONTENT", "MALFORMED_BODY");
    }

    @Test
    void bytes_after_a_binary_request_are_refused() {
        byte[] once = cbor(PORK);
        byte[] twice = Arrays.copyOf(once, once.length + 1);
        assertThat(refusal(CBOR, twice).at("/code").asString()).isEqualTo("TRAILING_CONTENT");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{",
                "{\"food\"",
                "{'food':{}}",
                "{food:{}}",
                "{\"food\":{},}",
                "// comment\n{}",
                "{\"food\":01}",
                "{\"food\":+1}",
                "{\"food\":.5}",
                "{\"food\":\"\u0001\"}",
                "{\"food\":nan}",
                "thicknessMm=45"
            })
    void broken_text_is_named_with_its_place(String body) {
        JsonNode problem = refusal(body);
        assertThat(problem.at("/code").asString()).isEqualTo("MALFORMED_BODY");
        assertThat(problem.at("/detail").asString()).matches(".*line \\d+, column \\d+.*");
    }

    @Test
    void a_cut_binary_body_is_named() {
        byte[] whole = cbor(PORK);
        for (int length = 1; length < whole.length; length++) {
            byte[] cut = Arrays.copyOf(whole, length);
            assertThat(refusal(CBOR, cut).at("/code").asString()).isEqualTo("MALFORMED_BODY");
        }
    }

    @Test
    void text_that_is_not_utf_8_is_refused() {
        byte[] latin = porkWith("pork-loin", "p\u00f6rk").getBytes(StandardCharsets.ISO_8859_1);
        assertThat(refusal(JSON, latin).at("/code").asString()).isEqualTo("MALFORMED_BODY");
        byte[] wide = PORK.getBytes(StandardCharsets.UTF_16);
        assertThat(refusal(JSON, wide).at("/code").asString()).isEqualTo("MALFORMED_BODY");
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "1", "\"pork\"", "true", "null"})
    void a_body_that_is_no_object_is_refused(String body) {
        assertFault(refusal(body), "WRONG_TYPE", "#");
        assertFault(refusal(CBOR, cbor(body)), "WRONG_TYPE", "#");
    }

    @Test
    void deep_nesting_is_refused_in_text_and_in_binary() {
        String deep = "{\"food\":" + "[".repeat(30) + "]".repeat(30) + "}";
        assertThat(refusal(deep).at("/code").asString()).isEqualTo("NESTING_TOO_DEEP");
        assertThat(refusal(CBOR, cbor(deep)).at("/code").asString()).isEqualTo("NESTING_TOO_DEEP");
    }

    @Test
    void long_names_texts_and_numbers_are_refused() {
        for (String body : List.of(
                "{\"" + "x".repeat(2000) + "\":1}",
                "{\"food\":\"" + "x".repeat(2000) + "\"}",
                "{\"food\":" + "1".repeat(2000) + "}")) {
            assertThat(refusal(body).at("/code").asString()).isEqualTo("LIMIT_EXCEEDED");
        }
    }

    @Test
    void what_is_sent_is_repeated_shortened_and_escaped() {
        String nasty = "<script>\\\"\\u2028" + "x".repeat(200);
        Response response = http().contentType(JSON)
                .body(porkWith("\"slab\"", '"' + nasty + '"').getBytes(StandardCharsets.UTF_8))
                .post(PLANS);
        assertThat(response.contentType()).isEqualTo(PROBLEM);
        JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(fault.at("/value").asString()).hasSize(64).endsWith("…");
    }

    @Test
    void a_flood_of_faults_gives_a_short_answer() {
        StringBuilder body = new StringBuilder("{\"a0\":1");
        for (int i = 1; i < 4000; i++) {
            body.append(",\"a").append(i).append("\":1");
        }
        JsonNode problem = refusal(body.append('}').toString());
        assertThat(problem.at("/errors")).hasSize(50);
        assertThat(problem.at("/detail").asString()).startsWith("4004 faults, of which 50 are listed.");
    }

    @Test
    void a_whole_number_may_be_written_with_a_point() {
        CookPlanRequest request = RequestReader.read(
                porkWith("\"start\"", "\"target\":{\"serveAfterS\":7.2e3},\"start\"")
                        .getBytes(StandardCharsets.UTF_8),
                Wire.JSON,
                CookPlanRequest.class);
        assertThat(request.target().serveAfterS()).isEqualTo(7200);
    }

    @Test
    void what_is_absent_gets_its_default() {
        CookPlanRequest request =
                RequestReader.read(PORK.getBytes(StandardCharsets.UTF_8), Wire.JSON, CookPlanRequest.class);
        assertThat(request.eater()).isEqualTo(Eater.GENERAL);
        assertThat(request.target()).isEqualTo(new CookPlanRequest.Target(null, null, null, null));
        assertThat(request.tolerances()).isEqualTo(new CookPlanRequest.Tolerances(null, null, null, null));
        assertThat(request.pack()).isEqualTo(new CookPlanRequest.Pack(false, false, null, null, false, false));
        assertThat(request.surroundings().altitudeM()).isZero();
        assertThat(request.surroundings().bath().stirring()).isEqualTo(Stirring.PUMPED);
        assertThat(request.food().form()).isNull();
    }

    @Test
    void the_defaults_are_not_needed_to_be_sent() {
        assertThat(http().contentType(JSON).body(PORK).post(PLANS).statusCode()).isEqualTo(200);
    }
}
