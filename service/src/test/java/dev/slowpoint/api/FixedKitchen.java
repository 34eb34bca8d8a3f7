package dev.slowpoint.api;

import dev.slowpoint.api.CatalogueAnswers.CompositionEntry;
import dev.slowpoint.api.CatalogueAnswers.FoodEntry;
import dev.slowpoint.api.CatalogueAnswers.Origin;
import dev.slowpoint.api.CatalogueAnswers.ParameterSetEntry;
import dev.slowpoint.api.CatalogueAnswers.RuleEntry;
import dev.slowpoint.api.CatalogueAnswers.WarningEntry;
import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.plan.Refusal;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;

/**
 * Stands in for the planner where only the way there and back is tested: the same plan for every request, with every
 * member filled, so that its size is the largest. Some ids of foods call up other ends.
 */
@TestConfiguration(proxyBeanMethods = false)
class FixedKitchen {

    static final String UNKNOWN_FOOD = "porc-loin";
    static final String UNLISTED_REFUSAL = "odd-food";
    static final String BUG = "bug";

    /** Where a bug may give away what is inside. */
    static final String SECRET = "jdbc:inside/secret";

    @Bean
    @Primary
    CookPlanning fixedPlanning(PlanMetrics metrics) {
        return (request, include) -> {
            refuseSome(request.food().id());
            metrics.planned("met", FoodGroup.PORK, "2026.1");
            metrics.solved(Duration.ofNanos(200_000), 400L);
            return plan(include);
        };
    }

    private static void refuseSome(@Nullable String id) {
        if (BUG.equals(id)) {
            throw new IllegalStateException(SECRET);
        }
        if (UNKNOWN_FOOD.equals(id)) {
            throw new Refusal(Refusal.Fault.of("#/food/id", "UNKNOWN_FOOD", "There is no food porc-loin.")
                    .withValue(UNKNOWN_FOOD)
                    .withHint("Maybe pork-loin?"));
        }
        if (UNLISTED_REFUSAL.equals(id)) {
            throw new Refusal(List.of(
                    Refusal.Fault.of("#/surroundings/bath/setpointC", "NOT_IN_THE_CATALOGUE", "Too cool.")
                            .withMinimum(54.0, "Cel"),
                    Refusal.Fault.of("#/start/temperatureC", "START_TOO_WARM", "Too warm.")
                            .withMaximum(20.0, "Cel")));
        }
    }

    static CookPlanAnswer plan(Set<Include> include) {
        CookPlanAnswer.Milestone moment = new CookPlanAnswer.Milestone(6840, 6120, 7740);
        return new CookPlanAnswer(
                "2026.1",
                "5d41402abc4b2a76",
                60.000000001,
                "The coolest bath that makes this piece safe in six hours.",
                new CookPlanAnswer.Times(moment, moment, moment, moment, null),
                new CookPlanAnswer.TakeOut(7740, 8100, 21600),
                null,
                new CookPlanAnswer.AtServe(7200, 58.91234567, 59.4, 57.96, 59.95),
                new SafetyVerdict(
                        "met",
                        "us-salmonella-65-log",
                        "salmonella",
                        6.5,
                        7.129999,
                        9.4,
                        0.629999,
                        360,
                        0.4,
                        1.8,
                        0.000123,
                        2400,
                        3100,
                        18500,
                        8100),
                new CookPlanAnswer.Texture("within", new CookPlanAnswer.Window(5400, 28800), 11.512, "dry", "medium"),
                List.of(new CookPlanAnswer.Warning(
                        "BELOW_HOT_HOLDING", "caution", "The plate cools below the hot-holding temperature of 57 C.")),
                List.of(
                        new CookPlanAnswer.Reason(
                                "LOCAL_CODE_PREVAILS", "Where a local food code asks for more, the code prevails."),
                        new CookPlanAnswer.Reason("FULLY_SUBMERGED", "The piece is wholly under water all the time.")),
                include.contains(Include.CURVE)
                        ? new CookPlanAnswer.Curve(
                                List.of(0, 600), List.of(4.0, 9.123456), List.of(4.0, 55.5), List.of(4.0, 31.0))
                        : null,
                include.contains(Include.ORGANISMS)
                        ? List.of(new CookPlanAnswer.Organism("listeria", "uk-listeria-6-log", 6.0, 8.2, 2.2, true))
                        : null,
                include.contains(Include.SOURCES)
                        ? List.of(new CookPlanAnswer.Source("thermal properties", "read", "Choi and Okos 1986"))
                        : null);
    }

    @Bean
    @Primary
    Catalogues fixedCatalogues() {
        List<Origin> origins = List.of(new Origin("read", "Choi and Okos 1986"));
        return new Catalogues() {
            @Override
            public List<FoodEntry> foods() {
                return List.of(food("pork-loin", "Pork loin", FoodGroup.PORK), food("trout", "Trout", FoodGroup.FISH));
            }

            private FoodEntry food(String id, String name, FoodGroup group) {
                return new FoodEntry(
                        id,
                        name,
                        Words.of(group),
                        List.of("intact", "minced"),
                        "raw",
                        null,
                        new CompositionEntry(72.0, 21.0, 6.0, 0.0, 0.0, 1.0),
                        -1.1,
                        List.of("salmonella"),
                        origins);
            }

            @Override
            public List<RuleEntry> rules() {
                return List.of(new RuleEntry(
                        "us-salmonella-65-log",
                        "Cooked meat",
                        "United States",
                        "2021",
                        "6.5-log reduction at the cold spot.",
                        "salmonella",
                        6.5,
                        origins));
            }

            @Override
            public List<ParameterSetEntry> parameterSets() {
                return List.of(new ParameterSetEntry("2026.1", "5d41402abc4b2a76b9719d911017c592", "current"));
            }

            @Override
            public List<WarningEntry> warnings() {
                return List.of(new WarningEntry(
                        "SLOW_WARM_UP", "danger", "The core warms up slowly.", "Take a thinner piece."));
            }
        };
    }
}
