package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.safety.Verdict;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * No rule calls a cook met whose core, if everything hinders, stays below what the rule starts to count at: the floor of a
 * deciding requirement, and the lowest row of its table.
 */
class FloorOfRulesTest {

    private static final Knowledge KNOWLEDGE = Kitchen.PLANNER.knowledge();
    private static final SafetyKnowledge SAFETY = KNOWLEDGE.safety();
    private static final Materials MATERIALS = new Materials(KNOWLEDGE.thermal());
    private static final double ERROR_K =
            KNOWLEDGE.defaults().bathK() + KNOWLEDGE.defaults().readingK();
    private static final double[] TIMES = {2400.0, 100_000.0};

    /** Every 3 K, and on both sides of each floor with the usual error added: 54.944, 58.278, 60.5, 63.278, 74.389 C. */
    private static final double[] BATHS = DoubleStream.concat(
                    DoubleStream.iterate(38.0, c -> c <= 95.0, c -> c + 3.0),
                    DoubleStream.of(
                            54.4,
                            54.9,
                            54.444 + 0.5,
                            57.5,
                            60.5,
                            70.5,
                            55.0,
                            58.2,
                            58.3,
                            60.4,
                            60.6,
                            63.2,
                            63.4,
                            74.3,
                            74.5))
            .toArray();

    static Iterable<String> rules() {
        return SAFETY.rules().rules().stream().map(Rule::id).toList();
    }

    /** One raw food of each group. */
    private static Iterable<Food> foods() {
        Map<FoodGroup, Food> found = new EnumMap<>(FoodGroup.class);
        for (Food food : KNOWLEDGE.catalogue().foods()) {
            if (food.condition() == Condition.RAW) {
                found.putIfAbsent(food.group(), food);
            }
        }
        // Catalogues may know minced meat as a food of its own: a whole piece tries more forms.
        KNOWLEDGE.catalogue().find("beef-sirloin").ifPresent(f -> found.put(FoodGroup.BEEF, f));
        return found.values();
    }

    @ParameterizedTest
    @MethodSource("rules")
    void nothing_is_met_below_the_floor_of_its_rule(String rule) {
        int met = 0;
        int below = 0;
        for (Food food : foods()) {
            for (Form form : EnumSet.copyOf(food.forms())) {
                for (double bathC : BATHS) {
                    for (double at : TIMES) {
                        CookTask task = Kitchen.of(food.id(), new Slab(0.02), 4.0, bathC)
                                .with(form)
                                .servedAfter(at)
                                .task();
                        Trial trial = tried(task, bathC, rule);
                        double coreC = hottestC(trial.late().slowest(), at) - ERROR_K;
                        // A bath set to the very floor, the error counted, is approached for ever.
                        if (Math.min(coreC, bathC - ERROR_K - 1e-9) < floorC(task, rule)) {
                            below++;
                            assertThat(trial.verdict())
                                    .as("%s %s %s at %s C for %s s", rule, food.id(), form, bathC, at)
                                    .isIn(Verdict.NOT_MET, Verdict.SURFACE_ONLY);
                        }
                        met += trial.verdict() == Verdict.MET ? 1 : 0;
                    }
                }
            }
        }
        assertThat(below).as("cooks below the floor").isGreaterThan(500);
        assertThat(met).as("cooks that are met").isGreaterThan(100);
    }

    private static Trial tried(CookTask task, double bathC, String rule) {
        Terms terms = new Terms(
                KNOWLEDGE,
                MATERIALS,
                SAFETY.rules().rule(rule),
                task.requirements(SAFETY.rules(), rule),
                ERROR_K,
                Optional.empty(),
                PhaseWatch.NONE);
        return Trial.of(task, bathC, terms, new SolverRuns());
    }

    private static double hottestC(PointHistory core, double until) {
        double hottest = core.atC(until);
        for (int i = 0; i < core.samples() && core.time(i) <= until; i++) {
            hottest = Math.max(hottest, core.temperatureC(i));
        }
        return hottest;
    }

    private static double floorC(CookTask task, String rule) {
        return task.requirements(SAFETY.rules(), rule).stream()
                .filter(r -> !r.advisory())
                .mapToDouble(FloorOfRulesTest::floorC)
                .max()
                .orElseThrow();
    }

    private static double floorC(Requirement requirement) {
        return Math.max(
                requirement.floorC(), requirement.table().map(t -> t.lowestC()).orElse(requirement.floorC()));
    }
}
