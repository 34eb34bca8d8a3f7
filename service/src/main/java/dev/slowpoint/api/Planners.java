package dev.slowpoint.api;

import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.parameters.ParameterSet;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.plan.CookPlanner;
import dev.slowpoint.plan.Refusal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** A planner for each parameter set; a deprecated one is announced as such wherever it is asked for. */
@Component
final class Planners {

    /** Where to read of a set, its last day and its successor. */
    private static final String SETS = "/v1/parameter-sets/";

    private final ParameterSets sets;
    private final Map<String, CookPlanner> planners = new LinkedHashMap<>();
    private final CookPlanner current;

    Planners(ParameterSets sets, PlanMetrics metrics) {
        this.sets = sets;
        for (ParameterSet set : sets.all()) {
            planners.put(set.version(), new CookPlanner(set.knowledge()));
            metrics.installed(
                    set.version(),
                    PlanTranslation.shown(set.digest()),
                    set.version().equals(sets.current().version()));
        }
        this.current = Objects.requireNonNull(planners.get(sets.current().version()));
    }

    /**
     * The planner of the parameter set that a request names, or of the current one.
     *
     * @throws Refusal if there is no such set
     */
    CookPlanner of(@Nullable String version) {
        if (version == null) {
            return current;
        }
        CookPlanner planner = planners.get(version);
        if (planner == null) {
            throw unknown("#/parameterSet", version);
        }
        sets.find(version)
                .flatMap(ParameterSet::retirement)
                .ifPresent(retirement -> DeprecationHeaders.announce(retirement.deprecation(), SETS + version));
        return planner;
    }

    /** Refuses a version that names no set, at a place of the request. */
    Refusal unknown(String pointer, String version) {
        return new Refusal(Refusal.Fault.of(pointer, ProblemCode.UNKNOWN_PARAMETER_SET.name(), "FAULT_NO_PARAMETER_SET")
                .withValue(version)
                .withHint("HINT_KNOWN", String.join(", ", planners.keySet())));
    }
}
