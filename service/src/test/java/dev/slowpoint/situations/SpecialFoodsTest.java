package dev.slowpoint.situations;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.api.HttpTest;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Foods that need an answer of their own, each with the rule or the paper that it rests on. */
class SpecialFoodsTest extends HttpTest {

    private Asking ask(String foodId) {
        return new Asking(this::http, foodId);
    }

    // FDA Food Code 2022, 3-401.11(A)(3): stuffed meat, poultry and fish 74 C in all parts.
    @ParameterizedTest
    @ValueSource(strings = {"chicken-breast", "pork-loin", "beef-flank", "salmon-farmed", "squid-long-cook"})
    void a_stuffed_piece_is_not_planned_for_in_a_bath_below_74(String food) {
        Told refused = ask(food).form("stuffed").slab(30).from(4).bath(65).refusal(422);
        assertThat(refused.text("/errors/0/code")).isEqualTo("STUFFED_TOO_COOL");
        assertThat(refused.text("/errors/0/pointer")).isEqualTo("#/surroundings/bath/setpointC");
        assertThat(refused.text("/errors/0/hint")).contains("stuffing apart");
    }

    @Test
    void a_stuffed_piece_in_a_hot_bath_must_reach_74_in_the_middle() {
        Told hot = ask("chicken-breast")
                .form("stuffed")
                .slab(40)
                .from(4)
                .bath(80)
                .servedAfterMinutes(120)
                .plan();
        assertThat(hot.text("/safety/verdict")).isEqualTo("met");
        assertThat(hot.warnings()).contains("STUFFED_PIECE");
        Told early = ask("chicken-breast")
                .form("stuffed")
                .slab(40)
                .from(4)
                .bath(80)
                .servedAfterMinutes(35)
                .plan();
        assertThat(early.text("/safety/verdict")).isEqualTo("notMet");
        Told british = ask("chicken-breast")
                .form("stuffed")
                .slab(40)
                .from(4)
                .bath(74)
                .rule("uk-fsa")
                .servedAfterMinutes(180)
                .plan();
        assertThat(british.text("/safety/verdict"))
                .as("at 74 C the core less the reading error stays below 74 C")
                .isEqualTo("notMet");
    }

    // FDA advice on sprouts, as quoted: 165 F (74 C); Food Code 2022, 3-801.11(C): none raw for vulnerable people.
    @Test
    void sprouts_have_no_plan_that_looks_safe_at_a_low_temperature() {
        Told refused =
                ask("bean-sprouts").slab(20).from(4).bath(62).rule("uk-fsa").refusal(422);
        assertThat(refused.text("/errors/0/code")).isEqualTo("SPROUTS_TOO_COOL");
        Told hot = ask("bean-sprouts").slab(20).from(4).bath(85).plan();
        assertThat(hot.text("/safety/verdict")).isEqualTo("met");
    }

    // FDA Bad Bug Book, as quoted: kidney beans are boiled; lentils and chickpeas are not the beans it speaks of.
    @Test
    void beans_are_boiled_first() {
        Told beans = ask("kidney-bean-soaked").sphere(9).from(10).bath(90).plan();
        assertThat(beans.warnings()).contains("PULSES_MUST_BOIL");
        assertThat(beans.text("/warnings/0/severity")).isEqualTo("danger");
        Told lentils = ask("lentil-soaked").sphere(5).from(10).bath(90).plan();
        assertThat(lentils.warnings()).doesNotContain("PULSES_MUST_BOIL");
    }

