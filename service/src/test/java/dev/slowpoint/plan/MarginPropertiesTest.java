package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.plan.CookPlan.Organism;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.MarginBand;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Verdict;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What must hold for the margin of any plan; random plans with a fixed seed. */
class MarginPropertiesTest {

    private static final int CASES = 40;
    private static final List<String> FOODS = List.of(
            "pork-loin",
            "chicken-breast",
            "beef-sirloin",
            "salmon-farmed",
            "lamb-leg",
            "duck-breast",
            "beef-minced",
            "egg-custard");

    /** How closely margins in kelvin and metres are found, and what a solver of another length of history may differ. */
    private static final double FINEST_K = 0.06;

    private static final double FINEST = 0.0006;

    private final SplittableRandom random = new SplittableRandom(20260202);

    private record Cook(
            Food food,
            Form form,
            Body body,
            double startC,
            double bathC,
            Purpose purpose,
            Eater eater,
            String rule,
            CookTask.Tolerances tolerances,
            OptionalDouble serveAfter) {

        Cook with(Body changed) {
            return new Cook(food, form, changed, startC, bathC, purpose, eater, rule, tolerances, serveAfter);
        }

        Cook with(Form changed) {
            return new Cook(food, changed, body, startC, bathC, purpose, eater, rule, tolerances, serveAfter);
        }

        Cook with(Eater changed) {
            return new Cook(food, form, body, startC, bathC, purpose, changed, rule, tolerances, serveAfter);
        }

        Cook with(CookTask.Tolerances changed) {
            return new Cook(food, form, body, startC, bathC, purpose, eater, rule, changed, serveAfter);
        }

        Cook at(double changedC) {
            return new Cook(food, form, body, startC, changedC, purpose, eater, rule, tolerances, serveAfter);
        }

        Cook after(double seconds) {
            return new Cook(
                    food, form, body, startC, bathC, purpose, eater, rule, tolerances, OptionalDouble.of(seconds));
        }

        CookPlan.Safety safety() {
            return Kitchen.PLANNER.plan(task(), EnumSet.noneOf(Detail.class)).safety();
        }

        /** A refusal is no better than a rule that is not met. */
        Verdict verdict() {
            try {
                return safety().verdict();
            } catch (Refusal refused) {
                return Verdict.NOT_MET;
            }
        }

        CookTask task() {
            return new CookTask(
                    food,
                    form,
                    Condition.RAW,
                    OptionalDouble.empty(),
                    false,
                    body,
                    Arrangement.FREE,
                    StartField.uniform(startC),
                    Optional.empty(),
                    new CookTask.Bath(OptionalDouble.of(bathC), Stirring.PUMPED, Optional.empty()),
                    0.0,
                    new CookTask.Target(purpose, OptionalDouble.empty(), OptionalDouble.empty(), serveAfter),
                    eater,
                    Optional.of(rule),
                    tolerances,
                    new CookTask.Pack(false, false, OptionalDouble.empty(), OptionalDouble.empty(), false, false),
                    List.of());
        }
    }

    private <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private static CookTask.Tolerances tolerances(double across, double startK, double bathK, double readingK) {
        return new CookTask.Tolerances(
                OptionalDouble.of(across),
                OptionalDouble.of(startK),
                OptionalDouble.of(bathK),
                OptionalDouble.of(readingK));
    }

