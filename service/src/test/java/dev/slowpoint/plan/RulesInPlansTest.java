package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.CookPlan.OtherRule;
import dev.slowpoint.safety.Hazard;
import dev.slowpoint.safety.Provision;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.safety.Verdict;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The limits of a plan are those of its rule, and the other rules judge the same cook. */
class RulesInPlansTest {

    private static final SafetyKnowledge SAFETY = Kitchen.PLANNER.knowledge().safety();
    private static final String DEFAULT = "us-fsis-2021";
    private static final double HOUR = 3600.0;
    private static final Kitchen PORK = Kitchen.of("pork-loin", new Slab(0.03), 4.0, 60.0);
    private static final Kitchen KEPT = PORK.at(65.0).with(Purpose.KEEP);

    private static CookPlan by(String rule, Kitchen kitchen, Step... then) {
        return Ruled.by(rule, Afterwards.of(kitchen, then).task()).plan();
    }

    private static Outcome.Keeping kept(String rule, double days) {
        List<Outcome> outcomes =
                by(rule, KEPT, Afterwards.ice(), Afterwards.days(3.0, days)).outcomes();
        return outcomes.get(1).keeping().orElseThrow();
    }

    // Victoria: 5 d at 5 C (supplement as summarised). The rest: 7 d (FDA Food Code 2022, 3-502.12(D)(2)(e)(ii)).
    @Test
    void a_bag_kept_by_the_victorian_rule_keeps_five_days_and_by_the_others_seven() {
        assertThat(kept("au-vic", 5.0).kept()).isTrue();
        assertThat(kept("au-vic", 5.1).kept()).isFalse();
        assertThat(kept("au-vic", 1.0).limit()).isEqualTo("AU-VIC-5D");
        for (String rule : List.of(DEFAULT, "uk-fsa", "nz-mpi")) {
            assertThat(kept(rule, 7.0).kept()).as(rule).isTrue();
            assertThat(kept(rule, 7.1).kept()).as(rule).isFalse();
            assertThat(kept(rule, 1.0).limit()).as(rule).isEqualTo("FC-ROP-5C");
        }
    }

    // Victoria counts from 60 C (supplement as summarised), the Food Code from 57 C (3-501.14(A)).
    @Test
    void cooling_is_judged_by_the_rule_of_the_plan() {
        Outcome.Cooling victoria =
                by("au-vic", KEPT, Afterwards.ice()).outcomes().get(0).cooling().orElseThrow();
        Outcome.Cooling code =
                by(DEFAULT, KEPT, Afterwards.ice()).outcomes().get(0).cooling().orElseThrow();
        assertThat(victoria.rule()).isEqualTo("VIC-COOL");
        assertThat(code.rule()).isEqualTo("FC-COOL");
        assertThat(victoria.limits().get(0).stage().fromC()).isEqualTo(60.0);
        assertThat(victoria.limits().get(0).seconds().nominal())
                .isGreaterThan(code.limits().get(0).seconds().nominal());
    }

    // FDA Food Code 2022 3-501.16(A)(1): 57 C; Food Hygiene (Wales) Regulations 2006 Sch. 4: 63 C; FSANZ: 60 C.
    @ParameterizedTest
    @CsvSource({
        "us-fsis-2021, 57",
        "us-food-code-2022, 57",
        "uk-fsa, 63",
        "au-fsanz, 60",
        "au-nsw-2012, 60",
        "au-vic, 60"
    })
    void hot_holding_is_judged_by_the_rule_of_the_plan(String rule, double lowestC) {
        Outcome.Holding below = by(rule, PORK.at(68.0), new Step.Bath(lowestC - 0.1, 600.0))
                .outcomes()
                .get(0)
                .holding()
                .orElseThrow();
        assertThat(below.hotHoldingC()).isEqualTo(lowestC);
        assertThat(below.belowHotHolding()).isTrue();
        assertThat(by(rule, PORK.at(68.0), new Step.Bath(lowestC, 600.0))
                        .outcomes()
                        .get(0)
                        .holding()
                        .orElseThrow()
                        .belowHotHolding())
                .isFalse();
    }

    @Test
    void without_a_limit_of_its_own_the_hottest_that_was_read_counts() {
        for (String rule : List.of("eu-food-hygiene", "ca-cfia", "nz-mpi")) {
            assertThat(SAFETY.hotHolding(rule).lowestC()).as(rule).isEqualTo(63.0);
        }
    }

    // NSW Food Authority, 10 December 2012: at most 6 h below 54.5 C. FSIS-GD-2021-14 p. 24: from 10 to 54.4 C.
    @Test
    void the_rule_of_new_south_wales_counts_the_time_below_ten_degrees_as_well() {
        Kitchen frozen = Kitchen.of("beef-sirloin", new LongCylinder(0.08), -18.0, 62.0);
        CookPlan nsw = by("au-nsw-2012", frozen);
        CookPlan fsis = by(DEFAULT, frozen);
        double until = nsw.safety().judgedAt();
        assertThat(nsw.safety().warmUp()).isGreaterThan(fsis.safety().warmUp() + 0.5 * HOUR);
        assertThat(nsw.safety().warmUp()).isLessThan(until);
        assertThat(nsw.safety().warmUp() + nsw.safety().warmUpLeft()).isCloseTo(6 * HOUR, within(1e-6));
    }

