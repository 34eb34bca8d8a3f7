package dev.slowpoint.situations;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import io.restassured.response.Response;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Questions that people who do this work have asked in public, retold with numbers; ranges come from an independent model or
 * from the rule named. These need bodies with ends, a bath of its own, or what follows the bath.
 */
class ChainSituationsTest extends HttpTest {

    private static final int HOUR = 3600;

    private Asking ask(String food) {
        return new Asking(this::http, food);
    }

    @Test
    @DisplayName("S02: a core of 54 C after an hour means a piece of some 48 mm, which is not safe yet")
    void a_core_of_54_after_an_hour_tells_the_thickness_and_so_the_time_left() {
        double thin = 30.0;
        double thick = 60.0;
        while (thick - thin > 0.05) {
            double middle = 0.5 * (thin + thick);
            if (afterAnHour(middle).number("/atServe/coreC") > 54.0) {
                thin = middle;
            } else {
                thick = middle;
            }
        }
        assertThat(thin).isBetween(40.0, 48.6);
        assertThat(afterAnHour(thin).text("/safety/verdict")).isEqualTo("notMet");
        Told whole = ask("chicken-breast").slab(thin).from(5).bath(65.6).plan();
        assertThat(whole.minutes("/times/safe/nominalS")).isBetween(90.0, 102.0);
    }

    private Told afterAnHour(double thicknessMm) {
        return ask("chicken-breast")
                .slab(thicknessMm)
                .from(5)
                .bath(65.6)
                .servedAfterMinutes(60)
                .plan();
    }

    @Test
    @DisplayName("S05: hot first, then cooler; an hour is enough for 25 mm and not for 38 mm")
    void two_doneness_levels_in_one_bath() {
        for (double thicknessMm : new double[] {25, 38}) {
            Told told = ask("beef-sirloin")
                    .slab(thicknessMm)
                    .from(5)
                    .bath(57.2)
                    .within(1)
                    .vessel(Map.of("volumeL", 15, "heaterW", 1200, "otherLoadG", 0))
                    .massG(300)
                    .servedAfterMinutes(60)
                    .then(Map.of("step", "bath", "setpointC", 53.9, "durationS", HOUR))
                    .plan();
            double hot = told.minutes("/times/hotThrough/nominalS");
            if (thicknessMm < 30) {
                assertThat(hot).isBetween(34.0, 63.0);
            } else {
                assertThat(hot).isBetween(75.0, 105.0);
                assertThat(told.number("/atServe/coreC")).isBetween(51.5, 55.5);
            }
            assertThat(told.text("/safety/verdict")).isNotEqualTo("met");
            // 15 L from 57.2 to 53.9 C by tap water of 15 C, taken out and replaced: 15 * 3.3 / 42.2.
            assertThat(told.number("/then/0/swapWater/volumeL")).isBetween(1.1, 1.35);
        }
        Told second = ask("beef-sirloin")
                .slab(38)
                .from(5)
                .bath(53.9)
                .servedAfterMinutes(60)
                .plan();
        assertThat(second.number("/atServe/coreC")).isBetween(48.5, 52.5);
    }

