package dev.slowpoint.situations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.api.HttpTest;
import io.restassured.response.Response;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Situations that people who cook, make appliances or sell meals have asked about in public, each with the range an
 * independent one-dimensional model (diffusivity 1.35e-7 to 1.5e-7 m2/s, film 100 to 500 W/m2K) or the rule named gives.
 * The ranges are fixed; nothing in the service is tuned to them.
 */
class SituationsTest extends HttpTest {

    private Asking ask(String foodId) {
        return new Asking(this::http, foodId);
    }

    @Test
    @DisplayName("S01: a thin chicken breast has time in hand after ninety minutes")
    void a_thin_chicken_breast_has_time_in_hand() {
        Told us = ask("chicken-breast")
                .slab(25)
                .from(5)
                .bath(65)
                .within(1)
                .servedAfterMinutes(90)
                .plan();
        assertThat(us.minutes("/times/hotThrough/nominalS")).isBetween(35.0, 65.0);
        assertThat(us.minutes("/times/safe/nominalS")).isBetween(33.0, 60.0);
        assertThat(us.minutes("/times/safe/lateS")).isLessThan(75.0);
        assertThat(us.text("/safety/verdict")).isEqualTo("met");
        // "35 to 50 min of slack" counts from the nominal safe time; the margin told counts from the late one.
        assertThat(90.0 - us.minutes("/times/safe/nominalS")).isBetween(35.0, 50.0);
        assertThat(us.minutes("/safety/marginS")).isPositive();
        assertThat(us.number("/safety/nominalLog10")).isGreaterThanOrEqualTo(12.0);

        Told uk = ask("chicken-breast")
                .slab(25)
                .from(5)
                .bath(65)
                .rule("uk-fsa")
                .servedAfterMinutes(90)
                .plan();
        assertThat(uk.minutes("/times/safe/nominalS")).isBetween(38.0, 59.0);
    }

    @Test
    @DisplayName("S03: a very thick steak straight from the freezer is not done after four hours")
    void a_very_thick_frozen_steak_needs_more_than_four_hours() {
        Told frozen = ask("beef-sirloin")
                .slab(64)
                .from(-18)
                .bath(55.3)
                .within(1)
                .servedAfterMinutes(240)
                .plan();
        assertThat(frozen.number("/atServe/coreC")).isBetween(47.0, 53.0);
        assertThat(frozen.minutes("/times/hotThrough/nominalS")).isBetween(279.0, 387.0);
        assertThat(frozen.minutes("/times/safe/nominalS")).isBetween(339.0, 431.0);
        assertThat(frozen.text("/safety/verdict")).isNotEqualTo("met");
        assertThat(frozen.minutes("/safety/growthRangeS")).isPositive();
        assertThat(frozen.warnings()).contains("FROM_FROZEN");

        Told thawed = ask("beef-sirloin").slab(64).from(5).bath(55.3).within(1).plan();
        assertThat(thawed.minutes("/times/hotThrough/nominalS")).isBetween(204.0, 292.0);
    }

    @Test
    @DisplayName("S04: what a frozen start adds grows with thickness")
    void what_a_frozen_start_adds_grows_with_thickness() {
        double[][] sizes = {{25, 13, 20}, {38, 28, 39}, {50, 47, 62}};
        for (double[] size : sizes) {
            double fresh = ask("beef-sirloin")
                    .slab(size[0])
                    .from(5)
                    .bath(55)
                    .core(54, 0.05)
                    .plan()
                    .minutes("/times/hotThrough/nominalS");
            double frozen = ask("beef-sirloin")
                    .slab(size[0])
                    .from(-18)
                    .bath(55)
                    .core(54, 0.05)
                    .plan()
                    .minutes("/times/hotThrough/nominalS");
            assertThat(frozen - fresh).as("extra minutes at %s mm", size[0]).isBetween(size[1], size[2]);
            assertThat(frozen / fresh).as("ratio at %s mm", size[0]).isBetween(1.30, 1.50);
        }
    }

    @ParameterizedTest(name = "S10: a minced patty of 25 mm in a bath of {0} C")
    @CsvSource({"55, 121, 147", "57, 72, 97", "60, 43, 66"})
    void a_minced_patty_is_made_safe_by_time(double bathC, double low, double high) {
        Told us = ask("beef-minced").form("minced").slab(25).from(5).bath(bathC).plan();
        assertThat(us.minutes("/times/safe/nominalS")).isBetween(low, high);
        assertThat(us.minutes("/times/hotThrough/nominalS"))
                .as("heat is through long before the patty is safe below 60 C")
                .isLessThan(Math.max(us.minutes("/times/safe/nominalS"), 60.0));
        assertThat(us.warnings()).contains("NONINTACT_MEAT");
    }

