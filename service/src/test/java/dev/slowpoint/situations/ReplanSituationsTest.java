package dev.slowpoint.situations;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import io.restassured.response.Response;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What people asked in the middle of a cook; ranges come from an independent model or from the rule named. Times without
 * heater are checked against Newton cooling fitted to public accounts.
 */
class ReplanSituationsTest extends HttpTest {

    private static final int HOUR = 3600;

    private Told replan(String food, String geometry, double startC, String bath, String more, String soFar) {
        Response response = send(food, geometry, startC, bath, more, soFar);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return new Told(READER.readTree(response.asByteArray()));
    }

    private Response send(String food, String geometry, double startC, String bath, String more, String soFar) {
        String body = String.format(
                Locale.ROOT,
                """
                {"food":{"id":"%s"%s},"geometry":%s,"start":{"temperatureC":%s},"surroundings":{"bath":{%s}}%s,
                 "soFar":{%s}}""",
                food,
                food.equals("beef-brisket") ? ",\"form\":\"rolled\"" : "",
                geometry,
                startC,
                bath,
                more,
                soFar);
        return http().contentType(JSON).body(body).post("/v1/replans");
    }

    private static String slab(double thicknessMm) {
        return "{\"shape\":\"slab\",\"thicknessMm\":" + thicknessMm + "}";
    }

    private static String log(double... pairs) {
        StringBuilder text = new StringBuilder("\"bathLog\":[");
        for (int i = 0; i < pairs.length; i += 2) {
            text.append(i == 0 ? "" : ",")
                    .append(String.format(Locale.ROOT, "{\"atS\":%d,\"waterC\":%.2f}", (int) pairs[i], pairs[i + 1]));
        }
        return text.append("]").toString();
    }

    @ParameterizedTest
    @CsvSource({"30", "48", "55"})
    @DisplayName(
            "S02: a core of 54 C after an hour pins the time left of a piece of unknown thickness, whatever was guessed")
    void a_core_reading_pins_the_time_left(double guessMm) {
        // The size is a guess: its tolerance says so.
        Told told = replan(
                "chicken-breast",
                slab(guessMm),
                5,
                "\"setpointC\":65.6",
                ",\"tolerances\":{\"thicknessMm\":20}",
                "\"elapsedS\":3600,\"coreReadings\":[{\"atS\":3600,\"coreC\":54,\"errorK\":0.3}]");
        assertThat(told.text("/decision")).isEqualTo("carryOn");
        assertThat(told.number("/state/coreC")).isBetween(53.9, 54.1);
        assertThat(told.number("/inferred/thicknessMm")).isBetween(40.0, 48.6);
        // 91 to 98 min for seven decimal reductions by the two explanations; 95 to 102 by the British line.
        assertThat(told.minutes("/times/safe/nominalS")).isBetween(90.0, 102.0);
        assertThat(told.minutes("/times/safe/lateS")).isBetween(95.0, 115.0);
        assertThat(told.minutes("/times/safe/earlyS")).isBetween(80.0, 98.0);
        assertThat(told.minutes("/times/safe/nominalS") - 60.0).isBetween(30.0, 42.0);
        assertThat(told.number("/left/earliestS")).isEqualTo(told.number("/takeOut/earliestS") - 3600);
        assertThat(told.text("/inferred/pinned")).isIn("well", "fairly");
    }

    @Test
    @DisplayName(
            "S02: a size told without a tolerance is no guess, and a reading that is too high for it shortens nothing")
    void a_reading_too_high_for_the_size_told_shortens_nothing() {
        for (double toldMm : new double[] {48, 60, 70}) {
            Told plain = replan("chicken-breast", slab(toldMm), 5, "\"setpointC\":65.6", "", "\"elapsedS\":3600");
            Told read = replan(
                    "chicken-breast",
                    slab(toldMm),
                    5,
                    "\"setpointC\":65.6",
                    "",
                    "\"elapsedS\":3600,\"coreReadings\":[{\"atS\":3600,\"coreC\":54,\"errorK\":0.3}]");
            assertThat(read.number("/times/safe/lateS")).isGreaterThanOrEqualTo(plain.number("/times/safe/lateS"));
            assertThat(read.text("/decision")).isIn("carryOn", "changePlan");
            assertThat(read.has("/takeOut")).isEqualTo(read.text("/decision").equals("carryOn"));
            if (read.has("/takeOut")) {
                assertThat(read.number("/takeOut/earliestS")).isGreaterThanOrEqualTo(plain.number("/times/safe/lateS"));
            }
            assertThat(read.number("/state/coreC")).isBetween(53.9, 54.1);
            assertThat(read.warnings()).contains("READINGS_MEAN_THINNER");
        }
    }

