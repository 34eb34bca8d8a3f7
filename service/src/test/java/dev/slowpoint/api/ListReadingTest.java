package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.swagger.v3.oas.annotations.media.Schema;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.cbor.CBORMapper;

/** Lists are read as strictly as objects: every fault in them is named with its place, in text and in binary alike. */
class ListReadingTest {

    private static final JsonMapper TEXT = new JsonMapper();
    private static final CBORMapper BINARY = new CBORMapper();

    @Schema(description = "A tray.")
    record Tray(
            @Schema(description = "What lies on it.") @Items(min = 1, max = 3)
            List<Piece> pieces,

            @Schema(description = "Marks on it.", minimum = "0", maximum = "9", defaultValue = "[]") @Items(max = 2)
            List<Integer> marks) {}

    @Schema(description = "A piece.")
    record Piece(
            @Schema(description = "How thick.", minimum = "3", maximum = "250")
            double thicknessMm) {}

    private static Tray read(String body, Wire wire) {
        byte[] text = body.getBytes(StandardCharsets.UTF_8);
        return RequestReader.read(
                wire == Wire.JSON ? text : BINARY.writeValueAsBytes(TEXT.readTree(text)), wire, Tray.class);
    }

    private static List<String> faults(String body, Wire wire) {
        RequestRefused refused = catchThrowableOfType(RequestRefused.class, () -> read(body, wire));
        assertThat(refused).as(body).isNotNull();
        return refused.faults().stream()
                .map(fault -> fault.code() + " " + fault.pointer())
                .toList();
    }

    @ParameterizedTest
    @EnumSource(Wire.class)
    void items_are_read_in_their_order(Wire wire) {
        Tray tray = read("{\"pieces\":[{\"thicknessMm\":20},{\"thicknessMm\":10}],\"marks\":[7,1]}", wire);
        assertThat(tray.pieces()).containsExactly(new Piece(20.0), new Piece(10.0));
        assertThat(tray.marks()).containsExactly(7, 1);
    }

    @ParameterizedTest
    @EnumSource(Wire.class)
    void a_list_that_is_absent_takes_its_default(Wire wire) {
        assertThat(read("{\"pieces\":[{\"thicknessMm\":20}]}", wire).marks()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{}|MISSING_FIELD #/pieces",
                "{\"pieces\":null}|NULL_VALUE #/pieces",
                "{\"pieces\":{}}|WRONG_TYPE #/pieces",
                "{\"pieces\":\"20\"}|WRONG_TYPE #/pieces",
                "{\"pieces\":[]}|WRONG_NUMBER_OF_ITEMS #/pieces",
                "{\"pieces\":[{\"thicknessMm\":20},20]}|WRONG_TYPE #/pieces/1",
                "{\"pieces\":[{\"thicknessMm\":20},null]}|NULL_VALUE #/pieces/1",
                "{\"pieces\":[[]]}|WRONG_TYPE #/pieces/0",
                "{\"pieces\":[{}]}|MISSING_FIELD #/pieces/0/thicknessMm",
                "{\"pieces\":[{\"thicknessMm\":20},{\"thicknessMm\":2}]}|OUT_OF_RANGE #/pieces/1/thicknessMm",
                "{\"pieces\":[{\"thicknessMm\":20,\"x\":[{}]}]}|UNKNOWN_FIELD #/pieces/0/x",
                "{\"pieces\":[{\"thicknessMm\":20}],\"marks\":[1,10]}|OUT_OF_RANGE #/marks/1",
                "{\"pieces\":[{\"thicknessMm\":20}],\"marks\":[1,1.5]}|NOT_WHOLE #/marks/1",
                "{\"pieces\":[{\"thicknessMm\":20}],\"marks\":[1,2,null]}|WRONG_NUMBER_OF_ITEMS #/marks"
            })
    void a_fault_in_a_list_is_named_with_its_place(String body, String fault) {
        for (Wire wire : Wire.values()) {
            assertThat(faults(body, wire)).as(wire.name()).containsExactly(fault);
        }
    }

    @ParameterizedTest
    @EnumSource(Wire.class)
    void all_faults_of_a_list_are_named_at_once(Wire wire) {
        assertThat(faults("{\"pieces\":[{\"thicknessMm\":2},{\"thick\":20},7]}", wire))
                .containsExactly(
                        "OUT_OF_RANGE #/pieces/0/thicknessMm",
                        "UNKNOWN_FIELD #/pieces/1/thick",
                        "MISSING_FIELD #/pieces/1/thicknessMm",
                        "WRONG_TYPE #/pieces/2");
    }

    @Test
    void too_many_items_are_counted_and_their_bounds_told() {
        String body = "{\"pieces\":[" + "{\"thicknessMm\":20},".repeat(499) + "{\"thicknessMm\":20}]}";
        RequestRefused refused = catchThrowableOfType(RequestRefused.class, () -> read(body, Wire.JSON));
        assertThat(refused.faults()).hasSize(1);
        Fault fault = refused.faults().get(0);
        assertThat(new Languages().english().of(fault.detail()))
                .isEqualTo("pieces has 500 items, but must have between 1 and 3.");
        assertThat(fault.value()).isEqualTo("500");
        assertThat(fault.minimum()).isEqualTo(1.0);
        assertThat(fault.maximum()).isEqualTo(3.0);
    }

    /** RFC 8949, section 3.2.2: 0x9f opens a list of unknown length, which 0xff closes. */
    @Test
    void a_binary_list_of_unknown_length_is_read_and_one_that_is_cut_is_refused() {
        byte[] whole = HexFormat.of().parseHex("a1667069656365739fa16b746869636b6e6573734d6d14ff");
        assertThat(RequestReader.read(whole, Wire.CBOR, Tray.class).pieces()).containsExactly(new Piece(20.0));
        for (int length = 1; length < whole.length; length++) {
            byte[] cut = Arrays.copyOf(whole, length);
            RequestRefused refused =
                    catchThrowableOfType(RequestRefused.class, () -> RequestReader.read(cut, Wire.CBOR, Tray.class));
            assertThat(refused.faults().get(0).code()).isEqualTo(ProblemCode.MALFORMED_BODY);
        }
    }

    @Test
    void the_contract_tells_how_many_a_list_may_hold() {
        RecordSchemas schemas = new RecordSchemas();
        schemas.request(Tray.class);
        var tray = new JsonMapper().<JsonNode>valueToTree(schemas.all().get("Tray"));
        assertThat(tray.at("/properties/pieces/minItems").asInt()).isEqualTo(1);
        assertThat(tray.at("/properties/pieces/maxItems").asInt()).isEqualTo(3);
        assertThat(tray.at("/required").toString()).isEqualTo("[\"pieces\"]");
    }
}
