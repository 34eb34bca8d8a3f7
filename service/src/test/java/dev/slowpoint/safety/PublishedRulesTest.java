package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.parameters.ShippedSafety;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Each rule asks what its jurisdiction published. */
class PublishedRulesTest {

    private static final SafetyKnowledge SAFETY = ShippedSafety.KNOWLEDGE;
    private static final RuleBook BOOK = SAFETY.rules();
    private static final double MIN = 60.0;
    private static final double HOUR = 3600.0;
    private static final double DAY = 86400.0;
    private static final String FOOD_CODE = "us-food-code-2022";

    private static List<Requirement> asked(String rule, FoodGroup group, Form form, double fatPercent) {
        return BOOK.requirements(
                rule,
                group,
                form,
                Condition.RAW,
                Purpose.SERVE,
                Eater.GENERAL,
                fatPercent < 0.0 ? OptionalDouble.empty() : OptionalDouble.of(fatPercent));
    }

    private static Requirement deciding(String rule, FoodGroup group, Form form, Hazard hazard) {
        return asked(rule, group, form, -1.0).stream()
                .filter(r -> r.hazard() == hazard && !r.advisory())
                .findFirst()
                .orElseThrow();
    }

    private static double tableS(Requirement requirement, double temperatureC) {
        return requirement.table().orElseThrow().atRowBelowS(temperatureC);
    }

