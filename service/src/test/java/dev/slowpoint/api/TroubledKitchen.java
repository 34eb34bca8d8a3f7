package dev.slowpoint.api;

import dev.slowpoint.plan.Refusal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;

/** The real planner, but for two foods that call up ends which it never takes by itself. */
@TestConfiguration(proxyBeanMethods = false)
class TroubledKitchen {

    static final String UNLISTED_REFUSAL = "odd-food";
    static final String BUG = "bug";

    /** Where a bug may give away what is inside. */
    static final String SECRET = "jdbc:inside/secret";

    @Bean
    @Primary
    CookPlanning troubledPlanning(PlannedCooks planning) {
        return (request, include, sentences) -> {
            refuseSome(request.food().id());
            return planning.plan(request, include, sentences);
        };
    }

    private static void refuseSome(@Nullable String id) {
        if (BUG.equals(id)) {
            throw new IllegalStateException(SECRET);
        }
        if (UNLISTED_REFUSAL.equals(id)) {
            throw new Refusal(List.of(
                    Refusal.Fault.of("#/surroundings/bath/setpointC", "NOT_IN_THE_CATALOGUE", "FAULT_BATH_TOO_COOL")
                            .withMinimum(54.0, "Cel"),
                    Refusal.Fault.of("#/start/temperatureC", "START_TOO_WARM", "FAULT_START_TOO_WARM", 25)
                            .withMaximum(20.0, "Cel")));
        }
    }
}