    /**
     * Known disagreement: the range is 146 to 172 min, from a model that counts all of the way up. Ours counts from half a
     * kelvin below the lowest row of the table, which in a bath at that row takes about three minutes longer.
     */
    @Test
    @DisplayName("S10: a minced patty in a bath of 54.4 C, known disagreement")
    void a_minced_patty_at_the_lowest_row_takes_a_little_longer_than_the_range() {
        Told us = ask("beef-minced").form("minced").slab(25).from(5).bath(54.4).plan();
        assertThat(us.minutes("/times/safe/nominalS")).isCloseTo(174.9, within(1.0));
        assertThat(us.text("/safety/verdict"))
                .as("no bath can be certified at the very floor")
                .isEqualTo("notMet");
    }

    @Test
    @DisplayName("S10: the British line asks for more, and only from 60 C up")
    void the_british_line_asks_more_of_minced_meat() {
        Told sixty = ask("beef-minced")
                .form("minced")
                .slab(25)
                .from(5)
                .bath(60)
                .rule("uk-fsa")
                .plan();
        assertThat(sixty.has("/times/safe/nominalS")).isTrue();
        assertThat(sixty.minutes("/times/safe/nominalS")).isGreaterThan(78.0);
        Told fiftyFive = ask("beef-minced")
                .form("minced")
                .slab(25)
                .from(5)
                .bath(55)
                .rule("uk-fsa")
                .plan();
        assertThat(fiftyFive.has("/times/safe"))
                .as("the line is not published below 60 C")
                .isFalse();
        assertThat(fiftyFive.text("/safety/verdict")).isEqualTo("notMet");
    }

    @Test
    @DisplayName("S10, S11: minced or needled meat below 54.4 C is refused, with baths and times that would do")
    void non_intact_meat_in_a_cool_bath_is_refused_with_alternatives() {
        for (String form : List.of("minced", "tenderised")) {
            Told refusal = ask("beef-sirloin")
                    .form(form)
                    .slab(25)
                    .from(5)
                    .bath(54)
                    .servedAfterMinutes(60)
                    .refusal(422);
            assertThat(refusal.text("/code")).isEqualTo("NON_INTACT_TOO_COOL");
            assertThat(refusal.text("/errors/0/pointer")).isEqualTo("#/surroundings/bath/setpointC");
            assertThat(refusal.number("/alternatives/0/setpointC")).isEqualTo(57.0);
            assertThat(refusal.minutes("/alternatives/0/safeNominalS")).isBetween(72.0, 97.0);
            assertThat(refusal.number("/alternatives/1/setpointC")).isEqualTo(60.0);
            assertThat(refusal.minutes("/alternatives/1/safeNominalS")).isBetween(43.0, 66.0);
        }
        Told intact = ask("beef-sirloin")
                .slab(25)
                .from(5)
                .bath(54)
                .servedAfterMinutes(60)
                .plan();
        assertThat(intact.text("/safety/verdict")).isEqualTo("surfaceOnly");
        assertThat(intact.warnings()).contains("SURFACE_ONLY", "SEAR_BOTH_FACES");
    }

    @Test
    @DisplayName("S12: time grows nearly with the square of thickness")
    void time_grows_nearly_with_the_square_of_thickness() {
        double[][] sizes = {{25, 46}, {50, 166}, {75, 358}, {100, 623}};
        for (double[] size : sizes) {
            assertThat(heatedThrough(size[0])).as("%s mm", size[0]).isCloseTo(size[1], within(0.25 * size[1]));
        }
        assertThat(heatedThrough(100) / heatedThrough(50)).isBetween(3.4, 4.0);
        // Known disagreement: at 12.5 mm the film decides, and the measured 200 W/m2K of packed food is slower than the
        // 300 behind the figure of 14 min: 18.0 min, half a minute beyond the range of 10.5 to 17.5.
        assertThat(heatedThrough(12.5)).isCloseTo(18.0, within(0.3));
    }

    private double heatedThrough(double thicknessMm) {
        return ask("beef-sirloin")
                .slab(thicknessMm)
                .from(5)
                .bath(55)
                .core(55, 0.5)
                .plan()
                .minutes("/times/hotThrough/nominalS");
    }

