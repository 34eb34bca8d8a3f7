package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.parameters.ShippedSafety;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HoldingAndCoolingTest {

    private static final SafetyKnowledge KNOWN = ShippedSafety.KNOWLEDGE;

    private static WarmUpClock clock(PointHistory core, double until, double errorK) {
        return WarmUpClock.of(core, until, new ReadingError(errorK), KNOWN.warmUp());
    }

    @Test
    void warm_up_counts_from_ten_degrees_to_the_floor() {
        PointHistory core = Histories.minutes(0, 5, 10, 10, 160, 54.444, 200, 56);
        WarmUpClock clock = clock(core, core.end(), 0.0);
        assertThat(clock.warmUpS()).isCloseTo(9000.0, within(0.01));
        assertThat(clock.fallenBackS()).isCloseTo(0.0, within(0.01));
        assertThat(clock.leftS()).isCloseTo(6.0 * 3600.0 - 9000.0, within(0.01));
        assertThat(clock.growthRangeS()).isCloseTo(9600.0, within(0.01));
        // 52.3 C lies 42.3/44.444 of the way from 10 C.
        assertThat(clock.perfringensRangeS()).isCloseTo(600.0 + 9000.0 * 42.3 / 44.444, within(0.01));
        assertThat(clock.pace()).isEqualTo(WarmUpClock.Pace.IN_TIME);
    }

    @Test
    void pace_turns_slow_after_four_hours_and_too_slow_after_six() {
        assertThat(clock(Histories.minutes(0, 10, 239, 54.5), 14340.0, 0.0).pace())
                .isEqualTo(WarmUpClock.Pace.IN_TIME);
        assertThat(clock(Histories.minutes(0, 10, 250, 54.5), 15000.0, 0.0).pace())
                .isEqualTo(WarmUpClock.Pace.SLOW);
        WarmUpClock late = clock(Histories.minutes(0, 10, 365, 54.5), 21900.0, 0.0);
        assertThat(late.pace()).isEqualTo(WarmUpClock.Pace.TOO_SLOW);
        assertThat(late.leftS()).isNegative();
    }

    @Test
    void a_core_that_never_gets_there_runs_the_clock_to_the_end() {
        WarmUpClock clock = clock(Histories.minutes(0, 10, 60, 52, 400, 52), 400.0 * 60.0, 0.0);
        assertThat(clock.warmUpS()).isCloseTo(400.0 * 60.0, within(1e-6));
        assertThat(clock.pace()).isEqualTo(WarmUpClock.Pace.TOO_SLOW);
    }

    @Test
    void a_power_cut_adds_to_the_clock_and_cooling_after_the_cook_does_not() {
        PointHistory core = Histories.minutes(0, 10, 120, 56, 180, 56, 240, 50, 300, 56, 400, 5);
        WarmUpClock clock = clock(core, 300.0 * 60.0, 0.0);
        assertThat(clock.fallenBackS()).isCloseTo(2.0 * 3600.0 * (54.444 - 50.0) / 6.0, within(0.1));
    }

    @Test
    void reading_error_raises_the_end_of_the_warm_up() {
        PointHistory core = Histories.minutes(0, 10, 450, 55);
        assertThat(clock(core, core.end(), 0.5).warmUpS())
                .isGreaterThan(clock(core, core.end(), 0.0).warmUpS());
    }

    @Test
    void cooling_stages_are_timed_each_on_its_own_clock() {
        CoolingRule foodCode = Objects.requireNonNull(KNOWN.cooling().get("FC-COOL"));
        PointHistory core = Histories.minutes(0, 60, 30, 57, 90, 21, 210, 5);
        List<CoolingRule.StageCheck> stages = foodCode.check(core, 0.0);
        assertThat(stages).hasSize(2);
        assertThat(stages.get(0).seconds()).isCloseTo(3600.0, within(0.01));
        assertThat(stages.get(1).seconds()).isCloseTo(10800.0, within(0.01));
        assertThat(stages).allMatch(CoolingRule.StageCheck::kept);
        assertThat(foodCode.kept(core, 0.0)).isTrue();
    }

    @Test
    void cooling_that_is_not_finished_is_not_kept() {
        CoolingRule foodCode = Objects.requireNonNull(KNOWN.cooling().get("FC-COOL"));
        PointHistory core = Histories.minutes(0, 60, 30, 57, 90, 21, 150, 12);
        List<CoolingRule.StageCheck> stages = foodCode.check(core, 0.0);
        assertThat(stages.get(0).kept()).isTrue();
        assertThat(stages.get(1).reached()).isFalse();
        assertThat(stages.get(1).seconds()).isCloseTo(7200.0, within(0.01));
        assertThat(foodCode.kept(core, 0.0)).isFalse();
    }

    @Test
    void cooling_is_timed_from_the_end_of_the_cook() {
        CoolingRule option1 = Objects.requireNonNull(KNOWN.cooling().get("S-OPT1"));
        // Heating from the fridge first passes through all the temperatures of the rule.
        PointHistory core = Histories.minutes(0, 4, 100, 60, 200, 60, 260, 20, 400, 4);
        assertThat(option1.kept(core, 200.0 * 60.0)).isTrue();
        assertThat(option1.check(core, 200.0 * 60.0).get(0).seconds())
                .isCloseTo(3600.0 * (54.4 - 26.7) / 40.0, within(0.1));
    }

    // FDA fish guide, 4th edition, Appendix 4, Table A-2: 7 d at 3.3-5 C, 2 d at 6-10 C, 11 h at 11-21 C, 6 h above.
    @ParameterizedTest
    @CsvSource({"4, 168", "5, 168", "5.5, 48", "8, 48", "10.4, 11", "21, 11", "21.5, 6", "40, 6"})
    void between_two_ranges_the_warmer_counts(double storeC, double hours) {
        assertThat(KNOWN.exposure()
                        .at(Hazard.C_BOTULINUM_NON_PROTEOLYTIC, storeC)
                        .orElseThrow()
                        .longestS())
                .isEqualTo(3600.0 * hours);
    }

    @Test
    void below_the_coldest_range_there_is_no_limit_and_storage_still_ends_after_a_week() {
        assertThat(KNOWN.exposure().at(Hazard.C_BOTULINUM_NON_PROTEOLYTIC, 2.0)).isEmpty();
        assertThat(KNOWN.exposure().at(Hazard.VIRUSES, 2.0)).isEmpty();
        assertThat(KNOWN.coldStorage().longestS(2.0)).isEqualTo(7.0 * 86400.0);
        double before = Double.POSITIVE_INFINITY;
        for (double t = -2.0; t < 30.0; t += 0.1) {
            double longest = KNOWN.coldStorage().longestS(t);
            assertThat(longest).isLessThanOrEqualTo(before).isLessThanOrEqualTo(7.0 * 86400.0);
            before = longest;
        }
    }

    @Test
    void what_limits_a_store_is_named() {
        ColdStorage storage = KNOWN.coldStorage();
        assertThat(storage.limit(4.0).id()).isEqualTo("FC-ROP-5C");
        // Warmer than 5 C the Food Code has no rule for sealed bags: the shortest of Table A-2 for spore formers
        // counts.
        assertThat(storage.limit(8.0).hazard()).contains(Hazard.B_CEREUS);
        assertThat(storage.limit(8.0).longestS()).isEqualTo(86400.0);
        assertThat(storage.limit(25.0).longestS()).isEqualTo(2.0 * 3600.0);
        assertThat(storage.limit(-18.0).longestS()).isInfinite();
        assertThat(storage.unproven(4.0).longestS()).isEqualTo(86400.0);
        assertThat(storage.unproven(5.1).longestS()).isZero();
        assertThat(storage.unproven(-18.0).longestS()).isInfinite();
    }

    @Test
    void cooling_ends_where_heating_begins_again() {
        CoolingRule foodCode = Objects.requireNonNull(KNOWN.cooling().get("FC-COOL"));
        PointHistory core = Histories.minutes(0, 60, 30, 57, 90, 21, 120, 60, 400, 3);
        CoolingRule.StageCheck cold = foodCode.check(core, 0.0, 100.0 * 60.0).get(1);
        assertThat(cold.reached()).isFalse();
        assertThat(cold.seconds()).isCloseTo(70.0 * 60.0, within(0.01));
    }

    @Test
    void growth_between_two_times_has_its_lag_from_the_first() {
        GrowthLaw perfringens = Objects.requireNonNull(KNOWN.growth().get("G-CP-BEEF"));
        PointHistory warm = Histories.constant(45.0, 7200.0);
        double lag = perfringens.subject().lagH0();
        assertThat(perfringens.grownLog10(warm, 3600.0, 7200.0, lag))
                .isCloseTo(perfringens.grownLog10(warm, 3600.0, lag), within(1e-9));
    }

    @Test
    void freezing_is_judged_by_cold_and_time() {
        FreezingRule code = Objects.requireNonNull(KNOWN.freezing().get("FC-PARASITE-1"));
        assertThat(code.met(-20.0, 168.0 * 3600.0)).isTrue();
        assertThat(code.met(-19.0, 168.0 * 3600.0)).isFalse();
        assertThat(code.met(-20.0, 167.0 * 3600.0)).isFalse();
    }

    @Test
    void hot_holding_limits_differ_by_country() {
        assertThat(KNOWN.hotHolding().values())
                .extracting(HotHoldingLimit::lowestC)
                .containsExactly(57.0, 54.0, 60.0, 63.0, 60.0);
    }

    @Test
    void growth_is_nothing_outside_its_range_and_never_negative() {
        for (GrowthLaw law : KNOWN.growth().values()) {
            for (double t = -10.0; t < 80.0; t += 0.05) {
                assertThat(law.perSecond(t)).isFinite().isNotNegative();
            }
            assertThat(law.perSecond(-5.0)).isZero();
            assertThat(law.perSecond(56.0)).isZero();
        }
    }

    @Test
    void growth_waits_for_its_lag() {
        GrowthLaw perfringens = Objects.requireNonNull(KNOWN.growth().get("G-CP-BEEF"));
        PointHistory warm = Histories.constant(45.0, 7200.0);
        double lag = perfringens.subject().lagH0();
        // ln(1 + 1/0.0699), Juneja et al. 2011.
        assertThat(lag).isCloseTo(StrictMath.log(1.0 + 1.0 / 0.0699), within(5e-4));
        double free = perfringens.grownLog10(warm, 7200.0, 0.0);
        assertThat(perfringens.grownLog10(warm, 7200.0, lag))
                .isCloseTo(free - lag / StrictMath.log(10.0), within(1e-9));
        assertThat(perfringens.grownLog10(warm, 600.0, lag)).isZero();
    }

    // FSIS aims at 2 log of S. aureus at the 6 h limit; the milk model without lag is stricter than the rule.
    @Test
    void staphylococcus_model_is_stricter_than_the_six_hour_rule() {
        GrowthLaw milk = Objects.requireNonNull(KNOWN.growth().get("G-SAU-MILK"));
        PointHistory sixHours = Histories.minutes(0, 10, 360, 54.444);
        assertThat(milk.grownLog10(sixHours, sixHours.end(), 0.0)).isGreaterThan(2.0);
        assertThat(milk.perSecond(45.0)).isEqualTo(milk.perSecond(41.0));
    }

    // D of Salmonella in ground beef as printed, J Food Prot 41:598 (1978): 61-62, 3.8-4.2, 0.6-0.7 min.
    @Test
    void central_kinetics_lie_in_the_printed_ranges_and_below_the_line_of_the_rule() {
        CentralKinetics beef = KNOWN.central(Hazard.SALMONELLA, FoodGroup.BEEF).orElseThrow();
        assertThat(beef.line().decimalReductionS(51.6) / 60.0).isBetween(61.0, 62.0);
        assertThat(beef.line().decimalReductionS(57.2) / 60.0).isBetween(3.8, 4.2);
        assertThat(beef.line().decimalReductionS(62.7) / 60.0).isBetween(0.6, 0.7);
        InactivationLine rule = Objects.requireNonNull(KNOWN.lines().get("K-SALM-MEAT-FSIS"));
        for (double t = 54.444; t <= 60.0; t += 0.1) {
            assertThat(beef.line().decimalReductionS(t)).isLessThan(rule.decimalReductionS(t));
        }
        // qraLm fvBlanching: mean of log10 D (minutes) at 70 C -1.78, standard deviation 0.251.
        CentralKinetics vegetables = KNOWN.central(Hazard.LISTERIA_MONOCYTOGENES, FoodGroup.VEGETABLE)
                .orElseThrow();
        assertThat(StrictMath.log10(vegetables.line().decimalReductionS(70.0) / 60.0))
                .isCloseTo(-1.78, within(1e-3));
        assertThat(vegetables.spreadLog10D()).isEqualTo(0.251);
        assertThat(KNOWN.central(Hazard.SALMONELLA, FoodGroup.CHICKEN)).isEmpty();
    }

    @Test
    void a_probability_of_missing_is_never_told_as_nothing() {
        assertThat(ProbabilityMargin.ofMissing(1e6, 6.0, 0.1)).isEqualTo(ProbabilityMargin.LEAST_MISSING);
        assertThat(ProbabilityMargin.ofMissing(0.0, 6.0, 0.1)).isEqualTo(1.0);
        assertThat(ProbabilityMargin.ofMissing(6.0, 6.0, 0.1)).isCloseTo(0.5, within(1e-6));
        // Abramowitz and Stegun, Table 26.1: P(2) = 0.9772498681.
        assertThat(ProbabilityMargin.ofMissing(100.0, 1.0, 1.0)).isCloseTo(0.0227501319, within(1e-7));
    }

    @Test
    void a_model_says_for_how_long_it_was_not_tested() {
        GrowthScope perfringens = Objects.requireNonNull(KNOWN.growth().get("G-CP-BEEF"))
                .subject()
                .scope();
        // Tested from 10 to 51 C (Juneja et al. 2011); grows from 10 to 52 C (FDA fish guide App. 4 Table A-1).
        PointHistory falling = Histories.minutes(0, 60, 60, 0);
        assertThat(perfringens.growingS(falling, 0.0, 3600.0)).isCloseTo(42 * 60.0, within(0.5));
        assertThat(perfringens.untestedS(falling, 0.0, 3600.0)).isCloseTo(60.0, within(0.5));
        assertThat(perfringens.untestedS(falling, 600.0, 3600.0)).isZero();
    }

    @Test
    void probability_is_symmetric_and_refuses_what_makes_no_sense() {
        double more = ProbabilityMargin.ofMeeting(8.0, 6.5, 0.15);
        double less = ProbabilityMargin.ofMeeting(6.5, 8.0, 0.15);
        assertThat(more + less).isCloseTo(1.0, within(2e-7));
        // Abramowitz and Stegun, Table 26.1: P(1) = 0.8413447461.
        assertThat(ProbabilityMargin.ofMeeting(10.0, 1.0, 1.0)).isCloseTo(0.8413447461, within(1e-7));
        assertThatThrownBy(() -> ProbabilityMargin.ofMeeting(0.0, 6.5, 0.15)).hasMessageContaining("0.0");
    }

    @Test
    void little_growth_leaves_the_target_of_a_second_cook_as_it_was() {
        assertThat(ReductionTarget.afterGrowth(6.5, Map.of(Hazard.SALMONELLA, 0.9), 1.0))
                .isEqualTo(6.5);
    }
}
