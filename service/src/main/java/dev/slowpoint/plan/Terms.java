package dev.slowpoint.plan;

import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.RuleLimits;
import java.util.List;
import java.util.Optional;

/**
 * What stays the same for all baths that one task is tried in.
 *
 * @param knowledge of the parameter set
 * @param materials thermal tables
 * @param rule judged by
 * @param requirements of the rule for this food
 * @param errorK reading error and accuracy of the bath together [K]
 * @param softening texture class and what an earlier cook did; empty when texture is not modelled
 * @param watch is told of the phases
 */
record Terms(
        Knowledge knowledge,
        Materials materials,
        Rule rule,
        List<Requirement> requirements,
        double errorK,
        Optional<Softening> softening,
        PhaseWatch watch) {

    /** How near to a floor a bath counts as set to it [K]; far above the rounding of the solver (our own choice). */
    private static final double EDGE_K = 1e-3;

    /** What is taken off the core of a piece in a bath of {@code setpointC} before the rule judges it. */
    ReadingError error(double setpointC) {
        return error(requirements, setpointC);
    }

    /**
     * The same for the requirements of another rule. A bath set to the very floor of a requirement, the error counted, is
     * approached for ever: how the solver rounds must not decide, so such a bath counts as below it.
     */
    ReadingError error(List<Requirement> judgedBy, double setpointC) {
        boolean edge =
                judgedBy.stream().anyMatch(r -> !r.advisory() && Math.abs(setpointC - errorK - r.floorC()) < EDGE_K);
        return new ReadingError(edge ? errorK + 2.0 * EDGE_K : errorK);
    }

    /** The same asking for other things, as the rule does of another purpose. */
    Terms asking(List<Requirement> others) {
        return new Terms(knowledge, materials, rule, others, errorK, softening, watch);
    }

    /** The limits that count for the rule. */
    RuleLimits limits() {
        return knowledge.safety().limits(rule.id());
    }
}