    private static final CookTask.Tolerances USUAL = new CookTask.Tolerances(
            OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    /** All but stuffed, which is refused below 74 C. */
    private static List<Form> forms(Food food) {
        return food.forms().stream().filter(f -> f != Form.STUFFED).sorted().toList();
    }

    /** A cook whose time is fixed, from far too short to long enough. */
    private Cook cook() {
        Food food = Kitchen.PLANNER.knowledge().catalogue().find(any(FOODS)).orElseThrow();
        double across = random.nextDouble(0.012, 0.065);
        Body body = switch (random.nextInt(3)) {
            case 0 -> new LongCylinder(across);
            case 1 -> new Brick(across, 2.0 * across, 3.0 * across);
            default -> new Slab(across);
        };
        double startC = any(List.of(-18.0, 2.0, 4.0, 4.0, 5.0, 9.0, 20.0));
        return new Cook(
                food,
                any(forms(food)),
                body,
                startC,
                random.nextDouble(55.0, 75.0),
                any(List.of(Purpose.SERVE, Purpose.PASTEURISE, Purpose.KEEP)),
                any(List.of(Eater.values())),
                any(List.of("us-fsis-2021", "uk-fsa")),
                USUAL,
                OptionalDouble.of(random.nextDouble(1800.0, 36_000.0)));
    }

    private static int rank(Verdict verdict) {
        return switch (verdict) {
            case NOT_MET -> 0;
            case SURFACE_ONLY -> 1;
            case MET -> 2;
            case NOT_APPLICABLE -> 3;
        };
    }

    private static double slip(double margin) {
        return 2e-3 * Math.max(1.0, Math.abs(margin));
    }

    private static double margin(CookPlan.Safety safety) {
        return safety.governing().map(Organism::marginLog10).orElse(Double.POSITIVE_INFINITY);
    }

    @Test
    void more_time_above_the_floor_never_lowers_a_margin() {
        int compared = 0;
        for (int i = 0; i < CASES; i++) {
            Cook cook = cook();
            double seconds = cook.serveAfter().orElseThrow();
            CookPlan.Safety before = cook.safety();
            CookPlan.Safety after =
                    cook.after(seconds * random.nextDouble(1.0, 2.0)).safety();
            for (int k = 0; k < before.organisms().size(); k++) {
                Organism early = before.organisms().get(k);
                if (early.achievedLog10() > 0.0) {
                    assertThat(after.organisms().get(k).marginLog10())
                            .as("%s", cook)
                            .isGreaterThanOrEqualTo(early.marginLog10() - 1e-9);
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(CASES / 2);
    }

    @Test
    void a_warmer_bath_never_lowers_a_margin_or_the_verdict() {
        int compared = 0;
        for (int i = 0; i < CASES; i++) {
            Cook cook = cook();
            CookPlan.Safety cool = cook.safety();
            CookPlan.Safety warm =
                    cook.at(cook.bathC() + random.nextDouble(0.1, 5.0)).safety();
            for (int k = 0; k < cool.organisms().size(); k++) {
                Organism before = cool.organisms().get(k);
                if (before.achievedLog10() > 0.0) {
                    assertThat(warm.organisms().get(k).marginLog10())
                            .as("%s", cook)
                            .isGreaterThanOrEqualTo(before.marginLog10() - slip(before.marginLog10()));
                    compared++;
                }
            }
            assertThat(rank(warm.verdict())).as("%s", cook).isGreaterThanOrEqualTo(rank(cool.verdict()));
        }
        assertThat(compared).isGreaterThan(CASES / 2);
    }

    @Test
    void vulnerable_eaters_and_forms_that_are_not_intact_never_get_the_better_answer() {
        for (int i = 0; i < CASES; i++) {
            Cook cook = cook().with(Eater.GENERAL);
            CookPlan.Safety plain = cook.safety();
            noBetter(cook, plain, cook.with(Eater.VULNERABLE).safety());
            if (cook.form().intact()) {
                for (Form form : forms(cook.food())) {
                    noBetter(cook, plain, cook.with(form).safety());
                }
            }
        }
    }

    @Test
    void wider_tolerances_never_get_the_better_answer() {
        for (int i = 0; i < CASES; i++) {
            Cook cook = cook();
            double across = random.nextDouble(0.0, 0.003);
            double startK = random.nextDouble(0.0, 3.0);
            double bathK = random.nextDouble(0.0, 0.4);
            double readingK = random.nextDouble(0.0, 0.4);
            CookPlan.Safety narrow =
                    cook.with(tolerances(across, startK, bathK, readingK)).safety();
            double wider = random.nextDouble(1.0, 2.0);
            for (CookTask.Tolerances wide : List.of(
                    tolerances(across * wider, startK, bathK, readingK),
                    tolerances(across, startK * wider, bathK, readingK),
                    tolerances(across, startK, bathK * wider, readingK),
                    tolerances(across, startK, bathK, readingK * wider))) {
                noBetter(cook, narrow, cook.with(wide).safety());
            }
        }
    }

    private static void noBetter(Cook cook, CookPlan.Safety plain, CookPlan.Safety worse) {
        assertThat(rank(worse.verdict())).as("%s", cook).isLessThanOrEqualTo(rank(plain.verdict()));
        assertThat(margin(worse)).as("%s", cook).isLessThanOrEqualTo(margin(plain) + slip(margin(plain)));
    }

    @Test
    void met_means_no_missing_margin_and_a_warm_up_within_its_limit() {
        int met = 0;
        for (int i = 0; i < 2 * CASES; i++) {
            Cook cook = cook();
            CookPlan.Safety safety = cook.safety();
            boolean bandMet = safety.band().filter(b -> b != MarginBand.NOT_MET).isPresent();
            assertThat(bandMet).as("%s", cook).isEqualTo(safety.verdict() == Verdict.MET);
            if (safety.verdict() == Verdict.MET) {
                met++;
                assertThat(safety.warmUpLeft()).isNotNegative();
                assertThat(margin(safety)).isNotNegative();
                assertThat(safety.margins().seconds().orElseThrow()).isNotNegative();
                safety.organisms().stream().filter(o -> !o.advisory()).forEach(o -> {
                    assertThat(o.marginLog10()).isNotNegative();
                    assertThat(o.achievedLog10()).isGreaterThanOrEqualTo(o.requiredLog10() + o.growthLog10());
                    o.table().ifPresent(t -> assertThat(t.marginS()).isNotNegative());
                });
            }
        }
        assertThat(met).isBetween(CASES / 4, 2 * CASES - 10);
    }

    /** Asked again with the change, the rule is just met; with a little more it is not. */
    @Test
    void margins_have_the_sign_of_the_verdict_and_are_where_it_changes() {
        int colder = 0;
        int thicker = 0;
        int sooner = 0;
        for (int i = 0; i < CASES; i++) {
            Cook cook = cook();
            CookPlan.Safety safety = cook.safety();
            boolean met = safety.verdict() == Verdict.MET;
            CookPlan.Margins margins = safety.margins();
            if (margins.kelvin().isPresent()) {
                double k = margins.kelvin().getAsDouble();
                assertThat(k >= 0.0).as("%s", cook).isEqualTo(met);
                assertThat(cook.at(cook.bathC() - k).verdict()).as("%s", cook).isEqualTo(Verdict.MET);
                assertThat(cook.at(cook.bathC() - k - FINEST_K).verdict())
                        .as("%s", cook)
                        .isNotEqualTo(Verdict.MET);
                colder++;
            }
            if (margins.metres().isPresent()) {
                double m = margins.metres().getAsDouble();
                double across = cook.body().across();
                assertThat(m >= 0.0).as("%s", cook).isEqualTo(met);
                assertThat(cook.with(cook.body().withAcross(across + m)).verdict())
                        .as("%s by %s", cook, m)
                        .isEqualTo(Verdict.MET);
                assertThat(cook.with(cook.body().withAcross(across + m + FINEST))
                                .verdict())
                        .as("%s by %s", cook, m)
                        .isNotEqualTo(Verdict.MET);
                thicker++;
            }
            if (margins.seconds().isPresent()) {
                double s = margins.seconds().getAsDouble();
                double at = cook.serveAfter().orElseThrow();
                assertThat(s >= 0.0).as("%s", cook).isEqualTo(met);
                assertThat(cook.after(at - s + 1.0).verdict()).as("%s", cook).isEqualTo(Verdict.MET);
                assertThat(cook.after(at - s - 5.0).verdict()).as("%s", cook).isNotEqualTo(Verdict.MET);
                sooner++;
            }
        }
        assertThat(List.of(colder, thicker, sooner)).allMatch(n -> n > CASES / 4);
    }
}