    // Brackett et al. 2001: 70 min at 57.2 C left no Salmonella in shell eggs, 8.7 log; 5 log: FSIS-GD-2021-14 p. 81.
    @Test
    void an_egg_in_its_shell_is_judged_by_five_log() {
        Told soft = ask("egg-in-shell")
                .sphere(44)
                .from(5)
                .bath(64)
                .servedAfterMinutes(20)
                .plan();
        assertThat(soft.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(soft.number("/safety/requiredLog10")).isEqualTo(5.0);
        assertThat(soft.warnings()).contains("SOFT_EGG").doesNotContain("EATEN_UNDERCOOKED");
        Told vulnerable = ask("egg-in-shell")
                .sphere(44)
                .from(5)
                .bath(64)
                .servedAfterMinutes(20)
                .eater("vulnerable")
                .plan();
        assertThat(vulnerable.warnings()).contains("VULNERABLE_EATERS");
        Told cool = ask("egg-in-shell")
                .sphere(44)
                .from(5)
                .bath(56)
                .servedAfterMinutes(120)
                .plan();
        assertThat(cool.warnings()).contains("NO_TABLE_SO_COOL", "SOFT_EGG");
        assertThat(cool.text("/safety/verdict")).isEqualTo("notMet");
    }

    // 9 CFR 590.570 Table I: yolk with sugar or salt 62.2 C 6.2 min or 63.3 C 3.5 min, plain yolk 60 C 6.2 min.
    @Test
    void sugar_raises_what_a_custard_needs() {
        assertThat(ask("egg-custard").slab(30).from(4).bath(62).plan().warnings())
                .contains("SWEET_OR_SALTED_EGG");
        assertThat(ask("egg-custard").slab(30).from(4).bath(82).plan().warnings())
                .doesNotContain("SWEET_OR_SALTED_EGG");
        assertThat(ask("egg-beaten")
                        .slab(20)
                        .from(4)
                        .bath(62)
                        .pack("saltPercent", 3.0)
                        .plan()
                        .warnings())
                .contains("SWEET_OR_SALTED_EGG", "CURED_OR_DRIED");
    }

    // EU 1276/2011 and Food Code 2022, 3-402.11: freezing; 3-402.11(B) exempts farmed fish on dry feed.
    @Test
    void parasites_are_a_matter_of_wild_fish_that_was_not_frozen() {
        Told wild = ask("salmon-wild")
                .slab(25)
                .from(4)
                .bath(50)
                .servedAfterMinutes(45)
                .plan();
        assertThat(wild.warnings()).contains("FISH_PARASITES", "FISH_NOT_PASTEURISED");
        String sentence = wild.answer()
                .at("/warnings")
                .valueStream()
                .filter(w -> w.at("/code").asString().equals("FISH_PARASITES"))
                .map(w -> w.at("/text").asString())
                .findFirst()
                .orElseThrow();
        assertThat(sentence).contains("7 days at -20", "15 hours at -35", "24 hours at -20");
        assertThat(wild.has("/texture/windowS/opensS"))
                .as("doneness is told beside it")
                .isTrue();
        Told farmed = ask("salmon-farmed")
                .slab(25)
                .from(4)
                .bath(50)
                .servedAfterMinutes(45)
                .plan();
        assertThat(farmed.warnings()).contains("FISH_NOT_PASTEURISED").doesNotContain("FISH_PARASITES");
        assertThat(ask("salmon-wild").slab(25).from(4).bath(63).plan().warnings())
                .doesNotContain("FISH_PARASITES");
    }

    // Food Code 2022, 3-502.12(C).
    @Test
    void raw_fish_that_lay_sealed_in_the_cold_is_discarded() {
        assertThat(ask("cod")
                        .slab(25)
                        .from(4)
                        .bath(63)
                        .pack("sealedWhileChilled", true)
                        .plan()
                        .warnings())
                .contains("FISH_SEALED_RAW");
    }

    // EFSA 2015 (abstract): 90 C for 90 s in the flesh.
    @Test
    void bivalves_need_90_degrees_against_viruses() {
        Told warm =
                ask("mussel").slab(20).from(4).bath(65).servedAfterMinutes(90).plan();
        assertThat(warm.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(warm.warnings()).contains("SHELLFISH_VIRUSES");
        Told hot =
                ask("mussel").slab(20).from(4).bath(95).servedAfterMinutes(60).plan();
        assertThat(hot.text("/safety/verdict")).isEqualTo("met");
        assertThat(hot.warnings()).doesNotContain("SHELLFISH_VIRUSES");
    }

    // FDA fish guide, Table A-2: B. cereus 3 h above 21 C.
    @Test
    void boiled_rice_is_cooled_fast() {
        assertThat(ask("rice-cooked")
                        .slab(20)
                        .from(4)
                        .bath(65)
                        .cooked()
                        .purpose("reheat")
                        .plan()
                        .warnings())
                .contains("COOL_STARCH_FAST");
    }

    // 9 CFR 318.10(c)(1): Trichinella; Dubey et al. 1990: Toxoplasma; CDC advice on game: 74 C, freezing is no help.
    @Test
    void parasites_inside_meat_are_told_of_where_the_rule_is_not_met() {
        Told boar = ask("wild-boar").slab(30).from(4).bath(60).plan();
        assertThat(boar.text("/safety/verdict")).isEqualTo("met");
        assertThat(boar.warnings()).contains("WILD_GAME").doesNotContain("MUSCLE_PARASITES");
        Told rare = ask("pork-loin")
                .slab(30)
                .from(4)
                .bath(52)
                .servedAfterMinutes(90)
                .plan();
        assertThat(rare.text("/safety/verdict")).isEqualTo("notMet");
        assertThat(rare.warnings()).contains("MUSCLE_PARASITES");
    }

    // FSIS-GD-2021-14 pp. 16-17; DMRI report 2014: factor 22 in salted, fatty, rolled meat.
    @Test
    void salt_makes_bacteria_tougher() {
        assertThat(ask("ham-dry-cured").slab(30).from(4).bath(62).plan().warnings())
                .contains("CURED_OR_DRIED");
        Told rolled = ask("pork-loin")
                .form("rolled")
                .cylinder(60)
                .from(4)
                .bath(62)
                .salted()
                .servedAfterMinutes(150)
                .plan();
        assertThat(rolled.warnings()).contains("SALTED_ROLLED_MEAT");
        assertThat(rolled.text("/warnings/0/severity")).isEqualTo("danger");
    }

    // Extension advice on garlic in oil: cold and few days only.
    @Test
    void raw_garlic_is_eaten_now_and_not_kept() {
        assertThat(ask("pork-loin").slab(30).from(4).bath(60).garlic().plan().warnings())
                .contains("RAW_GARLIC_OR_HERBS")
                .doesNotContain("RAW_GARLIC_KEPT");
        assertThat(ask("pork-loin")
                        .slab(30)
                        .from(4)
                        .bath(65)
                        .garlic()
                        .purpose("keep")
                        .plan()
                        .warnings())
                .contains("RAW_GARLIC_OR_HERBS", "RAW_GARLIC_KEPT");
    }

    // Food Code 2022, 3-502.12(D)(2)(a).
    @Test
    void bags_for_others_need_the_authority() {
        assertThat(ask("pork-loin")
                        .slab(30)
                        .from(4)
                        .bath(60)
                        .pack("soldOrSupplied", true)
                        .plan()
                        .warnings())
                .contains("BAG_SOLD");
    }

    // Food Code 2022, 3-403.11(A) and (D).
    @Test
    void food_reheated_to_be_held_hot_reaches_74() {
        Asking asking = ask("pork-loin").slab(30).from(4).bath(65).purpose("keep");
        asking.then(Map.of("step", "chill", "medium", "iceWater"));
        asking.then(Map.of("step", "store", "temperatureC", 4, "days", 3));
        asking.then(Map.of("step", "reheat", "setpointC", 65, "durationS", 3600));
        asking.then(Map.of("step", "bath", "setpointC", 60, "durationS", 3600));
        assertThat(asking.plan().warnings()).contains("REHEAT_TO_74");
    }

    /** Organs are no whole muscle, and nothing here is known of them. */
    @Test
    void offal_is_not_in_the_catalogue() {
        assertThat(ask("beef-liver").slab(20).from(4).bath(60).refusal(422).text("/errors/0/code"))
                .isEqualTo("UNKNOWN_FOOD");
    }
}