    @Test
    @DisplayName("S02: both explanations, thick or badly reached by water, are told and end at the same time")
    void both_explanations_of_a_reading_end_at_the_same_time() {
        Told thin = replan(
                "chicken-breast",
                slab(40),
                5,
                "\"setpointC\":65.6,\"stirring\":\"still\"",
                "",
                "\"elapsedS\":3600,\"coreReadings\":[{\"atS\":3600,\"coreC\":54,\"errorK\":0.3}]");
        Told thick = replan(
                "chicken-breast",
                slab(48),
                5,
                "\"setpointC\":65.6",
                "",
                "\"elapsedS\":3600,\"coreReadings\":[{\"atS\":3600,\"coreC\":54,\"errorK\":0.3}]");
        assertThat(Math.abs(thin.minutes("/times/safe/nominalS") - thick.minutes("/times/safe/nominalS")))
                .isLessThan(7.0);
        assertThat(thick.number("/inferred/filmWPerM2K")).isBetween(90.0, 1000.0);
    }

    @Test
    @DisplayName("S05: hot first, then cooler; an hour is not enough for 38 mm")
    void a_setpoint_lowered_after_an_hour() {
        Told told = replan(
                "beef-sirloin",
                slab(38),
                5,
                "\"setpointC\":57.2",
                ",\"target\":{\"withinK\":1}",
                "\"elapsedS\":3600,\"events\":[{\"event\":\"setpointChanged\",\"fromS\":3600,\"setpointC\":53.9}]");
        assertThat(told.number("/setpointC")).isEqualTo(53.9);
        assertThat(told.number("/state/coreC")).isBetween(51.5, 55.5);
        assertThat(told.text("/safety/verdict")).isNotEqualTo("met");
        assertThat(told.text("/decision")).isIn("carryOn", "ready");
    }

