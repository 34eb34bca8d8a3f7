package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.plan.Outcome.Cooling;
import dev.slowpoint.plan.Outcome.KeepingBasis;
import dev.slowpoint.plan.Step.ChillMedium;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Hazard;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChillPlanTest {

    private static final double MINUTE = 60.0;

    private static ChillTask task(ChillMedium medium, double mm, double startC) {
        return new ChillTask(
                Kitchen.PLANNER.knowledge().catalogue().find("chicken-breast").orElseThrow(),
                Form.INTACT,
                new Slab(mm / 1000.0),
                Arrangement.FREE,
                StartField.uniform(startC),
                new Step.Chill(medium, OptionalDouble.empty(), OptionalDouble.empty()),
                Optional.empty(),
                Optional.empty(),
                false,
                Eater.GENERAL,
                new CookTask.Tolerances(
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()));
    }

    private static ChillTask stored(ChillTask task, double storeC, double days, boolean fit, Eater eater) {
        return new ChillTask(
                task.food(),
                task.form(),
                task.body(),
                task.arrangement(),
                task.start(),
                task.chill(),
                Optional.of(Afterwards.days(storeC, days)),
                task.rule(),
                fit,
                eater,
                task.tolerances());
    }

    private static ChillPlan plan(ChillTask task) {
        return Kitchen.PLANNER.chill(task, EnumSet.noneOf(Detail.class));
    }

    // 40 mm of cooked chicken from 63 C: an independent model (ice water of 1 C at 100 to 500 W/m2K, air of 4 C at 5 to
    // 15) has 21 C at 31 min (27 to 42) and 5 C at 67 (59 to 94) in ice water, 172 (124 to 317) and 550 (390 to 1025)
    // in
    // the fridge, which fails both limits of FDA Food Code 3-501.14.
    @ParameterizedTest
    @CsvSource({"ICE_WATER, 27, 42, 59, 94, true", "FRIDGE, 124, 317, 390, 1025, false"})
    void ice_water_keeps_the_rule_and_a_fridge_does_not(
            ChillMedium medium, double low21, double high21, double low5, double high5, boolean kept) {
        Cooling cooling = plan(task(medium, 40, 63)).cooling();
        assertThat(cooling.rule()).isEqualTo("FC-COOL");
        assertThat(cooling.levels()).extracting(Outcome.LevelTime::levelC).containsExactly(21.0, 5.0);
        assertThat(cooling.levels().get(0).after().nominal() / MINUTE).isBetween(low21, high21);
        assertThat(cooling.levels().get(1).after().nominal() / MINUTE).isBetween(low5, high5);
        assertThat(cooling.kept()).isEqualTo(kept);
        assertThat(cooling.limits()).extracting(Outcome.CoolingLimit::kept).containsExactly(kept, kept);
    }

    @Test
    void the_rule_counts_from_its_own_temperature_and_the_levels_from_the_begin() {
        Cooling cooling = plan(task(ChillMedium.ICE_WATER, 40, 80)).cooling();
        assertThat(cooling.limits().get(0).seconds().nominal())
                .isLessThan(cooling.levels().get(0).after().nominal());
    }

    @Test
    void another_rule_may_be_asked_for() {
        ChillTask base = task(ChillMedium.ICE_WATER, 40, 63);
        ChillTask fsis = new ChillTask(
                base.food(),
                base.form(),
                base.body(),
                base.arrangement(),
                base.start(),
                base.chill(),
                base.store(),
                Optional.of("S-OPT1"),
                base.fitToKeep(),
                base.eater(),
                base.tolerances());
        ChillPlan plan = plan(fsis);
        assertThat(plan.cooling().levels())
                .extracting(Outcome.LevelTime::levelC)
                .containsExactly(26.7, 4.4);
        assertThat(plan.ends().nominal()).isGreaterThan(plan(base).ends().nominal());
        ChillTask unknown = new ChillTask(
                base.food(),
                base.form(),
                base.body(),
                base.arrangement(),
                base.start(),
                base.chill(),
                base.store(),
                Optional.of("FC-KOOL"),
                base.fitToKeep(),
                base.eater(),
                base.tolerances());
        assertThatThrownBy(() -> plan(unknown))
                .isInstanceOfSatisfying(
                        Refusal.class, r -> assertThat(r.faults().get(0).code()).isEqualTo("UNKNOWN_RULE"));
    }

    @Test
    void thicker_and_hotter_is_never_cold_sooner() {
        double before = 0.0;
        for (double mm : new double[] {15, 25, 40, 60, 90}) {
            double now = plan(task(ChillMedium.ICE_WATER, mm, 63)).ends().nominal();
            assertThat(now).isGreaterThan(before);
            before = now;
        }
        assertThat(plan(task(ChillMedium.ICE_WATER, 25, 85)).ends().nominal())
                .isGreaterThan(plan(task(ChillMedium.ICE_WATER, 25, 63)).ends().nominal());
    }

    @Test
    void tap_water_never_makes_it_cold_enough() {
        ChillPlan plan = plan(task(ChillMedium.COLD_WATER, 40, 63));
        assertThat(plan.cooling().levels().get(1).after().nominal()).isInfinite();
        assertThat(plan.cooling().kept()).isFalse();
        assertThat(plan.ends().nominal()).isEqualTo(24 * 3600.0);
        assertThat(plan.notices().get(0).code()).isEqualTo(NoticeCode.COOLING_NOT_KEPT);
    }

    // FSIS performance standard: at most 1 log of C. perfringens while cooling (9 CFR 318.17(a)(2)).
    @Test
    void growth_is_predicted_within_the_standard_where_the_rule_is_kept_and_beyond_it_where_it_is_not() {
        assertThat(perfringens(plan(task(ChillMedium.ICE_WATER, 40, 63)))).isLessThan(1.0);
        assertThat(perfringens(plan(task(ChillMedium.FRIDGE, 40, 63)))).isGreaterThan(1.0);
    }

    private static double perfringens(ChillPlan plan) {
        return plan.cooling().growth().stream()
                .filter(g -> g.hazard() == Hazard.C_PERFRINGENS && g.lagCounted())
                .mapToDouble(Outcome.Growth::log10)
                .max()
                .orElseThrow();
    }

    // Five days at 5 C without lag: 1.729 log of Listeria by Mejlholm and Dalgaard; the piece comes in a little warmer
    // or
    // colder than the store.
    @Test
    void growth_in_a_store_is_predicted_where_the_model_was_tested_and_told_as_unknown_elsewhere() {
        Outcome.Growth fridge = listeria(stored(task(ChillMedium.ICE_WATER, 25, 63), 5, 5, true, Eater.GENERAL));
        assertThat(fridge.model()).isEqualTo("G-LM-MEJLHOLM");
        assertThat(fridge.predicted()).isTrue();
        assertThat(fridge.nominalLog10()).isCloseTo(1.729, within(0.05));
        assertThat(fridge.log10()).isGreaterThanOrEqualTo(fridge.nominalLog10());
        // Tested from 2 C on; grows from -0.4 C on (FDA fish guide App. 4 Table A-1).
        Outcome.Growth nearlyFrozen =
                listeria(stored(task(ChillMedium.ICE_WATER, 25, -0.1), 1, 5, true, Eater.GENERAL));
        assertThat(nearlyFrozen.untestedS()).isCloseTo(5 * 86400.0, within(3600.0));
    }

    private static Outcome.Growth listeria(ChillTask task) {
        return plan(task).keeping().orElseThrow().growth().stream()
                .filter(g -> g.hazard() == Hazard.LISTERIA_MONOCYTOGENES)
                .findFirst()
                .orElseThrow();
    }

    // FDA fish guide App. 4 Table A-2: non-proteolytic C. botulinum 7 d at 3.3 to 5 C, B. cereus 5 d at 4 to 6 C.
    @Test
    void spores_in_a_store_are_held_against_the_limits_of_exposure() {
        ChillTask chilled = task(ChillMedium.ICE_WATER, 25, 63);
        Outcome.Keeping six =
                plan(stored(chilled, 4, 6, true, Eater.GENERAL)).keeping().orElseThrow();
        assertThat(six.exposures())
                .extracting(Outcome.Exposure::limit, Outcome.Exposure::kept)
                .containsExactly(tuple("X-CBN-1", true), tuple("X-BC-1", false));
        assertThat(six.growth()).noneMatch(g -> g.hazard() == Hazard.C_BOTULINUM_NON_PROTEOLYTIC);
        Outcome.Keeping unproven =
                plan(stored(chilled, 4, 6, false, Eater.GENERAL)).keeping().orElseThrow();
        assertThat(unproven.exposures()).extracting(Outcome.Exposure::limit).contains("X-LM-1");
        Outcome.Keeping frozen =
                plan(stored(chilled, -20, 6, true, Eater.GENERAL)).keeping().orElseThrow();
        assertThat(frozen.exposures()).isEmpty();
    }

    @Test
    void the_model_without_lag_is_the_upper_bound_in_cooling() {
        for (ChillMedium medium : List.of(ChillMedium.ICE_WATER, ChillMedium.BLAST_AIR, ChillMedium.FRIDGE)) {
            List<Outcome.Growth> growth = plan(task(medium, 40, 63)).cooling().growth();
            assertThat(growth).extracting(Outcome.Growth::model).containsExactly("G-CP-BEEF", "G-CP-LEMARC");
            assertThat(growth.get(0).lagCounted()).isTrue();
            assertThat(growth.get(1).lagCounted()).isFalse();
            assertThat(growth.get(1).log10()).isGreaterThan(growth.get(0).log10());
            assertThat(growth).allMatch(g -> g.predicted() && g.untestedS() > 0.0 && g.log10() >= g.nominalLog10());
        }
    }

    @Test
    void a_store_is_granted_by_what_is_known_of_the_cook() {
        ChillTask chilled = task(ChillMedium.ICE_WATER, 40, 63);
        var proven = plan(stored(chilled, 4, 5, true, Eater.GENERAL)).keeping().orElseThrow();
        assertThat(proven.longest()).isEqualTo(7 * 86400.0);
        assertThat(proven.kept()).isTrue();
        var unknown =
                plan(stored(chilled, 4, 5, false, Eater.GENERAL)).keeping().orElseThrow();
        assertThat(unknown.basis()).isEqualTo(KeepingBasis.LISTERIA_NOT_KILLED);
        assertThat(unknown.longest()).isEqualTo(86400.0);
        assertThat(unknown.kept()).isFalse();
        var vulnerable =
                plan(stored(chilled, 4, 1, false, Eater.VULNERABLE)).keeping().orElseThrow();
        assertThat(vulnerable.longest()).isZero();
        var slow = plan(stored(task(ChillMedium.FRIDGE, 60, 63), 4, 1, true, Eater.GENERAL))
                .keeping()
                .orElseThrow();
        assertThat(slow.basis()).isEqualTo(KeepingBasis.NOT_FIT_TO_KEEP);
    }

    // UK FSA factsheet 0708: over 10 days; Food Code 3-501.16: no warm store; the kill of spores is not known here.
    @Test
    void a_long_and_a_warm_store_are_warned_of() {
        ChillTask chilled = task(ChillMedium.ICE_WATER, 40, 63);
        assertThat(codes(stored(chilled, 4, 12, true, Eater.GENERAL)))
                .contains(NoticeCode.STORE_OVER_10_DAYS, NoticeCode.STORE_TOO_LONG, NoticeCode.KEEP_COLD_7_DAYS)
                .doesNotContain(NoticeCode.SEALED_AND_WARM);
        assertThat(codes(stored(chilled, 20, 0.2, true, Eater.GENERAL))).contains(NoticeCode.SEALED_AND_WARM);
        assertThat(codes(stored(chilled, -20, 50, true, Eater.GENERAL)))
                .doesNotContain(NoticeCode.STORE_OVER_10_DAYS, NoticeCode.SEALED_AND_WARM, NoticeCode.KEEP_COLD_7_DAYS);
    }

    private static List<NoticeCode> codes(ChillTask task) {
        return plan(task).notices().stream().map(Notice::code).toList();
    }

    @Test
    void food_that_is_cold_already_needs_no_time() {
        ChillPlan plan = plan(task(ChillMedium.ICE_WATER, 25, 3));
        assertThat(plan.ends().nominal()).isZero();
        assertThat(plan.cooling().kept()).isTrue();
        assertThat(plan.coreC().nominal()).isCloseTo(3.0, within(0.1));
    }

    @Test
    void details_are_given_when_asked_for() {
        ChillPlan plan = Kitchen.PLANNER.chill(
                stored(task(ChillMedium.ICE_WATER, 25, 95), 4, 1, true, Eater.GENERAL), EnumSet.allOf(Detail.class));
        assertThat(plan.curve().orElseThrow().coreC()[0]).isCloseTo(95.0, within(0.5));
        assertThat(plan.sources()).anyMatch(s -> s.what().equals("cooling limit FC-COOL-1"));
        assertThat(plan.effort().runs()).isEqualTo(3);
    }
}
