package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** How a pack lies in the water, and water that has a temperature of its own. */
class ImmersionTest {

    private static final Arrangement BLOCKED = new Arrangement(1, true, 0.0, OptionalDouble.empty());

    /** A mirror: half of a slab of twice the thickness. */
    @Test
    void a_pack_on_a_tray_takes_as_long_as_one_of_twice_the_thickness() {
        CookPlan onTray = plan(new Slab(0.02), BLOCKED, Optional.empty());
        CookPlan twice = plan(new Slab(0.04), Arrangement.FREE, Optional.empty());
        assertThat(onTray.times().hotThrough().nominal())
                .isEqualTo(twice.times().hotThrough().nominal());
    }

    @Test
    void a_pile_of_three_is_one_piece_of_three_times_the_thickness() {
        CookPlan pile = plan(
                new Brick(0.02, 0.1, 0.15), new Arrangement(3, false, 0.0, OptionalDouble.empty()), Optional.empty());
        CookPlan thick = plan(new Brick(0.06, 0.1, 0.15), Arrangement.FREE, Optional.empty());
        assertThat(pile.times().hotThrough().nominal())
                .isEqualTo(thick.times().hotThrough().nominal());
    }

    @Test
    void a_layer_of_air_in_the_bag_costs_time_and_a_thicker_one_more() {
        double before = plan(new Slab(0.03), Arrangement.FREE, Optional.empty())
                .times()
                .hotThrough()
                .nominal();
        for (double layer : new double[] {0.1e-3, 0.5e-3, 1e-3}) {
            double time = plan(
                            new Slab(0.03), new Arrangement(1, false, layer, OptionalDouble.empty()), Optional.empty())
                    .times()
                    .hotThrough()
                    .nominal();
            assertThat(time).isGreaterThan(before);
            before = time;
        }
    }

    /** Between steady resistances in series: 43 to 46 C for 30 mm with one face in air of 22 C over a bath of 62 C. */
    @Test
    void a_face_in_air_never_gets_there_and_the_plan_says_so() {
        CookPlan plan = plan(new Slab(0.03), new Arrangement(1, false, 0.0, OptionalDouble.of(22.0)), Optional.empty());
        assertThat(plan.takeOut().obstacle()).isPresent();
        assertThat(plan.times().hotThrough().nominal()).isInfinite();
        assertThat(plan.times().safe().orElseThrow().late()).isInfinite();
        assertThat(plan.safety().verdict()).isEqualTo(dev.slowpoint.safety.Verdict.NOT_MET);
        assertThat(plan.notices().stream().map(Notice::code)).contains(NoticeCode.FACE_IN_AIR);
    }

    @Test
    void a_small_load_in_a_strong_bath_changes_nothing_and_is_not_warned_of() {
        CookPlan still = plan(new Slab(0.03), Arrangement.FREE, Optional.empty());
        CookPlan strong = plan(new Slab(0.03), Arrangement.FREE, Optional.of(vessel(0.02, 2000.0, 0.3)));
        assertThat(strong.times().hotThrough().nominal())
                .isCloseTo(still.times().hotThrough().nominal(), within(60.0));
        assertThat(strong.notices().stream().map(Notice::code))
                .doesNotContain(NoticeCode.BATH_SAGS, NoticeCode.HEATER_TOO_WEAK, NoticeCode.STARTS_COLD);
    }

    @Test
    void a_large_load_in_a_weak_bath_sags_takes_longer_and_is_warned_of() {
        CookPlan still = plan(new Slab(0.012), Arrangement.FREE, Optional.empty());
        CookPlan weak = plan(new Slab(0.012), Arrangement.FREE, Optional.of(vessel(0.01, 1000.0, 3.0)));
        assertThat(weak.times().hotThrough().nominal())
                .isGreaterThan(still.times().hotThrough().nominal() + 120.0);
        assertThat(weak.notices().stream().map(Notice::code)).contains(NoticeCode.BATH_SAGS);
    }

    @Test
    void a_heater_that_cannot_hold_the_bath_is_told() {
        CookTask.Vessel weak = new CookTask.Vessel(
                0.02,
                150.0,
                OptionalDouble.empty(),
                0.5,
                false,
                OptionalDouble.of(0.1),
                OptionalDouble.of(6.0),
                OptionalDouble.empty());
        CookPlan plan = plan(new Slab(0.03), Arrangement.FREE, Optional.of(weak));
        assertThat(plan.notices().stream().map(Notice::code)).contains(NoticeCode.HEATER_TOO_WEAK);
    }

    @Test
    void only_flat_pieces_lie_on_each_other_and_chains_need_a_free_pack() {
        assertThatThrownBy(() -> plan(new Sphere(0.05), BLOCKED, Optional.empty()))
                .isInstanceOf(Refusal.class);
        CookTask chained = task(new Slab(0.03), BLOCKED, Optional.empty(), List.of(new Step.Rest(300.0)));
        assertThatThrownBy(() -> Kitchen.PLANNER.plan(chained, Set.of())).isInstanceOf(Refusal.class);
    }

    private static CookTask.Vessel vessel(double volume, double power, double load) {
        return new CookTask.Vessel(
                volume,
                power,
                OptionalDouble.empty(),
                load,
                true,
                OptionalDouble.empty(),
                OptionalDouble.of(8.0),
                OptionalDouble.empty());
    }

    private static CookPlan plan(Body body, Arrangement arrangement, Optional<CookTask.Vessel> vessel) {
        return Kitchen.PLANNER.plan(task(body, arrangement, vessel, List.of()), Set.of());
    }

    private static CookTask task(
            Body body, Arrangement arrangement, Optional<CookTask.Vessel> vessel, List<Step> then) {
        CookTask plain = Kitchen.of("chicken-breast", body, 5.0, 62.0).task();
        return new CookTask(
                plain.food(),
                plain.form(),
                plain.condition(),
                plain.fatPercent(),
                plain.previouslyFrozen(),
                body,
                arrangement,
                plain.start(),
                plain.earlierCook(),
                new CookTask.Bath(plain.bath().setpointC(), Stirring.PUMPED, vessel),
                plain.altitude(),
                plain.target(),
                plain.eater(),
                plain.rule(),
                plain.tolerances(),
                plain.pack(),
                then);
    }
}