    private static Clause clause(String id) {
        return BOOK.clauses().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    // FDA Food Code 2022, chart of 3-401.11(B)(1) [F, s], and from 145 F on 3-401.11(A)(1): 63 C 15 s.
    @ParameterizedTest
    @CsvSource({
        "130, 6720",
        "131, 5340",
        "133, 3360",
        "135, 2160",
        "136, 1680",
        "138, 1080",
        "140, 720",
        "142, 480",
        "144, 300",
        "145, 15",
        "158, 0"
    })
    void food_code_intact_meat(double fahrenheit, double seconds) {
        double celsius = (fahrenheit - 32.0) / 1.8 + 0.001;
        for (FoodGroup meat : List.of(FoodGroup.BEEF, FoodGroup.LAMB, FoodGroup.PORK)) {
            Requirement only = deciding(FOOD_CODE, meat, Form.INTACT, Hazard.SALMONELLA);
            assertThat(tableS(only, celsius)).as(meat.name()).isEqualTo(seconds);
            assertThat(only.floorC()).isCloseTo(54.444, within(0.001));
            assertThat(only.wholeTreatment()).isTrue();
        }
    }

    // FDA Food Code 2022, 3-401.11(A)(2) and its chart: 68 C 17 s, 66 C 1 min, 63 C 3 min, 70 C under 1 s.
    @ParameterizedTest
    @CsvSource({"145, 180", "150, 60", "155, 17", "158, 0"})
    void food_code_meat_that_is_not_intact_ground_fish_and_eggs(double fahrenheit, double seconds) {
        double celsius = (fahrenheit - 32.0) / 1.8 + 0.001;
        assertThat(tableS(deciding(FOOD_CODE, FoodGroup.BEEF, Form.MINCED, Hazard.SALMONELLA), celsius))
                .isEqualTo(seconds);
        assertThat(tableS(deciding(FOOD_CODE, FoodGroup.FISH, Form.MINCED, Hazard.SALMONELLA), celsius))
                .isEqualTo(seconds);
        assertThat(tableS(deciding(FOOD_CODE, FoodGroup.EGG_IN_SHELL, Form.INTACT, Hazard.SALMONELLA), celsius))
                .isEqualTo(seconds);
        assertThat(tableS(deciding(FOOD_CODE, FoodGroup.BEEF, Form.MINCED, Hazard.SALMONELLA), 62.7))
                .isInfinite();
    }

    // FDA Food Code 2022, 3-401.11(A)(3): poultry 74 C (165 F), under 1 s; (A)(1): fish 63 C (145 F), 15 s.
    @Test
    void food_code_birds_and_fish() {
        for (FoodGroup bird : List.of(FoodGroup.CHICKEN, FoodGroup.TURKEY, FoodGroup.OTHER_POULTRY)) {
            Requirement only = deciding(FOOD_CODE, bird, Form.INTACT, Hazard.SALMONELLA);
            assertThat(tableS(only, 73.889)).isLessThanOrEqualTo(1.0);
            assertThat(tableS(only, 73.8)).isInfinite();
        }
        Requirement fish = deciding(FOOD_CODE, FoodGroup.FISH, Form.INTACT, Hazard.SALMONELLA);
        assertThat(tableS(fish, 62.778)).isEqualTo(15.0);
        assertThat(tableS(fish, 62.7)).isInfinite();
    }

    // FDA Food Code 2022, 3-401.11(C) speaks of intact beef steak alone.
    @Test
    void food_code_lets_a_sear_answer_for_beef_alone() {
        assertThat(deciding(FOOD_CODE, FoodGroup.BEEF, Form.INTACT, Hazard.SALMONELLA)
                        .surfaceOnlyAllowed())
                .isTrue();
        for (FoodGroup other : EnumSet.complementOf(EnumSet.of(FoodGroup.BEEF))) {
            assertThat(asked(FOOD_CODE, other, Form.INTACT, -1.0))
                    .as(other.name())
                    .noneMatch(Requirement::surfaceOnlyAllowed);
        }
    }

    // 3-501.16(A)(1) 57 C; 3-501.14(A) 57 to 21 C in 2 h, to 5 C in 6 h; 3-502.12(D)(2)(e)(ii) 7 d at 5 C.
    @Test
    void food_code_holding_cooling_and_storage() {
        for (String rule : List.of(FOOD_CODE, "us-fsis-2021")) {
            RuleLimits limits = SAFETY.limits(rule);
            assertThat(limits.hotHolding().lowestC()).isEqualTo(57.0);
            assertThat(limits.cooling().stages())
                    .extracting(CoolingRule.Stage::fromC, CoolingRule.Stage::toC, CoolingRule.Stage::longestS)
                    .containsExactly(
                            org.assertj.core.groups.Tuple.tuple(57.0, 21.0, 2 * HOUR),
                            org.assertj.core.groups.Tuple.tuple(57.0, 5.0, 6 * HOUR));
            assertThat(limits.coldStorage().cap().toC()).isEqualTo(5.0);
            assertThat(limits.coldStorage().cap().longestS()).isEqualTo(7 * DAY);
        }
        assertThat(clause("FC-REHEAT").fromC()).hasValue(74.0);
        assertThat(clause("FC-REHEAT").limit()).hasValue(15.0);
        assertThat(clause("FC-NONCONT").limit()).hasValue(60.0);
    }

    // FSIS-GD-2021-14 p. 24: at most 6 h from 50 to 130 F. The Food Code names none for a full cook.
    @Test
    void the_warm_up_limit_is_that_of_fsis_and_stands_in_elsewhere() {
        for (Rule rule : BOOK.rules()) {
            RuleLimits limits = SAFETY.limits(rule.id());
            boolean own = limits.own().contains(Topic.WARM_UP);
            assertThat(own)
                    .as(rule.id())
                    .isEqualTo(List.of("us-fsis-2021", "au-nsw-2012").contains(rule.id()));
            assertThat(limits.warmUp().longestS()).isEqualTo(6 * HOUR);
            if (!rule.id().equals("au-nsw-2012")) {
                assertThat(limits.warmUp().fromC()).isEqualTo(10.0);
                assertThat(limits.warmUp().toC()).isEqualTo(54.444);
            }
        }
    }

    // UK FSA/ACMSF table: 60 C 45 min, 65 C 10 min, 70 C 2 min (the line gives 43.1, 9.3, 2.0); ACMSF 2007: 65 C 13.6
    // min.
    @Test
    void united_kingdom() {
        Requirement listeria = deciding("uk-fsa", FoodGroup.CHICKEN, Form.INTACT, Hazard.LISTERIA_MONOCYTOGENES);
        InactivationLine line = listeria.line().orElseThrow();
        assertThat(line.requiredS(listeria.target(), 70.0)).isCloseTo(2 * MIN, within(1e-9));
        assertThat(line.requiredS(listeria.target(), 60.0)).isCloseTo(43.09 * MIN, within(0.3));
        assertThat(line.requiredS(listeria.target(), 65.0)).isCloseTo(9.28 * MIN, within(0.3));
        Requirement stec = deciding("uk-fsa", FoodGroup.BEEF, Form.MINCED, Hazard.E_COLI_O157);
        assertThat(stec.line().orElseThrow().requiredS(stec.target(), 65.0)).isCloseTo(13.6 * MIN, within(3.0));
        // Food Hygiene (Wales) Regulations 2006 Sch. 4: hot 63 C, cold 8 C.
        assertThat(SAFETY.hotHolding("uk-fsa").lowestC()).isEqualTo(63.0);
        assertThat(clause("UK-COLD8").toC()).hasValue(8.0);
        // FSA guidance on vacuum packing: 10 d. A ceiling, laxer than what plans claim.
        assertThat(clause("UK-VP-10D").limit()).hasValue(10.0);
        assertThat(SAFETY.coldStorage("uk-fsa").cap().longestS()).isEqualTo(7 * DAY);
        assertThat(SAFETY.limits("uk-fsa").own()).containsExactly(Topic.HOLDING);
        // Scottish Regulations 2006 Sch. 4 para 3.
        assertThat(clause("SCOT-82").fromC()).hasValue(82.0);
    }

    // Reg. 1276/2011 points 2 and 3: 60 C 1 min, -20 C 24 h, -35 C 15 h. EFSA 2015: bivalves 90 C 90 s.
    @Test
    void european_union() {
        String eu = "eu-food-hygiene";
        Requirement parasites = asked(eu, FoodGroup.FISH, Form.INTACT, -1.0).stream()
                .filter(r -> r.hazard() == Hazard.ANISAKIS)
                .findFirst()
                .orElseThrow();
        assertThat(tableS(parasites, 60.0)).isEqualTo(60.0);
        assertThat(tableS(parasites, 59.9)).isInfinite();
        assertThat(tableS(deciding(eu, FoodGroup.BIVALVE, Form.INTACT, Hazard.VIRUSES), 90.0))
                .isEqualTo(90.0);
        FreezingRule minus20 = Objects.requireNonNull(SAFETY.freezing().get("EU-PAR-20"));
        FreezingRule minus35 = Objects.requireNonNull(SAFETY.freezing().get("EU-PAR-35"));
        assertThat(minus20.temperatureC()).isEqualTo(-20.0);
        assertThat(minus20.shortestS()).isEqualTo(24 * HOUR);
        assertThat(minus35.temperatureC()).isEqualTo(-35.0);
        assertThat(minus35.shortestS()).isEqualTo(15 * HOUR);
        // Reg. 2073/2005: 100 CFU/g; Reg. 2024/2895: none in 25 g.
        assertThat(clause("EU-LM-100").limit()).hasValue(100.0);
        assertThat(clause("EU-LM-25G").limit()).hasValue(0.0);
        // Neither sets a time and temperature: a benchmark stands in, and is called so.
        Requirement listeria = deciding(eu, FoodGroup.CHICKEN, Form.INTACT, Hazard.LISTERIA_MONOCYTOGENES);
        assertThat(BOOK.basis(listeria)).isEqualTo(Provision.Basis.FALLBACK);
        assertThat(BOOK.clauses(eu, Topic.WARM_UP)).isEmpty();
        assertThat(BOOK.clauses(eu, Topic.COOLING)).isEmpty();
        assertThat(SAFETY.limits(eu).own()).isEmpty();
    }

    // CFIA: 6.5 log meat, 7 log with poultry. Ontario guidelines: 54.4 C 112 min, 60 C 12 min, chicken 60 C 25.2-35
    // min.
    @Test
    void canada() {
        String canada = "ca-cfia";
        Requirement meat = deciding(canada, FoodGroup.PORK, Form.INTACT, Hazard.SALMONELLA);
        assertThat(meat.target()).isEqualTo(6.5);
        assertThat(tableS(meat, 54.445)).isEqualTo(112 * MIN);
        assertThat(tableS(meat, 60.0)).isEqualTo(12 * MIN);
        assertThat(meat.surfaceOnlyAllowed()).isFalse();
        Requirement lean = asked(canada, FoodGroup.CHICKEN, Form.INTACT, 1.0).get(0);
        Requirement fat = asked(canada, FoodGroup.CHICKEN, Form.INTACT, 12.0).get(0);
        assertThat(lean.target()).isEqualTo(7.0);
        assertThat(tableS(lean, 60.0)).isEqualTo(25.2 * MIN);
        assertThat(tableS(fat, 60.0)).isEqualTo(35.0 * MIN);
        // Meat Hygiene Manual 4.5, seen in a poor copy: told, and judges nothing.
        assertThat(clause("CA-COOL-INTACT").limit()).hasValue(7.5);
        assertThat(SAFETY.cooling(canada).id()).isEqualTo("FC-COOL");
    }

    // FSANZ 2024: 5 and 60 C. NSW 2012: bath above 55 C, 6 h below 54.5 C. Victoria: 60 to 21 C in 2 h, to 5 C in 4 h
    // more, 5 d at 5 C, 6 h from 55 to 60 C.
    @Test
    void australia() {
        for (String rule : List.of("au-fsanz", "au-nsw-2012", "au-vic")) {
            assertThat(SAFETY.hotHolding(rule).lowestC()).as(rule).isEqualTo(60.0);
            assertThat(SAFETY.limits(rule).own()).as(rule).contains(Topic.HOLDING);
            Requirement listeria = deciding(rule, FoodGroup.PORK, Form.INTACT, Hazard.LISTERIA_MONOCYTOGENES);
            assertThat(BOOK.basis(listeria)).as(rule).isEqualTo(Provision.Basis.FALLBACK);
        }
        assertThat(clause("AU-FSANZ-5").toC()).hasValue(5.0);
        WarmUpLimits nsw = SAFETY.warmUp("au-nsw-2012");
        assertThat(nsw.fromC()).isEqualTo(WarmUpLimits.ABSOLUTE_ZERO_C);
        assertThat(nsw.toC()).isEqualTo(54.5);
        assertThat(nsw.longestS()).isEqualTo(6 * HOUR);
        assertThat(clause("AU-NSW-BATH").fromC()).hasValue(55.0);
        CoolingRule victoria = SAFETY.cooling("au-vic");
        assertThat(victoria.stages().get(0).fromC()).isEqualTo(60.0);
        assertThat(victoria.stages().get(0).toC()).isEqualTo(21.0);
        assertThat(victoria.stages().get(0).longestS()).isEqualTo(2 * HOUR);
        assertThat(victoria.stages().get(1).fromC()).isEqualTo(60.0);
        assertThat(victoria.stages().get(1).toC()).isEqualTo(5.0);
        assertThat(victoria.stages().get(1).longestS()).isEqualTo((2 + 4) * HOUR);
        assertThat(SAFETY.coldStorage("au-vic").cap().longestS()).isEqualTo(5 * DAY);
        assertThat(SAFETY.coldStorage("au-vic").cap().toC()).isEqualTo(5.0);
        assertThat(clause("AU-VIC-6H").limit()).hasValue(6.0);
        assertThat(clause("AU-VIC-6H").fromC()).hasValue(55.0);
        assertThat(clause("AU-VIC-6H").toC()).hasValue(60.0);
    }

    // MPI Technical Paper 2016/05: 6 log of L. monocytogenes, 70 C 2 min.
    @Test
    void new_zealand() {
        Requirement listeria = deciding("nz-mpi", FoodGroup.FISH, Form.INTACT, Hazard.LISTERIA_MONOCYTOGENES);
        assertThat(listeria.target()).isEqualTo(6.0);
        assertThat(listeria.line().orElseThrow().requiredS(6.0, 70.0)).isCloseTo(2 * MIN, within(1e-9));
        assertThat(BOOK.basis(listeria)).isEqualTo(Provision.Basis.OWN);
        assertThat(SAFETY.limits("nz-mpi").own()).isEmpty();
    }

    /** Where a rule names no kill for a food, what stands in asks for no less than the American table for that food. */
    @ParameterizedTest
    @EnumSource(FoodGroup.class)
    void what_stands_in_for_a_kill_is_no_laxer_than_the_line_of_seventy_degrees(FoodGroup group) {
        for (Rule rule : BOOK.rules()) {
            for (Form form : List.of(Form.INTACT, Form.MINCED)) {
                List<Requirement> deciding = asked(rule.id(), group, form, -1.0).stream()
                        .filter(r -> !r.advisory())
                        .toList();
                if (deciding.stream().allMatch(r -> BOOK.basis(r) == Provision.Basis.FALLBACK)) {
                    assertThat(deciding)
                            .as("%s %s", rule.id(), group)
                            .anyMatch(r -> r.hazard() == Hazard.LISTERIA_MONOCYTOGENES
                                    && r.target() == 6.0
                                    && r.floorC() >= 60.0
                                    && !r.surfaceOnlyAllowed());
                }
            }
        }
    }
}