    @Test
    @DisplayName("S06: a bath found at 40 C after a night without power is never certified")
    void a_bath_found_at_40_after_a_power_cut() {
        Told told = replan(
                "pork-shoulder",
                slab(90),
                5,
                "\"setpointC\":73.9",
                ",\"target\":{\"purpose\":\"tenderise\"}",
                "\"elapsedS\":42300,\"events\":[{\"event\":\"heaterOff\",\"fromS\":25200,\"untilS\":42300,\"foundC\":40}]");
        assertThat(told.text("/decision")).isIn("discard", "getDecision");
        assertThat(told.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(told.has("/left")).isFalse();
        assertThat(told.has("/takeOut")).isFalse();
        assertThat(told.warnings()).contains("HEATER_WAS_OFF", "FELL_BACK", "TOXIN_NOT_UNDONE");
        assertThat(told.number("/state/waterC")).isBetween(39.9, 40.1);
    }

    @ParameterizedTest
    @CsvSource({"''", "'\"fromS\":86400,'"})
    @DisplayName("S07: water at 26.7 C was off for hours, not for one or two, whatever is guessed")
    void water_found_at_27_was_off_for_hours(String guess) {
        int now = 86_400 + 5400;
        Told told = replan(
                "beef-short-ribs-boneless",
                slab(50),
                5,
                "\"setpointC\":60",
                ",\"target\":{\"purpose\":\"tenderise\"}",
                "\"elapsedS\":" + now + ",\"events\":[{\"event\":\"heaterOff\"," + guess + "\"untilS\":" + now
                        + ",\"foundC\":26.7}]");
        assertThat(told.minutes("/inferred/heaterOff/nominalS") / 60).isBetween(6.5, 12.0);
        assertThat(told.minutes("/inferred/heaterOff/lateS") / 60).isLessThan(12.5);
        assertThat(told.text("/decision")).isEqualTo("discard");
        assertThat(told.text("/safety/verdict")).isEqualTo("notMet");
        if (!guess.isEmpty()) {
            assertThat(told.warnings()).contains("OFF_TIME_DOUBTED");
        }
    }

    @Test
    @DisplayName("S08: a rolled brisket is warned of for its slow warm-up, though the kill is there")
    void a_rolled_brisket_is_warned_of() {
        Told told = replan(
                "beef-brisket",
                "{\"shape\":\"cylinder\",\"diameterMm\":110}",
                5,
                "\"setpointC\":56",
                "",
                "\"elapsedS\":" + 22 * HOUR);
        assertThat(told.warnings()).contains("NONINTACT_MEAT");
        assertThat(told.warnings()).containsAnyOf("ROLLED_WARMS_SLOWLY", "WARM_UP_OVER_4H", "WARM_UP_OVER_6H");
        assertThat(told.minutes("/safety/warmUpS") / 60).isBetween(2.6, 7.1);
    }

    @ParameterizedTest
    @CsvSource({"3", "8"})
    @DisplayName("S19: steaks may wait at 55 C for three hours; after eight the texture has gone")
    void steaks_wait_for_guests(int hours) {
        int now = 4 * HOUR + hours * HOUR;
        Told told = replan("beef-sirloin", slab(30), 5, "\"setpointC\":55", "", "\"elapsedS\":" + now);
        assertThat(told.text("/decision")).isNotIn("discard", "getDecision");
        assertThat(told.text("/safety/verdict")).isIn("met", "surfaceOnly");
        assertThat(told.warnings()).contains("HOLD_BELOW_57");
        if (hours == 8) {
            assertThat(told.text("/texture/verdict")).isEqualTo("past");
            assertThat(told.warnings()).contains("TEXTURE_PAST");
        }
    }

    @Test
    @DisplayName("S19: below 52.3 C the wait counts as growth")
    void a_wait_that_falls_into_the_growth_range_is_no_wait() {
        Told told = replan(
                "beef-sirloin",
                slab(30),
                5,
                "\"setpointC\":55",
                "",
                "\"elapsedS\":" + 8 * HOUR + ","
                        + log(
                                0, 55, 600, 55, 1200, 55, 2000, 55, 2800, 55, 3600, 55, 4400, 55, 5200, 55, 6000, 55,
                                6800, 55, 7200, 55, 7800, 48, 8400, 45, 9000, 45, 9800, 45, 10600, 45, 11400, 45, 12200,
                                45, 13000, 45, 13800, 45, 14600, 45, 15400, 45, 16200, 45, 17000, 45, 17800, 45, 18600,
                                45, 19400, 45, 20200, 45, 21000, 45, 21800, 45, 22600, 45, 23400, 45, 24200, 45, 25000,
                                45, 25800, 45, 26600, 45, 27400, 45, 28200, 45, 28800, 45));
        assertThat(told.text("/decision")).isEqualTo("discard");
        assertThat(told.text("/reason/code")).isIn("SPORES_GREW", "WARM_TOO_LONG");
        assertThat(told.text("/safety/verdict")).isEqualTo("notMet");
    }

    @ParameterizedTest
    @CsvSource({"2520, 96.8, 123.2", "5220, 127.6, 162.4"})
    @DisplayName("S22: food put in cold water counts from switch-on, by the log of the ramp")
    void food_heated_with_the_bath_counts_by_its_log(int rampS, double low, double high) {
        StringBuilder log = new StringBuilder("\"bathLog\":[{\"atS\":0,\"waterC\":15}");
        for (int at = 60; at <= rampS; at += 60) {
            log.append(String.format(
                    Locale.ROOT,
                    ",{\"atS\":%d,\"waterC\":%.2f}",
                    at,
                    15.0 + 45.0 * Math.min(1.0, (double) at / rampS)));
        }
        Told told = replan(
                "chicken-breast", slab(30), 5, "\"setpointC\":60", "", "\"elapsedS\":" + rampS + "," + log + "]");
        assertThat(told.minutes("/times/safe/nominalS")).isBetween(low, high);
        assertThat(told.text("/decision")).isEqualTo("carryOn");
        assertThat(told.warnings()).contains("STARTS_COLD");
    }

    @Test
    @DisplayName("S31: a pack found floating and pushed under is counted from then")
    void a_floating_pack_is_counted_from_when_it_was_pushed_under() {
        Told fresh = replan("chicken-breast", slab(30), 5, "\"setpointC\":62", "", "\"elapsedS\":0");
        double submerged = fresh.minutes("/times/safe/nominalS");
        assertThat(submerged).isBetween(60.0, 88.0);
        Told floated = replan(
                "chicken-breast",
                slab(30),
                5,
                "\"setpointC\":62",
                "",
                "\"elapsedS\":7200,\"events\":[{\"event\":\"floated\",\"fromS\":0,\"untilS\":7200,\"temperatureC\":22}]");
        // The face in air settles near 45 C (43 to 46): it has most of the way behind it, and nothing of the kill.
        assertThat(floated.number("/state/coreLowC")).isLessThan(56.0);
        double left = floated.minutes("/times/safe/nominalS") - 120.0;
        assertThat(left).isBetween(20.0, submerged);
        assertThat(floated.text("/decision")).isEqualTo("carryOn");
        assertThat(floated.warnings()).contains("FLOATED");
        Told still = replan(
                "chicken-breast",
                slab(30),
                5,
                "\"setpointC\":62",
                "",
                "\"elapsedS\":28800,\"events\":[{\"event\":\"floated\",\"fromS\":0,\"untilS\":28800,\"temperatureC\":22}]");
        assertThat(still.text("/decision")).isEqualTo("discard");
        assertThat(still.text("/reason/code")).isEqualTo("WARM_TOO_LONG");
    }

    @Test
    @DisplayName("an hour without record on the way is asked about, a quarter of an hour is not")
    void a_gap_in_the_log_is_counted_at_its_worst() {
        Told whole = gap(600);
        assertThat(whole.text("/decision")).isIn("carryOn", "ready");
        assertThat(whole.warnings()).doesNotContain("LOG_HAS_GAP");
        Told hours = gap(6 * HOUR);
        assertThat(hours.text("/decision")).isIn("getDecision", "discard");
        assertThat(hours.text("/reason/code")).isEqualTo("NO_RECORD");
        assertThat(hours.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(hours.warnings()).contains("LOG_HAS_GAP");
        Told half = gap(1500);
        assertThat(half.text("/decision")).isIn("carryOn", "ready");
        assertThat(half.warnings()).contains("LOG_HAS_GAP");
    }

    private Told gap(int seconds) {
        double[] pairs = new double[2 * 40];
        for (int i = 0; i < 40; i++) {
            pairs[2 * i] = i < 20 ? i * 600 : (i - 1) * 600 + seconds;
            pairs[2 * i + 1] = 60.0;
        }
        int now = (int) pairs[78];
        return replan("pork-loin", slab(45), 4, "\"setpointC\":60", "", "\"elapsedS\":" + now + "," + log(pairs));
    }

    @Test
    @DisplayName("contradictions are named by pointer, all at once")
    void contradictions_are_named_by_pointer() {
        Response response = send(
                "chicken-breast",
                slab(30),
                5,
                "\"setpointC\":62",
                "",
                "\"elapsedS\":3600,\"events\":[{\"event\":\"outOfBath\",\"fromS\":100,\"untilS\":900,\"place\":\"room\"},"
                        + "{\"event\":\"floated\",\"fromS\":600,\"untilS\":1200},"
                        + "{\"event\":\"foodAdded\",\"fromS\":5000,\"addedG\":500}],"
                        + "\"coreReadings\":[{\"atS\":4000,\"coreC\":50},{\"atS\":4100,\"coreC\":85.0}],"
                        + log(0, 62, 4000, 62));
        assertThat(response.statusCode()).isEqualTo(422);
        Told problem = new Told(READER.readTree(response.asByteArray()));
        List<String> codes = problem.answer().at("/errors").findValuesAsString("code");
        assertThat(codes).contains("AFTER_NOW", "EVENTS_OVERLAP", "READING_IMPOSSIBLE");
        List<String> pointers = problem.answer().at("/errors").findValuesAsString("pointer");
        assertThat(pointers)
                .contains(
                        "#/soFar/events/1",
                        "#/soFar/events/2",
                        "#/soFar/bathLog",
                        "#/soFar/coreReadings/0/atS",
                        "#/soFar/coreReadings/1/coreC");
        assertThat(problem.answer().toString()).contains("sensor-fault value");
    }

    @Test
    @DisplayName("members that belong to other events, logs that do not rise and a bath without setpoint are refused")
    void bad_events_are_refused() {
        Response response = send(
                "chicken-breast",
                slab(30),
                5,
                "\"stirring\":\"pumped\"",
                "",
                "\"elapsedS\":3600,\"events\":[{\"event\":\"heaterOff\",\"untilS\":900,\"place\":\"room\"},"
                        + "{\"event\":\"setpointChanged\",\"fromS\":600}]," + log(10, 62, 10, 62));
        assertThat(response.statusCode()).isEqualTo(400);
        List<String> codes = new Told(READER.readTree(response.asByteArray()))
                .answer()
                .at("/errors")
                .findValuesAsString("code");
        assertThat(codes)
                .contains(
                        "MEMBER_NOT_OF_STEP",
                        "MEMBER_MISSING",
                        "ONE_OF_REQUIRED",
                        "TIMES_NOT_RISING",
                        "COMPANION_MISSING");
    }
}