    @Test
    @DisplayName("S06: a bath found at 40 C after a night without power is never certified")
    void a_bath_found_at_40_after_a_power_cut() {
        Told told = ask("pork-shoulder")
                .slab(90)
                .from(5)
                .bath(73.9)
                .purpose("tenderise")
                .servedAfterMinutes(7 * 60)
                .then(Map.of("step", "unheated", "durationS", 17_100, "foundC", 40))
                .plan();
        assertThat(told.text("/then/0/interruption/verdict")).isEqualTo("discardOrDecide");
        assertThat(told.minutes("/then/0/interruption/waterBelowS") / 60).isBetween(2.0, 2.7);
        assertThat(told.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(told.warnings()).contains("INTERRUPTED_COOK");
    }

    @Test
    @DisplayName("S07: water at 26.7 C was off for hours, not for one or two")
    void water_found_at_27_was_off_for_hours() {
        Told told = ask("beef-short-ribs-boneless")
                .slab(50)
                .from(5)
                .bath(60)
                .purpose("tenderise")
                .servedAfterMinutes(24 * 60)
                .then(Map.of("step", "unheated", "foundC", 26.7))
                .plan();
        assertThat(told.answer().at("/then/0/interruption/inferred").asBoolean())
                .isTrue();
        assertThat(told.minutes("/then/0/interruption/off/earlyS") / 60).isGreaterThan(5.0);
        assertThat(told.minutes("/then/0/interruption/off/nominalS") / 60).isBetween(6.5, 12.0);
        assertThat(told.minutes("/then/0/interruption/off/lateS") / 60).isLessThan(12.5);
        assertThat(told.text("/then/0/interruption/verdict")).isEqualTo("discardOrDecide");
        assertThat(told.text("/safety/verdict")).isEqualTo("notMet");
    }

    @ParameterizedTest
    @CsvSource({"90, 126, 171, 2.3, 4.2, 200, 300", "110, 186, 246, 3.0, 5.6, 260, 400"})
    @DisplayName("S08: a rolled joint is judged in its middle and warned of for its slow warm-up")
    void a_rolled_brisket_is_judged_in_its_middle(
            double diameterMm,
            double low52,
            double high52,
            double leastH,
            double mostH,
            double lowSafe,
            double highSafe) {
        Told told = ask("beef-brisket")
                .form("rolled")
                .cylinder(diameterMm)
                .from(5)
                .bath(56)
                .core(52.3, 0.05)
                .plan();
        assertThat(told.minutes("/times/hotThrough/nominalS")).isBetween(low52, high52);
        assertThat(told.minutes("/safety/warmUpS") / 60).isBetween(leastH, mostH + 1.5);
        assertThat(told.minutes("/times/safe/nominalS")).isBetween(lowSafe, highSafe);
        assertThat(told.warnings()).contains("NONINTACT_MEAT");
        assertThat(told.warnings()).containsAnyOf("ROLLED_WARMS_SLOWLY", "WARM_UP_OVER_4H", "WARM_UP_OVER_6H");
    }

    @Test
    @DisplayName("S17: ice water meets the cooling rule, a refrigerator shelf does not")
    void ice_water_chills_in_time_and_a_fridge_does_not() {
        Map<String, double[]> ice = chill("iceWater");
        assertThat(ice.get("21.0")).satisfies(t -> assertThat(t[0]).isBetween(27.0, 42.0));
        assertThat(ice.get("5.0")).satisfies(t -> assertThat(t[0]).isBetween(59.0, 94.0));
        assertThat(ice.get("kept")[0]).isEqualTo(1.0);
        Map<String, double[]> fridge = chill("fridge");
        assertThat(fridge.get("21.0")).satisfies(t -> assertThat(t[0]).isBetween(124.0, 317.0));
        assertThat(fridge.get("5.0")).satisfies(t -> assertThat(t[0]).isBetween(390.0, 1025.0));
        assertThat(fridge.get("kept")[0]).isZero();
    }

    private Map<String, double[]> chill(String medium) {
        String body = """
                {"food":{"id":"chicken-breast"},"geometry":{"shape":"slab","thicknessMm":40},
                 "start":{"temperatureC":63},"chill":{"medium":"%s"}}""".formatted(medium);
        Response response = http().contentType(JSON).body(body).post("/v1/chill-plans");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        Told told = new Told(READER.readTree(response.asByteArray()));
        Map<String, double[]> found = new TreeMap<>();
        for (var level : told.answer().at("/cooling/levels")) {
            if (level.has("after")) {
                found.put(
                        Double.toString(level.get("levelC").asDouble()),
                        new double[] {level.at("/after/nominalS").asDouble() / 60.0});
            }
        }
        found.put("kept", new double[] {told.answer().at("/cooling/kept").asBoolean() ? 1.0 : 0.0});
        return found;
    }

    @ParameterizedTest
    @CsvSource({"76, 120, 180", "100, 100, 120"})
    @DisplayName("S18: a block of chuck is no endless slab; safe within hours, tender in a day")
    void a_block_of_chuck_is_no_endless_slab(double thicknessMm, double widthMm, double lengthMm) {
        Told core = ask("beef-chuck")
                .brick(thicknessMm, widthMm, lengthMm)
                .from(4)
                .bath(58.3)
                .core(54.4, 0.05)
                .plan();
        assertThat(core.minutes("/times/hotThrough/nominalS")).isBetween(145.0, 195.0);
        Told told = ask("beef-chuck")
                .brick(thicknessMm, widthMm, lengthMm)
                .from(4)
                .bath(58.3)
                .within(1)
                .purpose("tenderise")
                .plan();
        assertThat(told.minutes("/times/hotThrough/nominalS")).isBetween(205.0, 275.0);
        assertThat(told.minutes("/times/safe/nominalS")).isLessThan(6 * 60.0);
        assertThat(told.minutes("/times/safe/lateS")).isLessThan(6.5 * 60.0);
        assertThat(told.minutes("/times/tender/nominalS") / 60).isBetween(12.0, 30.0);
        assertThat(told.minutes("/times/goodUntil/nominalS") / 60).isBetween(36.0, 60.0);
    }

    @Test
    @DisplayName("S19: steaks may wait in a bath of 55 C, below the line for food businesses")
    void steaks_may_wait_at_55() {
        Told three = hold(3);
        Told eight = hold(8);
        assertThat(three.text("/safety/verdict")).isIn("met", "surfaceOnly");
        assertThat(eight.text("/then/0/holding/verdict")).isEqualTo("met");
        assertThat(three.number("/then/0/holding/belowGrowthLimitS")).isZero();
        assertThat(three.answer().at("/then/0/holding/belowHotHolding").asBoolean())
                .isTrue();
        assertThat(three.number("/then/0/holding/hotHoldingC")).isEqualTo(57.0);
        assertThat(eight.number("/then/0/holding/achievedLog10"))
                .isGreaterThanOrEqualTo(three.number("/then/0/holding/achievedLog10"));
        assertThat(eight.warnings()).contains("HOLD_BELOW_57", "TEXTURE_PAST");
    }

    private Told hold(int hours) {
        return ask("beef-sirloin")
                .slab(30)
                .from(5)
                .bath(55)
                .servedAfterMinutes(180)
                .then(Map.of("step", "bath", "setpointC", 55, "durationS", hours * HOUR))
                .plan();
    }

    @ParameterizedTest
    @CsvSource({"12, 1000, 96.8, 123.2", "20, 800, 127.6, 162.4"})
    @DisplayName("S22: food put in cold water counts from switch-on, ramp and all")
    void food_heated_with_the_bath_counts_from_switch_on(double litres, double watts, double low, double high) {
        Told cold = ask("chicken-breast")
                .slab(30)
                .massG(1000)
                .from(5)
                .bath(60)
                .vessel(Map.of(
                        "volumeL",
                        litres,
                        "heaterW",
                        watts,
                        "startC",
                        15,
                        "lossWPerK",
                        3,
                        "covered",
                        true,
                        "openAreaCm2",
                        1))
                .plan();
        Told hot = ask("chicken-breast").slab(30).from(5).bath(60).plan();
        assertThat(hot.minutes("/times/safe/nominalS")).isBetween(79.0, 109.0);
        assertThat(cold.minutes("/times/safe/nominalS")).isBetween(low, high);
        assertThat(cold.warnings()).contains("STARTS_COLD");
    }

    @ParameterizedTest
    @CsvSource({"20, 53.0, 54.8", "25, 46, 53", "38, 32, 43"})
    @DisplayName("S24: half an hour warms a thin steak through and leaves a thick one cold")
    void half_an_hour_of_reheating(double thicknessMm, double lowC, double highC) {
        Told told = ask("beef-sirloin")
                .slab(thicknessMm)
                .from(5)
                .bath(55)
                .then(Map.of("step", "chill", "medium", "iceWater"))
                .then(Map.of("step", "store", "temperatureC", 4, "days", 0.5))
                .then(Map.of("step", "reheat", "setpointC", 55, "durationS", 1800))
                .plan();
        assertThat(told.number("/then/2/coreC")).isBetween(lowC, highC);
        assertThat(told.answer().at("/then/2/reheating/killStep").asBoolean()).isFalse();
        assertThat(told.text("/then/2/step")).isEqualTo("reheat");
    }

    @Test
    @DisplayName("S31: a face out of the water never gets there, however long")
    void a_face_out_of_the_water_never_gets_there() {
        Told under = ask("chicken-breast").slab(30).from(5).bath(62).plan();
        assertThat(under.minutes("/times/safe/nominalS")).isBetween(60.0, 88.0);
        Told floating = ask("chicken-breast")
                .slab(30)
                .arrangement(Map.of("submerged", "oneFaceInAir", "airC", 22))
                .from(5)
                .bath(62)
                .servedAfterMinutes(240)
                .plan();
        assertThat(floating.number("/atServe/coreC")).isBetween(43.0, 46.0);
        assertThat(floating.has("/times/safe/nominalS")).isFalse();
        assertThat(floating.has("/takeOut/bestS")).isFalse();
        assertThat(floating.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(floating.warnings()).contains("FACE_IN_AIR");
        Told lidded = ask("chicken-breast")
                .slab(30)
                .arrangement(Map.of("submerged", "oneFaceInAir", "airC", 45))
                .from(5)
                .bath(62)
                .servedAfterMinutes(240)
                .plan();
        assertThat(lidded.number("/atServe/coreC")).isBetween(50.0, 55.5);
        assertThat(lidded.text("/safety/verdict")).isEqualTo("notMet");
    }

    @Test
    @DisplayName("a seared steak peaks above its bath, and a cooler bath or a chill keeps its doneness")
    void a_sear_raises_the_core_and_the_plan_says_how_to_keep_it() {
        Told told = ask("beef-sirloin")
                .slab(25)
                .from(5)
                .bath(54)
                .then(Map.of("step", "sear", "method", "pan", "secondsPerSide", 60))
                .then(Map.of("step", "rest", "durationS", 300))
                .plan();
        assertThat(told.number("/then/0/sear/riseK")).isBetween(4.0, 9.0);
        assertThat(told.number("/then/0/sear/depthMm")).isBetween(3.0, 5.5);
        assertThat(told.number("/then/0/sear/lowerSetpointC")).isBetween(45.0, 53.5);
        assertThat(List.of(told.text("/then/0/step"), told.text("/then/1/step")))
                .containsExactly("sear", "rest");
    }
}
