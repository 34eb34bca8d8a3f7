package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.food.Mark;
import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.parameters.ShippedSafety;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class SafetyJudgeTest {

    private static final SafetyKnowledge KNOWN = ShippedSafety.KNOWLEDGE;
    private static final SafetyJudge JUDGE = KNOWN.judge();
    private static final String US = "us-fsis-2021";
    private static final String UK = "uk-fsa";
    private static final Judging EXACT = Judging.worstCase(ReadingError.NONE);
    private static final Judging HALF_K = Judging.worstCase(new ReadingError(0.5));

    private static List<Requirement> served(String rule, FoodGroup group, Form form) {
        return asked(rule, group, form, Purpose.SERVE, Eater.GENERAL);
    }

    private static List<Requirement> asked(String rule, FoodGroup group, Form form, Purpose purpose, Eater eater) {
        return KNOWN.rules().requirements(rule, group, form, Condition.RAW, purpose, eater, OptionalDouble.empty());
    }

    private static Judgement judge(List<Requirement> asked, PointHistory core, Judging how) {
        return JUDGE.judge(asked, core, core.end(), how);
    }

    /** From the fridge to the bath, the core following with a time constant of twenty minutes. */
    private static PointHistory cook(double bathC, double minutes) {
        return Histories.approach(4.0, bathC, 1200.0, 60.0 * minutes, 1 + (int) minutes);
    }

    @Test
    void table_governs_where_it_asks_for_more_than_the_line() {
        // FSIS 2021 Table 2: 140 F 12 min; the line behind it gives 6.5 log in 11.2 min there.
        PointHistory core = Histories.constant(60.0, 900.0);
        Judgement judgement = judge(served(US, FoodGroup.BEEF, Form.MINCED), core, EXACT);
        Finding salmonella = judgement.governing().orElseThrow();
        assertThat(salmonella.integratedAt()).isCloseTo(672.0, within(1.0));
        assertThat(salmonella.table().orElseThrow().metAt()).isCloseTo(720.0, within(0.01));
        assertThat(salmonella.table().orElseThrow().rowC()).isEqualTo(60.0);
        assertThat(salmonella.table().orElseThrow().marginS()).isCloseTo(180.0, within(1e-6));
        assertThat(judgement.safeAt()).isCloseTo(720.0, within(0.01));
        assertThat(judgement.marginS()).isCloseTo(180.0, within(0.01));
        assertThat(judgement.verdict()).isEqualTo(Verdict.MET);
    }

    @Test
    void reading_error_is_taken_off_before_anything_counts() {
        PointHistory core = Histories.constant(60.5, 900.0);
        Judgement judgement = judge(served(US, FoodGroup.BEEF, Form.MINCED), core, HALF_K);
        assertThat(judgement.safeAt()).isCloseTo(720.0, within(0.01));
        assertThat(judge(served(US, FoodGroup.BEEF, Form.MINCED), Histories.constant(54.6, 9e4), HALF_K)
                        .governing()
                        .orElseThrow()
                        .deliveredLog10())
                .isZero();
    }

    @Test
    void intact_beef_below_the_table_is_surface_only_and_tenderised_beef_is_not_met() {
        PointHistory core = cook(54.0, 60.0);
        assertThat(judge(served(US, FoodGroup.BEEF, Form.INTACT), core, HALF_K).verdict())
                .isEqualTo(Verdict.SURFACE_ONLY);
        assertThat(judge(served(UK, FoodGroup.BEEF, Form.INTACT), core, HALF_K).verdict())
                .isEqualTo(Verdict.SURFACE_ONLY);
        assertThat(judge(served(US, FoodGroup.BEEF, Form.TENDERISED), core, HALF_K)
                        .verdict())
                .isEqualTo(Verdict.NOT_MET);
        assertThat(judge(asked(US, FoodGroup.BEEF, Form.INTACT, Purpose.SERVE, Eater.VULNERABLE), core, HALF_K)
                        .verdict())
                .isEqualTo(Verdict.NOT_MET);
        assertThat(judge(asked(US, FoodGroup.BEEF, Form.INTACT, Purpose.KEEP, Eater.GENERAL), core, HALF_K)
                        .verdict())
                .isEqualTo(Verdict.NOT_MET);
    }

    @Test
    void a_sear_does_not_answer_for_a_parasite_inside() {
        // 9 CFR 318.10: 126 F (52.2 C) 2 h; at 51 C half a day would be needed.
        assertThat(judge(served(US, FoodGroup.PORK, Form.INTACT), cook(51.0, 120.0), EXACT)
                        .verdict())
                .isEqualTo(Verdict.NOT_MET);
        assertThat(judge(served(US, FoodGroup.PORK, Form.INTACT), cook(54.2, 240.0), EXACT)
                        .verdict())
                .isEqualTo(Verdict.SURFACE_ONLY);
    }

    @Test
    void fish_below_its_floor_is_not_met_and_delivers_nothing() {
        Judgement judgement = judge(served(US, FoodGroup.FISH, Form.INTACT), cook(48.9, 45.0), HALF_K);
        assertThat(judgement.verdict()).isEqualTo(Verdict.NOT_MET);
        Finding governing = judgement.governing().orElseThrow();
        assertThat(governing.requirement().hazard()).isEqualTo(Hazard.LISTERIA_MONOCYTOGENES);
        assertThat(governing.deliveredLog10()).isZero();
        assertThat(governing.marginLog10()).isEqualTo(-6.0);
        assertThat(judgement.safeAt()).isInfinite();
    }

    @Test
    void advice_does_not_decide() {
        PointHistory core = cook(61.5, 120.0);
        Judgement american = judge(served(US, FoodGroup.BEEF, Form.MINCED), core, HALF_K);
        assertThat(american.verdict()).isEqualTo(Verdict.MET);
        Finding stec = american.findings().stream()
                .filter(f -> f.requirement().hazard() == Hazard.E_COLI_O157)
                .findFirst()
                .orElseThrow();
        assertThat(stec.met()).isFalse();
        assertThat(stec.marginLog10())
                .isLessThan(american.governing().orElseThrow().marginLog10());
        Judgement british = judge(served(UK, FoodGroup.BEEF, Form.MINCED), core, HALF_K);
        assertThat(british.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(british.governing().orElseThrow().requirement().hazard()).isEqualTo(Hazard.E_COLI_O157);
    }

    @Test
    void keeping_needs_more_than_serving() {
        PointHistory core = Histories.constant(60.0, 30.0 * 60.0);
        assertThat(judge(asked(US, FoodGroup.BEEF, Form.INTACT, Purpose.PASTEURISE, Eater.GENERAL), core, EXACT)
                        .verdict())
                .isEqualTo(Verdict.MET);
        Judgement kept = judge(asked(US, FoodGroup.BEEF, Form.INTACT, Purpose.KEEP, Eater.GENERAL), core, EXACT);
        assertThat(kept.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(kept.governing().orElseThrow().requirement().hazard()).isEqualTo(Hazard.LISTERIA_MONOCYTOGENES);
        // UK line: 43.09 min at 60 C.
        assertThat(judge(
                                asked(US, FoodGroup.BEEF, Form.INTACT, Purpose.KEEP, Eater.GENERAL),
                                Histories.constant(60.0, 3600.0),
                                EXACT)
                        .safeAt())
                .isCloseTo(43.09 * 60.0, within(1.0));
    }

    @Test
    void nothing_asked_is_not_applicable() {
        Judgement judgement = judge(List.of(), cook(55.0, 60.0), HALF_K);
        assertThat(judgement.verdict()).isEqualTo(Verdict.NOT_APPLICABLE);
        assertThat(judgement.governing()).isEmpty();
    }

    @Test
    void advice_alone_never_makes_a_met() {
        Requirement recalled = new Requirement(
                "R",
                Hazard.LISTERIA_MONOCYTOGENES,
                1.0,
                false,
                Optional.of(Objects.requireNonNull(KNOWN.lines().get("K-LM-UK"))),
                Optional.empty(),
                60.0,
                true,
                false,
                false,
                new Provenance(Mark.MEMORY, "recalled"),
                "");
        Judgement judgement = judge(List.of(recalled), Histories.constant(70.0, 3600.0), EXACT);
        assertThat(judgement.findings().get(0).met()).isTrue();
        assertThat(judgement.verdict()).isEqualTo(Verdict.NOT_APPLICABLE);
    }

    @Test
    void cooling_earns_nothing() {
        List<Requirement> chicken = served(US, FoodGroup.CHICKEN, Form.INTACT);
        PointHistory held = Histories.minutes(0, 5, 60, 62, 70, 62);
        PointHistory chilled = Histories.minutes(0, 5, 60, 62, 70, 62, 100, 20);
        double whileHot = judge(chicken, held, EXACT).findings().get(0).deliveredLog10();
        Finding afterChill = judge(chicken, chilled, EXACT).findings().get(0);
        assertThat(afterChill.deliveredLog10()).isEqualTo(whileHot);
        assertThat(afterChill.table().orElseThrow().dwellS())
                .isCloseTo(
                        judge(chicken, held, EXACT)
                                .findings()
                                .get(0)
                                .table()
                                .orElseThrow()
                                .dwellS(),
                        within(1e-6));
    }

    @Test
    void a_finely_sampled_fall_earns_at_most_its_first_kelvin() {
        // Ten samples a minute, falling 1.5 K/min from 65 C.
        int n = 301;
        double[] t = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = 6.0 * i;
            y[i] = 65.0 - 0.15 * i;
        }
        PointHistory fall = PointHistory.straightLines(t, y);
        double most = Objects.requireNonNull(KNOWN.lines().get("K-SALM-MEAT-FSIS"))
                        .killFrom(54.444)
                        .perSecond(65.0)
                * 60.0
                * (1.0 / 1.5);
        assertThat(judge(served(US, FoodGroup.BEEF, Form.MINCED), fall, EXACT)
                        .findings()
                        .get(0)
                        .deliveredLog10())
                .isBetween(0.0, most);
    }

    @Test
    void what_follows_a_power_cut_counts_again() {
        List<Requirement> chicken = served(US, FoodGroup.CHICKEN, Form.INTACT);
        PointHistory cut = Histories.minutes(0, 61, 10, 61, 40, 50, 70, 60, 160, 60);
        Judgement judgement = judge(chicken, cut, EXACT);
        // Table 3, 12 % fat, 140 F: 35 min, held from minute 70 on; the hold before the cut was at 141 F.
        assertThat(judgement.verdict()).isEqualTo(Verdict.MET);
        assertThat(judgement.findings().get(0).table().orElseThrow().metAt()).isBetween(95.0 * 60.0, 105.0 * 60.0);
    }

    @Test
    void a_lower_setpoint_counts_again_once_the_fall_is_over() {
        List<Requirement> chicken = served(US, FoodGroup.CHICKEN, Form.INTACT);
        int n = 200;
        double[] t = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = 60.0 * i;
            y[i] = 59.0 + 5.0 * StrictMath.exp(-i / 5.0);
        }
        Judgement judgement = judge(chicken, PointHistory.straightLines(t, y), EXACT);
        assertThat(judgement.verdict()).isEqualTo(Verdict.MET);
    }

    @Test
    void credit_ends_at_twelve_logs_while_the_ratio_goes_on() {
        Finding finding = judge(served(US, FoodGroup.BEEF, Form.MINCED), Histories.constant(65.0, 7200.0), EXACT)
                .governing()
                .orElseThrow();
        assertThat(finding.deliveredLog10()).isEqualTo(12.0);
        assertThat(finding.marginLog10()).isEqualTo(5.5);
        assertThat(finding.marginRatio()).isGreaterThan(20.0);
    }

    @Test
    void more_growth_than_twelve_logs_of_kill_can_answer_is_never_safe() {
        SafetyJudge judge = new SafetyJudge((hazard, core, until) -> 6.0, KNOWN.heatAdaptation());
        Judgement judgement =
                judge.judge(served(US, FoodGroup.BEEF, Form.MINCED), Histories.constant(65.0, 7200.0), 7200.0, EXACT);
        assertThat(judgement.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(judgement.safeAt()).isInfinite();
    }

    @Test
    void nominal_estimate_answers_for_a_bath_set_to_the_lowest_row() {
        List<Requirement> minced = served(US, FoodGroup.BEEF, Form.MINCED);
        PointHistory core = cook(54.444, 400.0);
        assertThat(judge(minced, core, EXACT).safeAt()).isInfinite();
        Judgement nominal = judge(minced, core, Judging.nominal(0.5));
        // At most the time half a kelvin below the row, 112 min 10^(0.5/5.556), after the way up to there, 20 min
        // ln(50.44/0.5); at least that of the row.
        double wayUp = 20.0 * StrictMath.log(50.444 / 0.5);
        assertThat(nominal.safeAt() / 60.0).isBetween(wayUp + 112.0, wayUp + 112.0 * StrictMath.pow(10.0, 0.09));
    }

    @Test
    void a_floor_allowance_is_for_nominal_estimates_only() {
        assertThatThrownBy(() -> new Judging(new ReadingError(0.5), 0.5, false)).hasMessageContaining("nominal");
        assertThatThrownBy(() -> Judging.nominal(5.0)).hasMessageContaining("5.0");
        assertThatThrownBy(() -> new ReadingError(-0.5)).hasMessageContaining("-0.5");
    }

    @Test
    void slow_heating_is_flagged_and_its_effect_told() {
        List<Requirement> pork = asked(UK, FoodGroup.PORK, Form.INTACT, Purpose.KEEP, Eater.GENERAL);
        PointHistory slow = Histories.minutes(0, 4, 100, 40, 140, 54.444, 150, 61, 200, 61);
        Judgement told = judge(pork, slow, EXACT);
        assertThat(told.heatAdaptationPossible()).isTrue();
        assertThat(told.slowHeatingS()).isCloseTo(2400.0, within(1e-6));
        Finding listeria = told.findings().get(0);
        double delivered = listeria.marginLog10() + 6.0 + listeria.growthLog10();
        assertThat(listeria.marginIfHeatAdaptedLog10())
                .isCloseTo(delivered / 2.0 - 6.0 - listeria.growthLog10(), within(1e-9));

        Finding applied = judge(pork, slow, new Judging(ReadingError.NONE, 0.0, true))
                .findings()
                .get(0);
        assertThat(applied.marginLog10()).isCloseTo(listeria.marginIfHeatAdaptedLog10(), within(1e-9));
        assertThat(applied.marginIfHeatAdaptedLog10()).isCloseTo(applied.marginLog10(), within(1e-9));

        Judgement quick = judge(pork, cook(61.0, 60.0), EXACT);
        assertThat(quick.heatAdaptationPossible()).isFalse();
        assertThat(quick.findings().get(0).marginIfHeatAdaptedLog10())
                .isEqualTo(quick.findings().get(0).marginLog10());
    }

    @Test
    void growth_is_nothing_after_a_cold_start_and_a_short_way_up_and_is_paid_for_otherwise() {
        List<Requirement> minced = served(US, FoodGroup.BEEF, Form.MINCED);
        assertThat(judge(minced, cook(62.0, 120.0), EXACT).findings().get(0).growthLog10())
                .isZero();
        PointHistory fromTheCounter = Histories.approach(25.0, 62.0, 1200.0, 7200.0, 120);
        assertThat(judge(minced, fromTheCounter, EXACT).findings().get(0).growthLog10())
                .isPositive();
        // Linear from 4 C over 8 h: more than one log of Salmonella by the rate of Oscar 2002.
        PointHistory slow = Histories.minutes(0, 4, 480, 60, 600, 60);
        Finding paid = judge(minced, slow, EXACT).findings().get(0);
        assertThat(paid.growthLog10()).isGreaterThan(1.0);
        assertThat(paid.marginLog10()).isCloseTo(paid.deliveredLog10() - 6.5 - paid.growthLog10(), within(1e-12));
    }

    @Test
    void time_judged_decides_the_verdict_and_not_the_safe_time() {
        List<Requirement> minced = served(US, FoodGroup.BEEF, Form.MINCED);
        PointHistory core = Histories.constant(60.0, 3600.0);
        Judgement early = JUDGE.judge(minced, core, 600.0, EXACT);
        Judgement late = JUDGE.judge(minced, core, 800.0, EXACT);
        assertThat(early.verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(early.marginS()).isNegative();
        assertThat(late.verdict()).isEqualTo(Verdict.MET);
        assertThat(early.safeAt()).isEqualTo(late.safeAt());
        assertThatThrownBy(() -> JUDGE.judge(minced, core, Double.NaN, EXACT)).hasMessageContaining("no number");
    }
}