    @Test
    void a_warm_up_too_slow_for_one_rule_alone_fails_by_that_rule_alone() {
        Kitchen frozen = Kitchen.of("beef-sirloin", new LongCylinder(0.13), -18.0, 64.0);
        CookPlan fsis = Ruled.by(DEFAULT, frozen.task()).plan(Detail.RULES);
        CookPlan nsw = by("au-nsw-2012", frozen);
        assertThat(fsis.safety().verdict()).isEqualTo(Verdict.MET);
        assertThat(nsw.safety().verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(nsw.takeOut().obstacle()).contains(CookPlan.Obstacle.WARM_UP_TOO_SLOW);
        OtherRule other = other(fsis, "au-nsw-2012");
        assertThat(other.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(other.safeLate()).hasValue(Double.POSITIVE_INFINITY);
    }

    private static OtherRule other(CookPlan plan, String rule) {
        return plan.otherRules().stream()
                .filter(o -> o.rule().id().equals(rule))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void the_other_rules_are_told_only_when_asked_for() {
        assertThat(PORK.plan().otherRules()).isEmpty();
        List<String> told = Ruled.by("uk-fsa", PORK.task()).plan(Detail.RULES).otherRules().stream()
                .map(o -> o.rule().id())
                .toList();
        assertThat(told)
                .containsExactlyElementsOf(SAFETY.rules().rules().stream()
                        .map(Rule::id)
                        .filter(id -> !id.equals("uk-fsa"))
                        .toList());
    }

    /** What a rule is said to judge is what it judges when it is chosen, at the same moment. */
    @ParameterizedTest
    @CsvSource({
        "pork-loin, 30, 60, 7200",
        "pork-loin, 30, 62, 9000",
        "chicken-breast, 30, 63, 5400",
        "chicken-breast, 20, 75, 5400",
        "beef-sirloin, 28, 54, 7200",
        "beef-sirloin, 40, 57, 20000",
        "salmon, 25, 64, 3600",
        "carrot, 25, 85, 5400"
    })
    void another_rule_judges_as_when_it_is_chosen(String food, double mm, double bathC, double at) {
        Kitchen kitchen = Kitchen.of(food, new Slab(mm / 1000.0), 4.0, bathC).servedAfter(at);
        CookPlan asked = Ruled.by(DEFAULT, kitchen.task()).plan(Detail.RULES);
        assertThat(asked.otherRules()).hasSize(8);
        for (OtherRule other : asked.otherRules()) {
            CookPlan chosen = by(other.rule().id(), kitchen);
            CookPlan.Organism governs = chosen.safety().governing().orElseThrow();
            assertThat(other.verdict())
                    .as(other.rule().id())
                    .isEqualTo(chosen.safety().verdict());
            assertThat(other.governing().orElseThrow().hazard()).isEqualTo(governs.hazard());
            assertThat(other.governing().orElseThrow().marginLog10()).isEqualTo(governs.marginLog10());
            assertThat(other.governing().orElseThrow().achievedLog10()).isEqualTo(governs.achievedLog10());
            assertThat(other.safeLate())
                    .as(other.rule().id())
                    .hasValue(chosen.times().safe().orElseThrow().late());
        }
    }

    // FSIS Table 2: 12 min at 60 C. UK line (70 C 2 min, z 7.5): 43 min at 60 C, so 12 min are 1.7 of 6 log.
    @Test
    void the_british_line_asks_more_of_pork_than_the_american_table() {
        CookPlan plan = Ruled.by(DEFAULT, PORK.at(61.0).task()).plan(Detail.RULES);
        assertThat(plan.safety().verdict()).isEqualTo(Verdict.MET);
        OtherRule british = other(plan, "uk-fsa");
        assertThat(british.governing().orElseThrow().hazard()).isEqualTo(Hazard.LISTERIA_MONOCYTOGENES);
        assertThat(british.governing().orElseThrow().basis()).isEqualTo(Provision.Basis.OWN);
        assertThat(british.governing().orElseThrow().marginLog10())
                .isLessThan(plan.safety().governing().orElseThrow().marginLog10());
        assertThat(british.safeLate().orElseThrow())
                .isGreaterThan(plan.times().safe().orElseThrow().late() + 25 * 60.0);
        assertThat(other(plan, "eu-food-hygiene").governing().orElseThrow().basis())
                .isEqualTo(Provision.Basis.FALLBACK);
    }

    // 9 CFR 318.17(a)(2): no multiplication of toxin formers. A cut cannot be mended by another rule.
    @Test
    void after_a_long_cut_no_rule_is_met() {
        Step cold = new Step.Unheated(OptionalDouble.empty(), OptionalDouble.of(35.0));
        CookPlan plan =
                Ruled.by(DEFAULT, Afterwards.of(PORK.at(65.0), cold).task()).plan(Detail.RULES);
        assertThat(plan.safety().verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(plan.otherRules()).allSatisfy(o -> {
            assertThat(o.verdict()).isEqualTo(Verdict.NOT_MET);
            assertThat(o.safeLate()).hasValue(Double.POSITIVE_INFINITY);
        });
    }

    // FDA Food Code 2022, 3-401.11(A)(1): 63 C for 15 s; FDA Table A-3 asks 17 min at 63 C for six log of Listeria.
    @Test
    void fish_that_meets_the_food_code_alone_is_not_called_pasteurised() {
        Ruled fish = Ruled.by(
                "us-food-code-2022",
                Kitchen.of("salmon", new Slab(0.02), 4.0, 64.0)
                        .servedAfter(3600)
                        .task());
        assertThat(fish.plan().safety().verdict()).isEqualTo(Verdict.MET);
        assertThat(fish.notices()).contains(NoticeCode.FISH_NOT_PASTEURISED);
    }
}
