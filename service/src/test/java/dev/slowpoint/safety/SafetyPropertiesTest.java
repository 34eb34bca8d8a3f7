package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.RateLaw;
import dev.slowpoint.parameters.ShippedSafety;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What must hold for any cook; random cooks with a fixed seed. */
class SafetyPropertiesTest {

    private static final SafetyKnowledge KNOWN = ShippedSafety.KNOWLEDGE;
    private static final SafetyJudge JUDGE = KNOWN.judge();
    private static final int CASES = 300;

    private final SplittableRandom random = new SplittableRandom(20260101);

    private record Cook(double startC, double bathC, double tau, double seconds) {

        PointHistory core() {
            return Histories.approach(startC, bathC, tau, seconds, 160);
        }
    }

    private Cook cook() {
        return new Cook(
                random.nextDouble(-1.0, 25.0),
                random.nextDouble(50.0, 92.0),
                random.nextDouble(120.0, 9000.0),
                random.nextDouble(1200.0, 40000.0));
    }

    private <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private List<Requirement> asked() {
        List<Rule> rules = KNOWN.rules().rules();
        FoodGroup group = any(List.of(FoodGroup.values()));
        Form form = any(List.of(Form.values()));
        Purpose purpose = any(List.of(Purpose.values()));
        Eater eater = any(List.of(Eater.values()));
        OptionalDouble fat = random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(random.nextDouble(20.0));
        return KNOWN.rules().requirements(any(rules).id(), group, form, Condition.RAW, purpose, eater, fat);
    }

    private Judging terms() {
        return Judging.worstCase(new ReadingError(random.nextDouble(0.0, 1.0)));
    }

    @Test
    void more_time_never_gives_less_kill_and_never_takes_a_met_away() {
        for (int i = 0; i < CASES; i++) {
            PointHistory core = cook().core();
            List<Requirement> asked = asked();
            Judging how = terms();
            double early = random.nextDouble(core.end());
            double late = random.nextDouble(early, core.end() * 1.001);
            Judgement before = JUDGE.judge(asked, core, early, how);
            Judgement after = JUDGE.judge(asked, core, late, how);
            assertThat(after.safeAt()).isEqualTo(before.safeAt());
            for (int k = 0; k < asked.size(); k++) {
                assertThat(after.findings().get(k).deliveredLog10())
                        .isGreaterThanOrEqualTo(before.findings().get(k).deliveredLog10());
                assertThat(!before.findings().get(k).met()
                                || after.findings().get(k).met())
                        .isTrue();
            }
        }
    }

    @Test
    void cooling_afterwards_earns_no_more_than_its_first_kelvin() {
        for (int i = 0; i < CASES; i++) {
            PointHistory core = cook().core();
            double tau = random.nextDouble(300.0, 4000.0);
            PointHistory cooled = followedBy(core, 4.0, tau, 400);
            List<Requirement> asked = asked();
            Judging how = terms();
            Judgement hot = JUDGE.judge(asked, cooled, core.end(), how);
            Judgement cold = JUDGE.judge(asked, cooled, cooled.end(), how);
            double peakC = core.atC(core.end());
            double firstKelvin = tau * StrictMath.log((peakC - 4.0) / (peakC - 5.0));
            for (int k = 0; k < asked.size(); k++) {
                double before = hot.findings().get(k).deliveredLog10();
                double most = firstKelvin
                        * how.error().judged(asked.get(k).kill(0.0, 1.0)).perSecond(peakC);
                assertThat(cold.findings().get(k).deliveredLog10()).isBetween(before, before + most + 1e-9);
            }
        }
    }

    /** The history, then an approach to another temperature. */
    private static PointHistory followedBy(PointHistory core, double toC, double tau, int m) {
        int n = core.samples();
        double[] t = new double[n + m];
        double[] y = new double[n + m];
        for (int i = 0; i < n; i++) {
            t[i] = core.time(i);
            y[i] = core.temperatureC(i);
        }
        for (int i = 0; i < m; i++) {
            double since = 0.01 * tau * (i + 1);
            t[n + i] = core.end() + since;
            y[n + i] = toC + (y[n - 1] - toC) * StrictMath.exp(-since / tau);
        }
        return PointHistory.straightLines(t, y);
    }

    @Test
    void a_hotter_core_is_never_killed_less() {
        for (int i = 0; i < CASES; i++) {
            Cook cook = cook();
            double byK = random.nextDouble(0.0, 5.0);
            Cook hotter = new Cook(cook.startC(), cook.bathC() + byK, cook.tau(), cook.seconds());
            List<Requirement> asked = asked();
            Judging how = terms();
            Judgement plain = JUDGE.judge(asked, cook.core(), cook.seconds(), how);
            Judgement warm = JUDGE.judge(asked, hotter.core(), cook.seconds(), how);
            for (int k = 0; k < asked.size(); k++) {
                Finding cool = plain.findings().get(k);
                assertThat(warm.findings().get(k).deliveredLog10())
                        .isGreaterThanOrEqualTo(cool.deliveredLog10() - 1e-6);
                assertThat(warm.findings().get(k).integratedAt())
                        .isLessThanOrEqualTo(cool.integratedAt() * (1.0 + 1e-6));
            }
        }
    }

