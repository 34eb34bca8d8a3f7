package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.LoadPlan.Obstacle;
import dev.slowpoint.plan.LoadPlan.Reason;
import dev.slowpoint.plan.LoadPlan.Schedule;
import dev.slowpoint.safety.Verdict;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Several foods and one bath. */
class LoadPlanTest {

    private static final Loads.Dish CHICKEN = Loads.Dish.of("chicken", "chicken-breast", new Slab(0.03), 0.6);
    private static final Loads.Dish PORK = Loads.Dish.of("pork", "pork-loin", new Slab(0.04), 0.8);
    private static final Loads.Dish STEAK = Loads.Dish.of("steak", "beef-sirloin", new Slab(0.025), 0.5);
    private static final Loads.Dish CHUCK = Loads.Dish.of("chuck", "beef-chuck", new Slab(0.06), 1.0);
    private static final Loads.Dish CARROT = Loads.Dish.of("carrot", "carrot", new LongCylinder(0.025), 0.5);
    private static final Loads.Dish SALMON = Loads.Dish.of("salmon", "salmon", new Slab(0.025), 0.4);

    private static LoadPlan.Item item(LoadPlan plan, String id) {
        return plan.items().stream().filter(i -> i.id().equals(id)).findFirst().orElseThrow();
    }

    /** The figures of a plan, without what the solver spent and without the curve, which has no equality. */
    private static List<Object> figures(CookPlan plan) {
        return List.of(
                plan.setpointC(),
                plan.times(),
                plan.takeOut(),
                plan.atServe(),
                plan.safety(),
                plan.texture(),
                plan.notices());
    }

    private static List<Object> cookPlan(Loads load, LoadPlan.Item item) {
        Loads.Dish dish = load.dishes().stream()
                .filter(d -> d.id().equals(item.id()))
                .findFirst()
                .orElseThrow();
        CookTask task = load.task(dish).at(item.setpointC()).servedAfter(item.leavesAt() - item.entersAt());
        return figures(Kitchen.PLANNER.plan(task, EnumSet.noneOf(Detail.class)));
    }

    @Test
    void in_water_that_stands_at_its_setpoint_each_food_has_the_very_figures_of_its_cook_plan() {
        for (Loads load : List.of(
                Loads.of(CHICKEN, PORK),
                Loads.of(CHICKEN, CHUCK).at(62.0),
                Loads.of(CHICKEN, CHUCK).at(62.0).servedAfter(80_000))) {
            LoadPlan plan = load.plan();
            assertThat(plan.schedule()).isNotEqualTo(Schedule.APART);
            for (LoadPlan.Item item : plan.items()) {
                assertThat(figures(item.plan())).isEqualTo(cookPlan(load, item));
            }
        }
    }

