package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Vapour;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Verdict;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CookPlannerTest {

    @Test
    void tolerances_put_the_nominal_time_between_early_and_late() {
        Random random = new Random(3);
        List<String> foods = List.of("pork-loin", "chicken-breast", "beef-sirloin", "trout", "lamb-leg", "duck-breast");
        for (int i = 0; i < 24; i++) {
            CookPlan plan = Kitchen.of(
                            foods.get(i % foods.size()),
                            new Slab(random.nextDouble(0.012, 0.06)),
                            random.nextDouble(-18.0, 8.0),
                            random.nextDouble(58.0, 70.0))
                    .plan();
            inOrder(plan.times().hotThrough());
            plan.times().safe().ifPresent(CookPlannerTest::inOrder);
            plan.times().tender().ifPresent(CookPlannerTest::inOrder);
        }
    }

    private static void inOrder(Span span) {
        assertThat(span.early()).isLessThanOrEqualTo(span.nominal());
        assertThat(span.nominal()).isLessThanOrEqualTo(span.late());
    }

    @Test
    void a_thicker_colder_or_cooler_piece_is_never_safe_sooner() {
        Random random = new Random(5);
        for (int i = 0; i < 12; i++) {
            Kitchen base = Kitchen.of(
                    i % 2 == 0 ? "chicken-breast" : "pork-loin",
                    new Slab(random.nextDouble(0.015, 0.05)),
                    random.nextDouble(-15.0, 5.0),
                    random.nextDouble(60.0, 68.0));
            double safe = safeLate(base);
            double startC = base.startC();
            double bathC = base.bathC().getAsDouble();
            assertThat(safeLate(base.with(base.body().scaled(1.1)))).isGreaterThan(safe);
            assertThat(safeLate(base.from(startC - 3.0))).isGreaterThan(safe * 0.998);
            assertThat(safeLate(base.at(bathC - 1.0))).isGreaterThan(safe);
        }
    }

    private static double safeLate(Kitchen kitchen) {
        return kitchen.plan().times().safe().orElseThrow().late();
    }

    /** The margin is what it says: that much colder or thicker still passes, a little more does not. */
    @Test
    void the_margins_are_where_the_verdict_changes() {
        Kitchen kitchen = Kitchen.of("pork-loin", new Slab(0.04), 4.0, 61.0);
        CookPlan plan = kitchen.plan();
        assertThat(plan.safety().verdict()).isEqualTo(Verdict.MET);
        double at = plan.safety().judgedAt();
        double kelvin = plan.safety().margins().kelvin().getAsDouble();
        assertThat(verdict(kitchen.at(61.0 - kelvin).servedAfter(at))).isEqualTo(Verdict.MET);
        assertThat(verdict(kitchen.at(61.0 - kelvin - 0.1).servedAfter(at))).isNotEqualTo(Verdict.MET);
        CookPlan short1 = kitchen.servedAfter(
                        at - plan.safety().margins().seconds().getAsDouble() - 30.0)
                .plan();
        assertThat(short1.safety().verdict()).isNotEqualTo(Verdict.MET);
        CookPlan short2 = kitchen.servedAfter(
                        at - plan.safety().margins().seconds().getAsDouble() + 1.0)
                .plan();
        assertThat(short2.safety().verdict()).isEqualTo(Verdict.MET);
    }

    private static Verdict verdict(Kitchen kitchen) {
        return kitchen.plan().safety().verdict();
    }

    @Test
    void the_time_to_take_it_out_is_safe_in_the_worst_case_and_within_the_texture() {
        for (double bath : new double[] {60.0, 63.0, 66.0}) {
            CookPlan plan =
                    Kitchen.of("chicken-breast", new Slab(0.03), 4.0, bath).plan();
            CookPlan.TakeOut takeOut = plan.takeOut();
            assertThat(takeOut.obstacle()).isEmpty();
            assertThat(takeOut.earliest())
                    .isGreaterThanOrEqualTo(plan.times().safe().orElseThrow().late());
            assertThat(takeOut.best()).isBetween(takeOut.earliest(), takeOut.latest());
            assertThat(takeOut.latest())
                    .isLessThanOrEqualTo(plan.times().goodUntil().orElseThrow().early());
            assertThat(plan.safety().verdict()).isEqualTo(Verdict.MET);
        }
    }

    @Test
    void a_setpoint_is_recommended_with_its_reason() {
        CookPlan breast =
                Kitchen.of("chicken-breast", new Slab(0.03), 4.0, 0.0).advised().plan();
        assertThat(breast.advice().orElseThrow().reason()).isEqualTo(SetpointAdvice.Reason.LOWEST_THAT_IS_SAFE);
        assertThat(breast.setpointC()).isBetween(60.0, 63.0);
        assertThat(breast.safety().verdict()).isEqualTo(Verdict.MET);
        assertThat(breast.takeOut().obstacle()).isEmpty();
        assertThat(Kitchen.of("salmon-farmed", new Slab(0.025), 4.0, 0.0)
                        .advised()
                        .plan()
                        .setpointC())
                .as("fish that is to be safe by rule is warmer than fish usually is")
                .isGreaterThan(60.0);
        assertThatThrownBy(() -> Kitchen.of("lobster", new Slab(0.03), 4.0, 0.0)
                        .advised()
                        .plan())
                .isInstanceOfSatisfying(
                        Refusal.class, r -> assertThat(r.faults().get(0).code()).isEqualTo("SETPOINT_NEEDED"));
    }

    @Test
    void what_stands_in_the_way_is_told_all_at_once() {
        Kitchen wrong = Kitchen.of("egg-in-shell", new Slab(0.03), 35.0, 30.0)
                .with(Form.MINCED)
                .with(Purpose.REHEAT);
        assertThatThrownBy(wrong::plan)
                .isInstanceOfSatisfying(
                        Refusal.class,
                        r -> assertThat(r.faults().stream().map(Refusal.Fault::code))
                                .containsExactlyInAnyOrder(
                                        "FORM_NOT_ALLOWED",
                                        "START_TOO_WARM",
                                        "BATH_TOO_COOL",
                                        "START_NOT_BELOW_BATH",
                                        "PURPOSE_NEEDS_COOKED"));
    }

    // Boiling point of water at the pressure of the standard atmosphere: 100 C at sea level, about 91.7 C at 2500 m and
    // 83.3 C at 5000 m (steam tables at 101.3, 74.7 and 54.0 kPa; from memory).
    @Test
    void water_boils_cooler_on_mountains() {
        assertThat(BoilingPoint.atC(0.0)).isCloseTo(100.0, within(0.1));
        assertThat(BoilingPoint.atC(2500.0)).isCloseTo(91.7, within(0.2));
        assertThat(BoilingPoint.atC(5000.0)).isCloseTo(83.3, within(0.3));
    }

    // Vapour pressure 37 kPa at 74 C and 57.7 kPa at 85 C; a pocket of air sealed at 5 C about doubles and triples.
    @Test
    void a_pocket_of_air_grows_in_a_hot_bath() {
        assertThat(Vapour.pressure(74.0)).isCloseTo(37_000.0, within(400.0));
        assertThat(Vapour.pressure(85.0)).isCloseTo(57_700.0, within(300.0));
        assertThat(BoilingPoint.pocketGrowth(73.9)).isCloseTo(1.96, within(0.02));
        assertThat(BoilingPoint.pocketGrowth(85.0)).isCloseTo(3.0, within(0.05));
    }
}
