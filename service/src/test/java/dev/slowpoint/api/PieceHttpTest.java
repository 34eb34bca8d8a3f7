package dev.slowpoint.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.restassured.response.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

/** Shapes, masses, arrangements and vessels, over HTTP. */
class PieceHttpTest extends HttpTest {

    private static final String SLAB = "\"shape\":\"slab\",\"thicknessMm\":45";

    private Response send(String geometry, String bath) {
        return http().contentType(JSON)
                .body(PORK.replace(SLAB, geometry).replace("\"setpointC\":60", "\"setpointC\":60" + bath))
                .post(PLANS + "?include=sources");
    }

    private JsonNode plan(String geometry, String bath) {
        Response response = send(geometry, bath);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray());
    }

    private int hotThrough(String geometry) {
        return plan(geometry, "").at("/times/hotThrough/nominalS").asInt();
    }

    private void refused(Response response, String code, String pointer) {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(422);
        JsonNode fault = READER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(fault.at("/code").asString()).isEqualTo(code);
        assertThat(fault.at("/pointer").asString()).isEqualTo(pointer);
    }

    /** Ends only help, and each more than the one before. */
    @Test
    void ends_make_a_piece_sooner_done() {
        int slab = hotThrough(SLAB);
        int longBrick = hotThrough("\"shape\":\"brick\",\"thicknessMm\":45,\"widthMm\":90,\"lengthMm\":400");
        int brick = hotThrough("\"shape\":\"brick\",\"thicknessMm\":45,\"widthMm\":90,\"lengthMm\":90");
        int cube = hotThrough("\"shape\":\"brick\",\"thicknessMm\":45,\"widthMm\":45,\"lengthMm\":45");
        int sphere = hotThrough("\"shape\":\"sphere\",\"diameterMm\":45");
        assertThat(longBrick).isLessThan(slab);
        assertThat(brick).isLessThan(longBrick);
        assertThat(cube).isLessThan(brick);
        assertThat(sphere).isLessThan(cube);
        int longCylinder = hotThrough("\"shape\":\"cylinder\",\"diameterMm\":45");
        int shortCylinder = hotThrough("\"shape\":\"cylinder\",\"diameterMm\":45,\"lengthMm\":60");
        assertThat(shortCylinder).isLessThan(longCylinder);
    }

    /**
     * Lean raw meat weighs 1040 to 1090 kg/m3 (from memory), so a brick of 45 mm by 90 mm by 180 mm
     * weighs 758 to 795 g, and giving that mass in place of a size is to give nearly that size.
     */
    @ParameterizedTest
    @CsvSource({"thicknessMm", "widthMm", "lengthMm"})
    void a_mass_stands_for_any_one_size_of_a_brick(String replaced) {
        String whole = "\"shape\":\"brick\",\"thicknessMm\":45,\"widthMm\":90,\"lengthMm\":180";
        String weighed =
                whole.replaceFirst(",?\"" + replaced + "\":\\d+", "").replace("brick\"", "brick\",\"massG\":777");
        assertThat((double) hotThrough(weighed)).isCloseTo(hotThrough(whole), within(0.05 * hotThrough(whole)));
    }

    /** The same density: a ball of 60 mm weighs 118 to 123 g, a cylinder of 60 mm by 100 mm 294 to 308 g. */
    @Test
    void a_mass_stands_for_the_size_of_a_sphere_and_the_length_of_a_cylinder() {
        int ball = hotThrough("\"shape\":\"sphere\",\"diameterMm\":60");
        assertThat((double) hotThrough("\"shape\":\"sphere\",\"massG\":120.5")).isCloseTo(ball, within(0.02 * ball));
        int roll = hotThrough("\"shape\":\"cylinder\",\"diameterMm\":60,\"lengthMm\":100");
        assertThat((double) hotThrough("\"shape\":\"cylinder\",\"diameterMm\":60,\"massG\":301"))
                .isCloseTo(roll, within(0.02 * roll));
    }

    /** A hen's egg of 60 g is about 43 mm wide and 57 mm long (common practice, no source). */
    @Test
    void an_egg_may_be_weighed_or_measured_either_way() {
        int weighed = egg("\"massG\":60");
        for (String size : new String[] {"\"diameterMm\":43", "\"lengthMm\":57", "\"diameterMm\":43,\"lengthMm\":57"}) {
            assertThat((double) egg(size)).as(size).isCloseTo(weighed, within(0.05 * weighed));
        }
    }

    private int egg(String size) {
        Response response = http().contentType(JSON)
                .body(porkWith(SLAB, "\"shape\":\"egg\"," + size).replace("pork-loin", "egg-in-shell"))
                .post(PLANS);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return READER.readTree(response.asByteArray())
                .at("/times/hotThrough/nominalS")
                .asInt();
    }

    @Test
    void the_error_of_a_shape_is_told_only_where_there_is_one() {
        assertThat(plan(SLAB, "").has("shapeErrorPercent")).isFalse();
        assertThat(plan("\"shape\":\"brick\",\"thicknessMm\":45,\"widthMm\":90,\"lengthMm\":90", "")
                        .at("/shapeErrorPercent")
                        .asDouble())
                .isBetween(2.0, 20.0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"shape\":\"brick\",\"thicknessMm\":45,\"widthMm\":90,\"massG\":100",
                "\"shape\":\"brick\",\"thicknessMm\":45,\"widthMm\":90,\"massG\":8000",
                "\"shape\":\"brick\",\"widthMm\":45,\"lengthMm\":45,\"massG\":200",
                "\"shape\":\"sphere\",\"massG\":20000",
                "\"shape\":\"cylinder\",\"diameterMm\":200,\"massG\":50"
            })
    void a_mass_that_gives_no_such_shape_is_refused(String geometry) {
        refused(send(geometry, ""), "MASS_DOES_NOT_FIT", "#/geometry/massG");
    }

    @Test
    void what_keeps_heat_out_makes_later() {
        int free = hotThrough(SLAB);
        assertThat(hotThrough(SLAB + ",\"arrangement\":{\"pouchesTouching\":true}"))
                .isGreaterThan(2 * free);
        assertThat(hotThrough(SLAB + ",\"arrangement\":{\"pileOf\":2}")).isGreaterThan(2 * free);
        assertThat(hotThrough(SLAB + ",\"arrangement\":{\"trappedAirMm\":2}")).isGreaterThan(free);
        assertThat(hotThrough(SLAB + ",\"arrangement\":{\"pileOf\":1,\"submerged\":\"full\"}"))
                .isEqualTo(free);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"shape\":\"sphere\",\"diameterMm\":45,\"arrangement\":{\"pileOf\":2}|ARRANGEMENT_NEEDS_FLAT",
                "\"shape\":\"slab\",\"thicknessMm\":45,\"arrangement\":{\"pouchesTouching\":true,"
                        + "\"submerged\":\"oneFaceInAir\",\"airC\":21}|NO_FACE_IN_WATER"
            })
    void an_arrangement_that_cannot_be_is_refused(String geometry, String code) {
        refused(send(geometry, ""), code, "#/geometry/arrangement");
    }

    /** Air can be warmer than the bath, as under the lid of a steamer; less of it to give heat is then the late side. */
    @Test
    void air_over_a_face_keeps_late_later_also_where_it_is_warmer_than_the_water() {
        for (int airC : new int[] {10, 40, 100}) {
            JsonNode time = plan(SLAB + ",\"arrangement\":{\"submerged\":\"oneFaceInAir\",\"airC\":" + airC + "}", "")
                    .at("/times/hotThrough");
            for (String moment : new String[] {"earlyS", "nominalS"}) {
                if (time.has("lateS")) {
                    assertThat(time.at("/" + moment).asInt())
                            .as(airC + " C")
                            .isLessThanOrEqualTo(time.at("/lateS").asInt());
                }
            }
            assertThat(time.has("lateS")).as(airC + " C").isEqualTo(airC == 100);
        }
    }

    @Test
    void a_pack_in_an_arrangement_is_not_followed_further() {
        Response response = http().contentType(JSON)
                .body(porkWith(SLAB, SLAB + ",\"arrangement\":{\"pileOf\":2}")
                        .replace("\"start\"", "\"then\":[{\"step\":\"rest\",\"durationS\":60}],\"start\""))
                .post(PLANS);
        refused(response, "CHAIN_NEEDS_FREE_PACK", "#/geometry/arrangement");
    }

    @Test
    void the_course_of_the_water_is_told_where_its_vessel_is() {
        JsonNode small = plan(SLAB + ",\"massG\":2000", ",\"volumeL\":8,\"heaterW\":600");
        JsonNode large = plan(SLAB + ",\"massG\":2000", ",\"volumeL\":80,\"heaterW\":600,\"covered\":true");
        assertThat(plan(SLAB, "").has("bath")).isFalse();
        assertThat(small.at("/bath/lowestC").asDouble())
                .isLessThan(large.at("/bath/lowestC").asDouble());
        assertThat(large.at("/bath/lowestC").asDouble()).isLessThan(60.0);
        assertThat(small.at("/bath/backAtS").asInt())
                .isGreaterThan(small.at("/bath/lowestAtS").asInt());
    }

    @Test
    void more_food_in_the_bath_makes_the_water_colder() {
        String vessel = ",\"volumeL\":20,\"heaterW\":800";
        double alone = plan(SLAB + ",\"massG\":800", vessel).at("/bath/lowestC").asDouble();
        double together = plan(SLAB + ",\"massG\":800", vessel + ",\"otherLoadG\":4000")
                .at("/bath/lowestC")
                .asDouble();
        assertThat(together).isLessThan(alone);
    }

    @Test
    void a_cold_start_begins_at_the_temperature_of_the_water() {
        JsonNode plan = plan(SLAB + ",\"massG\":800", ",\"volumeL\":20,\"heaterW\":1500,\"startC\":20");
        assertThat(plan.at("/bath/lowestC").asDouble()).isLessThanOrEqualTo(20.0);
        assertThat(plan.at("/warnings").toString()).contains("STARTS_COLD");
        assertThat(plan.at("/times/hotThrough/nominalS").asInt()).isGreaterThan(hotThrough(SLAB));
    }

    /** What a tolerance of thickness does to a disc is about what it does to a slab as thick. */
    @Test
    void a_tolerance_of_thickness_counts_along_the_shorter_way_through_a_disc() {
        JsonNode disc = plan("\"shape\":\"cylinder\",\"diameterMm\":200,\"lengthMm\":30", "")
                .at("/times/hotThrough");
        JsonNode slab = plan("\"shape\":\"slab\",\"thicknessMm\":30", "").at("/times/hotThrough");
        double discSpread = disc.at("/lateS").asDouble() / disc.at("/earlyS").asDouble();
        double slabSpread = slab.at("/lateS").asDouble() / slab.at("/earlyS").asDouble();
        assertThat(discSpread).isGreaterThan(0.95 * slabSpread);
    }

    @Test
    void a_shape_with_ends_needs_no_mass_beside_a_vessel() {
        assertThat(plan("\"shape\":\"cylinder\",\"diameterMm\":60,\"lengthMm\":200", ",\"volumeL\":20,\"heaterW\":800")
                        .has("bath"))
                .isTrue();
    }
}