    @Test
    void one_food_alone_in_a_bath_has_the_very_figures_of_its_cook_plan() {
        Loads load = Loads.of(PORK).at(60.0).in(8, 500);
        LoadPlan plan = load.plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.TOGETHER);
        assertThat(figures(item(plan, "pork").plan())).isEqualTo(cookPlan(load, item(plan, "pork")));
    }

    /** Two halves of one food share the water; solved as one they are coupled exactly. */
    @Test
    void two_halves_of_a_food_get_the_times_of_the_whole() {
        Loads whole = Loads.of(PORK.weighing(3.0)).at(60.0).in(4, 300);
        Loads halves = Loads.of(
                        PORK.weighing(1.0),
                        new Loads.Dish("more", "pork-loin", new Slab(0.04), 4.0, 2.0, OptionalDouble.empty()))
                .at(60.0)
                .in(4, 300);
        CookPlan one = Kitchen.PLANNER.plan(whole.task(whole.dishes().get(0)), EnumSet.noneOf(Detail.class));
        CookPlan half = item(halves.plan(), "pork").plan();
        assertThat(one.bath().orElseThrow().lowestC()).isLessThan(58.0);
        assertThat(half.times().hotThrough().nominal())
                .isCloseTo(one.times().hotThrough().nominal(), within(20.0));
        assertThat(half.times().safe().orElseThrow().late())
                .isCloseTo(one.times().safe().orElseThrow().late(), within(20.0));
        assertThat(halves.plan().phases().get(0).course().orElseThrow().lowestC())
                .isCloseTo(one.bath().orElseThrow().lowestC(), within(0.05));
    }

    @Test
    void foods_of_one_temperature_go_in_and_come_out_together() {
        LoadPlan plan = Loads.of(CHICKEN, PORK).plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.TOGETHER);
        assertThat(plan.reason()).isEqualTo(Reason.COMMON_WINDOW);
        assertThat(plan.phases()).hasSize(1);
        double ready = plan.readyAt().orElseThrow();
        for (LoadPlan.Item item : plan.items()) {
            assertThat(item.entersAt()).isZero();
            assertThat(item.leavesAt()).isEqualTo(ready);
            assertThat(item.plan().takeOut().earliest()).isLessThanOrEqualTo(ready);
            assertThat(item.plan().takeOut().latest()).isGreaterThanOrEqualTo(ready);
            assertThat(item.plan().safety().verdict()).isEqualTo(Verdict.MET);
        }
    }

    @Test
    void the_slower_food_goes_in_first_where_no_one_time_suits_both() {
        LoadPlan plan = Loads.of(CHICKEN, CHUCK).at(62.0).in(20, 1200).plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.STAGGERED);
        assertThat(item(plan, "chuck").entersAt()).isZero();
        assertThat(item(plan, "chicken").entersAt()).isGreaterThan(12 * 3600.0);
        assertThat(item(plan, "chicken").leavesAt())
                .isEqualTo(item(plan, "chuck").leavesAt());
        inOrder(plan);
    }

    @Test
    void all_is_ready_at_the_time_that_was_asked_for() {
        for (Loads load : List.of(
                Loads.of(CHICKEN, PORK).in(12, 1000).servedAfter(4 * 3600.0),
                Loads.of(CHICKEN, CHUCK).at(62.0).in(20, 1200).servedAfter(24 * 3600.0),
                Loads.of(CARROT, STEAK).in(15, 1500).servedAfter(6 * 3600.0))) {
            LoadPlan plan = load.plan();
            assertThat(plan.readyAt()).isEqualTo(load.serveAfter());
            inOrder(plan);
        }
    }

    @Test
    void where_the_time_is_too_short_the_plan_says_how_long_it_takes() {
        LoadPlan plan = Loads.of(CHICKEN, PORK).in(12, 1000).servedAfter(3600).plan();
        assertThat(plan.readyAt().orElseThrow()).isGreaterThan(3600);
        assertThat(plan.notices()).extracting(Notice::code).contains(NoticeCode.LOAD_READY_LATE);
        inOrder(plan);
    }

    @Test
    void a_hotter_food_goes_first_and_may_stay_while_the_bath_is_cooled() {
        LoadPlan plan = Loads.of(STEAK, CARROT).in(15, 1500).plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.TWO_SETPOINTS);
        assertThat(plan.phases().get(0).setpointC())
                .isGreaterThan(plan.phases().get(1).setpointC());
        assertThat(item(plan, "carrot").entersAt()).isZero();
        assertThat(item(plan, "carrot").staysThrough()).isTrue();
        assertThat(item(plan, "carrot").leavesAt()).isEqualTo(plan.readyAt().orElseThrow());
        assertThat(item(plan, "steak").entersAt())
                .isGreaterThanOrEqualTo(plan.phases().get(1).from());
        inOrder(plan);
    }

    @Test
    void a_hotter_food_that_would_soften_comes_out_before_the_bath_is_cooled() {
        LoadPlan plan = Loads.of(
                        Loads.Dish.of("medium", "beef-sirloin", new Slab(0.038), 0.4)
                                .core(57.2),
                        Loads.Dish.of("rare", "beef-sirloin", new Slab(0.038), 0.4)
                                .core(53.9))
                .plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.TWO_SETPOINTS);
        assertThat(item(plan, "medium").staysThrough()).isFalse();
        assertThat(item(plan, "medium").leavesAt())
                .isEqualTo(plan.phases().get(1).from());
        assertThat(item(plan, "medium").latestAt())
                .isEqualTo(plan.phases().get(1).from());
        inOrder(plan);
    }

    /** Heat before and after, of two waters mixed: m1 t1 + m2 t2 = (m1 + m2) t. */
    @Test
    void the_water_poured_in_keeps_the_balance_of_heat() {
        Random random = new Random(3);
        for (int i = 0; i < 100; i++) {
            double tapC = random.nextDouble(5.0, 25.0);
            double toC = random.nextDouble(40.0, 80.0);
            double fromC = toC + random.nextDouble(0.1, 15.0);
            LoadPlan.Lowering lowering = LoadPlan.Lowering.of(0.0, fromC, toC, tapC, OptionalDouble.of(0.015));
            double poured = lowering.pouredShare();
            double exchanged = lowering.exchangedShare();
            assertThat((fromC + poured * tapC) / (1.0 + poured)).isCloseTo(toC, within(1e-9));
            assertThat((1.0 - exchanged) * fromC + exchanged * tapC).isCloseTo(toC, within(1e-9));
        }
    }

    @Test
    void three_temperatures_do_not_go_together_and_the_plan_names_the_pairs() {
        LoadPlan plan = Loads.of(CARROT, CHICKEN, STEAK).plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.APART);
        assertThat(plan.reason()).isEqualTo(Reason.TOO_MANY_TEMPERATURES);
        assertThat(plan.readyAt()).isEmpty();
        assertThat(plan.conflicts())
                .extracting(c -> c.item() + ">" + c.other().orElseThrow())
                .containsExactlyInAnyOrder("carrot>steak", "carrot>chicken", "chicken>steak");
        assertThat(plan.conflicts())
                .allSatisfy(c -> assertThat(c.needsC().orElseThrow())
                        .isGreaterThan(c.otherAllowsC().orElseThrow()));
        assertThat(plan.items())
                .allSatisfy(i -> assertThat(i.plan().takeOut().obstacle()).isEmpty());
    }

    /** Fish at 50 C is never pasteurised, whatever else lies in the bath; and vegetables do not soften there. */
    @Test
    void vegetables_and_cool_fish_do_not_go_together_and_the_plan_says_why() {
        LoadPlan plan = Loads.of(CARROT, SALMON.core(50.0)).plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.APART);
        assertThat(plan.reason()).isEqualTo(Reason.FAILS_ALONE);
        assertThat(plan.conflicts())
                .anySatisfy(c -> {
                    assertThat(c.obstacle()).isEqualTo(Obstacle.ITEM_FAILS);
                    assertThat(c.item()).isEqualTo("salmon");
                    assertThat(c.because()).contains(CookPlan.Obstacle.RULE_NEVER_MET);
                })
                .anySatisfy(c -> {
                    assertThat(c.obstacle()).isEqualTo(Obstacle.TEMPERATURES_APART);
                    assertThat(c.item()).isEqualTo("carrot");
                    assertThat(c.other()).contains("salmon");
                });
    }

    @Test
    void at_a_fixed_setpoint_a_core_asked_for_is_not_overshot() {
        LoadPlan plan = Loads.of(STEAK.core(54.0), CHICKEN).at(63.0).plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.APART);
        assertThat(plan.conflicts()).anySatisfy(c -> assertThat(c.obstacle()).isEqualTo(Obstacle.HOTTER_THAN_WANTED));
    }

    @Test
    void foods_that_go_alone_but_cool_the_water_too_far_together_are_told_so() {
        Loads alone =
                Loads.of(CHICKEN.weighing(5.0), PORK.weighing(5.0)).at(61.0).in(5, 100);
        LoadPlan plan = alone.plan();
        assertThat(plan.schedule()).isEqualTo(Schedule.APART);
        assertThat(plan.reason()).isEqualTo(Reason.LOAD_TOO_HEAVY);
        assertThat(plan.conflicts()).anySatisfy(c -> assertThat(c.obstacle()).isEqualTo(Obstacle.FAILS_IN_THIS_LOAD));
    }

    @Test
    void more_cold_food_never_makes_the_water_warmer_nor_any_food_ready_sooner() {
        Loads few = Loads.of(CHICKEN, PORK).at(62.0).in(10, 600);
        Loads many = few.and(Loads.Dish.of("more", "pork-loin", new Slab(0.03), 1.5));
        LoadPlan fewer = few.plan();
        LoadPlan more = many.plan();
        assertThat(more.phases().get(0).course().orElseThrow().lowestC())
                .isLessThan(fewer.phases().get(0).course().orElseThrow().lowestC());
        for (String id : List.of("chicken", "pork")) {
            CookPlan before = item(fewer, id).plan();
            CookPlan after = item(more, id).plan();
            assertThat(after.times().hotThrough().nominal())
                    .isGreaterThan(before.times().hotThrough().nominal());
            assertThat(after.times().safe().orElseThrow().late())
                    .isGreaterThan(before.times().safe().orElseThrow().late());
        }
    }

    @Test
    void a_load_is_never_safe_sooner_than_in_water_that_stands() {
        LoadPlan standing = Loads.of(CHICKEN, PORK).at(62.0).plan();
        LoadPlan sagging = Loads.of(CHICKEN, PORK).at(62.0).in(6, 400).plan();
        for (String id : List.of("chicken", "pork")) {
            assertThat(item(sagging, id).plan().times().safe().orElseThrow().late())
                    .isGreaterThan(item(standing, id)
                            .plan()
                            .times()
                            .safe()
                            .orElseThrow()
                            .late());
        }
    }

    @Test
    void the_order_of_the_question_changes_nothing() {
        Loads load = Loads.of(CHICKEN, PORK, Loads.Dish.of("more", "pork-loin", new Slab(0.03), 1.5), CARROT)
                .in(14, 900);
        LoadPlan plan = load.plan();
        List<Loads.Dish> shuffled = new ArrayList<>(load.dishes());
        Collections.shuffle(shuffled, new Random(5));
        LoadPlan other = load.with(shuffled).plan();
        assertThat(other.schedule()).isEqualTo(plan.schedule());
        assertThat(other.readyAt()).isEqualTo(plan.readyAt());
        assertThat(other.phases()).isEqualTo(plan.phases());
        for (LoadPlan.Item item : plan.items()) {
            LoadPlan.Item same = item(other, item.id());
            assertThat(same.entersAt()).isEqualTo(item.entersAt());
            assertThat(same.leavesAt()).isEqualTo(item.leavesAt());
            assertThat(figures(same.plan())).isEqualTo(figures(item.plan()));
        }
    }

    /** A warm start of the water is cooled by the food; a cold one is warmed by the heater: both are counted. */
    @Test
    void a_bath_that_starts_cold_takes_longer_by_less_than_its_warm_up() {
        LoadPlan hot = Loads.of(CHICKEN, PORK).at(61.0).in(12, 1000).plan();
        LoadPlan cold = Loads.of(CHICKEN, PORK).at(61.0).in(12, 1000).from(15.0).plan();
        double ramp = cold.phases().get(0).course().orElseThrow().backAt();
        double later = item(cold, "pork").plan().times().safe().orElseThrow().nominal()
                - item(hot, "pork").plan().times().safe().orElseThrow().nominal();
        assertThat(ramp).isGreaterThan(1800.0);
        assertThat(later).isBetween(0.2 * ramp, ramp);
    }

    @Test
    void what_no_bath_makes_safe_is_refused_at_its_item() {
        Loads load = Loads.of(CHICKEN, PORK).in(12, 60);
        assertThatThrownBy(load::plan)
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.faults())
                                .extracting(f -> f.code() + " " + f.pointer())
                                .containsExactly("NO_SETPOINT_FITS #/items/0", "NO_SETPOINT_FITS #/items/1"));
    }

    /** Each food leaves within its own window, its rule kept, and none goes in before the start or out after the end. */
    private static void inOrder(LoadPlan plan) {
        double ready = plan.readyAt().orElseThrow();
        for (LoadPlan.Item item : plan.items()) {
            double stay = item.leavesAt() - item.entersAt();
            assertThat(item.entersAt()).isGreaterThanOrEqualTo(0.0);
            assertThat(item.leavesAt()).isLessThanOrEqualTo(ready);
            assertThat(stay).isGreaterThanOrEqualTo(item.plan().takeOut().earliest());
            assertThat(stay).isLessThanOrEqualTo(item.plan().takeOut().latest());
            assertThat(item.plan().safety().judgedAt()).isEqualTo(stay);
            assertThat(item.plan().safety().verdict()).isNotEqualTo(Verdict.NOT_MET);
        }
    }
}
