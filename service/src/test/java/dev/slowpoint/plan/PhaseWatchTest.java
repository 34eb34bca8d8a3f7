package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.heat.Slab;
import dev.slowpoint.parameters.ParameterSets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class PhaseWatchTest {

    private final CookPlanner planner =
            new CookPlanner(ParameterSets.released().current().knowledge());

    /** Notes the phases, and that none lies inside another and each that begins ends. */
    private static final class Noted implements PhaseWatch {

        private final List<PlanPhase> phases = new ArrayList<>();
        private @Nullable PlanPhase open;

        @Override
        public void begins(PlanPhase phase) {
            assertThat(open).as("open when %s begins", phase).isNull();
            open = phase;
        }

        @Override
        public void ends(PlanPhase phase) {
            assertThat(phase).isEqualTo(open);
            phases.add(phase);
            open = null;
        }
    }

    @Test
    void a_plan_goes_through_its_phases_in_order_and_is_the_same_as_unwatched() {
        CookTask task = Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0).task();
        Noted watch = new Noted();
        CookPlan watched = planner.watchedBy(watch).plan(task, Set.of(Detail.UNCERTAINTY));
        assertThat(watch.phases)
                .containsExactly(
                        PlanPhase.SOLVE, PlanPhase.TEXTURE, PlanPhase.SAFETY, PlanPhase.MARGINS, PlanPhase.SAMPLE);
        assertThat(watched.times())
                .isEqualTo(planner.plan(task, Set.of(Detail.UNCERTAINTY)).times());
    }

    @Test
    void a_plan_of_a_bath_to_be_chosen_goes_through_a_phase_for_each_that_is_tried() {
        CookTask task =
                Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0).advised().task();
        Noted watch = new Noted();
        planner.watchedBy(watch).plan(task, Set.of());
        assertThat(watch.phases).contains(PlanPhase.SOLVE, PlanPhase.SAFETY, PlanPhase.MARGINS);
    }

    @Test
    void foods_in_one_water_go_through_phases_that_do_not_overlap() {
        Loads load = Loads.of(
                        Loads.Dish.of("chicken", "chicken-breast", new Slab(0.03), 0.6),
                        Loads.Dish.of("pork", "pork-loin", new Slab(0.04), 0.8))
                .in(20.0, 1200.0);
        LoadTask question = new LoadTask(
                load.dishes().stream()
                        .map(dish -> new LoadTask.Item(dish.id(), load.task(dish)))
                        .toList(),
                OptionalDouble.empty());
        Noted watch = new Noted();
        planner.watchedBy(watch).load(question, Set.of());
        assertThat(watch.phases).contains(PlanPhase.SOLVE, PlanPhase.TEXTURE, PlanPhase.SAFETY, PlanPhase.MARGINS);
    }

    @Test
    void a_window_goes_through_many_trials() {
        CookTask task = Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0).task();
        OptionalDouble usual = OptionalDouble.empty();
        Noted watch = new Noted();
        planner.watchedBy(watch).window(ProcessWindowTask.of(task, usual, usual, usual, usual, usual));
        assertThat(watch.phases.stream().filter(phase -> phase == PlanPhase.SOLVE))
                .hasSizeGreaterThan(10);
    }
}
