package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.parameters.ShippedSafety;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RuleBookTest {

    private static final RuleBook BOOK = ShippedSafety.KNOWLEDGE.rules();
    private static final String US = "us-fsis-2021";
    private static final String UK = "uk-fsa";

    private static List<Requirement> asked(
            String rule, FoodGroup group, Form form, Condition condition, Purpose purpose, Eater eater) {
        return BOOK.requirements(rule, group, form, condition, purpose, eater, OptionalDouble.empty());
    }

    private static List<Requirement> served(String rule, FoodGroup group, Form form) {
        return asked(rule, group, form, Condition.RAW, Purpose.SERVE, Eater.GENERAL);
    }

    private static Requirement of(List<Requirement> all, Hazard hazard) {
        return all.stream().filter(r -> r.hazard() == hazard).findFirst().orElseThrow();
    }

    @Test
    void american_rule_is_the_default_and_unknown_rules_are_named() {
        assertThat(BOOK.defaultRule()).isEqualTo(US);
        assertThat(BOOK.rule(UK).jurisdiction()).isEqualTo("United Kingdom");
        assertThatThrownBy(() -> BOOK.rule("eu")).hasMessageContaining("eu").hasMessageContaining(UK);
    }

    @Test
    void intact_beef_needs_salmonella_by_line_and_table_and_may_fall_back_on_its_surface() {
        List<Requirement> beef = served(US, FoodGroup.BEEF, Form.INTACT);
        assertThat(beef).hasSize(1);
        Requirement only = beef.get(0);
        assertThat(only.hazard()).isEqualTo(Hazard.SALMONELLA);
        assertThat(only.target()).isEqualTo(6.5);
        assertThat(only.floorC()).isEqualTo(54.444);
        assertThat(only.line()).isPresent();
        assertThat(only.table().orElseThrow().table()).isEqualTo("fsis-meat-6.5");
        assertThat(only.surfaceOnlyAllowed()).isTrue();
    }

    @ParameterizedTest
    @EnumSource(
            value = Form.class,
            names = {"TENDERISED", "INJECTED", "ROLLED", "MINCED", "FORMED"})
    void meat_that_is_not_intact_is_never_judged_by_its_surface(Form form) {
        List<Requirement> american = served(US, FoodGroup.BEEF, form);
        assertThat(american).noneMatch(Requirement::surfaceOnlyAllowed);
        assertThat(of(american, Hazard.SALMONELLA).advisory()).isFalse();
        assertThat(of(american, Hazard.E_COLI_O157).advisory()).isTrue();
        assertThat(of(american, Hazard.E_COLI_O157).floorC()).isEqualTo(60.0);

        List<Requirement> british = served(UK, FoodGroup.BEEF, form);
        assertThat(british).noneMatch(Requirement::surfaceOnlyAllowed);
        assertThat(of(british, Hazard.E_COLI_O157).advisory()).isFalse();
        assertThat(of(british, Hazard.LISTERIA_MONOCYTOGENES).advisory()).isFalse();
    }

    @Test
    void a_parasite_inside_pork_decides_besides() {
        assertThat(of(served(US, FoodGroup.PORK, Form.INTACT), Hazard.TRICHINELLA)
                        .surfaceOnlyAllowed())
                .isFalse();
        assertThat(of(served(UK, FoodGroup.PORK, Form.INTACT), Hazard.TRICHINELLA)
                        .advisory())
                .isFalse();
    }

    @Test
    void birds_take_their_own_table_and_other_birds_the_longer() {
        double chicken = poultryS(FoodGroup.CHICKEN, 60.0);
        double turkey = poultryS(FoodGroup.TURKEY, 60.0);
        assertThat(poultryS(FoodGroup.OTHER_POULTRY, 60.0)).isEqualTo(Math.max(chicken, turkey));
        assertThat(poultryS(FoodGroup.OTHER_POULTRY, 73.333))
                .isEqualTo(poultryS(FoodGroup.TURKEY, 73.333))
                .isPositive();
    }

    private static double poultryS(FoodGroup bird, double temperatureC) {
        return served(US, bird, Form.INTACT).get(0).table().orElseThrow().atRowBelowS(temperatureC);
    }

    @Test
    void fat_of_the_bird_shortens_its_time() {
        Requirement lean = BOOK.requirements(
                        US,
                        FoodGroup.CHICKEN,
                        Form.INTACT,
                        Condition.RAW,
                        Purpose.SERVE,
                        Eater.GENERAL,
                        OptionalDouble.of(5.0))
                .get(0);
        // FSIS 2021 Table 3: 140 F at 5 % fat 27.5 min.
        assertThat(lean.table().orElseThrow().atRowBelowS(60.0)).isEqualTo(1650.0);
    }

    @ParameterizedTest
    @EnumSource(
            value = FoodGroup.class,
            names = {"FISH", "CRUSTACEAN", "BIVALVE", "CEPHALOPOD"})
    void food_from_the_water_needs_listeria(FoodGroup group) {
        for (String rule : List.of(US, UK)) {
            Requirement listeria = of(served(rule, group, Form.INTACT), Hazard.LISTERIA_MONOCYTOGENES);
            assertThat(listeria.target()).isEqualTo(6.0);
            assertThat(listeria.floorC()).isEqualTo(60.0);
            assertThat(listeria.advisory()).isFalse();
            assertThat(listeria.surfaceOnlyAllowed()).isFalse();
        }
    }

    @Test
    void bivalves_must_stand_the_whole_treatment_against_viruses() {
        Requirement viruses = of(served(US, FoodGroup.BIVALVE, Form.INTACT), Hazard.VIRUSES);
        assertThat(viruses.wholeTreatment()).isTrue();
        assertThat(viruses.table().orElseThrow().atRowBelowS(90.0)).isEqualTo(90.0);
        assertThat(viruses.table().orElseThrow().atRowBelowS(89.9)).isInfinite();
        assertThat(viruses.advisory()).isFalse();
    }

    @Test
    void parasites_in_fish_are_told_and_do_not_decide() {
        assertThat(of(served(US, FoodGroup.FISH, Form.INTACT), Hazard.ANISAKIS).advisory())
                .isTrue();
    }

    @Test
    void eggs_have_their_own_lines() {
        Requirement shell = of(served(US, FoodGroup.EGG_IN_SHELL, Form.INTACT), Hazard.SALMONELLA);
        assertThat(shell.target()).isEqualTo(5.0);
        assertThat(shell.floorC()).isEqualTo(57.0);
        assertThat(shell.line().orElseThrow().id()).isEqualTo("K-SALM-SHELL-BRACKETT");
        List<Requirement> mix = served(US, FoodGroup.EGG_MIX, Form.INTACT);
        assertThat(mix).extracting(Requirement::hazard).contains(Hazard.SALMONELLA, Hazard.LISTERIA_MONOCYTOGENES);
    }

    @ParameterizedTest
    @EnumSource(FoodGroup.class)
    void every_food_has_a_deciding_requirement_by_every_rule(FoodGroup group) {
        for (Rule rule : BOOK.rules()) {
            for (Purpose purpose : Purpose.values()) {
                for (Form form : Form.values()) {
                    assertThat(asked(rule.id(), group, form, Condition.RAW, purpose, Eater.GENERAL))
                            .as("%s %s %s %s", rule.id(), group, purpose, form)
                            .anyMatch(r -> !r.advisory());
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(FoodGroup.class)
    void keeping_it_cold_adds_listeria_and_tells_of_botulinum(FoodGroup group) {
        for (Rule rule : BOOK.rules()) {
            List<Requirement> kept = asked(rule.id(), group, Form.INTACT, Condition.RAW, Purpose.KEEP, Eater.GENERAL);
            assertThat(kept.stream().filter(r -> r.hazard() == Hazard.LISTERIA_MONOCYTOGENES && !r.advisory()))
                    .hasSize(1);
            assertThat(of(kept, Hazard.C_BOTULINUM_NON_PROTEOLYTIC).advisory()).isTrue();
            assertThat(kept).noneMatch(Requirement::surfaceOnlyAllowed);
        }
    }

    @ParameterizedTest
    @EnumSource(FoodGroup.class)
    void cooked_food_warmed_to_be_eaten_at_once_needs_no_kill_unless_the_eater_is_vulnerable(FoodGroup group) {
        for (Rule rule : BOOK.rules()) {
            for (Purpose purpose : List.of(Purpose.REHEAT, Purpose.SERVE)) {
                assertThat(asked(rule.id(), group, Form.INTACT, Condition.COOKED, purpose, Eater.GENERAL))
                        .isEmpty();
                List<Requirement> full =
                        asked(rule.id(), group, Form.INTACT, Condition.COOKED, purpose, Eater.VULNERABLE);
                assertThat(full).anyMatch(r -> !r.advisory()).noneMatch(Requirement::surfaceOnlyAllowed);
            }
            assertThat(asked(rule.id(), group, Form.INTACT, Condition.COOKED, Purpose.KEEP, Eater.GENERAL))
                    .isNotEmpty();
        }
    }

    @Test
    void a_vulnerable_eater_is_never_served_by_the_surface() {
        assertThat(asked(US, FoodGroup.BEEF, Form.INTACT, Condition.RAW, Purpose.SERVE, Eater.VULNERABLE))
                .noneMatch(Requirement::surfaceOnlyAllowed);
        assertThat(asked(US, FoodGroup.BEEF, Form.INTACT, Condition.RAW, Purpose.PASTEURISE, Eater.GENERAL))
                .noneMatch(Requirement::surfaceOnlyAllowed);
    }

    @Test
    void slow_heating_makes_cells_tougher_in_pork_and_not_in_beef() {
        assertThat(of(served(UK, FoodGroup.PORK, Form.INTACT), Hazard.LISTERIA_MONOCYTOGENES)
                        .heatAdapts())
                .isTrue();
        assertThat(of(served(UK, FoodGroup.BEEF, Form.INTACT), Hazard.LISTERIA_MONOCYTOGENES)
                        .heatAdapts())
                .isFalse();
        // Stasiewicz et al. 2008 (abstract read) saw Salmonella become tougher as well.
        assertThat(of(served(US, FoodGroup.PORK, Form.INTACT), Hazard.SALMONELLA)
                        .heatAdapts())
                .isTrue();
        assertThat(of(served(US, FoodGroup.BEEF, Form.INTACT), Hazard.SALMONELLA)
                        .heatAdapts())
                .isFalse();
    }

    @ParameterizedTest
    @EnumSource(
            value = Mark.class,
            names = {"MEMORY", "MIXED"})
    void what_was_only_recalled_may_advise_and_never_decide(Mark mark) {
        InactivationLine sound =
                Objects.requireNonNull(ShippedSafety.KNOWLEDGE.lines().get("K-LM-UK"));
        Provenance recalled = new Provenance(mark, "recalled");
        InactivationLine shaky = new InactivationLine(
                "shaky", sound.hazard(), "m", 70, 20, 7.5, OptionalDouble.empty(), 60, 80, "use", recalled);
        RequiredTime shakyTable = new RequiredTime("shaky", 6, new double[] {60}, new double[] {60}, recalled);
        Provenance read = new Provenance(Mark.READ, "read");

        assertThat(requirement(sound, Optional.empty(), recalled, true).advisory())
                .isTrue();
        assertThatThrownBy(() -> requirement(sound, Optional.empty(), recalled, false))
                .hasMessageContaining("must not decide");
        assertThatThrownBy(() -> requirement(shaky, Optional.empty(), read, false))
                .hasMessageContaining("must not decide");
        assertThatThrownBy(() -> requirement(sound, Optional.of(shakyTable), read, false))
                .hasMessageContaining("must not decide");
    }

    private static Requirement requirement(
            InactivationLine line, Optional<RequiredTime> table, Provenance provenance, boolean advisory) {
        return new Requirement(
                "R", line.hazard(), 6.0, false, Optional.of(line), table, 60.0, advisory, false, false, provenance, "");
    }
}