    @Test
    void more_time_above_the_floor_never_lowers_a_margin() {
        int compared = 0;
        for (int i = 0; i < CASES; i++) {
            PointHistory core = cook().core();
            List<Requirement> asked = asked();
            Judging how = terms();
            double early = random.nextDouble(core.end());
            double late = random.nextDouble(early, core.end() * 1.001);
            Judgement before = JUDGE.judge(asked, core, early, how);
            Judgement after = JUDGE.judge(asked, core, late, how);
            for (int k = 0; k < asked.size(); k++) {
                if (before.findings().get(k).deliveredLog10() > 0.0) {
                    assertThat(after.findings().get(k).marginLog10())
                            .isGreaterThanOrEqualTo(before.findings().get(k).marginLog10());
                    assertThat(after.findings().get(k).band())
                            .isGreaterThanOrEqualTo(before.findings().get(k).band());
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(CASES / 4);
    }

    @Test
    void a_hotter_core_never_has_a_smaller_margin_above_the_floor() {
        int compared = 0;
        for (int i = 0; i < CASES; i++) {
            Cook cook = cook();
            Cook hotter =
                    new Cook(cook.startC(), cook.bathC() + random.nextDouble(0.0, 5.0), cook.tau(), cook.seconds());
            List<Requirement> asked = asked();
            Judging how = terms();
            Judgement plain = JUDGE.judge(asked, cook.core(), cook.seconds(), how);
            Judgement warm = JUDGE.judge(asked, hotter.core(), cook.seconds(), how);
            for (int k = 0; k < asked.size(); k++) {
                if (plain.findings().get(k).deliveredLog10() > 0.0) {
                    assertThat(warm.findings().get(k).marginLog10())
                            .isGreaterThanOrEqualTo(plain.findings().get(k).marginLog10() - 1e-4);
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(CASES / 4);
    }

    private static int rank(Verdict verdict) {
        return switch (verdict) {
            case NOT_MET -> 0;
            case SURFACE_ONLY -> 1;
            case MET -> 2;
            case NOT_APPLICABLE -> 3;
        };
    }

    private static double least(Judgement judgement) {
        return judgement.governing().map(Finding::marginLog10).orElse(Double.POSITIVE_INFINITY);
    }

    @Test
    void a_vulnerable_eater_and_a_piece_that_is_not_intact_never_get_the_better_answer() {
        for (int i = 0; i < CASES; i++) {
            PointHistory core = cook().core();
            String rule = any(KNOWN.rules().rules()).id();
            FoodGroup group = any(List.of(FoodGroup.values()));
            Condition condition = any(List.of(Condition.values()));
            Purpose purpose = any(List.of(Purpose.values()));
            Form opened = any(List.of(Form.TENDERISED, Form.INJECTED, Form.ROLLED, Form.MINCED, Form.FORMED));
            OptionalDouble fat = OptionalDouble.empty();
            Judging how = terms();
            double at = random.nextDouble(core.end());
            Judgement healthy = JUDGE.judge(
                    KNOWN.rules().requirements(rule, group, Form.INTACT, condition, purpose, Eater.GENERAL, fat),
                    core,
                    at,
                    how);
            Judgement vulnerable = JUDGE.judge(
                    KNOWN.rules().requirements(rule, group, Form.INTACT, condition, purpose, Eater.VULNERABLE, fat),
                    core,
                    at,
                    how);
            Judgement notIntact = JUDGE.judge(
                    KNOWN.rules().requirements(rule, group, opened, condition, purpose, Eater.GENERAL, fat),
                    core,
                    at,
                    how);
            for (Judgement worse : List.of(vulnerable, notIntact)) {
                assertThat(rank(worse.verdict())).isLessThanOrEqualTo(rank(healthy.verdict()));
                assertThat(least(worse)).isLessThanOrEqualTo(least(healthy));
            }
        }
    }

    @Test
    void a_warmer_start_within_the_tolerance_never_adds_to_a_margin() {
        boolean charged = false;
        for (int i = 0; i < CASES; i++) {
            Cook cook = cook();
            List<Requirement> asked = asked();
            Judging how = terms();
            double narrow = random.nextDouble(0.0, 3.0);
            double wide = narrow + random.nextDouble(0.0, 5.0);
            double stated = cook.startC() + narrow;
            Judgement sure = JUDGE.judge(
                    asked, cook.core(), cook.seconds(), how.startingIn(new StartRange(stated, stated + narrow)));
            Judgement unsure = JUDGE.judge(
                    asked, cook.core(), cook.seconds(), how.startingIn(new StartRange(stated, stated + wide)));
            assertThat(unsure.safeAt()).isGreaterThanOrEqualTo(sure.safeAt() * (1.0 - 1e-9));
            for (int k = 0; k < asked.size(); k++) {
                double less = unsure.findings().get(k).marginLog10();
                double more = sure.findings().get(k).marginLog10();
                assertThat(less).isLessThanOrEqualTo(more + 1e-4);
                charged |= less < more - 0.01;
            }
        }
        assertThat(charged).isTrue();
    }

    @Test
    void met_means_no_missing_margin_and_adapted_cells_never_have_more() {
        boolean told = false;
        for (int i = 0; i < CASES; i++) {
            PointHistory core = cook().core();
            Judgement judgement = JUDGE.judge(asked(), core, random.nextDouble(core.end()), terms());
            for (Finding finding : judgement.findings()) {
                assertThat(finding.marginIfHeatAdaptedLog10()).isLessThanOrEqualTo(finding.marginLog10() + 1e-9);
                told |= finding.marginIfHeatAdaptedLog10() < finding.marginLog10() - 0.01;
                assertThat(finding.met()).isEqualTo(finding.band() != MarginBand.NOT_MET);
                if (finding.met()) {
                    assertThat(finding.marginLog10()).isNotNegative();
                    assertThat(finding.table().map(TableView::marginS).orElse(0.0))
                            .isNotNegative();
                }
            }
            if (judgement.verdict() == Verdict.MET) {
                assertThat(least(judgement)).isNotNegative();
                assertThat(judgement.marginS()).isNotNegative();
            }
        }
        assertThat(told).isTrue();
    }

    @Test
    void every_rate_never_falls_as_it_gets_hotter() {
        List<RateLaw> laws = new ArrayList<>();
        KNOWN.lines().values().forEach(line -> laws.add(line.killFrom(line.lowestTestedC())));
        KNOWN.tables()
                .values()
                .forEach(table -> table.fatPercents()
                        .forEach(fat ->
                                laws.add(table.column(OptionalDouble.of(fat)).rate())));
        KNOWN.tables()
                .values()
                .forEach(table -> laws.add(table.column(OptionalDouble.empty()).rate()));
        for (RateLaw law : laws) {
            double before = 0.0;
            for (double t = 40.0; t <= 105.0; t += 0.01) {
                double rate = law.perSecond(t);
                assertThat(rate).isFinite().isGreaterThanOrEqualTo(before * (1.0 - 1e-12));
                before = rate;
            }
        }
    }

    @Test
    void a_floor_never_adds_credit() {
        for (int i = 0; i < CASES; i++) {
            PointHistory core = cook().core();
            for (InactivationLine line : KNOWN.lines().values()) {
                double low = random.nextDouble(40.0, 70.0);
                double high = low + random.nextDouble(0.0, 10.0);
                double free = Dose.of(line.killFrom(-100.0), core).total();
                double some = Dose.of(line.killFrom(low), core).total();
                double less = Dose.of(line.killFrom(high), core).total();
                assertThat(some).isLessThanOrEqualTo(free * (1.0 + 1e-5) + 1e-9);
                assertThat(less).isLessThanOrEqualTo(some * (1.0 + 1e-5) + 1e-9);
            }
        }
    }

    @Test
    void a_larger_reading_error_never_helps() {
        for (int i = 0; i < CASES; i++) {
            PointHistory core = cook().core();
            List<Requirement> asked = asked();
            double small = random.nextDouble(0.0, 0.5);
            Judgement sure = JUDGE.judge(asked, core, core.end(), Judging.worstCase(new ReadingError(small)));
            Judgement unsure = JUDGE.judge(
                    asked, core, core.end(), Judging.worstCase(new ReadingError(small + random.nextDouble(0.0, 1.0))));
            assertThat(unsure.safeAt()).isGreaterThanOrEqualTo(sure.safeAt() * (1.0 - 1e-6));
            for (int k = 0; k < asked.size(); k++) {
                assertThat(unsure.findings().get(k).deliveredLog10())
                        .isLessThanOrEqualTo(sure.findings().get(k).deliveredLog10() + 1e-6);
            }
        }
    }

    @Test
    void the_slower_point_is_never_safer() {
        for (int i = 0; i < CASES; i++) {
            Cook fast = cook();
            Cook slow = new Cook(fast.startC(), fast.bathC(), fast.tau() * random.nextDouble(1.0, 3.0), fast.seconds());
            List<Requirement> asked = asked();
            Judging how = terms();
            double at = fast.seconds();
            Judgement quick = JUDGE.judge(asked, fast.core(), at, how);
            Judgement late = JUDGE.judge(asked, slow.core(), at, how);
            assertThat(late.safeAt()).isGreaterThanOrEqualTo(quick.safeAt() * (1.0 - 1e-6));
            for (int k = 0; k < asked.size(); k++) {
                Finding q = quick.findings().get(k);
                Finding l = late.findings().get(k);
                assertThat(l.deliveredLog10()).isLessThanOrEqualTo(q.deliveredLog10() + 1e-6);
                // While the slower point is still on its way up, its growth is not complete either.
                if (l.deliveredLog10() > 0.0) {
                    assertThat(l.marginLog10()).isLessThanOrEqualTo(q.marginLog10() + 1e-6);
                }
            }
        }
    }
}