    @Test
    @DisplayName("S13: shell eggs are not made safe in six or ten minutes")
    void shell_eggs_are_not_made_safe_in_minutes() {
        Told six = ask("egg-in-shell")
                .sphere(44)
                .from(5)
                .bath(56.1)
                .servedAfterMinutes(6)
                .plan();
        assertThat(six.number("/atServe/coreC")).isBetween(12.0, 21.0);
        assertThat(six.text("/safety/verdict")).isEqualTo("notMet");
        Told ten = ask("egg-in-shell")
                .sphere(44)
                .from(5)
                .bath(58.3)
                .servedAfterMinutes(10)
                .plan();
        assertThat(ten.number("/atServe/coreC")).isBetween(25.0, 39.0);
        assertThat(ten.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(ten.warnings()).contains("NOT_MET", "SOFT_EGG");
        Told hot =
                ask("egg-in-shell").sphere(44).from(5).bath(57).core(54.4, 0.05).plan();
        assertThat(hot.minutes("/times/hotThrough/nominalS")).isBetween(22.0, 35.0);
    }

    @Test
    @DisplayName("S14: salmon at 49 C has its texture and is not safe by rule")
    void salmon_at_49_is_a_texture_and_not_pasteurised() {
        Told plan = ask("salmon")
                .slab(25)
                .from(4)
                .bath(48.9)
                .purpose("keep")
                .servedAfterMinutes(45)
                .plan();
        assertThat(plan.number("/atServe/coreC")).isBetween(46.0, 49.0);
        assertThat(plan.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(plan.number("/safety/nominalLog10")).isLessThan(0.5);
        assertThat(plan.warnings())
                .contains("FISH_NOT_PASTEURISED", "FISH_PARASITES", "KEEP_NEEDS_LISTERIA_TARGET", "SPORES_SURVIVE");
        assertThat(plan.has("/takeOut")).isFalse();
        assertThat(plan.text("/noTakeOutReason/code")).isEqualTo("RULE_NEVER_MET");
        assertThat(plan.has("/texture/windowS/opensS"))
                .as("doneness is still told")
                .isTrue();
        Told vulnerable = ask("salmon")
                .slab(25)
                .from(4)
                .bath(48.9)
                .eater("vulnerable")
                .servedAfterMinutes(45)
                .plan();
        assertThat(vulnerable.warnings()).contains("VULNERABLE_EATERS");
    }

    @Test
    @DisplayName("S15: carrots are hot long before they are soft")
    void carrots_are_hot_long_before_they_are_soft() {
        Told plan = ask("carrot")
                .cylinder(25)
                .from(10)
                .bath(85)
                .servedAfterMinutes(60)
                .plan();
        assertThat(plan.minutes("/times/hotThrough/nominalS")).isBetween(17.0, 32.0);
        assertThat(plan.minutes("/times/tender/nominalS"))
                .isGreaterThan(plan.minutes("/times/hotThrough/nominalS") * 1.3);
        assertThat(plan.text("/texture/confidence")).isEqualTo("low");
        assertThat(plan.warnings()).contains("BAG_MAY_FLOAT").doesNotContain("STAYS_FIRM");
        Told cool = ask("carrot").cylinder(25).from(10).bath(80).plan();
        assertThat(cool.warnings()).contains("STAYS_FIRM");
    }

    @Test
    @DisplayName("S16: raw garlic is a matter of keeping, not of eating now")
    void raw_garlic_is_a_matter_of_keeping() {
        Told now = ask("beef-sirloin").slab(25).from(4).bath(57).garlic().plan();
        assertThat(now.warnings()).contains("RAW_GARLIC_OR_HERBS").doesNotContain("KEEP_COLD_7_DAYS");
        Told keep = ask("beef-sirloin")
                .slab(25)
                .from(4)
                .bath(57)
                .purpose("keep")
                .servedAfterMinutes(60)
                .garlic()
                .plan();
        assertThat(keep.warnings())
                .contains("RAW_GARLIC_OR_HERBS", "KEEP_COLD_7_DAYS", "CHILL_IN_ICE_WATER", "SPORES_SURVIVE");
        assertThat(keep.text("/safety/verdict"))
                .as("57 C for an hour does not make it storable")
                .isEqualTo("notMet");
    }

    @Test
    @DisplayName("S18: a block of chuck is firm after half a day and tender after thirty hours")
    void a_block_of_chuck_is_firm_after_half_a_day_and_tender_after_thirty_hours() {
        Told tough = ask("beef-chuck")
                .brick(76, 120, 180)
                .from(4)
                .bath(58.3)
                .purpose("tenderise")
                .servedAfterMinutes(12 * 60)
                .plan();
        assertThat(tough.text("/texture/verdict")).isEqualTo("before");
        Told done = ask("beef-chuck")
                .brick(76, 120, 180)
                .from(4)
                .bath(58.3)
                .purpose("tenderise")
                .servedAfterMinutes(30 * 60)
                .plan();
        assertThat(done.text("/texture/verdict")).isEqualTo("within");
        assertThat(done.text("/safety/verdict")).isEqualTo("met");
    }

    @Test
    @DisplayName("S20: Fahrenheit sent as Celsius is refused with a hint")
    void fahrenheit_sent_as_celsius_is_refused_with_a_hint() {
        Told refusal = ask("chicken-breast").slab(30).from(4).bath(135).refusal(400);
        assertThat(refusal.text("/errors/0/pointer")).isEqualTo("#/surroundings/bath/setpointC");
        assertThat(refusal.text("/errors/0/code")).isEqualTo("OUT_OF_RANGE");
        assertThat(refusal.text("/errors/0/hint")).contains("Fahrenheit").contains("57.2");
        Told cool = ask("chicken-breast").slab(30).from(4).bath(30).refusal(422);
        assertThat(cool.text("/code")).isEqualTo("BATH_TOO_COOL");
    }

    @ParameterizedTest(name = "S21: {0} from a probe is not taken for a temperature")
    @ValueSource(strings = {"-127", "85", "85.0", "\"NaN\"", "null", "1e400"})
    void what_a_broken_probe_sends_is_not_taken_for_a_temperature(String value) {
        Response response = http().contentType(JSON)
                .body(ask("chicken-breast")
                        .slab(30)
                        .from(4)
                        .bath(63)
                        .json()
                        .replace("\"temperatureC\":4.0", "\"temperatureC\":" + value))
                .post(PLANS);
        assertThat(response.statusCode()).isEqualTo(400);
        Told refusal = new Told(READER.readTree(response.asByteArray()));
        assertThat(refusal.text("/errors/0/pointer")).isEqualTo("#/start/temperatureC");
        if (value.equals("-127") || value.startsWith("85")) {
            assertThat(refusal.text("/errors/0/hint")).contains("sensor");
        }
    }

    @Test
    @DisplayName("S21: raw food that starts at 45 C is refused")
    void warm_raw_food_is_refused() {
        assertThat(ask("chicken-breast").slab(30).from(45).bath(63).refusal(422).text("/code"))
                .isEqualTo("START_TOO_WARM");
    }

    @Test
    @DisplayName("S23: altitude changes nothing but the boiling point")
    void altitude_changes_nothing_but_the_boiling_point() {
        for (double bathC : new double[] {55, 70, 85}) {
            String sea = ask("pork-loin").slab(40).from(4).bath(bathC).send().asString();
            String mountain = ask("pork-loin")
                    .slab(40)
                    .from(4)
                    .bath(bathC)
                    .altitude(2500)
                    .send()
                    .asString();
            assertThat(mountain).isEqualTo(sea);
        }
        Told refusal =
                ask("carrot").cylinder(25).from(10).bath(93).altitude(2500).refusal(422);
        assertThat(refusal.text("/code")).isEqualTo("ABOVE_BOILING_POINT");
        // Standard atmosphere and Antoine's equation give 91.7 C at 2500 m.
        assertThat(refusal.number("/errors/0/maximum")).isCloseTo(91.7, within(0.2));
    }

    @ParameterizedTest(name = "S24: a chilled cooked steak of {0} mm after thirty minutes at 55 C")
    @CsvSource({"20, 52, 55, 27", "25, 46, 53, 40", "38, 32, 43, 86"})
    void a_chilled_steak_warms_by_thickness(double thicknessMm, double lowC, double highC, double minutesTo54) {
        Told plan = ask("beef-sirloin")
                .cooked()
                .slab(thicknessMm)
                .from(4)
                .bath(55)
                .purpose("reheat")
                .core(54, 0.05)
                .servedAfterMinutes(30)
                .plan();
        assertThat(plan.number("/atServe/coreC")).isBetween(lowC, highC);
        assertThat(plan.text("/safety/verdict")).as("no kill step").isEqualTo("notApplicable");
        assertThat(plan.minutes("/times/hotThrough/nominalS")).isCloseTo(minutesTo54, within(0.25 * minutesTo54));
    }

    @Test
    @DisplayName("S25: two cooks of ten hours add up, and salted meat that waits turns firm")
    void two_cooks_add_up() {
        Told first = ask("beef-sirloin")
                .slab(15)
                .from(5)
                .bath(55)
                .servedAfterMinutes(600)
                .plan();
        Told second = ask("beef-sirloin")
                .cooked()
                .slab(15)
                .from(4)
                .cookedBefore(55, 36_000)
                .bath(55)
                .salted()
                .servedAfterMinutes(600)
                .plan();
        assertThat(first.minutes("/times/hotThrough/nominalS")).isCloseTo(16.0, within(8.0));
        assertThat(first.minutes("/times/safe/nominalS") / 60).isCloseTo(1.7, within(0.3));
        assertThat(first.minutes("/texture/windowS/closesS") / 60)
                .as("a few hours")
                .isBetween(2.0, 8.0);
        assertThat(second.warnings()).contains("SALTED_KEEPS_TOUGHER", "TEXTURE_PAST");
        assertThat(second.minutes("/times/goodUntil/nominalS"))
                .as("the first cook has used up the window")
                .isLessThan(first.minutes("/times/goodUntil/nominalS"));
    }

    @Test
    @DisplayName("S26: a rolled roast of 150 mm warms up too slowly")
    void a_large_rolled_roast_warms_up_too_slowly() {
        Told fifty = ask("beef-sirloin")
                .form("rolled")
                .cylinder(150)
                .from(5)
                .bath(55)
                .core(50, 0.05)
                .plan();
        assertThat(fifty.minutes("/times/hotThrough/nominalS")).isBetween(308.0, 392.0);
        Told through = ask("beef-sirloin")
                .form("rolled")
                .cylinder(150)
                .from(5)
                .bath(55)
                .core(54.4, 0.05)
                .plan();
        assertThat(through.minutes("/times/hotThrough/nominalS")).isBetween(543.0, 693.0);
        assertThat(through.warnings()).contains("WARM_UP_OVER_6H");
        assertThat(through.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(through.text("/noTakeOutReason/code")).isEqualTo("WARM_UP_TOO_SLOW");
        assertThat(through.number("/safety/marginMm")).as("thinner is offered").isBetween(-75.0, -30.0);
        assertThat(through.number("/safety/marginK")).as("hotter is offered").isNegative();
    }

    @Test
    @DisplayName("S27: the nine minutes begin when the core is there, and are not nine")
    void the_hold_begins_when_the_core_is_there() {
        Told plan = ask("chicken-breast").slab(38).from(5).bath(62.8).plan();
        assertThat(plan.minutes("/times/safe/nominalS")).isBetween(76.0, 109.0);
        Told sixty = ask("chicken-breast")
                .slab(38)
                .from(5)
                .bath(62.8)
                .servedAfterMinutes(60)
                .plan();
        assertThat(sixty.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(sixty.number("/safety/nominalLog10") / 7.0)
                .as("17 % by the independent model")
                .isLessThan(0.25);
    }

    @Test
    @DisplayName("S09: a swollen bag at 74 C is a matter of keeping it under water, not of spoilage")
    void a_swollen_bag_at_74_must_stay_under_water() {
        Told plan = ask("pork-shoulder").slab(70).from(5).bath(73.9).plan();
        assertThat(plan.cautions()).contains("KEEP_UNDER_WATER");
        // At 74 C nothing grows: gas is no sign of spoilage, so nothing is called dangerous.
        assertThat(plan.severities()).doesNotContain("danger");
        assertThat(plan.text("/safety/verdict")).isEqualTo("met");
    }

    @Test
    @DisplayName("S28: a device whose clock says 1970 gets the same plan, in durations")
    void no_clock_is_needed() {
        Asking asking = ask("pork-loin").slab(45).from(4).bath(60);
        String now = asking.send().asString();
        String old = http().contentType(JSON)
                .header("Date", "Thu, 01 Jan 1970 00:00:00 GMT")
                .body(asking.json())
                .post(PLANS)
                .asString();
        assertThat(old).isEqualTo(now);
        assertThat(now).doesNotContainPattern("(19|20)\\d\\d-\\d\\d-\\d\\d");
    }

    @Test
    @DisplayName("S29: a plan fits a small controller")
    void a_plan_fits_a_small_controller() {
        for (Asking asking : List.of(
                ask("pork-loin").slab(45).from(4).bath(60),
                ask("chicken-breast").slab(25).from(-18).bath(63),
                ask("salmon").slab(25).from(4).bath(50),
                ask("beef-sirloin").slab(28).from(4).bath(49),
                ask("carrot").cylinder(25).from(10).bath(85))) {
            Response response = asking.send();
            byte[] body = response.asByteArray();
            assertThat(body).as(response.asString()).hasSizeLessThan(2048);
            assertThat(response.header("Content-Length")).isEqualTo(Integer.toString(body.length));
            assertThat(response.asString()).doesNotContain("curve").doesNotContainPattern("\\d\\.\\d{7}");
        }
    }

    @Test
    @DisplayName("S30: the same request gives the same bytes")
    void a_repeated_request_gives_the_same_bytes() {
        Asking asking = ask("chicken-thigh").slab(30).from(-18).bath(68).purpose("keep");
        byte[] first = asking.send().asByteArray();
        assertThat(asking.send().asByteArray()).isEqualTo(first);
        assertThat(asking.send().asByteArray()).isEqualTo(first);
        assertThat(asking.send().header("Cache-Control")).isEqualTo("no-store");
    }

    @Test
    @DisplayName("S32: the time follows the thickness, not the weight")
    void time_follows_thickness_and_not_weight() {
        // 150 g of 25 mm; 250 g grown in all directions is 25 mm times the cube root of 250/150, or 29.6 mm.
        double thin = ask("chicken-breast").slab(25).from(5).bath(62).plan().minutes("/times/safe/nominalS");
        double grown = ask("chicken-breast").slab(29.6).from(5).bath(62).plan().minutes("/times/safe/nominalS");
        assertThat(thin).isBetween(48.0, 71.0);
        assertThat(grown).isBetween(59.0, 86.0);
        assertThat(grown / thin).as("in proportion to weight it would be 1.67").isBetween(1.1, 1.4);
        // A piece that is only longer takes the same time, whatever it weighs.
        double light = longPiece(150).minutes("/times/safe/nominalS");
        double heavy = longPiece(250).minutes("/times/safe/nominalS");
        assertThat(heavy / light).isBetween(0.99, 1.05);
    }

    private Told longPiece(double grams) {
        return ask("chicken-breast").brickOf(grams, 25, 60).from(5).bath(62).plan();
    }

    /**
     * Common practice, no source: a tender steak of 28 mm held an hour in a circulated bath of 49 C reads within a kelvin of
     * the bath, is good then, and has gone soft after twelve hours.
     */
    @Test
    void a_tender_steak_held_an_hour_at_49_is_within_a_kelvin_of_the_bath() {
        Told hour = ask("beef-sirloin")
                .slab(28)
                .from(4)
                .bath(49)
                .servedAfterMinutes(60)
                .plan();
        assertThat(hour.number("/atServe/coreC")).isGreaterThanOrEqualTo(48.0);
        assertThat(hour.text("/safety/verdict")).isEqualTo("surfaceOnly");
        assertThat(hour.warnings()).contains("SURFACE_ONLY", "SEAR_BOTH_FACES", "CORE_BELOW_54");
        assertThat(hour.cautions()).contains("ESTIMATE_NOT_GUARANTEE", "KEEP_UNDER_WATER");
        assertThat(hour.text("/texture/verdict")).isEqualTo("within");
        Told twelve = ask("beef-sirloin")
                .slab(28)
                .from(4)
                .bath(49)
                .servedAfterMinutes(720)
                .plan();
        assertThat(twelve.text("/texture/verdict")).isEqualTo("past");
    }

    @Test
    void a_fridge_cold_chicken_breast_at_63_carries_two_cautions_and_no_warning() {
        Told plan = ask("chicken-breast").slab(30).from(4).bath(63).plan();
        assertThat(plan.warnings()).isEmpty();
        assertThat(plan.cautions()).hasSize(2);
        assertThat(plan.text("/safety/verdict")).isEqualTo("met");
        assertThat(plan.number("/takeOut/earliestS")).isLessThanOrEqualTo(plan.number("/takeOut/bestS"));
        assertThat(plan.number("/takeOut/bestS")).isLessThanOrEqualTo(plan.number("/takeOut/latestS"));
    }
}
